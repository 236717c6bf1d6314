package slabfield.solve;

import java.util.Arrays;

/**
 * A nine-point symmetric operator in double precision while a hierarchy is set up: the diagonal, and the couplings as
 * conductances to the east, north, north-east and north-west. Row j is number j + 1 and column i element i + 1.
 */
final class NinePoint {
    /** One row of it. */
    static final class Row {
        final double[] diagonal;
        final double[] east;
        final double[] north;
        final double[] northEast;
        final double[] northWest;
        /** First element with a diagonal above 0, and one past the last; equal where there is none. */
        int first = 1;

        int end = 1;

        Row(int length) {
            diagonal = new double[length];
            east = new double[length];
            north = new double[length];
            northEast = new double[length];
            northWest = new double[length];
        }

        void clear() {
            Arrays.fill(diagonal, 0);
            Arrays.fill(east, 0);
            Arrays.fill(north, 0);
            Arrays.fill(northEast, 0);
            Arrays.fill(northWest, 0);
        }

        /** Finds {@link #first} and {@link #end} among elements 1 .. columns. */
        void findRange(int columns) {
            int low = 1;
            int high = columns + 1;
            while (low < high && !(diagonal[low] > 0)) {
                low++;
            }
            while (high > low && !(diagonal[high - 1] > 0)) {
                high--;
            }
            first = low < high ? low : 1;
            end = low < high ? high : 1;
        }
    }

    /** Gives rows one after another; a row stays as it is until four more have been asked for. Of the first, only couplings count. */
    interface Source {
        Row row(int j);
    }

    final int columns;
    final int rows;
    final Row[] row;

    NinePoint(int columns, int rows) {
        this.columns = columns;
        this.rows = rows;
        row = new Row[rows + 2];
        for (int j = 0; j < row.length; j++) {
            row[j] = new Row(columns + 3);
        }
    }

    /** This operator's rows; beyond its upper edge, the zero row there. */
    Source source() {
        return j -> row[Math.min(j, rows + 1)];
    }

    /** Diagonal less all couplings of a point. */
    double leak(int j, int i) {
        Row r = row[j];
        Row under = row[j - 1];
        double sum = r.diagonal[i] - r.east[i] - r.east[i - 1] - r.north[i] - under.north[i];
        return sum - (r.northEast[i] + r.northWest[i] + under.northEast[i - 1] + under.northWest[i + 1]);
    }

    /** Rounds padded rows from .. to - 1 into a level for cycling. */
    void round(CoarseGrid level, int from, int to) {
        for (int j = from; j < to; j++) {
            Row r = row[j];
            r.findRange(columns);
            level.load(j, r);
        }
    }
}
