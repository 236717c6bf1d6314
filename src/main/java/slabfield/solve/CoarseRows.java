package slabfield.solve;

import java.util.Arrays;

/**
 * One worker's passes over its strips of {@link CoarseGrid}s: smoothing, residual, restriction and interpolation.
 *
 * <p>Smoothing is four-colour Gauss-Seidel, even rows first: (even, even), (odd, even), (even, odd), (odd, odd) columns
 * and rows before the correction, the same backwards after it, so that a cycle is symmetric. Strips are given by their pairs of rows,
 * from .. to - 1.
 */
final class CoarseRows {
    private final StripSums sums;
    private final float[] sum;
    private final float[] own;
    private final float[] right;
    private final float[] above;
    private final float[] product;
    private final float[] shifted;
    private final float[] carry;
    private final float[] coarse;
    private final float[] coarseOn;

    /** @param longest elements of a strip on any level */
    CoarseRows(int longest) {
        int n = longest + 2;
        sums = new StripSums(longest);
        sum = new float[n];
        own = new float[n];
        right = new float[n];
        above = new float[n];
        product = new float[n];
        shifted = new float[n];
        carry = new float[n];
        coarse = new float[n];
        coarseOn = new float[n];
    }

    private void relaxEvenEven(CoarseGrid g, int s) {
        sums.evenEven(g, g.x, s, sum);
        StripLoops.balance(g.x.ee[s], g.inverse.ee[s], sum, g.b.ee[s], g.strips.length(s));
    }

    private void relaxOddEven(CoarseGrid g, int s) {
        sums.oddEvenBeside(g, g.x, s, sum);
        sums.oddEvenAcross(g, g.x, s, sum);
        StripLoops.balance(g.x.oe[s], g.inverse.oe[s], sum, g.b.oe[s], g.strips.length(s));
    }

    private void relaxEvenOdd(CoarseGrid g, int s) {
        sums.evenOddBeside(g, g.x, s, sum);
        sums.evenOddAcross(g, g.x, s, sum);
        StripLoops.balance(g.x.eo[s], g.inverse.eo[s], sum, g.b.eo[s], g.strips.length(s));
    }

    private void relaxOddOdd(CoarseGrid g, int s) {
        sums.oddOdd(g, g.x, s, sum);
        StripLoops.balance(g.x.oo[s], g.inverse.oo[s], sum, g.b.oo[s], g.strips.length(s));
    }

    /** First smoothing of the even rows, from x = 0. */
    void smoothEvenFromZero(CoarseGrid g, int from, int to) {
        for (int s = g.strips.strip(from); s < g.strips.strip(to); s++) {
            int n = g.strips.length(s);
            StripLoops.product(g.x.ee[s], g.inverse.ee[s], g.b.ee[s], n);
            sums.oddEvenBeside(g, g.x, s, sum);
            StripLoops.balance(g.x.oe[s], g.inverse.oe[s], sum, g.b.oe[s], n);
        }
    }

    /** First smoothing of the odd rows, from x = 0 there. */
    void smoothOddFromZero(CoarseGrid g, int from, int to) {
        for (int s = g.strips.strip(from); s < g.strips.strip(to); s++) {
            int n = g.strips.length(s);
            sums.north(g.x, s);
            Arrays.fill(sum, 0, n, 0);
            sums.evenOddAcross(g, g.x, s, sum);
            StripLoops.balance(g.x.eo[s], g.inverse.eo[s], sum, g.b.eo[s], n);
            relaxOddOdd(g, s);
        }
    }

    /** Smooths even rows again, even points before odd ones. */
    void smoothEvenForth(CoarseGrid g, int from, int to) {
        for (int s = g.strips.strip(from); s < g.strips.strip(to); s++) {
            sums.south(g.x, s);
            relaxEvenEven(g, s);
            relaxOddEven(g, s);
        }
    }

    /** Smooths odd rows again, even points before odd ones. */
    void smoothOddForth(CoarseGrid g, int from, int to) {
        for (int s = g.strips.strip(from); s < g.strips.strip(to); s++) {
            sums.north(g.x, s);
            relaxEvenOdd(g, s);
            relaxOddOdd(g, s);
        }
    }

    /** Smooths odd rows, odd points before even ones. */
    void smoothOddBack(CoarseGrid g, int from, int to) {
        for (int s = g.strips.strip(from); s < g.strips.strip(to); s++) {
            sums.north(g.x, s);
            relaxOddOdd(g, s);
            relaxEvenOdd(g, s);
        }
    }

    /** Smooths even rows, odd points before even ones. */
    void smoothEvenBack(CoarseGrid g, int from, int to) {
        for (int s = g.strips.strip(from); s < g.strips.strip(to); s++) {
            sums.south(g.x, s);
            relaxOddEven(g, s);
            relaxEvenEven(g, s);
        }
    }

