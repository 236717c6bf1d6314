package slabfield.solve;

import java.util.Arrays;
import slabfield.solve.NinePoint.Row;

/**
 * Reads a {@link GridOperator} row by row for the set-up: couplings of active cells alone, and the diagonal. Rows that are one
 * worker's own go into the red-black grid as they pass. Rows are asked for in rising order; a diagonal needs the row
 * below, so the first row asked for has one only if it is row 1.
 */
final class OperatorRows implements NinePoint.Source {
    private static final int KEPT = 5;

    private final GridOperator operator;
    private final RedBlackGrid grid;
    private final int from;
    private final int to;
    private final Row[] ring = new Row[KEPT];
    private final Row none;

    /** @param from first own padded row; the own rows end before {@code to} */
    OperatorRows(GridOperator operator, RedBlackGrid grid, int from, int to) {
        this.operator = operator;
        this.grid = grid;
        this.from = from;
        this.to = to;
        Arrays.setAll(ring, k -> new Row(operator.columns() + 4));
        none = new Row(operator.columns() + 4);
    }

    @Override
    public Row row(int j) {
        if (j < 1 || j > operator.rows()) {
            return none;
        }
        Row row = ring[j % KEPT];
        links(j, row);
        diagonal(j, row, j > 1 ? ring[(j - 1) % KEPT].north : none.north);
        row.findRange(operator.columns());
        if (j >= from && j < to) {
            grid.load(j, row);
        }
        return row;
    }

    /** True where a row is no longer what the red-black grid took over. */
    boolean differs(int j) {
        Row row = ring[j % KEPT];
        Row under = none;
        if (j > 1) {
            under = ring[(j - 1) % KEPT];
            links(j - 1, under);
        }
        links(j, row);
        diagonal(j, row, under.north);
        row.findRange(operator.columns());
        return !grid.holds(j, row);
    }

    private void links(int j, Row row) {
        int columns = operator.columns();
        boolean[] active = operator.active();
        int at = (j - 1) * columns - 1;
        double[] e = row.east;
        double[] given = operator.east();
        for (int i = 1; i < columns; i++) {
            e[i] = active[at + i] & active[at + i + 1] ? given[at + i] : 0;
        }
        double[] n = row.north;
        if (j == operator.rows()) {
            Arrays.fill(n, 0);
            return;
        }
        given = operator.north();
        for (int i = 1; i <= columns; i++) {
            n[i] = active[at + i] & active[at + columns + i] ? given[at + i] : 0;
        }
    }

    private void diagonal(int j, Row row, double[] below) {
        int columns = operator.columns();
        boolean[] active = operator.active();
        int at = (j - 1) * columns - 1;
        double[] d = row.diagonal;
        double[] e = row.east;
        double[] n = row.north;
        double[] leak = operator.leak();
        for (int i = 1; i <= columns; i++) {
            d[i] = active[at + i] ? leak[at + i] + (e[i] + e[i - 1]) + (n[i] + below[i]) : 0;
        }
    }
}
