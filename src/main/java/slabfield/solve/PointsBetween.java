package slabfield.solve;

/**
 * The points of a row that lie between two staying ones each, in one direction: their weights, and the energy
 * {@code sum of g (x_a - x_b)^2} of their links to the two and of their leaks. Element k lies between a staying point
 * before and one after it.
 */
final class PointsBetween {
    /** Below this share of its diagonal a point's ties are too weak to place it: of a cell, and of a point of a level. */
    private static final double LOOSE_CELL = 0.02;

    private static final double LOOSE = 0.15;
    /** Ties below this share of the diagonal are rounding errors. */
    private static final double NOTHING = 1e-9;

    /** Weights of the staying point before, and of the one after. */
    final double[] before;

    final double[] after;
    /** The same in single precision, after {@link #round}. */
    final float[] beforeF;

    final float[] afterF;
    /** Links to the staying points, and leak. */
    private double[] g;

    private double[] h;
    private double[] l;
    private final double[] leak;
    private final double[] inverse;
    /** Ties and leak. */
    private final double[] sum;

    private double[] diagonal;
    private boolean exact;
    private double loose;

    PointsBetween(int length) {
        before = new double[length];
        after = new double[length];
        beforeF = new float[length];
        afterF = new float[length];
        leak = new double[length];
        inverse = new double[length];
        sum = new double[length];
    }

    /** Weights where a point has no couplings across the direction but those that move along with it. */
    void weigh(double[] toBefore, double[] toAfter, double[] leaks, double[] diagonals, int first, int end) {
        g = toBefore;
        h = toAfter;
        l = leaks;
        diagonal = diagonals;
        exact = true;
        loose = LOOSE_CELL;
        for (int k = first; k < end; k++) {
            sum[k] = leaks[k] + toBefore[k] + toAfter[k];
        }
        for (int k = first; k < end; k++) {
            inverse[k] = 1 / Math.max(sum[k], Loops.TINY);
        }
        Loops.product(before, toBefore, inverse, first, end);
        Loops.product(after, toAfter, inverse, first, end);
    }

    /** Takes links to the staying points before and after, and diagonals, for weights by {@link Ties}. */
    void link(double[] toBefore, double[] toAfter, double[] diagonals) {
        g = toBefore;
        h = toAfter;
        l = leak;
        diagonal = diagonals;
        exact = false;
        loose = LOOSE;
    }

    /** Sets leaks to what is left of {@code remaining} without all couplings to before, and to after. */
    void leaks(double[] remaining, double[] toBefore, double[] toAfter, int first, int end) {
        for (int k = first; k < end; k++) {
            leak[k] = remaining[k] - (toBefore[k] + toAfter[k]);
        }
    }

    /** Weights by ties to before and to after. */
    void weigh(double[] toBefore, double[] toAfter, int first, int end) {
        for (int k = first; k < end; k++) {
            sum[k] = toBefore[k] + toAfter[k] + Math.max(0, leak[k]);
        }
        double[] d = diagonal;
        double[] over = inverse;
        for (int k = first; k < end; k++) {
            over[k] = Math.min(1, Math.max(0, sum[k] - NOTHING * d[k]) * 0x1p1000) / Math.max(sum[k], Loops.TINY);
        }
        Loops.product(before, toBefore, over, first, end);
        Loops.product(after, toAfter, over, first, end);
    }

    /** True where ties are too weak to place a point. */
    boolean loose(int k) {
        return diagonal[k] > 0 && sum[k] < loose * diagonal[k];
    }

    double diagonal(int k) {
        return diagonal[k];
    }

    /** Gives one point its weights. */
    void stand(int k, double ofBefore, double ofAfter) {
        before[k] = ofBefore;
        after[k] = ofAfter;
        exact = false;
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
