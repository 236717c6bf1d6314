package slabfield.solve;

import java.util.Arrays;

/**
 * One worker's passes over its rows of {@link CoarseGrid}s: smoothing, residual, restriction and interpolation.
 *
 * <p>Smoothing is four-colour Gauss-Seidel, even rows first: (even, even), (odd, even), (even, odd), (odd, odd) columns
 * and rows before the correction, the same backwards after it, so that a cycle is symmetric.
 */
final class CoarseRows {
    private final float[] product;
    private final float[] shifted;
    private final float[] here;
    private final float[] up;
    private final float[] down;
    private final float[] own;
    private final float[] right;
    private float[] above;
    private float[] below;
    private final NaturalRows natural;

    /** @param columns of the widest level */
    CoarseRows(int columns) {
        int n = columns / 2 + 6;
        product = new float[n];
        shifted = new float[n];
        here = new float[n];
        up = new float[n];
        down = new float[n];
        own = new float[n];
        right = new float[n];
        above = new float[n];
        below = new float[n];
        natural = new NaturalRows(n);
    }

    /** out = couplings to the neighbours in the row, times x, at even points of row j. */
    private void besideEven(CoarseGrid g, Halves x, int j, float[] out) {
        int a = g.first[j];
        int e = g.end[j];
        float[] odd = x.odd[j];
        float[] outer = g.east.odd[j];
        for (int k = a; k < e; k++) {
            product[k] = outer[k] * odd[k];
        }
        shifted[a] = 0;
        System.arraycopy(product, a, shifted, a + 1, e - a);
        float[] inner = g.east.even[j];
        for (int k = a; k < e; k++) {
            out[k] = inner[k] * odd[k] + shifted[k];
        }
    }

    /** As {@link #besideEven}, at odd points. */
    private void besideOdd(CoarseGrid g, Halves x, int j, float[] out) {
        int a = g.first[j];
        int e = g.end[j];
        float[] even = x.even[j];
        System.arraycopy(even, a + 1, here, a, e - a);
        float[] inner = g.east.even[j];
        float[] outer = g.east.odd[j];
        for (int k = a; k < e; k++) {
            out[k] = inner[k] * even[k] + outer[k] * here[k];
        }
    }

    /** out += couplings to the neighbours in the rows below and above, times x, at even points of row j. */
    private void acrossEven(CoarseGrid g, Halves x, int j, float[] out) {
        int a = g.first[j];
        int e = g.end[j];
        float[] oddUp = x.odd[j + 1];
        float[] oddDown = x.odd[j - 1];
        float[] nw = g.northWest.even[j];
        float[] sw = g.northEast.odd[j - 1];
        for (int k = a - 1; k < e; k++) {
            product[k] = nw[k] * oddUp[k] + sw[k] * oddDown[k];
        }
        System.arraycopy(product, a - 1, shifted, a, e - a);
        float[] evenUp = x.even[j + 1];
        float[] evenDown = x.even[j - 1];
        float[] n = g.north.even[j];
        float[] s = g.north.even[j - 1];
        for (int k = a; k < e; k++) {
            out[k] += n[k] * evenUp[k] + s[k] * evenDown[k];
        }
        float[] ne = g.northEast.even[j];
        float[] se = g.northWest.odd[j - 1];
        for (int k = a; k < e; k++) {
            out[k] += ne[k] * oddUp[k] + se[k] * oddDown[k] + shifted[k];
        }
    }

    /** As {@link #acrossEven}, at odd points. */
    private void acrossOdd(CoarseGrid g, Halves x, int j, float[] out) {
        int a = g.first[j];
        int e = g.end[j];
        float[] oddUp = x.odd[j + 1];
        float[] oddDown = x.odd[j - 1];
        float[] n = g.north.odd[j];
        float[] s = g.north.odd[j - 1];
        for (int k = a; k < e; k++) {
            out[k] += n[k] * oddUp[k] + s[k] * oddDown[k];
        }
        float[] evenUp = x.even[j + 1];
        float[] evenDown = x.even[j - 1];
        float[] nw = g.northWest.odd[j];
        float[] sw = g.northEast.even[j - 1];
        for (int k = a; k < e; k++) {
            out[k] += nw[k] * evenUp[k] + sw[k] * evenDown[k];
        }
        System.arraycopy(evenUp, a + 1, up, a, e - a);
        System.arraycopy(evenDown, a + 1, down, a, e - a);
        float[] ne = g.northEast.odd[j];
        float[] se = g.northWest.even[j - 1];
        for (int k = a; k < e; k++) {
            out[k] += ne[k] * up[k] + se[k] * down[k];
        }
    }

