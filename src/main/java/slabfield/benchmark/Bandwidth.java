package slabfield.benchmark;

import java.util.Arrays;
import slabfield.solve.Workers;

/** Memory bandwidth as the solver sees it: a = b + s c over arrays far larger than any cache (McCalpin 1995, STREAM triad). */
final class Bandwidth {
    private static final int LENGTH = 8_000_000;

    private Bandwidth() {}

    /** Best of some passes, 24 bytes an element, by all workers together [byte/s]. */
    static double triad(Workers team, int passes) {
        double[][] a = new double[team.count()][], b = new double[team.count()][], c = new double[team.count()][];
        team.run(me -> {
            int share = LENGTH / team.count();
            a[me] = new double[share];
            b[me] = new double[share];
            c[me] = new double[share];
            Arrays.fill(b[me], 1);
            Arrays.fill(c[me], 2);
        });
        double best = Double.POSITIVE_INFINITY;
        for (int k = 0; k < passes; k++) {
            long start = System.nanoTime();
            team.run(me -> pass(a[me], b[me], c[me]));
            best = Math.min(best, (System.nanoTime() - start) * 1e-9);
        }
        return 24.0 * LENGTH / best;
    }

    private static void pass(double[] a, double[] b, double[] c) {
        for (int i = 0; i < a.length; i++) {
            a[i] = b[i] + 3 * c[i];
        }
    }
}
