package slabfield.solve;

/**
 * The weights of points between two that stay, on a level whose points are coupled across as well. A coupling across leads to a
 * point of the row beside, and counts as a tie to the staying point next to that one only as far as that one is tied to it
 * itself: so no weight reaches through a wall, which would join on all coarser levels what the wall keeps apart.
 */
final class Ties implements BetweenRows {
    /** A tie of one in so many counts in full. */
    private static final double FULL = 4;
    /** Share of all couplings that counts as a tie in any case: some point within a wall has no other. */
    private static final double LITTLE = 0.01;

    private static final int RING = 8;

    private final NinePoint.Source fine;
    private final int columns;
    private final int lastStaying;
    private final Row[] ring = new Row[RING];
    private final double[] one;
    private final double[] other;
    private final double[] shifted;
    private final double[] spare;

    /** @param fine whose rows may be asked for in any order */
    Ties(NinePoint.Source fine, NinePoint coarse, int length) {
        this.fine = fine;
        columns = coarse.columns;
        lastStaying = 2 * coarse.rows - 1;
        for (int k = 0; k < RING; k++) {
            ring[k] = new Row(length);
        }
        one = new double[length];
        other = new double[length];
        shifted = new double[length];
        spare = new double[length];
    }

    /** One row of points between two: in a row that stays, along it; in a row that goes, across. */
    private static final class Row {
        int number = Integer.MIN_VALUE;
        int first;
        int end;
        boolean tied;
        boolean placed;
        final PointsBetween points;
        /** How far a coupling to a point counts as one to the staying point before it, and after it. */
        final double[] shareBefore;

        final double[] shareAfter;
        /** All couplings summed across, of which a little counts whatever they lead to. */
        final double[] sumBefore;

        final double[] sumAfter;

        Row(int length) {
            sumBefore = new double[length];
            sumAfter = new double[length];
            points = new PointsBetween(length);
            shareBefore = new double[length];
            shareAfter = new double[length];
        }
    }

    @Override
    public PointsBetween points(int j) {
        Row row = tied(j);
        if (BetweenRows.stays(j)) {
            place(j);
        } else {
            place(j - 1);
            place(j + 1);
        }
        row.points.round(row.first, row.end);
        return row.points;
    }

    @Override
    public SplitRow row(int j) {
        return fine.row(Math.max(0, j));
    }

    /** Couplings summed across, and what part of a point they tie to each side. */
    private Row summed(int j) {
        Row row = ring[j & (RING - 1)];
        if (row.number == j) {
            return row;
        }
        row.number = j;
        row.tied = false;
        row.placed = false;
        SplitRow r = row(j);
        SplitRow under = row(j - 1);
        Reach reach = Reach.of(columns, under, r, row(j + 1));
        row.first = reach.first();
        row.end = reach.end();
        int a = row.first;
        int e = row.end;
        double[] one = row.sumBefore;
        double[] other = row.sumAfter;
        if (BetweenRows.stays(j)) {
            Loops.sum(one, r.east.even, r.northWest.odd, under.northEast.even, a, e);
            Loops.sum(other, r.east.odd, r.northEast.odd, under.northWest.even, a, e);
            Loops.difference(spare, r.diagonal.odd, r.north.odd, under.north.odd, a, e);
            row.points.link(r.east.even, r.east.odd, r.diagonal.odd);
            row.points.leaks(spare, one, other, a, e);
        } else {
            Loops.before(shifted, under.northEast.odd, a, e);
            Loops.sum(one, under.north.even, under.northWest.odd, shifted, a, e);
            Loops.before(shifted, r.northWest.even, a, e);
            Loops.sum(other, r.north.even, r.northEast.even, shifted, a, e);
            Loops.before(shifted, r.east.odd, a, e);
            Loops.difference(spare, r.diagonal.even, r.east.even, shifted, a, e);
            row.points.link(under.north.even, r.north.even, r.diagonal.even);
            row.points.leaks(spare, one, other, a, e);
        }
        Loops.larger(spare, spare, one, other, a, e);
        Loops.invert(spare, spare, a, e);
        share(row.shareBefore, one, a, e);
        share(row.shareAfter, other, a, e);
        return row;
    }

    private void share(double[] out, double[] to, int first, int end) {
        double[] inverse = spare;
        for (int k = first; k < end; k++) {
            out[k] = Math.min(1, Math.max(0, FULL * to[k] * inverse[k]));
        }
    }

    /** Sets to 0 what goes to inactive points. */
    private void cover(
            int j, SplitRow under, SplitRow r, SplitRow above, double[] before, double[] after, int first, int end) {
        if (BetweenRows.stays(j)) {
            Loops.positive(spare, r.diagonal.even, first, end + 1);
            Loops.product(before, before, spare, first, end);
            Loops.after(shifted, spare, first, end);
            Loops.product(after, after, shifted, first, end);
        } else {
            Loops.positive(spare, under.diagonal.even, first, end);
            Loops.product(before, before, spare, first, end);
            Loops.positive(spare, above.diagonal.even, first, end);
            Loops.product(after, after, spare, first, end);
        }
    }

    /** Weights by ties alone. */
    private Row tied(int j) {
        Row row = summed(j);
        if (row.tied) {
            return row;
        }
        Row beside = summed(j - 1);
        Row beyond = summed(j + 1);
        row.tied = true;
        SplitRow r = row(j);
        SplitRow under = row(j - 1);
        int a = row.first;
        int e = row.end;
        if (BetweenRows.stays(j)) {
            tie(one, r.east.even, r.northWest.odd, beyond.shareBefore, under.northEast.even, beside.shareAfter, a, e);
            Loops.after(shifted, beyond.shareBefore, a, e);
            Loops.after(spare, beside.shareAfter, a, e);
            tie(other, r.east.odd, r.northEast.odd, shifted, under.northWest.even, spare, a, e);
        } else {
            Loops.product(spare, under.northEast.odd, beside.shareAfter, a - 1, e);
            Loops.before(shifted, spare, a, e);
            tie(one, under.north.even, under.northWest.odd, beside.shareBefore, shifted, a, e);
            Loops.product(spare, r.northWest.even, beyond.shareAfter, a - 1, e);
            Loops.before(shifted, spare, a, e);
            tie(other, r.north.even, r.northEast.even, beyond.shareBefore, shifted, a, e);
        }
        little(one, row.sumBefore, a, e);
        little(other, row.sumAfter, a, e);
        cover(j, under, r, row(j + 1), one, other, a, e);
        row.points.weigh(one, other, a, e);
        return row;
    }

    private static void little(double[] tie, double[] sum, int first, int end) {
        for (int k = first; k < end; k++) {
            tie[k] += LITTLE * Math.max(0, sum[k]);
        }
    }

    private static void tie(
            double[] out, double[] g, double[] h, double[] share, double[] f, double[] part, int first, int end) {
        for (int k = first; k < end; k++) {
            out[k] = Math.max(0, g[k] + h[k] * share[k] + f[k] * part[k]);
        }
    }

    private static void tie(double[] out, double[] g, double[] h, double[] share, double[] rest, int first, int end) {
        for (int k = first; k < end; k++) {
            out[k] = Math.max(0, g[k] + h[k] * share[k] + rest[k]);
        }
    }

    private void place(int j) {
        if (j < 1 || j > lastStaying) {
            return;
        }
        Row row = tied(j);
        if (!row.placed) {
            row.placed = true;
            FreePoints.give(this, j, tied(j - 1).points, row.points, tied(j + 1).points, columns);
        }
    }
}
