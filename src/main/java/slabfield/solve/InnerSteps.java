package slabfield.solve;

/** The directions of a few steps of conjugate gradients on one {@link CoarseGrid}, starting from x = 0. Shared by a team. */
final class InnerSteps {
    private final CoarseGrid grid;
    private final Halves[] p;
    private final Halves[] ap;
    /** Each worker's own copies, one after another: energy p' A p of each step, and its length. */
    private final double[][] energy;

    private final double[][] length;

    InnerSteps(CoarseGrid grid, int steps, int workers) {
        this.grid = grid;
        p = new Halves[steps];
        ap = new Halves[steps];
        for (int n = 0; n < steps; n++) {
            p[n] = grid.field();
            // Nothing is made conjugate to the last direction, and the level's x has been taken by then.
            ap[n] = n + 1 < steps ? grid.field() : grid.x;
        }
        energy = new double[workers][steps];
        length = new double[workers][steps];
    }

    /** Starts direction n from the level's x. */
    void take(int n, int from, int to) {
        for (int j = from; j < to; j++) {
            int a = grid.first[j];
            int count = grid.end[j] - a;
            System.arraycopy(grid.x.even[j], a, p[n].even[j], a, count);
            System.arraycopy(grid.x.odd[j], a, p[n].odd[j], a, count);
        }
    }

    /** p_n' A p_m. */
    double along(int n, int m, int from, int to) {
        return dot(p[n], ap[m], from, to);
    }

    /** p_n' r. */
    double work(int n, int from, int to) {
        return dot(p[n], grid.b, from, to);
    }

    private double dot(Halves v, Halves w, int from, int to) {
        double s = 0;
        for (int j = from; j < to; j++) {
            s += CoarseRows.dot(v.even[j], w.even[j], grid.first[j], grid.end[j]);
            s += CoarseRows.dot(v.odd[j], w.odd[j], grid.first[j], grid.end[j]);
        }
        return s;
    }

    /** Makes direction n conjugate to direction m, given p_n' A p_m. */
    void clear(int me, int n, int m, double along, int from, int to) {
        add(-along / energy[me][m], p[m], p[n], from, to);
    }

    /** A p_n; returns p_n' A p_n. */
    double multiply(CoarseRows rows, int n, int from, int to) {
        return rows.multiply(grid, p[n], ap[n], from, to);
    }

    /** Steps along direction n: the level's b becomes what remains. */
    void step(int me, int n, double newEnergy, double work, int from, int to) {
        energy[me][n] = newEnergy;
        length[me][n] = work / newEnergy;
        if (n + 1 < p.length) {
            add(-length[me][n], ap[n], grid.b, from, to);
        }
    }

    /** The level's x: the sum of the steps taken. */
    void answer(int me, int steps, int from, int to) {
        for (int j = from; j < to; j++) {
            java.util.Arrays.fill(grid.x.even[j], 0);
            java.util.Arrays.fill(grid.x.odd[j], 0);
        }
        for (int n = 0; n < steps; n++) {
            add(length[me][n], p[n], grid.x, from, to);
        }
    }

    private void add(double factor, Halves v, Halves to, int from, int end) {
        float f = (float) factor;
        for (int j = from; j < end; j++) {
            add(f, v.even[j], to.even[j], grid.first[j], grid.end[j]);
            add(f, v.odd[j], to.odd[j], grid.first[j], grid.end[j]);
        }
    }

    private static void add(float factor, float[] v, float[] to, int a, int e) {
        for (int k = a; k < e; k++) {
            to[k] += factor * v[k];
        }
    }
}
