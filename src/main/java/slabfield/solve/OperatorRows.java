package slabfield.solve;

import java.util.Arrays;

/** The rows of a {@link GridOperator} in natural order: couplings of active cells alone, and the diagonal. Asked for as {@link FineRows}. */
final class OperatorRows {
    private static final int KEPT = 5;

    /** One row: column i is element i + 1, with zeros at each end. */
    static final class Row {
        final double[] diagonal;
        final double[] east;
        final double[] north;
        /** First element with a diagonal above 0, and one past the last; equal where there is none. */
        int first;

        int end;

        Row(int length) {
            diagonal = new double[length];
            east = new double[length];
            north = new double[length];
        }
    }

    private final FineRows rows;
    private final Row[] ring = new Row[KEPT];

    /** @param grid takes the rows from .. to - 1 */
    OperatorRows(GridOperator operator, RedBlackGrid grid, int from, int to) {
        rows = new FineRows(operator, grid, from, to);
        Arrays.setAll(ring, k -> new Row(operator.columns() + 4));
    }

    /** Padded row j; it stays as it is until four more have been asked for. */
    Row row(int j) {
        SplitRow split = rows.row(j);
        Row row = ring[j % KEPT];
        take(row.diagonal, split.diagonal);
        take(row.east, split.east);
        take(row.north, split.north);
        row.first = 2 * split.first - 1;
        row.end = 2 * split.end - 1;
        return row;
    }

    private static void take(double[] natural, SplitRow.Pair pair) {
        for (int i = 1; i < natural.length - 2; i++) {
            natural[i] = pair.get(i);
        }
    }
}
