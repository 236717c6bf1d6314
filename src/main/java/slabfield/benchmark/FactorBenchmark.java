package slabfield.benchmark;

import java.util.Arrays;
import java.util.Locale;
import slabfield.solve.NestedDissection;
import slabfield.solve.PanelCholesky;
import slabfield.solve.SymmetricMatrix;
import slabfield.solve.UnitLoads;

/** Times the sparse factor on a square five-point grid with a leak. */
final class FactorBenchmark {
    private static final int BATCH = 64;
    /** A size is gone through for so long that all of it has been compiled [ns]. */
    private static final long AT_LEAST = 5_000_000_000L;

    private FactorBenchmark() {}

    /** A row of a table: order, analysis, factor, one solve [ms], a column of the inverse in a batch [ms], entries of L a node. */
    static String row(int side, int repetitions) {
        int n = side * side;
        double[] x = new double[n], y = new double[n];
        SymmetricMatrix matrix = DragKernel.grid(side, x, y);
        double[] best = new double[5], right = new double[n], answer = new double[n];
        Arrays.fill(best, Double.POSITIVE_INFINITY);
        Arrays.fill(right, 1);
        int[] nodes = new int[BATCH];
        long fill = 0;
        long until = System.nanoTime() + AT_LEAST;
        for (int k = 0; k < repetitions || System.nanoTime() < until; k++) {
            long t0 = System.nanoTime();
            int[] order = NestedDissection.order(matrix, x, y);
            long t1 = System.nanoTime();
            PanelCholesky factor = new PanelCholesky(matrix, order);
            long t2 = System.nanoTime();
            if (factor.factor().isPresent()) throw new IllegalStateException("the grid has a leak everywhere");
            long t3 = System.nanoTime();
            factor.solve(right, answer);
            long t4 = System.nanoTime();
            UnitLoads loads = new UnitLoads(factor, BATCH);
            System.arraycopy(order, n / 2, nodes, 0, BATCH);
            long t5 = System.nanoTime();
            loads.solve(nodes, 0, BATCH);
            double[] times = {t1 - t0, t2 - t1, t3 - t2, t4 - t3, (System.nanoTime() - t5) / (double) BATCH};
            for (int i = 0; i < best.length; i++) best[i] = Math.min(best[i], times[i] * 1e-6);
            fill = factor.fill();
        }
        return String.format(
                Locale.ROOT,
                "| %d | %.1f | %.1f | %.1f | %.2f | %.3f | %.1f |",
                side,
                best[0],
                best[1],
                best[2],
                best[3],
                best[4],
                (double) fill / n);
    }
}
