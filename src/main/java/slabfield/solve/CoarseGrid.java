package slabfield.solve;

/**
 * A coarse level: a nine-point symmetric operator with negative couplings stored as conductances, the level's right-hand
 * side and answer, and the weights between it and the next level. All by {@link Strips}; the work on them is in
 * {@link CoarseRows}.
 */
final class CoarseGrid {
    final int columns;
    final int rows;
    final Strips strips;
    /** Coupling of each point to the east, and to the north. */
    final Quarters east;

    final Quarters north;
    /** Even columns: of even point k to odd point k of the row above; odd ones: of odd point k to even point k + 1 there. */
    final Quarters northEast;
    /** Even columns: of even point k + 1 to odd point k of the row above; odd ones: of odd point k to even point k there. */
    final Quarters northWest;
    /**
     * What odd rows' north, north-east and north-west are to even and odd points of the even rows above them, once more by those: to the
     * point below; from the odd point k below to even point k + 1, and from the even one k to odd point k; from the odd point k to even
     * point k, and from the even one k + 1 to odd point k.
     */
    final float[][] belowEven;

    final float[][] belowOdd;
    final float[][] westBelowEven;
    final float[][] westBelowOdd;
    final float[][] eastBelowEven;
    final float[][] eastBelowOdd;
    /** The diagonal and its reciprocal, 0 where inactive. */
    final Quarters diagonal;

    final Quarters inverse;
    /** What to add to the diagonal so that rounding leaves the level's leaks as they are; null until {@link #loadRest}. */
    Quarters rest;

    final Quarters x;
    final Quarters b;
    /** Weights of the next level's points: of those west and east of a point in an even row, and south and north of one in an odd. */
    final float[][] fromWest;

    final float[][] fromEast;
    final float[][] fromSouth;
    final float[][] fromNorth;
    /** Of each row: first element in use, and one past the last. */
    final int[] first;

    final int[] end;

    /** @param shares where each worker's pairs of rows begin, and one past the last */
    CoarseGrid(int columns, int rows, int[] shares) {
        this.columns = columns;
        this.rows = rows;
        strips = new Strips(columns, shares);
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
        belowEven = strips.field();
        belowOdd = strips.field();
        westBelowEven = strips.field();
        westBelowOdd = strips.field();
        eastBelowEven = strips.field();
        eastBelowOdd = strips.field();
        fromWest = strips.field();
        fromEast = strips.field();
        fromSouth = strips.field();
        fromNorth = strips.field();
    }

    Quarters field() {
        return new Quarters(strips);
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
        int at = strips.at(Strips.pair(j));
        invert(inverse.even(j), at, row.diagonal.even, a, b);
        invert(inverse.odd(j), at, row.diagonal.odd, a, b);
        if ((j & 1) == 0 && j < rows) {
            copyBelow(j);
        }
    }

    /** Copies an odd row's couplings to where the even row above has them. */
    private void copyBelow(int j) {
        copyBelow(j, north.even(j), belowEven);
        copyBelow(j, north.odd(j), belowOdd);
        copyBelow(j, northEast.odd(j), westBelowEven);
        copyBelow(j, northEast.even(j), westBelowOdd);
        copyBelow(j, northWest.odd(j), eastBelowEven);
        copyBelow(j, northWest.even(j), eastBelowOdd);
    }

    private void copyBelow(int j, float[] from, float[][] to) {
        int pair = Strips.pair(j);
        int on = pair + 1;
        System.arraycopy(from, strips.at(pair), to[strips.strip(on)], strips.at(on), strips.stride);
    }

    /** Takes over the weights of row j of the next level. */
    void takeWeights(int j, PointsBetween inEvenRow, PointsBetween inOddRow, int from, int to) {
        int s = strips.strip(j);
        int at = strips.at(j) + from;
        System.arraycopy(inEvenRow.beforeF, from, fromWest[s], at, to - from);
        System.arraycopy(inEvenRow.afterF, from, fromEast[s], at, to - from);
        System.arraycopy(inOddRow.beforeF, from, fromSouth[s], at, to - from);
        System.arraycopy(inOddRow.afterF, from, fromNorth[s], at, to - from);
    }

    /** Makes room for {@link #rest}. */
    void needRest() {
        if (rest == null) {
            rest = field();
        }
    }

    /** Works out {@link #rest} in padded rows from .. to - 1. */
    void loadRest(NinePoint operator, int from, int to) {
        for (int j = from; j < to; j++) {
            SplitRow r = operator.row[j];
            SplitRow under = operator.row[j - 1];
            int at = strips.at(Strips.pair(j));
            float[] even = rest.even(j);
            float[] odd = rest.odd(j);
            for (int k = first[j]; k < end[j]; k++) {
                double beside = lost(r.east.even[k]);
                double up = lost(r.north.even[k]) + lost(r.northEast.even[k]) + lost(r.northWest.even[k - 1]);
                double down =
                        lost(under.north.even[k]) + lost(under.northEast.odd[k - 1]) + lost(under.northWest.odd[k]);
                even[at + k] = (float) (lost(r.diagonal.even[k]) - (beside + lost(r.east.odd[k - 1])) - (up + down));
                up = lost(r.north.odd[k]) + lost(r.northEast.odd[k]) + lost(r.northWest.odd[k]);
                down = lost(under.north.odd[k]) + lost(under.northEast.even[k]) + lost(under.northWest.even[k]);
                odd[at + k] = (float) (lost(r.diagonal.odd[k]) - (beside + lost(r.east.odd[k])) - (up + down));
            }
        }
    }

    /** What rounding takes off. */
    private static double lost(double v) {
        return v - (float) v;
    }

    private void round(Quarters to, int j, SplitRow.Pair from, int first, int end) {
        int at = strips.at(Strips.pair(j));
        Loops.round(to.even(j), at, from.even, first, end);
        Loops.round(to.odd(j), at, from.odd, first, end);
    }

    private static void invert(float[] to, int at, double[] diagonal, int first, int end) {
        for (int k = first; k < end; k++) {
            to[at + k] = diagonal[k] > 0 ? (float) (1 / diagonal[k]) : 0;
        }
    }
}
