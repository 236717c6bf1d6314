package slabfield.solve;

import java.util.Arrays;

/**
 * A nine-point symmetric operator in double precision while a hierarchy is set up: the diagonal, and the couplings as
 * conductances to the east, north, north-east and north-west. Row j is number j + 1 and column i element i + 1.
 */
final class NinePoint {
    /** One row of it. */
    record Row(double[] diagonal, double[] east, double[] north, double[] northEast, double[] northWest) {
        Row(int length) {
            this(new double[length], new double[length], new double[length], new double[length], new double[length]);
        }

        void clear() {
            Arrays.fill(diagonal, 0);
            Arrays.fill(east, 0);
            Arrays.fill(north, 0);
            Arrays.fill(northEast, 0);
            Arrays.fill(northWest, 0);
        }
    }

    /** Gives rows one after another; a row stays as it is until three more have been asked for. */
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

    /** Rounds padded rows from .. to - 1 into a level for cycling. */
    void round(CoarseGrid level, int from, int to) {
        for (int j = from; j < to; j++) {
            Row r = row[j];
            level.range(j, r.diagonal);
            for (int i = 0; i < columns + 3; i++) {
                level.east[j][i] = (float) r.east[i];
                level.north[j][i] = (float) r.north[i];
                level.northEast[j][i] = (float) r.northEast[i];
                level.northWest[j][i] = (float) r.northWest[i];
                level.inverse[j][i] = r.diagonal[i] > 0 ? (float) (1 / r.diagonal[i]) : 0;
            }
        }
    }
}
