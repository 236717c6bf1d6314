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
        int column = redColumn(j);
        int at = (j - 1) * grid.columns + column - 2;
        int end = elements(column) + 1;
        for (int k = 1; k < end; k++) {
            red[k] = from[at + 2 * k];
        }
    }

    /** Column of the first red cell of a row. */
    private static int redColumn(int j) {
        return (j & 1) != 0 ? 0 : 1;
    }

    /** Number of cells of a row in every second column from this one on. */
    private int elements(int column) {
        return (grid.columns - column + 1) / 2;
    }

    /** Every second cell of row j, 0 where {@code inUse} is 0. */
    private void take(int j, double[] from, int column, double[] inUse, double[] to) {
        int at = (j - 1) * grid.columns + column - 2;
        int end = Math.min(grid.end[j], elements(column) + 1);
        for (int k = grid.first[j]; k < end; k++) {
            to[k] = inUse[k] > 0 ? from[at + 2 * k] : 0;
        }
        // The last element stands for a column too many where there is none of this colour.
        to[end] = 0;
    }

    /** Sum of squares over active cells of rows from .. to - 1. */
    double squared(double[] b, boolean[] active, int from, int to) {
        int c = (from - 1) * grid.columns;
        int end = (to - 1) * grid.columns;
        double s = 0;
        double t = 0;
        for (; c + 1 < end; c += 2) {
            double v = active[c] ? b[c] : 0;
            double w = active[c + 1] ? b[c + 1] : 0;
            s += v * v;
            t += w * w;
        }
        return s + t + (c < end && active[c] ? b[c] * b[c] : 0);
    }

    private double[] row(double[][] all, int j) {
        return j < 1 || j > rows ? zero : all[j];
    }

    /** Black row j, exact for the red ones: B^-1 (b + C' x). */
    private double[] blackRow(int j, double[][] x, double[] b) {
        if (j < 1 || j > rows) {
            return zero;
        }
        double[] y = black[j & (RING - 1)];
        grid.black(j, row(x, j - 1), x[j], row(x, j + 1), y, shifted);
        take(j, b, 1 - redColumn(j), grid.black[j], blackPart);
        addProduct(y, grid.black[j], blackPart, grid.first[j], grid.end[j]);
        return y;
    }

    private static void addProduct(double[] y, double[] v, double[] w, int from, int to) {
        for (int k = from; k < to; k++) {
            y[k] += v[k] * w[k];
        }
    }

    /**
     * out = red part of b - A x, times scale, with black cells exact for the red ones; returns |b - A x|^2.
     *
     * @param exact takes the same in double precision, where not null
     * @param answer takes x and the black cells, where not null
     */
    double residual(
            double[] b,
            double[][] x,
            double scale,
            float[][] out,
            double[][] exact,
            double[] answer,
            int from,
            int to) {
        double s = 0;
        double[] below = blackRow(from - 1, x, b);
        double[] here = blackRow(from, x, b);
        for (int j = from; j < to; j++) {
            double[] above = blackRow(j + 1, x, b);
            grid.red(j, below, here, above, redRow, shifted);
            take(j, b, redColumn(j), grid.red[j], redPart);
            s += unbalanced(grid.red[j], x[j], scale, out[j], grid.first[j], grid.end[j]);
            if (exact != null) {
                System.arraycopy(redRow, 0, exact[j], 0, exact[j].length);
            }
            if (answer != null) {
                put(j, x[j], here, answer);
            }
            below = here;
            here = above;
        }
        return s;
    }

    private double unbalanced(double[] d, double[] x, double scale, float[] out, int from, int to) {
        for (int k = from; k < to; k++) {
            redRow[k] += redPart[k] - d[k] * x[k];
        }
        double s = Loops.dot(redRow, from, redRow, from, to - from);
        for (int k = from; k < to; k++) {
            redRow[k] *= scale;
        }
        for (int k = from; k < to; k++) {
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
            take(j, b, redColumn(j), grid.red[j], redPart);
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                out[j][k] = (float) ((redRow[k] + redPart[k]) * scale);
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
        take(j, b, 1 - redColumn(j), grid.black[j], blackPart);
        for (int k = grid.first[j]; k < grid.end[j]; k++) {
            y[k] = grid.black[j][k] * blackPart[k];
        }
        return y;
    }

    /** Writes the red cells and the black ones that follow from them and b into a vector over all cells. */
    void answer(double[] b, double[][] x, double[] out, int from, int to) {
        for (int j = from; j < to; j++) {
            put(j, x[j], blackRow(j, x, b), out);
        }
    }

    private void put(int j, double[] reds, double[] blacks, double[] out) {
        boolean redFirst = redColumn(j) == 0;
        putColumns(j, redFirst ? reds : blacks, redFirst ? blacks : reds, out);
    }

    /** Row j from its even and its odd columns; 0 beyond those in use. */
    private void putColumns(int j, double[] even, double[] odd, double[] out) {
        int at = (j - 1) * grid.columns;
        int first = grid.first[j];
        int end = Math.min(grid.end[j], grid.columns / 2 + 1);
        int k = first;
        for (; k < end; k++) {
            out[at + 2 * k - 2] = even[k];
            out[at + 2 * k - 1] = odd[k];
        }
        int done = 2 * k - 2;
        if (k < grid.end[j] && done < grid.columns) {
            out[at + done++] = even[k];
        }
        Arrays.fill(out, at, at + 2 * first - 2, 0);
        Arrays.fill(out, at + done, at + grid.columns, 0);
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