    /**
     * Next level's right-hand side; its rows are this level's pairs. The points smoothed last have no residual. After a
     * single smoothing from zero the others have only what came from those smoothed after them.
     *
     * @param again whether more than one smoothing went before
     */
    void restrict(CoarseGrid g, boolean again, CoarseGrid next, int from, int to) {
        if (from >= to) {
            return;
        }
        Strips strips = g.strips;
        int stride = strips.stride;
        int begin = strips.strip(from);
        Arrays.fill(carry, 0, stride, 0);
        if (begin > 0) {
            evenOddResidual(g, again, begin - 1);
            carryOn(g, begin - 1);
        }
        for (int s = begin; s < strips.strip(to); s++) {
            int n = strips.length(s);
            evenRowResiduals(g, again, s);
            evenOddResidual(g, again, s);
            StripLoops.product(product, g.fromEast[s], right, n);
            StripLoops.onward(product, shifted, n);
            StripLoops.addProducts(own, g.fromWest[s], right, g.fromSouth[s], above, n);
            StripLoops.add(own, shifted, n);
            System.arraycopy(carry, 0, shifted, 0, stride);
            carryOn(g, s);
            System.arraycopy(product, 0, shifted, stride, n - stride);
            StripLoops.add(own, shifted, n);
            for (int pair = strips.begin(s); pair < strips.begin(s + 1); pair++) {
                next.b.put(pair, own, strips.at(pair), next.first[pair], next.end[pair]);
            }
        }
    }

    /** Of the residuals in odd rows, what goes to the north; keeps the last row's. */
    private void carryOn(CoarseGrid g, int s) {
        int n = g.strips.length(s);
        StripLoops.product(product, g.fromNorth[s], above, n);
        System.arraycopy(product, n - g.strips.stride, carry, 0, g.strips.stride);
    }

    /** Sets {@code own} and {@code right} to the residuals of even and odd points of the even rows. */
    private void evenRowResiduals(CoarseGrid g, boolean again, int s) {
        int n = g.strips.length(s);
        sums.south(g.x, s);
        sums.evenEven(g, g.x, s, own);
        if (again) {
            sums.oddEvenBeside(g, g.x, s, right);
            StripLoops.remaining(own, g.b.ee[s], g.diagonal.ee[s], g.x.ee[s], n);
            StripLoops.remaining(right, g.b.oe[s], g.diagonal.oe[s], g.x.oe[s], n);
        } else {
            Arrays.fill(right, 0, n, 0);
        }
        sums.oddEvenAcross(g, g.x, s, right);
    }

    /** Sets {@code above} to the residuals of even points of the odd rows. */
    private void evenOddResidual(CoarseGrid g, boolean again, int s) {
        sums.evenOddBeside(g, g.x, s, above);
        if (again) {
            sums.north(g.x, s);
            sums.evenOddAcross(g, g.x, s, above);
            StripLoops.remaining(above, g.b.eo[s], g.diagonal.eo[s], g.x.eo[s], g.strips.length(s));
        }
    }

    /** x += P of the next level's answer, but for the points that are relaxed first. */
    void correct(CoarseGrid g, CoarseGrid next, int from, int to) {
        Strips strips = g.strips;
        for (int s = strips.strip(from); s < strips.strip(to); s++) {
            int n = strips.length(s);
            int end = strips.begin(s + 1);
            Arrays.fill(coarse, 0, n + 1, 0);
            for (int pair = strips.begin(s); pair < end; pair++) {
                next.x.take(pair, coarse, strips.at(pair), next.first[pair], next.end[pair]);
            }
            StripLoops.add(g.x.ee[s], coarse, n);
            StripLoops.back(coarse, coarseOn, n);
            StripLoops.addProducts(g.x.oe[s], g.fromWest[s], coarse, g.fromEast[s], coarseOn, n);
            System.arraycopy(coarse, strips.stride, coarseOn, 0, n - strips.stride);
            Arrays.fill(coarseOn, n - strips.stride, n, 0);
            if (end <= next.rows) {
                next.x.take(end, coarseOn, n - strips.stride, next.first[end], next.end[end]);
            }
            StripLoops.addProducts(g.x.eo[s], g.fromSouth[s], coarse, g.fromNorth[s], coarseOn, n);
        }
    }

    /** out = A p. */
    void multiply(CoarseGrid g, Quarters p, Quarters out, int from, int to) {
        for (int s = g.strips.strip(from); s < g.strips.strip(to); s++) {
            int n = g.strips.length(s);
            sums.south(p, s);
            sums.evenEven(g, p, s, out.ee[s]);
            StripLoops.applied(out.ee[s], g.diagonal.ee[s], g.rest.ee[s], p.ee[s], n);
            sums.oddEvenBeside(g, p, s, out.oe[s]);
            sums.oddEvenAcross(g, p, s, out.oe[s]);
            StripLoops.applied(out.oe[s], g.diagonal.oe[s], g.rest.oe[s], p.oe[s], n);
            sums.north(p, s);
            sums.evenOddBeside(g, p, s, out.eo[s]);
            sums.evenOddAcross(g, p, s, out.eo[s]);
            StripLoops.applied(out.eo[s], g.diagonal.eo[s], g.rest.eo[s], p.eo[s], n);
            sums.oddOdd(g, p, s, out.oo[s]);
            StripLoops.applied(out.oo[s], g.diagonal.oo[s], g.rest.oo[s], p.oo[s], n);
        }
    }
}
