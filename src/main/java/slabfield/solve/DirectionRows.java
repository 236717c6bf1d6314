package slabfield.solve;

/**
 * One worker's passes over its rows of a {@link RedBlackGrid} for conjugate gradients in single precision: direction, product
 * and step. See {@link CycleRows} for the seams between workers.
 */
final class DirectionRows {
    private static final int RING = 4;

    private final RedBlackGrid grid;
    private final int rows;
    private final float[] zero;
    private final float[][] black;
    private final float[] shifted;
    private final RowSum sum;

    DirectionRows(RedBlackGrid grid) {
        this.grid = grid;
        rows = grid.rows;
        int n = grid.length + 1;
        zero = new float[n];
        black = new float[RING][n];
        shifted = new float[n];
        sum = new RowSum(n);
    }

    /** p = z + factor p. */
    void direction(float[][] z, double factor, float[][] p, int from, int to) {
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

    /** ap = S p; returns p' S p. */
    double multiply(float[][] p, float[][] ap, int from, int to) {
        sum.clear();
        float[] below = blackRow(from - 1, p);
        float[] here = blackRow(from, p);
        for (int j = from; j < to; j++) {
            float[] above = blackRow(j + 1, p);
            grid.red(j, below, here, above, ap[j], shifted);
            finish(grid.diagonalF[j], grid.restF[j], p[j], ap[j], grid.first[j], grid.end[j]);
            sum.add(p[j], ap[j], grid.first[j], grid.end[j]);
            below = here;
            here = above;
        }
        return sum.take();
    }

    private float[] row(float[][] all, int j) {
        return j < 1 || j > rows ? zero : all[j];
    }

    private float[] blackRow(int j, float[][] p) {
        if (j < 1 || j > rows) {
            return zero;
        }
        float[] y = black[j & (RING - 1)];
        grid.black(j, row(p, j - 1), p[j], row(p, j + 1), y, shifted);
        return y;
    }

    private static void finish(float[] d, float[] rest, float[] p, float[] y, int from, int to) {
        for (int k = from; k < to; k++) {
            y[k] = d[k] * p[k] - y[k] + rest[k] * p[k];
        }
    }

    /** x += length p, r -= length ap; returns |r|^2. */
    double step(double length, float[][] p, float[][] ap, float[][] x, float[][] r, int from, int to) {
        float f = (float) length;
        sum.clear();
        for (int j = from; j < to; j++) {
            int a = grid.first[j];
            int e = grid.end[j];
            add(f, p[j], x[j], a, e);
            add(-f, ap[j], r[j], a, e);
            sum.add(r[j], r[j], a, e);
        }
        return sum.take();
    }

    private static void add(float factor, float[] from, float[] to, int first, int end) {
        for (int k = first; k < end; k++) {
            to[k] += factor * from[k];
        }
    }
}
