package slabfield.solve;

import java.util.Arrays;

/**
 * One worker's passes over its rows of a {@link RedBlackGrid}. Rows in between are computed where they are needed and kept in
 * a few arrays that stay in cache; those at the seam between two workers are computed by both, so that a pass needs
 * nothing that another worker writes in the same pass.
 */
final class CycleRows {
    private static final int RING = 4;

    private final RedBlackGrid grid;
    private final CornerWeights corners;
    private final int rows;
    private final double[] zero;
    private final float[] zeroF;
    private final double[][] black;
    private final double[] shifted;
    private final double[] blackPart;
    private final double[] redPart;
    private final float[][] redF;
    private final float[][] blackF;
    private final float[] shiftedF;
    private final float[] sum;
    private final float[] carry;
    private final float[] product;

    CycleRows(RedBlackGrid grid, CornerWeights corners) {
        this.grid = grid;
        this.corners = corners;
        rows = grid.rows;
        int n = grid.length + 1;
        zero = new double[n];
        zeroF = new float[n];
        black = new double[RING][n];
        shifted = new double[n];
        blackPart = new double[n];
        redPart = new double[n];
        redF = new float[RING][n];
        blackF = new float[RING][n];
        shiftedF = new float[n];
        sum = new float[n];
        carry = new float[n];
        product = new float[n];
    }

    /** Red cells of row j of a vector over all cells. */
    void takeRed(int j, double[] from, double[] red) {
        take(j, from, (j & 1) != 0 ? 0 : 1, red);
    }

    private void takeBlack(int j, double[] from, double[] blackRow) {
        take(j, from, (j & 1) != 0 ? 1 : 0, blackRow);
    }

    private void take(int j, double[] from, int column, double[] to) {
        int at = (j - 1) * grid.columns;
        for (int i = column; i < grid.columns; i += 2) {
            to[i / 2 + 1] = from[at + i];
        }
    }

