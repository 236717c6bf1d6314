package slabfield.solve;

import java.util.Arrays;

/**
 * One worker's passes over its rows of a {@link RedBlackGrid} in single precision: the finest level of a cycle. Rows in
 * between are computed where they are needed and kept in a few arrays that stay in cache; those at the seam between
 * two workers are computed by both, so that a pass needs nothing that another worker writes in the same pass.
 */
final class CycleRows {
    private static final int RING = 4;

    private final RedBlackGrid grid;
    private final CornerWeights corners;
    private final int rows;
    private final float[] zero;
    private final float[][] red;
    private final float[][] black;
    private final float[] shifted;
    private final float[] sum;
    private final float[] carry;
    private final float[] product;
    private final float[] own;
    private final NaturalRows natural;
    private final RowSum work;
    private final RowSum along;

    CycleRows(RedBlackGrid grid, CornerWeights corners) {
        this.grid = grid;
        this.corners = corners;
        rows = grid.rows;
        int n = grid.length + 1;
        zero = new float[n];
        red = new float[RING][n];
        black = new float[RING][n];
        shifted = new float[n];
        sum = new float[n];
        carry = new float[n];
        product = new float[n];
        own = new float[n];
        natural = new NaturalRows(n + 1);
        work = new RowSum(n);
        along = new RowSum(n);
    }

    /** Red row j to start from: of {@code given}, or where that is null smoothed from zero. */
    private float[] startRed(int j, float[][] residual, float[][] given) {
        if (j < 1 || j > rows) {
            return zero;
        }
        float[] y = red[j & (RING - 1)];
        if (given != null) {
            System.arraycopy(given[j], 0, y, 0, given[j].length);
            return y;
        }
        float[] d = grid.redF[j];
        float[] rj = residual[j];
        int end = grid.end[j];
        for (int k = grid.first[j]; k < end; k++) {
            y[k] = d[k] * rj[k];
        }
        return y;
    }

    private float[] blackRow(int j, float[] below, float[] here, float[] above) {
        if (j < 1 || j > rows) {
            return zero;
        }
        float[] y = black[j & (RING - 1)];
        grid.black(j, below, here, above, y, shifted);
        return y;
    }

    /**
     * Restricts what residual remains on the red cells to padded coarse rows from .. to - 1.
     *
     * @param given red values so far, or null for those smoothed from zero
     */
    void restrict(float[][] residual, float[][] given, CoarseGrid coarse, int from, int to) {
        if (from >= to) {
            return;
        }
        int j = 2 * from - 2;
        float[] red0 = startRed(j - 2, residual, given);
        float[] red1 = startRed(j - 1, residual, given);
        float[] red2 = startRed(j, residual, given);
        float[] black0 = blackRow(j - 1, red0, red1, red2);
        red0 = red1;
        red1 = red2;
        red2 = startRed(j + 1, residual, given);
        float[] black1 = blackRow(j, red0, red1, red2);
        Arrays.fill(carry, 0);
        for (; j <= 2 * to - 2; j++) {
            red0 = red1;
            red1 = red2;
            red2 = startRed(j + 2, residual, given);
            float[] black2 = blackRow(j + 1, red0, red1, red2);
            if (j >= 1 && j <= rows) {
                grid.red(j, black0, black1, black2, sum, shifted);
                if (given != null) {
                    unbalanced(j, residual[j], given[j]);
                }
            }
            if ((j & 1) != 0) {
                stay(j);
            } else {
                spread(j, j > 2 * from - 2);
                if (j > 2 * from - 2) {
                    coarse.b.put(j / 2, own, 0, coarse.first[j / 2], coarse.end[j / 2]);
                }
            }
            black0 = black1;
            black1 = black2;
        }
    }

    /** Turns {@code sum} into the residual of row j where its cells are not in balance with {@code residual} by themselves. */
    private void unbalanced(int j, float[] residual, float[] x) {
        double[] d = grid.red[j];
        int end = grid.end[j];
        for (int k = grid.first[j]; k < end; k++) {
            sum[k] += residual[k] - (float) d[k] * x[k];
        }
    }

    /** A row that stays: its own residual and what the row below gave. */
    private void stay(int j) {
        Arrays.fill(own, 0);
        int end = grid.end[j];
        for (int k = grid.first[j]; k < end; k++) {
            own[k] = sum[k] + carry[k];
        }
    }

