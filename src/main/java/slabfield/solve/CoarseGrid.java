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
    void load(int j, NinePoint.Row row) {
        first[j] = (row.first + 1) / 2;
        end[j] = row.first < row.end ? row.end / 2 + 1 : first[j];
        for (int k = first[j]; k < end[j]; k++) {
            int even = 2 * k - 1;
            int odd = 2 * k;
            set(east, j, k, row.east, even, odd);
            set(north, j, k, row.north, even, odd);
            set(northEast, j, k, row.northEast, even, odd);
            northWest.even[j][k] = (float) row.northWest[odd + 1];
            northWest.odd[j][k] = (float) row.northWest[odd];
            set(diagonal, j, k, row.diagonal, even, odd);
            inverse.even[j][k] = inverse(row.diagonal[even]);
            inverse.odd[j][k] = inverse(row.diagonal[odd]);
        }
        // The first even point's coupling to the north-west belongs to an element before it.
        int before = first[j] - 1;
        northWest.even[j][before] = (float) row.northWest[2 * before + 1];
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

    private static void set(Halves to, int j, int k, double[] from, int even, int odd) {
        to.even[j][k] = (float) from[even];
        to.odd[j][k] = (float) from[odd];
    }

    private static float inverse(double diagonal) {
        return diagonal > 0 ? (float) (1 / diagonal) : 0;
    }
}
