package slabfield.solve;

/**
 * What the middle point of each coarse cell, and the links inside it, give to the coarse operator. A middle point
 * takes {@code w = sum of g phi / d} of a corner, phi being its neighbours' weights, so its links' energy is {@code sum of g phi phi' - d w w'}.
 */
final class CellEnergy {
    /** Weights of the middle points. */
    final double[] southWest;

    final double[] southEast;
    final double[] northWest;
    final double[] northEast;
    /** The same times the diagonal: couplings to each corner through the neighbours. */
    private final double[] toSouthWest;

    private final double[] toSouthEast;
    private final double[] toNorthWest;
    private final double[] toNorthEast;
    private final double[] inverse;
    /** Differences of weights along the links that join the middles of the sides. */
    private final double[] atSouthWest;

    private final double[] atSouthEast;
    private final double[] atNorthWest;
    private final double[] atNorthEast;
    /** Weights of the points east of each cell. */
    private final double[] eastSouth;

    private final double[] eastNorth;

    CellEnergy(int length) {
        southWest = new double[length];
        southEast = new double[length];
        northWest = new double[length];
        northEast = new double[length];
        toSouthWest = new double[length];
        toSouthEast = new double[length];
        toNorthWest = new double[length];
        toNorthEast = new double[length];
        inverse = new double[length];
        atSouthWest = new double[length];
        atSouthEast = new double[length];
        atNorthWest = new double[length];
        atNorthEast = new double[length];
        eastSouth = new double[length];
        eastNorth = new double[length];
    }

    /**
     * Adds to two coarse rows.
     *
     * @param below row that stays, under the middle points
     * @param mid row of the middle points
     * @param south the points between in {@code below}, and {@code north} in the row above
     * @param west the points of {@code mid} between staying ones
     */
    void addTo(
            CoarseSum lower,
            CoarseSum upper,
            SplitRow below,
            SplitRow mid,
            PointsBetween south,
            PointsBetween north,
            PointsBetween west,
            int first,
            int end) {
        Loops.after(eastSouth, west.before, first, end);
        Loops.after(eastNorth, west.after, first, end);
        Loops.invert(inverse, mid.diagonal.odd, first, end);
        double[] toSouth = below.north.odd;
        double[] toNorth = mid.north.odd;
        double[] toWest = mid.east.even;
        double[] toEast = mid.east.odd;
        meet(toSouthWest, lower.diagonal, toSouth, south.before, toWest, west.before, first, end);
        meet(toSouthEast, lower.right, toSouth, south.after, toEast, eastSouth, first, end);
        meet(toNorthWest, upper.diagonal, toNorth, north.before, toWest, west.after, first, end);
        meet(toNorthEast, upper.right, toNorth, north.after, toEast, eastNorth, first, end);
        if (below.northEast != null) {
            addDiagonals(lower, upper, below, mid, south, north, west, first, end);
        }
        settle(southWest, lower.diagonal, toSouthWest, first, end);
        settle(southEast, lower.right, toSouthEast, first, end);
        settle(northWest, upper.diagonal, toNorthWest, first, end);
        settle(northEast, upper.right, toNorthEast, first, end);
        side(lower.east, toSouthWest, southEast, toSouth, south.before, south.after, first, end);
        side(upper.east, toNorthWest, northEast, toNorth, north.before, north.after, first, end);
        side(lower.north, toSouthWest, northWest, toWest, west.before, west.after, first, end);
        side(lower.northRight, toSouthEast, northEast, toEast, eastSouth, eastNorth, first, end);
        Loops.addProduct(lower.northEast, toSouthWest, northEast, first, end);
        Loops.addProduct(lower.northWest, toSouthEast, northWest, first, end);
    }

    /** Of two neighbours of a middle point: to = g w + h v, and their links' energy sum += g w w + h v v. */
    private static void meet(
            double[] to, double[] sum, double[] g, double[] w, double[] h, double[] v, int first, int end) {
        for (int k = first; k < end; k++) {
            double one = g[k] * w[k];
            double other = h[k] * v[k];
            to[k] = one + other;
            sum[k] += one * w[k] + other * v[k];
        }
    }