    /** A row that goes: gives to the coarse row below, where that is ours, and keeps in {@code carry} what goes above. */
    private void spread(int j, boolean ours) {
        if (j < 1 || j > rows || grid.first[j] >= grid.end[j]) {
            Arrays.fill(carry, 0);
            return;
        }
        if (ours) {
            share(j, corners.southWest[j / 2], corners.southEast[j / 2], product);
            for (int k = grid.first[j]; k <= grid.end[j]; k++) {
                own[k] += product[k];
            }
        }
        Arrays.fill(carry, 0);
        share(j, corners.northWest[j / 2], corners.northEast[j / 2], carry);
    }

    private void share(int j, float[] west, float[] east, float[] out) {
        int a = grid.first[j];
        int e = grid.end[j];
        for (int k = a; k < e; k++) {
            out[k] = east[k] * sum[k];
        }
        System.arraycopy(out, a, shifted, a + 1, e - a);
        shifted[a] = 0;
        for (int k = a; k < e; k++) {
            out[k] = west[k] * sum[k] + shifted[k];
        }
        out[e] = shifted[e];
    }

    /** Red row j after the first smoothing and the coarse correction, if any. */
    private float[] correctedRed(int j, float[][] residual, float[][] given, CoarseGrid coarse) {
        float[] y = startRed(j, residual, given);
        if (j < 1 || j > rows || coarse == null) {
            return y;
        }
        int a = grid.first[j];
        int e = grid.end[j];
        if ((j & 1) != 0) {
            float[] c = natural.row((j + 1) / 2);
            for (int k = a; k < e; k++) {
                y[k] += c[k];
            }
        } else {
            interpolate(y, natural.row(j / 2), corners.southWest[j / 2], corners.southEast[j / 2], a, e);
            interpolate(y, natural.row(j / 2 + 1), corners.northWest[j / 2], corners.northEast[j / 2], a, e);
        }
        return y;
    }

    private void interpolate(float[] y, float[] c, float[] west, float[] east, int a, int e) {
        System.arraycopy(c, a + 1, shifted, a, e - a);
        for (int k = a; k < e; k++) {
            y[k] += west[k] * c[k] + east[k] * shifted[k];
        }
    }

    /**
     * Adds the coarse correction to the first smoothing and smooths again, black then red: z in rows from .. to - 1.
     *
     * @param given red values so far, not {@code z}, or null for those smoothed from zero
     * @param coarse the correction, or null for none
     * @param last A times the direction before, or null; {@link #along} is last' z
     */
    void correct(
            float[][] residual, float[][] given, CoarseGrid coarse, float[][] z, float[][] last, int from, int to) {
        if (coarse != null) {
            natural.begin(coarse);
        }
        work.clear();
        along.clear();
        float[] red0 = correctedRed(from - 2, residual, given, coarse);
        float[] red1 = correctedRed(from - 1, residual, given, coarse);
        float[] red2 = correctedRed(from, residual, given, coarse);
        float[] black0 = blackRow(from - 1, red0, red1, red2);
        red0 = red1;
        red1 = red2;
        red2 = correctedRed(from + 1, residual, given, coarse);
        float[] black1 = blackRow(from, red0, red1, red2);
        for (int j = from; j < to; j++) {
            red0 = red1;
            red1 = red2;
            red2 = correctedRed(j + 2, residual, given, coarse);
            float[] black2 = blackRow(j + 1, red0, red1, red2);
            float[] y = z[j];
            grid.red(j, black0, black1, black2, y, shifted);
            finish(grid.redF[j], residual[j], y, grid.first[j], grid.end[j]);
            work.add(residual[j], y, grid.first[j], grid.end[j]);
            if (last != null) {
                along.add(last[j], y, grid.first[j], grid.end[j]);
            }
            black0 = black1;
            black1 = black2;
        }
    }

    private static void finish(float[] d, float[] r, float[] y, int from, int to) {
        for (int k = from; k < to; k++) {
            y[k] = d[k] * (r[k] + y[k]);
        }
    }

    /** This worker's part of residual' z in the last {@link #correct}. */
    double work() {
        return work.take();
    }

    /** This worker's part of last' z in the last {@link #correct}. */
    double along() {
        return along.take();
    }
}
