package slabfield.solve;

/**
 * The weights of cells between two that stay: each takes the value that balances its links to the two and its leak. Rows are read once, in
 * rising order, and are there from four before the last one read.
 */
final class CellTies implements BetweenRows {
    private static final int RING = 8;

    private final NinePoint.Source fine;
    private final int columns;
    private final int lastStaying;
    private final SplitRow[] rows = new SplitRow[RING];
    private final PointsBetween[] points = new PointsBetween[RING];
    private int next;
    private int weighed;
    private int placed;

    /** @param from first staying row whose points are asked for */
    CellTies(NinePoint.Source fine, NinePoint coarse, int length, int from) {
        this.fine = fine;
        columns = coarse.columns;
        lastStaying = 2 * coarse.rows - 1;
        for (int k = 0; k < RING; k++) {
            points[k] = new PointsBetween(length);
        }
        next = from - 2;
        weighed = from - 1;
        placed = from;
    }

    @Override
    public SplitRow row(int j) {
        for (; next <= j; next++) {
            rows[next & (RING - 1)] = fine.row(next);
        }
        return rows[j & (RING - 1)];
    }

    @Override
    public PointsBetween points(int j) {
        int staying = BetweenRows.stays(j) ? j : j + 1;
        for (; placed <= staying; placed += 2) {
            place(placed);
        }
        return points[j & (RING - 1)];
    }

    private PointsBetween weighed(int j) {
        for (; weighed <= j; weighed++) {
            SplitRow under = row(weighed - 1);
            SplitRow row = row(weighed);
            PointsBetween p = points[weighed & (RING - 1)];
            if (BetweenRows.stays(weighed)) {
                p.weigh(row.east.even, row.east.odd, row.leak.odd, row.diagonal.odd, row.first, row.end);
            } else {
                p.weigh(under.north.even, row.north.even, row.leak.even, row.diagonal.even, row.first, row.end);
            }
        }
        return points[j & (RING - 1)];
    }

    private void place(int j) {
        PointsBetween below = weighed(j - 1);
        PointsBetween beside = weighed(j);
        PointsBetween above = weighed(j + 1);
        if (j <= lastStaying) {
            FreePoints.give(this, j, below, beside, above, columns);
        }
    }
}
