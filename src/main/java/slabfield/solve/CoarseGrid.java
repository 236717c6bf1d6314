package slabfield.solve;

/**
 * A coarse level: a nine-point symmetric operator with negative couplings stored as conductances, the level's right-hand
 * side and answer, and the weights between it and the next level. All by {@link Halves}; the work on them is in
 * {@link CoarseRows}.
 */
final class CoarseGrid {
    final int columns;
    final int rows;
    /** Coupling of each point to the east, and to the north. */
    final Halves east;

    final Halves north;
    /** {@code even}: of even point k to odd point k of the row above; {@code odd}: of odd point k to even point k + 1 there. */
    final Halves northEast;
    /** {@code even}: of even point k + 1 to odd point k of the row above; {@code odd}: of odd point k to even point k there. */
    final Halves northWest;
    /** The diagonal and its reciprocal, 0 where inactive. */
    final Halves diagonal;

    final Halves inverse;
    /** What to add to the diagonal so that rounding leaves the level's leaks as they are; null until {@link #loadRest}. */
    Halves rest;

    final Halves x;
    final Halves b;
    /** Weights of the next level's points: of those west and east of a point in an even row, and south and north of one in an odd. */
    final float[][] fromWest;

    final float[][] fromEast;
    final float[][] fromSouth;
    final float[][] fromNorth;
    /** Of each row: first element in use, and one past the last. */
    final int[] first;

    final int[] end;

    CoarseGrid(int columns, int rows) {
        this.columns = columns;
        this.rows = rows;
        first = new int[rows + 2];
        end = new int[rows + 2];
        east = field();
        north = field();
        northEast = field();
        northWest = field();
        diagonal = field();
        inverse = field();
        x = field();
        b = field();
        int halfColumns = (columns + 1) / 2;
        int halfRows = (rows + 1) / 2;
        fromWest = new float[halfRows + 2][halfColumns + 3];
        fromEast = new float[halfRows + 2][halfColumns + 3];
        fromSouth = new float[halfRows + 2][halfColumns + 3];
        fromNorth = new float[halfRows + 2][halfColumns + 3];
    }

    Halves field() {
        return new Halves(columns, rows);
    }

    int points() {
        return columns * rows;
    }

    /** Takes over padded row j. */
    void load(int j, SplitRow row) {
        int a = row.first;
        int b = row.end;
        first[j] = a;
        end[j] = b;
        round(east, j, row.east, a, b);
        round(north, j, row.north, a, b);
        round(northEast, j, row.northEast, a, b);
        // The first even point's coupling to the north-west belongs to an element before it.
        round(northWest, j, row.northWest, a - 1, b);
        round(diagonal, j, row.diagonal, a, b);
        invert(inverse.even[j], row.diagonal.even, a, b);
        invert(inverse.odd[j], row.diagonal.odd, a, b);
    }

    /** Takes over the weights of row j of the next level. */
    void takeWeights(int j, PointsBetween inEvenRow, PointsBetween inOddRow, int from, int to) {
        System.arraycopy(inEvenRow.beforeF, from, fromWest[j], from, to - from);
        System.arraycopy(inEvenRow.afterF, from, fromEast[j], from, to - from);
        System.arraycopy(inOddRow.beforeF, from, fromSouth[j], from, to - from);
        System.arraycopy(inOddRow.afterF, from, fromNorth[j], from, to - from);
    }

    /** Works out {@link #rest}; all rows must have been loaded. */
    void loadRest(NinePoint operator) {
        if (rest == null) {
            rest = field();
        }
        for (int j = 1; j <= rows; j++) {
            for (int i = 2 * first[j] - 1; i < 2 * end[j] - 1; i++) {
                rest.set(j, i, (float) (operator.leak(j, i) - leak(j, i)));
            }
        }
    }

    /** The diagonal less the couplings, as rounded. */
    private double leak(int j, int i) {
        double sum = (double) diagonal.get(j, i)
                - east.get(j, i)
                - east.get(j, i - 1)
                - north.get(j, i)
                - north.get(j - 1, i);
        sum -= (double) northEast.get(j, i) + northEast.get(j - 1, i - 1);
        return sum - northWestOf(j, i) - northWestOf(j - 1, i + 1);
    }

    private double northWestOf(int j, int i) {
        return (i & 1) != 0 ? northWest.even[j][(i - 1) / 2] : northWest.odd[j][i / 2];
    }

    private static void round(Halves to, int j, SplitRow.Pair from, int first, int end) {
        Loops.round(to.even[j], from.even, first, end);
        Loops.round(to.odd[j], from.odd, first, end);
    }

    private static void invert(float[] to, double[] diagonal, int first, int end) {
        for (int k = first; k < end; k++) {
            to[k] = diagonal[k] > 0 ? (float) (1 / diagonal[k]) : 0;
        }
    }
}