    /** Sum of squares over active cells of rows from .. to - 1. */
    double squared(double[] b, int from, int to) {
        double s = 0;
        for (int j = from; j < to; j++) {
            takeRed(j, b, redPart);
            takeBlack(j, b, blackPart);
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                s += grid.red[j][k] > 0 ? redPart[k] * redPart[k] : 0;
                s += grid.black[j][k] > 0 ? blackPart[k] * blackPart[k] : 0;
            }
        }
        return s;
    }

    private double[] row(double[][] all, int j) {
        return j < 1 || j > rows ? zero : all[j];
    }

    /** Black row j, exact for the red ones: B^-1 (b + C' x), b null for 0. */
    private double[] blackRow(int j, double[][] x, double[] b) {
        if (j < 1 || j > rows) {
            return zero;
        }
        double[] y = black[j & (RING - 1)];
        grid.black(j, row(x, j - 1), x[j], row(x, j + 1), y, shifted);
        if (b != null) {
            takeBlack(j, b, blackPart);
            double[] inverse = grid.black[j];
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                y[k] += inverse[k] * blackPart[k];
            }
        }
        return y;
    }

    /** r = red part of b - A x, with black cells exact for the red ones; returns |r|^2. */
    double residual(double[] b, double[][] x, double[][] r, int from, int to) {
        double s = 0;
        double[] below = blackRow(from - 1, x, b);
        double[] here = blackRow(from, x, b);
        for (int j = from; j < to; j++) {
            double[] above = blackRow(j + 1, x, b);
            double[] rj = r[j];
            grid.red(j, below, here, above, rj, shifted);
            takeRed(j, b, redPart);
            double[] d = grid.red[j];
            double[] xj = x[j];
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                rj[k] = d[k] > 0 ? rj[k] + redPart[k] - d[k] * xj[k] : 0;
                s += rj[k] * rj[k];
            }
            below = here;
            here = above;
        }
        return s;
    }

    /** r = b + C B^-1 (black part of b): the right-hand side of the reduced system. */
    void reduce(double[] b, double[][] r, int from, int to) {
        double[] below = reducedBlack(from - 1, b);
        double[] here = reducedBlack(from, b);
        for (int j = from; j < to; j++) {
            double[] above = reducedBlack(j + 1, b);
            grid.red(j, below, here, above, r[j], shifted);
            takeRed(j, b, redPart);
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                r[j][k] = grid.red[j][k] > 0 ? r[j][k] + redPart[k] : 0;
            }
            below = here;
            here = above;
        }
    }

    private double[] reducedBlack(int j, double[] b) {
        if (j < 1 || j > rows) {
            return zero;
        }
        double[] y = black[j & (RING - 1)];
        takeBlack(j, b, blackPart);
        for (int k = grid.first[j]; k < grid.end[j]; k++) {
            y[k] = grid.black[j][k] * blackPart[k];
        }
        return y;
    }

    /** Writes the red cells and the black ones that follow from them and b into a vector over all cells. */
    void answer(double[] b, double[][] x, double[] out, int from, int to) {
        for (int j = from; j < to; j++) {
            double[] y = blackRow(j, x, b);
            int at = (j - 1) * grid.columns;
            Arrays.fill(out, at, at + grid.columns, 0);
            int red = (j & 1) != 0 ? 0 : 1;
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                int column = 2 * k - 2;
                if (grid.red[j][k] > 0) {
                    out[at + column + red] = x[j][k];
                }
                if (grid.black[j][k] > 0) {
                    out[at + column + 1 - red] = y[k];
                }
            }
        }
    }

    /** Single-precision copy of r times scale. */
    void round(double[][] r, double scale, float[][] out, int from, int to) {
        for (int j = from; j < to; j++) {
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                out[j][k] = (float) (r[j][k] * scale);
            }
        }
    }

    void widen(float[][] z, double scale, double[][] out, int from, int to) {
        for (int j = from; j < to; j++) {
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                out[j][k] = z[j][k] * scale;
            }
        }
    }

    /** p = z + factor p. */
    void direction(float[][] z, double factor, double[][] p, int from, int to) {
        for (int j = from; j < to; j++) {
            double[] pj = p[j];
            float[] zj = z[j];
            int end = grid.end[j];
            for (int k = grid.first[j]; k < end; k++) {
                pj[k] = zj[k] + factor * pj[k];
            }
        }
    }

    /** ap = S p; returns p' S p. */
    double multiply(double[][] p, double[][] ap, int from, int to) {
        double s = 0;
        double[] below = blackRow(from - 1, p, null);
        double[] here = blackRow(from, p, null);
        for (int j = from; j < to; j++) {
            double[] above = blackRow(j + 1, p, null);
            double[] y = ap[j];
            grid.red(j, below, here, above, y, shifted);
            s += finish(grid.red[j], p[j], y, grid.first[j], grid.end[j]);
            below = here;
            here = above;
        }
        return s;
    }

    private static double finish(double[] d, double[] p, double[] y, int from, int to) {
        for (int k = from; k < to; k++) {
            y[k] = d[k] * p[k] - y[k];
        }
        return dot(p, y, from, to);
    }

    private static double dot(double[] a, double[] b, int from, int to) {
        double s = 0;
        double t = 0;
        double u = 0;
        double v = 0;
        int k = from;
        for (; k + 3 < to; k += 4) {
            s += a[k] * b[k];
            t += a[k + 1] * b[k + 1];
            u += a[k + 2] * b[k + 2];
            v += a[k + 3] * b[k + 3];
        }
        for (; k < to; k++) {
            s += a[k] * b[k];
        }
        return s + t + (u + v);
    }

    /** x += length p, r -= length ap, and the rounded copy of r; returns |r|^2. */
    double step(double length, double[][] p, double[][] ap, double[][] x, double[][] r, double scale, float[][] out,
            int from, int to) {
        double s = 0;
        for (int j = from; j < to; j++) {
            add(length, p[j], x[j], grid.first[j], grid.end[j]);
            add(-length, ap[j], r[j], grid.first[j], grid.end[j]);
            s += roundRow(r[j], scale, out[j], grid.first[j], grid.end[j]);
        }
        return s;
    }

    private static void add(double factor, double[] from, double[] to, int first, int end) {
        for (int k = first; k < end; k++) {
            to[k] += factor * from[k];
        }
    }

    private static double roundRow(double[] r, double scale, float[] out, int from, int to) {
        double s = 0;
        double t = 0;
        int k = from;
        for (; k + 1 < to; k += 2) {
            double a = r[k];
            double b = r[k + 1];
            s += a * a;
            t += b * b;
            out[k] = (float) (a * scale);
            out[k + 1] = (float) (b * scale);
        }
        if (k < to) {
            s += r[k] * r[k];
            out[k] = (float) (r[k] * scale);
        }
        return s + t;
    }

    private float[] smoothedRed(int j, float[][] residual) {
        if (j < 1 || j > rows) {
            return zeroF;
        }
        float[] y = redF[j & (RING - 1)];
        float[] d = grid.redF[j];
        float[] rj = residual[j];
        int end = grid.end[j];
        for (int k = grid.first[j]; k < end; k++) {
            y[k] = d[k] * rj[k];
        }
        return y;
    }

    private float[] blackRowF(int j, float[] below, float[] here, float[] above) {
        if (j < 1 || j > rows) {
            return zeroF;
        }
        float[] y = blackF[j & (RING - 1)];
        grid.black(j, below, here, above, y, shiftedF);
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
        float[] black0 = blackRowF(j - 1, red0, red1, red2);
        red0 = red1;
        red1 = red2;
        red2 = smoothedRed(j + 1, residual);
        float[] black1 = blackRowF(j, red0, red1, red2);
        Arrays.fill(carry, 0);
        for (; j <= 2 * to - 2; j++) {
            red0 = red1;
            red1 = red2;
            red2 = smoothedRed(j + 2, residual);
            float[] black2 = blackRowF(j + 1, red0, red1, red2);
            if (j >= 1 && j <= rows) {
                grid.red(j, black0, black1, black2, sum, shiftedF);
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
        System.arraycopy(out, a, shiftedF, a + 1, e - a);
        shiftedF[a] = 0;
        for (int k = a; k < e; k++) {
            out[k] = west[k] * sum[k] + shiftedF[k];
        }
        out[e] = shiftedF[e];
    }

    /** Red row j after the first smoothing and the coarse correction. */
    private float[] correctedRed(int j, float[][] residual, float[][] coarse) {
        if (j < 1 || j > rows) {
            return zeroF;
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
        System.arraycopy(c, a + 1, shiftedF, a, e - a);
        for (int k = a; k < e; k++) {
            y[k] += west[k] * c[k] + east[k] * shiftedF[k];
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
        float[] black0 = blackRowF(from - 1, red0, red1, red2);
        red0 = red1;
        red1 = red2;
        red2 = correctedRed(from + 1, residual, coarse);
        float[] black1 = blackRowF(from, red0, red1, red2);
        for (int j = from; j < to; j++) {
            red0 = red1;
            red1 = red2;
            red2 = correctedRed(j + 2, residual, coarse);
            float[] black2 = blackRowF(j + 1, red0, red1, red2);
            float[] y = z[j];
            grid.red(j, black0, black1, black2, y, shiftedF);
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