    /** Weights of a corner, w = to / d, and what the middle point takes off its energy. */
    private void settle(double[] w, double[] sum, double[] to, int first, int end) {
        double[] over = inverse;
        for (int k = first; k < end; k++) {
            double weight = to[k] * over[k];
            w[k] = weight;
            sum[k] -= to[k] * weight;
        }
    }

    /** Coupling along a side: sum += to w - g v u. */
    private static void side(
            double[] sum, double[] to, double[] w, double[] g, double[] v, double[] u, int first, int end) {
        for (int k = first; k < end; k++) {
            sum[k] += to[k] * w[k] - g[k] * v[k] * u[k];
        }
    }

    /** The links across: four from the middle point to the corners, and four that join the middles of the sides. */
    private void addDiagonals(
            CoarseSum lower,
            CoarseSum upper,
            SplitRow below,
            SplitRow mid,
            PointsBetween south,
            PointsBetween north,
            PointsBetween west,
            int first,
            int end) {
        toCorner(toSouthWest, lower.diagonal, below.northEast.even, first, end);
        toCorner(toSouthEast, lower.right, below.northWest.even, first, end);
        toCorner(toNorthWest, upper.diagonal, mid.northWest.odd, first, end);
        toCorner(toNorthEast, upper.right, mid.northEast.odd, first, end);

        double[] sw = below.northWest.odd;
        double[] se = below.northEast.odd;
        double[] nw = mid.northEast.even;
        double[] ne = mid.northWest.even;
        double[] ws = south.before;
        double[] es = south.after;
        double[] wn = north.before;
        double[] en = north.after;
        double[] sw1 = west.before;
        double[] nw1 = west.after;
        difference(atSouthWest, ws, sw1, first, end);
        difference(atSouthEast, es, eastSouth, first, end);
        difference(atNorthWest, wn, nw1, first, end);
        difference(atNorthEast, en, eastNorth, first, end);
        squares(lower.diagonal, sw, atSouthWest, se, ws, nw, sw1, first, end);
        squares(lower.right, sw, es, se, atSouthEast, ne, eastSouth, first, end);
        squares(upper.diagonal, sw, nw1, nw, atNorthWest, ne, wn, first, end);
        squares(upper.right, se, eastNorth, nw, en, ne, atNorthEast, first, end);
        products(lower.east, -1, sw, atSouthWest, es, se, ws, atSouthEast, first, end);
        products(upper.east, -1, nw, atNorthWest, en, ne, wn, atNorthEast, first, end);
        products(lower.north, 1, sw, atSouthWest, nw1, nw, sw1, atNorthWest, first, end);
        products(lower.northRight, 1, se, atSouthEast, eastNorth, ne, eastSouth, atNorthEast, first, end);
        products(lower.northEast, 1, se, ws, eastNorth, nw, sw1, en, first, end);
        products(lower.northWest, 1, sw, es, nw1, ne, eastSouth, wn, first, end);
    }

    private static void toCorner(double[] to, double[] sum, double[] g, int first, int end) {
        Loops.add(to, g, first, end);
        Loops.add(sum, g, first, end);
    }

    private static void difference(double[] out, double[] x, double[] y, int first, int end) {
        for (int k = first; k < end; k++) {
            out[k] = x[k] - y[k];
        }
    }

    private static void squares(
            double[] sum, double[] f, double[] u, double[] g, double[] v, double[] h, double[] w, int first, int end) {
        for (int k = first; k < end; k++) {
            sum[k] += f[k] * u[k] * u[k] + g[k] * v[k] * v[k] + h[k] * w[k] * w[k];
        }
    }

    private static void products(
            double[] sum,
            double sign,
            double[] f,
            double[] u,
            double[] v,
            double[] g,
            double[] w,
            double[] x,
            int first,
            int end) {
        for (int k = first; k < end; k++) {
            sum[k] += sign * (f[k] * u[k] * v[k] + g[k] * w[k] * x[k]);
        }
    }
}
