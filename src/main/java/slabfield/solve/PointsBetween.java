package slabfield.solve;

/**
 * The points of a row that lie between two staying ones each, in one direction: their weights, and the energy
 * {@code sum of g (x_a - x_b)^2} of their links to the two and of their leaks. Element k lies between a staying point
 * before and one after it.
 */
final class PointsBetween {
    /** Weights of the staying point before, and of the one after. */
    final double[] before;

    final double[] after;
    /** The same in single precision, once {@link #weighBalanced} has found them. */
    final float[] beforeF;

    final float[] afterF;
    /** Links to the staying points, and leak. */
    private double[] g;

    private double[] h;
    private double[] l;
    private final double[] leak;
    private final double[] inverse;
    private boolean exact;

    PointsBetween(int length) {
        before = new double[length];
        after = new double[length];
        beforeF = new float[length];
        afterF = new float[length];
        leak = new double[length];
        inverse = new double[length];
    }

    /** Weights where a point has no couplings across the direction but those that move along with it. */
    void weigh(double[] toBefore, double[] toAfter, double[] leaks, int first, int end) {
        g = toBefore;
        h = toAfter;
        l = leaks;
        exact = true;
        for (int k = first; k < end; k++) {
            inverse[k] = 1 / Math.max(leaks[k] + toBefore[k] + toAfter[k], Loops.TINY);
        }
        Loops.product(before, toBefore, inverse, first, end);
        Loops.product(after, toAfter, inverse, first, end);
    }

    /**
     * Weights in single precision that balance a point when the operator is summed across the direction.
     *
     * @param toBefore link to the staying point before, and {@code toAfter} to the one after
     * @param before all couplings summed across to there, and {@code after}
     * @param remaining diagonal less the couplings across
     */
    void weighBalanced(
            double[] toBefore,
            double[] toAfter,
            double[] sumBefore,
            double[] sumAfter,
            double[] remaining,
            int first,
            int end) {
        g = toBefore;
        h = toAfter;
        l = leak;
        exact = false;
        for (int k = first; k < end; k++) {
            leak[k] = remaining[k] - (sumBefore[k] + sumAfter[k]);
        }
        for (int k = first; k < end; k++) {
            inverse[k] = Math.max(remaining[k], sumBefore[k] + sumAfter[k]);
        }
        Loops.invert(inverse, inverse, first, end);
        Loops.product(before, sumBefore, inverse, first, end);
        Loops.product(after, sumAfter, inverse, first, end);
    }

    /** Rounds the weights, which are so given to the cycle and to the product alike. */
    void round(int first, int end) {
        Loops.round(beforeF, before, first, end);
        Loops.round(afterF, after, first, end);
        Loops.widen(before, beforeF, first, end);
        Loops.widen(after, afterF, first, end);
    }

    /** Adds the energy: that of the point before, that of the one after, and less their coupling. */
    void addTo(double[] ofBefore, double[] ofAfter, double[] coupling, int first, int end) {
        if (exact) {
            Loops.addProduct(ofBefore, before, h, l, first, end);
            Loops.addProduct(ofAfter, after, g, l, first, end);
            Loops.addProduct(coupling, before, h, first, end);
        } else {
            energy(ofBefore, before, g, h, first, end);
            energy(ofAfter, after, h, g, first, end);
            couple(coupling, first, end);
        }
    }

    private void energy(double[] sum, double[] w, double[] own, double[] other, int first, int end) {
        double[] leaks = l;
        for (int k = first; k < end; k++) {
            double away = 1 - w[k];
            sum[k] += own[k] * away * away + (other[k] + leaks[k]) * w[k] * w[k];
        }
    }

    private void couple(double[] sum, int first, int end) {
        double[] w = before;
        double[] v = after;
        double[] one = g;
        double[] other = h;
        for (int k = first; k < end; k++) {
            sum[k] += one[k] * (1 - w[k]) * v[k] + other[k] * w[k] * (1 - v[k]);
        }
        double[] leaks = l;
        for (int k = first; k < end; k++) {
            sum[k] -= leaks[k] * w[k] * v[k];
        }
    }
}
