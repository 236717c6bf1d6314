package slabfield.solve;

import java.util.Arrays;

/**
 * One worker's passes over its rows of a {@link RedBlackGrid} in double precision: right-hand side, residual and answer. Black
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
    private final double[] redRow;

    SystemRows(RedBlackGrid grid) {
        this.grid = grid;
        rows = grid.rows;
        int n = grid.length + 1;
        zero = new double[n];
        black = new double[RING][n];
        shifted = new double[n];
        blackPart = new double[n];
        redPart = new double[n];
        redRow = new double[n];
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
        double t = 0;
        for (int j = from; j < to; j++) {
            takeRed(j, b, redPart);
            takeBlack(j, b, blackPart);
            double[] red = grid.red[j];
            double[] blacks = grid.black[j];
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                s += red[k] > 0 ? redPart[k] * redPart[k] : 0;
                t += blacks[k] > 0 ? blackPart[k] * blackPart[k] : 0;
            }
        }
        return s + t;
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

    /**
     * out = red part of b - A x, times scale, with black cells exact for the red ones; returns |b - A x|^2.
     *
     * @param exact takes the same in double precision, where not null
     */
    double residual(double[] b, double[][] x, double scale, float[][] out, double[][] exact, int from, int to) {
        double s = 0;
        double[] below = blackRow(from - 1, x, b);
        double[] here = blackRow(from, x, b);
        for (int j = from; j < to; j++) {
            double[] above = blackRow(j + 1, x, b);
            grid.red(j, below, here, above, redRow, shifted);
            takeRed(j, b, redPart);
            s += unbalanced(grid.red[j], x[j], scale, out[j], grid.first[j], grid.end[j]);
            if (exact != null) {
                System.arraycopy(redRow, 0, exact[j], 0, exact[j].length);
            }
            below = here;
            here = above;
        }
        return s;
    }

    private double unbalanced(double[] d, double[] x, double scale, float[] out, int from, int to) {
        double s = 0;
        for (int k = from; k < to; k++) {
            double r = d[k] > 0 ? redRow[k] + redPart[k] - d[k] * x[k] : 0;
            s += r * r;
            redRow[k] = r * scale;
            out[k] = (float) redRow[k];
        }
        return s;
    }

    /** out = b + C B^-1 (black part of b), times scale: the right-hand side of the reduced system. */
    void reduce(double[] b, double scale, float[][] out, int from, int to) {
        double[] below = reducedBlack(from - 1, b);
        double[] here = reducedBlack(from, b);
        for (int j = from; j < to; j++) {
            double[] above = reducedBlack(j + 1, b);
            grid.red(j, below, here, above, redRow, shifted);
            takeRed(j, b, redPart);
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                out[j][k] = grid.red[j][k] > 0 ? (float) ((redRow[k] + redPart[k]) * scale) : 0;
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

    /** out = z times scale. */
    void widen(float[][] z, double scale, double[][] out, int from, int to) {
        for (int j = from; j < to; j++) {
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                out[j][k] = z[j][k] * scale;
            }
        }
    }
}
