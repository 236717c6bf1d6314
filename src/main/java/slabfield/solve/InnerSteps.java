package slabfield.solve;

import java.util.Arrays;

/** The directions of a few steps of conjugate gradients on one {@link CoarseGrid}, starting from x = 0. Shared by a team. */
final class InnerSteps {
    private final CoarseGrid grid;
    private final Quarters[] p;
    private final Quarters[] ap;
    /** Each worker's own copies, one after another: energy p' A p of each step, and its length. */
    private final double[][] energy;

    private final double[][] length;
    private final RowSum[] sums;

    InnerSteps(CoarseGrid grid, int steps, int workers) {
        this.grid = grid;
        p = new Quarters[steps];
        ap = new Quarters[steps];
        for (int n = 0; n < steps; n++) {
            p[n] = grid.field();
            // Nothing is made conjugate to the last direction, and the level's x has been taken by then.
            ap[n] = n + 1 < steps ? grid.field() : grid.x;
        }
        energy = new double[workers][steps];
        length = new double[workers][steps];
        sums = new RowSum[workers];
        Arrays.setAll(sums, me -> new RowSum(grid.strips.longest()));
    }

    /** Starts direction n from the level's x, in a worker's pairs of rows from .. to - 1, as in all that follows. */
    void take(int n, int from, int to) {
        Strips strips = grid.strips;
        for (int s = strips.strip(from); s < strips.strip(to); s++) {
            int length = strips.length(s);
            System.arraycopy(grid.x.ee[s], 0, p[n].ee[s], 0, length);
            System.arraycopy(grid.x.oe[s], 0, p[n].oe[s], 0, length);
            System.arraycopy(grid.x.eo[s], 0, p[n].eo[s], 0, length);
            System.arraycopy(grid.x.oo[s], 0, p[n].oo[s], 0, length);
        }
    }

    /** p_n' A p_m. */
    double along(int me, int n, int m, int from, int to) {
        return dot(me, p[n], ap[m], from, to);
    }

    /** p_n' r. */
    double work(int me, int n, int from, int to) {
        return dot(me, p[n], grid.b, from, to);
    }

    private double dot(int me, Quarters v, Quarters w, int from, int to) {
        RowSum sum = sums[me];
        sum.clear();
        Strips strips = grid.strips;
        for (int s = strips.strip(from); s < strips.strip(to); s++) {
            int length = strips.length(s);
            sum.add(v.ee[s], w.ee[s], 0, length);
            sum.add(v.oe[s], w.oe[s], 0, length);
            sum.add(v.eo[s], w.eo[s], 0, length);
            sum.add(v.oo[s], w.oo[s], 0, length);
        }
        return sum.take();
    }

    /** Makes direction n conjugate to direction m, given p_n' A p_m. */
    void clear(int me, int n, int m, double along, int from, int to) {
        add(-along / energy[me][m], p[m], p[n], from, to);
    }

    /** A p_n; returns p_n' A p_n. */
    double multiply(int me, CoarseRows rows, int n, int from, int to) {
        rows.multiply(grid, p[n], ap[n], from, to);
        return along(me, n, n, from, to);
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
        Strips strips = grid.strips;
        for (int s = strips.strip(from); s < strips.strip(to); s++) {
            Arrays.fill(grid.x.ee[s], 0);
            Arrays.fill(grid.x.oe[s], 0);
            Arrays.fill(grid.x.eo[s], 0);
            Arrays.fill(grid.x.oo[s], 0);
        }
        for (int n = 0; n < steps; n++) {
            add(length[me][n], p[n], grid.x, from, to);
        }
    }

    private void add(double factor, Quarters v, Quarters to, int from, int end) {
        float f = (float) factor;
        Strips strips = grid.strips;
        for (int s = strips.strip(from); s < strips.strip(end); s++) {
            int n = strips.length(s);
            StripLoops.addTimes(to.ee[s], f, v.ee[s], n);
            StripLoops.addTimes(to.oe[s], f, v.oe[s], n);
            StripLoops.addTimes(to.eo[s], f, v.eo[s], n);
            StripLoops.addTimes(to.oo[s], f, v.oo[s], n);
        }
    }
}
