package slabfield.solve;

import java.util.Arrays;

/**
 * Reads a {@link GridOperator} row by row for the set-up: couplings of active cells alone, leaks in single precision as the
 * cycle uses them, and the diagonal. Rows that are one worker's own go into the red-black grid as they pass. Rows are
 * asked for in rising order; a diagonal needs the row below, so the first row asked for has one only if it is row 1.
 */
final class FineRows implements NinePoint.Source {
    private static final int KEPT = 5;

    private final GridOperator operator;
    private final RedBlackGrid grid;
    private final int from;
    private final int to;
    private final SplitRow[] ring = new SplitRow[KEPT];
    private final SplitRow none;
    private final float[] leakOfEven;
    private final float[] leakOfOdd;
    private final double[] westOfEven;
    /** A row in natural order, column i as element i + 1, ended by a 0. */
    private final double[] natural;

    private final boolean[] allTrue;
    private final boolean[] allFalse;

    /** @param from first own padded row; the own rows end before {@code to} */
    FineRows(GridOperator operator, RedBlackGrid grid, int from, int to) {
        this.operator = operator;
        this.grid = grid;
        this.from = from;
        this.to = to;
        int columns = operator.columns();
        Arrays.setAll(ring, k -> SplitRow.fivePoint(columns));
        none = SplitRow.fivePoint(columns);
        int n = SplitRow.length(columns);
        leakOfEven = new float[n];
        leakOfOdd = new float[n];
        westOfEven = new double[n];
        natural = new double[columns + 2];
        allTrue = new boolean[columns];
        Arrays.fill(allTrue, true);
        allFalse = new boolean[columns];
    }

    @Override
    public SplitRow row(int j) {
        if (j < 1 || j > operator.rows()) {
            return none;
        }
        SplitRow row = ring[j % KEPT];
        read(j, row, j > 1 ? ring[(j - 1) % KEPT] : none);
        if (j >= from && j < to) {
            grid.load(j, row, leakOfEven, leakOfOdd, westOfEven);
        }
        return row;
    }

    /** True where a row is no longer what the red-black grid took over. */
    boolean differs(int j) {
        SplitRow row = ring[j % KEPT];
        SplitRow under = none;
        if (j > 1) {
            under = ring[(j - 1) % KEPT];
            north(j - 1, under);
        }
        read(j, row, under);
        return !grid.holds(j, row, leakOfEven, leakOfOdd);
    }

    private void read(int j, SplitRow row, SplitRow under) {
        int columns = operator.columns();
        take(j, operator.east());
        natural[columns] = 0;
        clearInactive(j, 1);
        row.east.split(natural, columns);
        north(j, row);
        take(j, operator.leak());
        clearInactive(j, 0);
        row.leak.split(natural, columns);
        diagonals(row, under);
        round(row.leak.even, leakOfEven, row.leak.odd, leakOfOdd);
        row.findRange();
    }

    private void north(int j, SplitRow row) {
        if (j == operator.rows()) {
            row.clearNorth();
            return;
        }
        take(j, operator.north());
        clearInactive(j, 0);
        clearInactive(j + 1, 0);
        row.north.split(natural, operator.columns());
    }

    private void take(int j, double[] given) {
        System.arraycopy(given, (j - 1) * operator.columns(), natural, 1, operator.columns());
    }

    /** Sets to 0 what {@code natural} holds of row j's inactive cells and of some cells before each. */
    private void clearInactive(int j, int before) {
        boolean[] active = operator.active();
        int columns = operator.columns();
        int at = (j - 1) * columns;
        int c = 0;
        while (c < columns) {
            c = runEnd(active, at + c, at + columns, allTrue) - at;
            if (c < columns) {
                int gap = c;
                c = runEnd(active, at + c, at + columns, allFalse) - at;
                Arrays.fill(natural, gap + 1 - before, c + 1, 0);
            }
        }
    }

    private static int runEnd(boolean[] of, int from, int to, boolean[] like) {
        int length = Arrays.mismatch(of, from, to, like, 0, to - from);
        return length < 0 ? to : from + length;
    }

    private void diagonals(SplitRow row, SplitRow under) {
        Loops.before(westOfEven, row.east.odd, 1, westOfEven.length);
        double[] inner = row.east.even;
        double[] d = row.diagonal.even;
        double[] leak = row.leak.even;
        double[] outer = westOfEven;
        double[] up = row.north.even;
        double[] down = under.north.even;
        for (int k = 1; k < d.length; k++) {
            d[k] = leak[k] + (inner[k] + outer[k]) + (up[k] + down[k]);
        }
        d = row.diagonal.odd;
        leak = row.leak.odd;
        outer = row.east.odd;
        up = row.north.odd;
        down = under.north.odd;
        for (int k = 1; k < d.length; k++) {
            d[k] = leak[k] + (inner[k] + outer[k]) + (up[k] + down[k]);
        }
    }

    private static void round(double[] one, float[] oneF, double[] other, float[] otherF) {
        for (int k = 1; k < one.length; k++) {
            oneF[k] = (float) one[k];
        }
        for (int k = 1; k < one.length; k++) {
            one[k] = oneF[k];
        }
        for (int k = 1; k < other.length; k++) {
            otherF[k] = (float) other[k];
        }
        for (int k = 1; k < other.length; k++) {
            other[k] = otherF[k];
        }
    }
}
