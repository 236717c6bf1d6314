package slabfield.solve;

import java.util.Arrays;

/**
 * Sums over the neighbours of a strip's points, couplings times values, one colour at a time. What lies in the rows below or above is
 * brought in line first, by {@link #south} for even rows and {@link #north} for odd ones.
 */
final class StripSums {
    private final float[] terms;
    private final float[] shifted;
    private final float[] line;
    private final float[] line2;
    /** Odd rows below the even ones, and the same one column on. */
    private final float[] evenBelow;

    private final float[] oddBelow;
    private final float[] evenBelowOn;
    /** Even rows above the odd ones, and the same one column on. */
    private final float[] evenAbove;

    private final float[] oddAbove;
    private final float[] evenAboveOn;

    /** @param longest elements of a strip */
    StripSums(int longest) {
        int n = longest + 2;
        terms = new float[n];
        shifted = new float[n];
        line = new float[n];
        line2 = new float[n];
        evenBelow = new float[n];
        oddBelow = new float[n];
        evenBelowOn = new float[n];
        evenAbove = new float[n];
        oddAbove = new float[n];
        evenAboveOn = new float[n];
    }

    /** Brings the odd rows below a strip's even ones in line. */
    void south(Quarters x, int s) {
        below(x.strips, x.eo, s, evenBelow);
        below(x.strips, x.oo, s, oddBelow);
        StripLoops.back(evenBelow, evenBelowOn, x.strips.length(s));
    }

    private static void below(Strips strips, float[][] field, int s, float[] to) {
        int n = strips.length(s);
        int stride = strips.stride;
        if (s == 0) {
            Arrays.fill(to, 0, stride, 0);
        } else {
            System.arraycopy(field[s - 1], strips.length(s - 1) - stride, to, 0, stride);
        }
        System.arraycopy(field[s], 0, to, stride, n - stride);
        to[n] = 0;
    }

    /** Brings the even rows above a strip's odd ones in line. */
    void north(Quarters x, int s) {
        above(x.strips, x.ee, s, evenAbove);
        above(x.strips, x.oe, s, oddAbove);
        StripLoops.back(evenAbove, evenAboveOn, x.strips.length(s));
    }

    static void above(Strips strips, float[][] field, int s, float[] to) {
        int n = strips.length(s);
        int stride = strips.stride;
        System.arraycopy(field[s], stride, to, 0, n - stride);
        if (s + 1 == strips.count) {
            Arrays.fill(to, n - stride, n, 0);
        } else {
            System.arraycopy(field[s + 1], 0, to, n - stride, stride);
        }
        to[n] = 0;
    }

    /** At even columns of even rows; after {@link #south}. */
    void evenEven(CoarseGrid g, Quarters x, int s, float[] out) {
        int n = x.strips.length(s);
        float[] oe = x.oe[s];
        float[] oo = x.oo[s];
        StripLoops.products(terms, g.east.oe[s], oe, g.northWest.ee[s], oo, n);
        StripLoops.addProduct(terms, g.westBelowEven[s], oddBelow, n);
        StripLoops.onward(terms, shifted, n);
        StripLoops.products(out, g.east.ee[s], oe, g.north.ee[s], x.eo[s], n);
        StripLoops.addProducts(out, g.northEast.ee[s], oo, g.eastBelowEven[s], oddBelow, n);
        StripLoops.addProduct(out, g.belowEven[s], evenBelow, n);
        StripLoops.add(out, shifted, n);
    }

    /** At odd columns of even rows, of neighbours in the row. */
    void oddEvenBeside(CoarseGrid g, Quarters x, int s, float[] out) {
        int n = x.strips.length(s);
        StripLoops.back(x.ee[s], line, n);
        StripLoops.products(out, g.east.ee[s], x.ee[s], g.east.oe[s], line, n);
    }

    /** At odd columns of even rows, adds those of neighbours in other rows; after {@link #south}. */
    void oddEvenAcross(CoarseGrid g, Quarters x, int s, float[] out) {
        int n = x.strips.length(s);
        StripLoops.back(x.eo[s], line, n);
        StripLoops.addProducts(out, g.north.oe[s], x.oo[s], g.belowOdd[s], oddBelow, n);
        StripLoops.addProducts(out, g.northWest.oe[s], x.eo[s], g.northEast.oe[s], line, n);
        StripLoops.addProducts(out, g.westBelowOdd[s], evenBelow, g.eastBelowOdd[s], evenBelowOn, n);
    }

    /** At even columns of odd rows, of neighbours in the row. */
    void evenOddBeside(CoarseGrid g, Quarters x, int s, float[] out) {
        int n = x.strips.length(s);
        StripLoops.product(terms, g.east.oo[s], x.oo[s], n);
        StripLoops.onward(terms, out, n);
        StripLoops.addProduct(out, g.east.eo[s], x.oo[s], n);
    }

    /** At even columns of odd rows, adds those of neighbours in other rows; after {@link #north}. */
    void evenOddAcross(CoarseGrid g, Quarters x, int s, float[] out) {
        int n = x.strips.length(s);
        StripLoops.products(terms, g.northEast.oe[s], x.oe[s], g.northWest.eo[s], oddAbove, n);
        StripLoops.onward(terms, shifted, n);
        StripLoops.addProducts(out, g.north.ee[s], x.ee[s], g.north.eo[s], evenAbove, n);
        StripLoops.addProducts(out, g.northWest.oe[s], x.oe[s], g.northEast.eo[s], oddAbove, n);
        StripLoops.add(out, shifted, n);
    }

    /** At odd columns of odd rows; after {@link #north}. */
    void oddOdd(CoarseGrid g, Quarters x, int s, float[] out) {
        int n = x.strips.length(s);
        StripLoops.back(x.eo[s], line, n);
        StripLoops.back(x.ee[s], line2, n);
        StripLoops.products(out, g.east.eo[s], x.eo[s], g.east.oo[s], line, n);
        StripLoops.addProducts(out, g.north.oe[s], x.oe[s], g.north.oo[s], oddAbove, n);
        StripLoops.addProducts(out, g.northEast.ee[s], x.ee[s], g.northWest.ee[s], line2, n);
        StripLoops.addProducts(out, g.northWest.oo[s], evenAbove, g.northEast.oo[s], evenAboveOn, n);
    }
}