    private static void balance(float[] x, float[] b, float[] inverse, int from, int to) {
        for (int k = from; k < to; k++) {
            x[k] = inverse[k] * (x[k] + b[k]);
        }
    }

    private void relaxEven(CoarseGrid g, int j) {
        float[] x = g.x.even[j];
        besideEven(g, g.x, j, x);
        acrossEven(g, g.x, j, x);
        balance(x, g.b.even[j], g.inverse.even[j], g.first[j], g.end[j]);
    }

    private void relaxOdd(CoarseGrid g, int j) {
        float[] x = g.x.odd[j];
        besideOdd(g, g.x, j, x);
        acrossOdd(g, g.x, j, x);
        balance(x, g.b.odd[j], g.inverse.odd[j], g.first[j], g.end[j]);
    }

    /** First smoothing of the even rows among padded rows from .. to - 1, from x = 0. */
    void smoothEvenFromZero(CoarseGrid g, int from, int to) {
        for (int j = from | 1; j < to; j += 2) {
            int a = g.first[j];
            int e = g.end[j];
            float[] x = g.x.even[j];
            float[] b = g.b.even[j];
            float[] inverse = g.inverse.even[j];
            for (int k = a; k < e; k++) {
                x[k] = inverse[k] * b[k];
            }
            besideOdd(g, g.x, j, g.x.odd[j]);
            balance(g.x.odd[j], g.b.odd[j], g.inverse.odd[j], a, e);
        }
    }

    /** First smoothing of the odd rows among padded rows from .. to - 1, from x = 0 there. */
    void smoothOddFromZero(CoarseGrid g, int from, int to) {
        for (int j = from + (from & 1); j < to; j += 2) {
            float[] x = g.x.even[j];
            Arrays.fill(x, g.first[j], g.end[j], 0);
            acrossEven(g, g.x, j, x);
            balance(x, g.b.even[j], g.inverse.even[j], g.first[j], g.end[j]);
            relaxOdd(g, j);
        }
    }

    /** Smooths again, even points before odd ones, every second of padded rows from .. to - 1: even ones (odd numbers) or odd ones. */
    void smoothForth(CoarseGrid g, boolean evenRows, int from, int to) {
        for (int j = evenRows ? from | 1 : from + (from & 1); j < to; j += 2) {
            relaxEven(g, j);
            relaxOdd(g, j);
        }
    }

    /** As {@link #smoothForth} with odd points first. */
    void smoothBack(CoarseGrid g, boolean evenRows, int from, int to) {
        for (int j = evenRows ? from | 1 : from + (from & 1); j < to; j += 2) {
            relaxOdd(g, j);
            relaxEven(g, j);
        }
    }

    /**
     * Next level's right-hand side, padded rows from .. to - 1 of it. The points smoothed last have no residual. After a
     * single smoothing from zero the others have only what came from those smoothed after them.
     *
     * @param again whether more than one smoothing went before
     */
    void restrict(CoarseGrid g, boolean again, CoarseGrid next, int from, int to) {
        if (from >= to) {
            return;
        }
        oddRow(g, again, 2 * from - 2, below);
        for (int row = from; row < to; row++) {
            int j = 2 * row - 1;
            int a = g.first[j];
            int e = g.end[j];
            evenRow(g, again, j);
            oddRow(g, again, j + 1, above);
            gather(g, row, a, e);
            next.b.put(row, own, next.first[row], next.end[row]);
            Arrays.fill(own, a, e, 0);
            float[] spare = below;
            below = above;
            above = spare;
        }
    }

