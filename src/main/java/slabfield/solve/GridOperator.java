package slabfield.solve;

/**
 * Symmetric five-point operator on the active cells of a rectangular grid:
 * {@code (A x)[c] = leak[c] x[c] + sum over active neighbours n of conductance(c, n) (x[c] - x[n])}.
 * Cells held at a fixed value are inactive here; their conductance goes into the neighbour's leak and their value into
 * the right-hand side. Cell (column, row) has index {@code row * columns + column}.
 *
 * @param columns number of cells along a row
 * @param rows number of rows
 * @param east conductance from each cell to the next in its row; read only between active cells, none negative
 * @param north conductance from each cell to the one a row further; likewise
 * @param leak conductance from each active cell to where x = 0, not negative
 * @param active which cells are unknowns; the operator gives 0 elsewhere
 */
public record GridOperator(int columns, int rows, double[] east, double[] north, double[] leak, boolean[] active)
        implements LinearOperator {
    public GridOperator {
        long cells = (long) columns * rows;
        if (columns < 1 || rows < 1 || cells > Integer.MAX_VALUE - 8) {
            throw new IllegalArgumentException("no grid of " + columns + " x " + rows + " cells");
        }
        if (east.length != cells || north.length != cells || leak.length != cells || active.length != cells) {
            throw new IllegalArgumentException(
                    "a grid of " + columns + " x " + rows + " cells needs arrays of " + cells);
        }
    }

    @Override
    public int size() {
        return active.length;
    }

    /** Conductance of the link from cell c to the next in its row; 0 where there is none. */
    double eastOf(int c, int column) {
        return column + 1 < columns && active[c] && active[c + 1] ? east[c] : 0;
    }

    /** Conductance of the link from cell c to the one a row further; 0 where there is none. */
    double northOf(int c, int row) {
        return row + 1 < rows && active[c] && active[c + columns] ? north[c] : 0;
    }

    @Override
    public void apply(double[] x, double[] y) {
        for (int c = 0; c < y.length; c++) {
            y[c] = active[c] ? leak[c] * x[c] : 0;
        }
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                int c = row * columns + column;
                double e = eastOf(c, column);
                if (e != 0) {
                    double flow = e * (x[c] - x[c + 1]);
                    y[c] += flow;
                    y[c + 1] -= flow;
                }
                double n = northOf(c, row);
                if (n != 0) {
                    double flow = n * (x[c] - x[c + columns]);
                    y[c] += flow;
                    y[c + columns] -= flow;
                }
            }
        }
    }
}
