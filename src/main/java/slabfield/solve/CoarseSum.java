package slabfield.solve;

import java.util.Arrays;

/** One row of a coarse operator while it is summed up, in natural order. */
final class CoarseSum {
    final double[] diagonal;
    /** Of each point, what goes to the diagonal of the next one to the east. */
    final double[] right;

    final double[] east;
    final double[] north;
    /** Of each point, what goes to the coupling north of the next one to the east. */
    final double[] northRight;

    final double[] northEast;
    /** Of each point, the coupling of the next one to the east to the north-west. */
    final double[] northWest;

    private final double[] shifted;

    CoarseSum(int length) {
        diagonal = new double[length];
        right = new double[length];
        east = new double[length];
        north = new double[length];
        northRight = new double[length];
        northEast = new double[length];
        northWest = new double[length];
        shifted = new double[length];
    }

    void clear() {
        Arrays.fill(diagonal, 0);
        Arrays.fill(right, 0);
        Arrays.fill(east, 0);
        Arrays.fill(north, 0);
        Arrays.fill(northRight, 0);
        Arrays.fill(northEast, 0);
        Arrays.fill(northWest, 0);
    }

    /** Gives a complete row to the operator. */
    void take(SplitRow row, int columns) {
        addShifted(diagonal, right);
        addShifted(north, northRight);
        row.diagonal.split(diagonal, columns);
        row.east.split(east, columns);
        row.north.split(north, columns);
        row.northEast.split(northEast, columns);
        int end = (columns + 1) / 2;
        for (int k = 1; k <= end; k++) {
            row.northWest.even[k] = northWest[2 * k];
            row.northWest.odd[k] = northWest[2 * k - 1];
        }
        row.findRange();
    }

    private void addShifted(double[] sum, double[] x) {
        Loops.before(shifted, x, 1, x.length);
        Loops.add(sum, shifted, 1, x.length);
    }
}