    /** Sets {@code own} and {@code right} to the residuals of even and odd points of an even row. */
    private void evenRow(CoarseGrid g, boolean again, int j) {
        int a = g.first[j];
        int e = g.end[j];
        besideEven(g, g.x, j, own);
        acrossEven(g, g.x, j, own);
        if (again) {
            besideOdd(g, g.x, j, right);
            missing(own, g.b.even[j], g.diagonal.even[j], g.x.even[j], a, e);
            missing(right, g.b.odd[j], g.diagonal.odd[j], g.x.odd[j], a, e);
        } else {
            Arrays.fill(right, a, e, 0);
        }
        acrossOdd(g, g.x, j, right);
    }

    private void oddRow(CoarseGrid g, boolean again, int j, float[] out) {
        Arrays.fill(out, 0);
        if (j < 1 || j > g.rows) {
            return;
        }
        besideEven(g, g.x, j, out);
        if (again) {
            acrossEven(g, g.x, j, out);
            missing(out, g.b.even[j], g.diagonal.even[j], g.x.even[j], g.first[j], g.end[j]);
        }
    }

    private static void missing(float[] out, float[] b, float[] diagonal, float[] x, int from, int to) {
        for (int k = from; k < to; k++) {
            out[k] += b[k] - diagonal[k] * x[k];
        }
    }

    private void gather(CoarseGrid g, int row, int a, int e) {
        float[] toEast = g.fromEast[row];
        for (int k = a; k < e; k++) {
            product[k] = toEast[k] * right[k];
        }
        shifted[a] = 0;
        System.arraycopy(product, a, shifted, a + 1, e - a);
        float[] toWest = g.fromWest[row];
        for (int k = a; k < e; k++) {
            own[k] += shifted[k] + toWest[k] * right[k];
        }
        float[] toSouth = g.fromSouth[row];
        float[] toNorth = g.fromNorth[row - 1];
        for (int k = a; k < e; k++) {
            own[k] += toSouth[k] * above[k] + toNorth[k] * below[k];
        }
    }

    /** x += P of the next level's answer, in padded rows from .. to - 1, but for the points that are relaxed first. */
    void correct(CoarseGrid g, CoarseGrid next, int from, int to) {
        natural.begin(next);
        for (int j = from; j < to; j++) {
            int a = g.first[j];
            int e = g.end[j];
            float[] even = g.x.even[j];
            if ((j & 1) != 0) {
                int row = (j + 1) / 2;
                float[] c = natural.row(row);
                for (int k = a; k < e; k++) {
                    even[k] += c[k];
                }
                mean(g.x.odd[j], g.fromWest[row], c, g.fromEast[row], natural.eastOf(c, a, e), a, e);
            } else {
                mean(even, g.fromSouth[j / 2], natural.row(j / 2), g.fromNorth[j / 2], natural.row(j / 2 + 1), a, e);
            }
        }
    }

    private static void mean(float[] x, float[] v, float[] one, float[] w, float[] other, int a, int e) {
        for (int k = a; k < e; k++) {
            x[k] += v[k] * one[k] + w[k] * other[k];
        }
    }

    /** out = A p in padded rows from .. to - 1; returns p' A p there. */
    double multiply(CoarseGrid g, Halves p, Halves out, int from, int to) {
        double s = 0;
        for (int j = from; j < to; j++) {
            int a = g.first[j];
            int e = g.end[j];
            besideEven(g, p, j, out.even[j]);
            acrossEven(g, p, j, out.even[j]);
            besideOdd(g, p, j, out.odd[j]);
            acrossOdd(g, p, j, out.odd[j]);
            s += finish(g.diagonal.even[j], g.rest.even[j], p.even[j], out.even[j], a, e);
            s += finish(g.diagonal.odd[j], g.rest.odd[j], p.odd[j], out.odd[j], a, e);
        }
        return s;
    }

    private static double finish(float[] diagonal, float[] rest, float[] p, float[] out, int a, int e) {
        for (int k = a; k < e; k++) {
            out[k] = diagonal[k] * p[k] - out[k] + rest[k] * p[k];
        }
        return dot(p, out, a, e);
    }

    static double dot(float[] p, float[] q, int a, int e) {
        double s = 0;
        double t = 0;
        int k = a;
        for (; k + 1 < e; k += 2) {
            s += p[k] * q[k];
            t += p[k + 1] * q[k + 1];
        }
        return k < e ? s + t + p[k] * q[k] : s + t;
    }
}
