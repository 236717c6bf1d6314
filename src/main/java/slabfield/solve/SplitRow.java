package slabfield.solve;

import java.util.Arrays;

/**
 * One row of a symmetric operator in double precision while a hierarchy is set up: the diagonal, and the couplings as
 * conductances. Even and odd columns are apart, with zeros at both ends: a point's neighbours beside it in every row then have the same
 * element number or, on its outer side, the next one, which suits compiled loops; see {@link RedBlackGrid}.
 */
final class SplitRow {
    /** Values of a row's points: columns 2 k - 2 and 2 k - 1 are element k of {@code even} and {@code odd}. */
    static final class Pair {
        final double[] even;
        final double[] odd;

        Pair(int length) {
            even = new double[length];
            odd = new double[length];
        }

        /** Takes over elements 1 .. columns of an array in natural order, which ends with a 0. */
        void split(double[] natural, int columns) {
            int end = (columns + 1) / 2;
            for (int k = 1; k <= end; k++) {
                even[k] = natural[2 * k - 1];
                odd[k] = natural[2 * k];
            }
        }

        double get(int element) {
            return (element & 1) != 0 ? even[(element + 1) / 2] : odd[element / 2];
        }
    }

    final Pair diagonal;
    final Pair east;
    final Pair north;
    /** Null where only neighbours side by side are coupled. */
    final Pair northEast;
    /** {@code even}: of even point k + 1; {@code odd}: of odd point k; else as {@link #northEast}. */
    final Pair northWest;
    /** Conductance to where x = 0, kept apart where it is known; else null. */
    final Pair leak;
    /** First element with a diagonal above 0, and one past the last; equal where there is none. */
    int first = 1;

    int end = 1;

    private SplitRow(int columns, boolean ninePoint) {
        int n = length(columns);
        diagonal = new Pair(n);
        east = new Pair(n);
        north = new Pair(n);
        northEast = ninePoint ? new Pair(n) : null;
        northWest = ninePoint ? new Pair(n) : null;
        leak = ninePoint ? null : new Pair(n);
    }

    /** Length of a row's arrays. */
    static int length(int columns) {
        return (columns + 1) / 2 + 3;
    }

    static SplitRow fivePoint(int columns) {
        return new SplitRow(columns, false);
    }

    static SplitRow ninePoint(int columns) {
        return new SplitRow(columns, true);
    }

    /** Coupling of a point, by its element in natural order, to the one above and before it. */
    double northWest(int element) {
        return (element & 1) != 0 ? northWest.even[(element - 1) / 2] : northWest.odd[element / 2];
    }

    void findRange() {
        double[] e = diagonal.even;
        double[] o = diagonal.odd;
        int low = 1;
        int high = e.length - 2;
        while (low < high && !(e[low] > 0 || o[low] > 0)) {
            low++;
        }
        while (high > low && !(e[high - 1] > 0 || o[high - 1] > 0)) {
            high--;
        }
        first = low < high ? low : 1;
        end = low < high ? high : 1;
    }

    void clearNorth() {
        Arrays.fill(north.even, 0);
        Arrays.fill(north.odd, 0);
    }
}
