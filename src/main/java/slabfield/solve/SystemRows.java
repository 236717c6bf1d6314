package slabfield.solve;

import java.util.Arrays;

/**
 * One worker's passes over its rows of a {@link RedBlackGrid} in double precision: residual, product, steps and answer. Black
 * rows are computed where they are needed and only a few kept; see {@link CycleRows} for the seams between workers.
 * Vectors of the reduced system are arrays by padded row; vectors over all cells are plain arrays.
 */
final class SystemRows {
    private static final int RING = 4;

    private final RedBlackGrid grid;
    private final int rows;
    private final double[] zero;
    private final double[][] black;
    private final double[] shifted;
    private final double[] blackPart;
    private final double[] redPart;

    SystemRows(RedBlackGrid grid) {
        this.grid = grid;
        rows = grid.rows;
        int n = grid.length + 1;
        zero = new double[n];
        black = new double[RING][n];
        shifted = new double[n];
        blackPart = new double[n];
        redPart = new double[n];
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

    /** z' ap. */
    double dot(float[][] z, double[][] ap, int from, int to) {
        double s = 0;
        for (int j = from; j < to; j++) {
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                s += z[j][k] * ap[j][k];
            }
        }
        return s;
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
}
