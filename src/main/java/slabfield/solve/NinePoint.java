package slabfield.solve;

/**
 * A nine-point symmetric operator in double precision while a hierarchy is set up: the diagonal, and the couplings as
 * conductances to the east, north, north-east and north-west. Row j is number j + 1 and column i element i + 1.
 */
final class NinePoint {
    /** Gives rows one after another; a row stays as it is until four more have been asked for. Of the first, only couplings count. */
    interface Source {
        SplitRow row(int j);
    }

    final int columns;
    final int rows;
    final SplitRow[] row;

    NinePoint(int columns, int rows) {
        this.columns = columns;
        this.rows = rows;
        row = new SplitRow[rows + 2];
        for (int j = 0; j < row.length; j++) {
            row[j] = SplitRow.ninePoint(columns);
        }
    }

    /** This operator's rows; beyond its upper edge, the zero row there. */
    Source source() {
        return j -> row[Math.min(j, rows + 1)];
    }

    /** Diagonal less all couplings of a point, given by its element in natural order. */
    double leak(int j, int i) {
        SplitRow r = row[j];
        SplitRow under = row[j - 1];
        double sum = r.diagonal.get(i) - r.east.get(i) - r.east.get(i - 1) - r.north.get(i) - under.north.get(i);
        return sum - (r.northEast.get(i) + r.northWest(i) + under.northEast.get(i - 1) + under.northWest(i + 1));
    }
}
