package slabfield.solve;

/**
 * Builds the next coarser operator P' A P of a grid, and the weights P, row by row: black-box multigrid (Dendy 1982, "Black box
 * multigrid", J. Comput. Phys. 48). Every second point of every second row stays. A point between two that stay, in
 * one direction, is weighed by what ties it to either ({@link CellTies}, {@link Ties}); a point in the middle of four takes the
 * value that balances it. So thin barriers and jumps of conductance shape the weights.
 *
 * <p>The product is summed as energy, link by link, {@code g (x_a - x_b)^2}, which keeps small leaks exact. All is done
 * in short loops over rows, even and odd columns apart ({@link SplitRow}).
 */
final class Galerkin {
    private final NinePoint.Source fine;
    private final boolean diagonals;
    private final int length;
    private final NinePoint coarse;
    private final CellEnergy cells;
    /** The coarse row at hand, and the next. */
    private CoarseSum lower;

    private CoarseSum upper;
    /** Coarse elements that the rows at hand reach. */
    private int first;

    private int end;
    private final double[] one;
    private final double[] other;
    private final double[] shifted;

    Galerkin(NinePoint.Source fine, boolean diagonals, NinePoint coarse) {
        this.fine = fine;
        this.diagonals = diagonals;
        this.coarse = coarse;
        length = coarse.columns + 3;
        cells = new CellEnergy(length);
        lower = new CoarseSum(length);
        upper = new CoarseSum(length);
        one = new double[length];
        other = new double[length];
        shifted = new double[length];
    }

    /**
     * Builds padded coarse rows from .. to - 1.
     *
     * @param weights takes the weights of points between two, or null
     * @param middle takes those of middle points, or null
     * @param level takes the rows, rounded for cycling
     */
    void build(int from, int to, CoarseGrid weights, CornerWeights middle, CoarseGrid level) {
        int start = Math.max(1, from - 1);
        BetweenRows rows =
                diagonals ? new Ties(fine, coarse, length) : new CellTies(fine, coarse, length, 2 * start - 1);
        lower.clear();
        for (int j = start; j < to; j++) {
            PointsBetween south = rows.points(2 * j - 1);
            PointsBetween north = rows.points(2 * j + 1);
            PointsBetween west = rows.points(2 * j);
            SplitRow below = rows.row(2 * j - 1);
            SplitRow mid = rows.row(2 * j);
            Reach reach = Reach.of(coarse.columns, below, mid, rows.row(2 * j + 1));
            first = reach.first();
            end = reach.end();
            upper.clear();
            points(below, rows.row(2 * j - 2));
            south.addTo(lower.diagonal, lower.right, lower.east, first, end);
            west.addTo(lower.diagonal, upper.diagonal, lower.north, first, end);
            cells.addTo(lower, upper, below, mid, south, north, west, first, end);
            if (j >= from) {
                SplitRow row = coarse.row[j];
                lower.take(row, coarse.columns);
                level.load(j, row);
                if (weights != null) {
                    weights.takeWeights(j, south, west, first, end);
                }
                if (middle != null) {
                    middle.take(j, cells, first, end);
                }
            }
            CoarseSum sum = lower;
            lower = upper;
            upper = sum;
        }
    }

    /** Adds the leaks of the staying points. */
    private void points(SplitRow r, SplitRow under) {
        double[] sum = lower.diagonal;
        if (!diagonals) {
            Loops.add(sum, r.leak.even, first, end);
            return;
        }
        Loops.before(shifted, r.east.odd, first, end);
        Loops.difference(one, r.diagonal.even, r.east.even, shifted, first, end);
        Loops.difference(one, one, r.north.even, under.north.even, first, end);
        Loops.before(shifted, r.northWest.even, first, end);
        Loops.sum(other, r.northEast.even, under.northWest.odd, shifted, first, end);
        Loops.before(shifted, under.northEast.odd, first, end);
        Loops.difference(one, one, other, shifted, first, end);
        Loops.add(sum, one, first, end);
    }
}
