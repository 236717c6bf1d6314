package slabfield.solve;

/**
 * One worker's passes over its rows of a {@link RedBlackGrid} for conjugate gradients in single precision: direction, product
 * and step. See {@link CycleRows} for the seams between workers.
 *
 * <p>The product is built from differences, {@code g (p_i - p_k)}, and leaks. Single precision then loses nothing of
 * the little that S leaves of a smooth direction, however fine the grid and however small its leaks. Of a black cell what is
 * kept is how far it is above the red cell at its inner link.
 */
final class DirectionRows implements StepRows {
    private static final int RING = 4;

    private final RedBlackGrid grid;
    private final int rows;
    private final float[][] p;
    private final float[][] ap;
    private final float[] zero;
    private final float[][] black;
    private final float[] shifted;
    private final float[] outward;
    private final RowSum sum;

    /** @param p direction, shared by all workers, as is {@code ap}, S p */
    DirectionRows(RedBlackGrid grid, float[][] p, float[][] ap) {
        this.grid = grid;
        this.p = p;
        this.ap = ap;
        rows = grid.rows;
        int n = grid.length + 1;
        zero = new float[n];
        black = new float[RING][n];
        shifted = new float[n];
        outward = new float[n];
        sum = new RowSum(n);
    }

    @Override
    public void direction(float[][] z, double factor, int from, int to) {
        float f = (float) factor;
        for (int j = from; j < to; j++) {
            turn(z[j], f, p[j], grid.first[j], grid.end[j]);
        }
    }

    private static void turn(float[] z, float factor, float[] p, int from, int to) {
        for (int k = from; k < to; k++) {
            p[k] = z[k] + factor * p[k];
        }
    }

    @Override
    public double along(CycleRows cycle, float[][] z, int from, int to) {
        return cycle.along();
    }

    /** {@inheritDoc} By z' r, from which it differs by what the last step left along the last direction. */
    @Override
    public double slope(CycleRows cycle, int from, int to) {
        return cycle.work();
    }

    @Override
    public double multiply(int from, int to) {
        sum.clear();
        float[] below = excess(from - 1);
        float[] here = excess(from);
        for (int j = from; j < to; j++) {
            float[] above = excess(j + 1);
            if (grid.first[j] < grid.end[j]) {
                beside(j, p[j], here, ap[j]);
                across(j, grid.blackUpF[j - 1], row(j - 1), p[j], below, ap[j]);
                across(j, grid.redUpF[j], row(j + 1), p[j], above, ap[j]);
                sum.add(p[j], ap[j], grid.first[j], grid.end[j]);
            }
            below = here;
            here = above;
        }
        return sum.take();
    }

    private float[] row(int j) {
        return j < 1 || j > rows ? zero : p[j];
    }

    /** How far the black cells of row j are above the red ones at their inner links. */
    private float[] excess(int j) {
        if (j < 1 || j > rows) {
            return zero;
        }
        float[] y = black[j & (RING - 1)];
        int a = grid.first[j];
        int e = grid.end[j];
        float[] x = p[j];
        System.arraycopy(x, a + RedBlackGrid.outward(j), shifted, a, e - a);
        float[] out = grid.outerF[j];
        float[] leak = grid.blackLeakF[j];
        for (int k = a; k < e; k++) {
            y[k] = out[k] * (shifted[k] - x[k]) - leak[k] * x[k];
        }
        float[] up = grid.blackUpF[j];
        float[] above = row(j + 1);
        for (int k = a; k < e; k++) {
            y[k] += up[k] * (above[k] - x[k]);
        }
        float[] down = grid.redUpF[j - 1];
        float[] below = row(j - 1);
        float[] inverse = grid.blackF[j];
        for (int k = a; k < e; k++) {
            y[k] = inverse[k] * (y[k] + down[k] * (below[k] - x[k]));
        }
        return y;
    }

    /** y = leak and what flows to the black cells of the same row. */
    private void beside(int j, float[] x, float[] excess, float[] y) {
        int a = grid.first[j];
        int e = grid.end[j];
        int step = RedBlackGrid.outward(j);
        float[] out = grid.outerF[j];
        int from = Math.max(1, a - step);
        int to = Math.min(grid.length - 1, e - step);
        System.arraycopy(x, from + step, shifted, from, to - from);
        for (int k = from; k < to; k++) {
            outward[k] = out[k] * (shifted[k] - x[k] - excess[k]);
        }
        shifted[a] = 0;
        shifted[e - 1] = 0;
        System.arraycopy(outward, from, shifted, from + step, to - from);
        float[] in = grid.innerF[j];
        float[] leak = grid.redLeakF[j];
        for (int k = a; k < e; k++) {
            y[k] = leak[k] * x[k] - in[k] * excess[k] + shifted[k];
        }
    }

    /** y += what flows to the black cells of a row below or above. */
    private void across(int j, float[] link, float[] beyond, float[] x, float[] excess, float[] y) {
        int e = grid.end[j];
        for (int k = grid.first[j]; k < e; k++) {
            y[k] += link[k] * (x[k] - beyond[k] - excess[k]);
        }
    }

    @Override
    public double step(double length, double scale, double[][] x, float[][] r, int from, int to) {
        float f = (float) -length;
        // Of the same length as f, so that r stays what b - A x is.
        double g = -f * scale;
        sum.clear();
        for (int j = from; j < to; j++) {
            int a = grid.first[j];
            int e = grid.end[j];
            advance(g, p[j], x[j], a, e);
            add(f, ap[j], r[j], a, e);
            sum.add(r[j], r[j], a, e);
        }
        return sum.take();
    }

    private static void advance(double factor, float[] p, double[] x, int first, int end) {
        for (int k = first; k < end; k++) {
            x[k] += factor * p[k];
        }
    }

    private static void add(float factor, float[] from, float[] to, int first, int end) {
        for (int k = first; k < end; k++) {
            to[k] += factor * from[k];
        }
    }
}
