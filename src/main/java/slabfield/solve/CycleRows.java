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
    }

    private float[] smoothedRed(int j, float[][] residual) {
        if (j < 1 || j > rows) {
            return zero;
        }
        float[] y = red[j & (RING - 1)];
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
     * Smooths from zero, red then black, and restricts what residual remains on the red cells to padded coarse rows
     * from .. to - 1.
     */
    void restrict(float[][] residual, float[][] coarse, int from, int to) {
        if (from >= to) {
            return;
        }
        int j = 2 * from - 2;
        float[] red0 = smoothedRed(j - 2, residual);
        float[] red1 = smoothedRed(j - 1, residual);
        float[] red2 = smoothedRed(j, residual);
        float[] black0 = blackRow(j - 1, red0, red1, red2);
        red0 = red1;
        red1 = red2;
        red2 = smoothedRed(j + 1, residual);
        float[] black1 = blackRow(j, red0, red1, red2);
        Arrays.fill(carry, 0);
        for (; j <= 2 * to - 2; j++) {
            red0 = red1;
            red1 = red2;
            red2 = smoothedRed(j + 2, residual);
            float[] black2 = blackRow(j + 1, red0, red1, red2);
            if (j >= 1 && j <= rows) {
                grid.red(j, black0, black1, black2, sum, shifted);
            }
            if ((j & 1) != 0) {
                stay(j, coarse[(j + 1) / 2]);
            } else {
                spread(j, j > 2 * from - 2 ? coarse[j / 2] : null);
            }
            black0 = black1;
            black1 = black2;
        }
    }

    /** A row that stays: its own residual and what the row below gave. */
    private void stay(int j, float[] coarse) {
        Arrays.fill(coarse, 0);
        int end = grid.end[j];
        for (int k = grid.first[j]; k < end; k++) {
            coarse[k] = sum[k] + carry[k];
        }
    }

    /** A row that goes: gives to the coarse row below, if that is ours, and keeps in {@code carry} what goes above. */
    private void spread(int j, float[] coarse) {
        if (j < 1 || j > rows || grid.first[j] >= grid.end[j]) {
            Arrays.fill(carry, 0);
            return;
        }
        if (coarse != null) {
            share(j, corners.southWest[j / 2], corners.southEast[j / 2], product);
            for (int k = grid.first[j]; k <= grid.end[j]; k++) {
                coarse[k] += product[k];
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

    /** Red row j after the first smoothing and the coarse correction. */
    private float[] correctedRed(int j, float[][] residual, float[][] coarse) {
        if (j < 1 || j > rows) {
            return zero;
        }
        float[] y = smoothedRed(j, residual);
        int a = grid.first[j];
        int e = grid.end[j];
        if ((j & 1) != 0) {
            float[] c = coarse[(j + 1) / 2];
            for (int k = a; k < e; k++) {
                y[k] += c[k];
            }
        } else {
            interpolate(y, coarse[j / 2], corners.southWest[j / 2], corners.southEast[j / 2], a, e);
            interpolate(y, coarse[j / 2 + 1], corners.northWest[j / 2], corners.northEast[j / 2], a, e);
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
     * @return residual' z
     */
    double correct(float[][] residual, float[][] coarse, float[][] z, int from, int to) {
        double s = 0;
        float[] red0 = correctedRed(from - 2, residual, coarse);
        float[] red1 = correctedRed(from - 1, residual, coarse);
        float[] red2 = correctedRed(from, residual, coarse);
        float[] black0 = blackRow(from - 1, red0, red1, red2);
        red0 = red1;
        red1 = red2;
        red2 = correctedRed(from + 1, residual, coarse);
        float[] black1 = blackRow(from, red0, red1, red2);
        for (int j = from; j < to; j++) {
            red0 = red1;
            red1 = red2;
            red2 = correctedRed(j + 2, residual, coarse);
            float[] black2 = blackRow(j + 1, red0, red1, red2);
            float[] y = z[j];
            grid.red(j, black0, black1, black2, y, shifted);
            s += finish(grid.redF[j], residual[j], y, grid.first[j], grid.end[j]);
            black0 = black1;
            black1 = black2;
        }
        return s;
    }

    private static double finish(float[] d, float[] r, float[] y, int from, int to) {
        for (int k = from; k < to; k++) {
            y[k] = d[k] * (r[k] + y[k]);
        }
        double s = 0;
        double t = 0;
        int k = from;
        for (; k + 1 < to; k += 2) {
            s += r[k] * y[k];
            t += r[k + 1] * y[k + 1];
        }
        if (k < to) {
            s += r[k] * y[k];
        }
        return s + t;
    }
}
