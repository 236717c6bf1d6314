package slabfield.solve;

/** The passes in double precision, for a grid so tight that single precision leads conjugate gradients astray. */
final class ExactRows implements StepRows {
    private static final int RING = 4;

    private final RedBlackGrid grid;
    private final int rows;
    private final double[][] p;
    private final double[][] ap;
    private final double[][] r;
    private final double[] zero;
    private final double[][] black;
    private final double[] shifted;

    /** @param p direction, shared by all workers, as are {@code ap}, S p, and {@code r}, the residual */
    ExactRows(RedBlackGrid grid, double[][] p, double[][] ap, double[][] r) {
        this.grid = grid;
        this.p = p;
        this.ap = ap;
        this.r = r;
        rows = grid.rows;
        int n = grid.length + 1;
        zero = new double[n];
        black = new double[RING][n];
        shifted = new double[n];
    }

    @Override
    public void direction(float[][] z, double factor, int from, int to) {
        for (int j = from; j < to; j++) {
            double[] pj = p[j];
            float[] zj = z[j];
            int end = grid.end[j];
            for (int k = grid.first[j]; k < end; k++) {
                pj[k] = zj[k] + factor * pj[k];
            }
        }
    }

    private double[] row(int j) {
        return j < 1 || j > rows ? zero : p[j];
    }

    private double[] blackRow(int j) {
        if (j < 1 || j > rows) {
            return zero;
        }
        double[] y = black[j & (RING - 1)];
        grid.black(j, row(j - 1), p[j], row(j + 1), y, shifted);
        return y;
    }

    @Override
    public double multiply(int from, int to) {
        double s = 0;
        double[] below = blackRow(from - 1);
        double[] here = blackRow(from);
        for (int j = from; j < to; j++) {
            double[] above = blackRow(j + 1);
            double[] y = ap[j];
            double[] pj = p[j];
            double[] d = grid.red[j];
            grid.red(j, below, here, above, y, shifted);
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                y[k] = d[k] * pj[k] - y[k];
                s += pj[k] * y[k];
            }
            below = here;
            here = above;
        }
        return s;
    }

    /** {@inheritDoc} As it is: a step to where the error is least along p never adds to it, however rough the cycle is. */
    @Override
    public double slope(CycleRows cycle, int from, int to) {
        double s = 0;
        for (int j = from; j < to; j++) {
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                s += p[j][k] * r[j][k];
            }
        }
        return s;
    }

    @Override
    public double step(double length, double scale, double[][] x, float[][] rounded, int from, int to) {
        double s = 0;
        for (int j = from; j < to; j++) {
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                x[j][k] += length * scale * p[j][k];
                double left = r[j][k] - length * ap[j][k];
                r[j][k] = left;
                rounded[j][k] = (float) left;
                s += left * left;
            }
        }
        return s;
    }

    @Override
    public double along(CycleRows cycle, float[][] z, int from, int to) {
        double s = 0;
        for (int j = from; j < to; j++) {
            for (int k = grid.first[j]; k < grid.end[j]; k++) {
                s += z[j][k] * ap[j][k];
            }
        }
        return s;
    }
}
