package slabfield.solve;

/** A {@link GridOperator}'s links among active cells, row by row in natural order: cell column i is element i + 1, row j number j + 1. */
final class OperatorRows {
    /** One row: links to the east and to the north, and leaks; 0 where there is none. A 0 stands at each end. */
    static final class Row {
        final double[] east;
        final double[] north;
        final double[] leak;

        private Row(int length) {
            east = new double[length];
            north = new double[length];
            leak = new double[length];
        }
    }

    private final GridOperator operator;

    OperatorRows(GridOperator operator) {
        this.operator = operator;
    }

    Row none() {
        return new Row(operator.columns() + 2);
    }

    /** Takes over padded row j, of which there is one. */
    void read(int j, Row row) {
        int columns = operator.columns();
        boolean[] active = operator.active();
        double[] east = operator.east();
        double[] north = operator.north();
        double[] leak = operator.leak();
        int at = (j - 1) * columns - 1;
        for (int i = 1; i < columns; i++) {
            row.east[i] = active[at + i] & active[at + i + 1] ? east[at + i] : 0;
        }
        for (int i = 1; i <= columns; i++) {
            row.leak[i] = active[at + i] ? leak[at + i] : 0;
        }
        if (j == operator.rows()) {
            java.util.Arrays.fill(row.north, 0);
            return;
        }
        for (int i = 1; i <= columns; i++) {
            row.north[i] = active[at + i] & active[at + columns + i] ? north[at + i] : 0;
        }
    }
}
