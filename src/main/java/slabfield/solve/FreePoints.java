package slabfield.solve;

/**
 * Coarse points that are free to stand for others: those of inactive points, and of points within a wall, which smoothing alone
 * settles. A point between two staying ones that is tied to neither, as in a passage between a wall and a cut-out, has no place
 * on the coarse level, and the passage would be closed there. Where one of the two is free, its coarse point stands for such
 * points as well: for all around it that are coupled with each other.
 */
final class FreePoints {
    /** Below this share of the smaller diagonal two points are not coupled with each other. */
    private static final double COUPLED = 0.05;
    /** A point whose diagonal is at most this share of another's is free for that one; and a cell. */
    private static final double FREE = 0.02;

    private static final double FREE_CELL = 0.001;

    private final SplitRow under;
    private final SplitRow row;
    private final SplitRow over;
    /** Diagonals of the points that stay: in this row, and in the one before it, null if there is none. */
    private final double[] stay;

    private final double[] before;
    private final PointsBetween below;
    private final PointsBetween beside;
    private final PointsBetween above;
    private final boolean nine;

    private FreePoints(BetweenRows rows, int j, PointsBetween below, PointsBetween beside, PointsBetween above) {
        under = rows.row(j - 1);
        row = rows.row(j);
        over = rows.row(j + 1);
        stay = row.diagonal.even;
        before = j > 1 ? rows.row(j - 2).diagonal.even : null;
        this.below = below;
        this.beside = beside;
        this.above = above;
        nine = row.northEast != null;
    }

    /**
     * Gives the free points of a row that stays to loose points beside, below and above them.
     *
     * @param beside points between two in the row; {@code below} and {@code above} those of the rows next to it
     * @param columns number of coarse points in a row
     */
    static void give(
            BetweenRows rows, int j, PointsBetween below, PointsBetween beside, PointsBetween above, int columns) {
        new FreePoints(rows, j, below, beside, above).give(columns);
    }

    private void give(int columns) {
        Reach reach = Reach.of(columns, under, row, over);
        for (int k = reach.first(); k < reach.end(); k++) {
            double most = Math.max(beside.diagonal(k), beside.diagonal(k - 1));
            if (isFree(stay[k], Math.max(most, Math.max(above.diagonal(k), below.diagonal(k))))) {
                give(asks(beside, k, k), asks(above, k, k), asksLast(beside, k - 1, k, stay[k - 1]), asksLast(k), k);
            }
        }
    }

    private boolean asks(PointsBetween points, int k, int free) {
        return isFree(stay[free], points.diagonal(k)) && points.loose(k);
    }

    /** Of two free points a loose one takes that before it. */
    private boolean asksLast(PointsBetween points, int k, int free, double other) {
        return asks(points, k, free) && !isFree(other, points.diagonal(k));
    }

    private boolean asksLast(int k) {
        return before == null ? asks(below, k, k) : asksLast(below, k, k, before[k]);
    }

    private boolean isFree(double diagonal, double asking) {
        return diagonal <= (nine ? FREE : FREE_CELL) * asking;
    }

    private void give(boolean east, boolean north, boolean west, boolean south, int k) {
        if (!(east | north | west | south)) {
            return;
        }
        boolean[] group = group(coupled(k), east, north, west);
        stand(beside, k, east && group[0], 1, 0);
        stand(above, k, north && group[1], 1, 0);
        stand(beside, k - 1, west && group[2], 0, 1);
        stand(below, k, south && group[3], 0, 1);
    }

    private static void stand(PointsBetween points, int k, boolean given, double before, double after) {
        if (given) {
            points.stand(k, before, after);
        }
    }

    /** Of the points to the east, north, west and south, those that are coupled around with the first that is loose. */
    private static boolean[] group(boolean[] coupled, boolean east, boolean north, boolean west) {
        int first = east ? 0 : west ? 2 : north ? 1 : 3;
        boolean[] group = new boolean[4];
        group[first] = true;
        for (int n = first; n < first + 3 && coupled[n & 3]; n++) {
            group[(n + 1) & 3] = true;
        }
        for (int n = first + 3; n > first && coupled[n & 3]; n--) {
            group[n & 3] = true;
        }
        return group;
    }

    /** Whether the points east and north of free point k are coupled, north and west, west and south, south and east. */
    private boolean[] coupled(int k) {
        double east = beside.diagonal(k);
        double west = beside.diagonal(k - 1);
        double north = above.diagonal(k);
        double south = below.diagonal(k);
        boolean[] around = new boolean[4];
        if (nine) {
            around[0] = coupled(row.northWest.odd[k], east, north);
            around[1] = coupled(row.northEast.odd[k - 1], north, west);
            around[2] = coupled(under.northWest.even[k - 1], west, south);
            around[3] = coupled(under.northEast.even[k], south, east);
        } else {
            // By way of the cell in the middle.
            around[0] = coupled(Math.min(row.north.odd[k], over.east.even[k]), east, north);
            around[1] = coupled(Math.min(row.north.odd[k - 1], over.east.odd[k - 1]), north, west);
            around[2] = coupled(Math.min(under.north.odd[k - 1], under.east.odd[k - 1]), west, south);
            around[3] = coupled(Math.min(under.north.odd[k], under.east.even[k]), south, east);
        }
        return around;
    }

    private static boolean coupled(double g, double one, double other) {
        return g > 0 && g >= COUPLED * Math.min(one, other);
    }
}
