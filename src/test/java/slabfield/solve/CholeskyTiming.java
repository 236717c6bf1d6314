package slabfield.solve;

import java.util.Arrays;

/** Prints what ordering, analysis, factoring and solving take: {@code java slabfield.solve.CholeskyTiming [side ...]}. */
final class CholeskyTiming {
    private CholeskyTiming() {}

    public static void main(String[] args) {
        int[] sides = args.length == 0
                ? new int[] {128, 256}
                : Arrays.stream(args).mapToInt(Integer::parseInt).toArray();
        for (int side : sides) {
            for (boolean diagonals : new boolean[] {false, true}) {
                time(Graphs.grid(side, side, diagonals, 0, 1), side, diagonals ? 9 : 5);
            }
        }
    }

    private static void time(Graphs graph, int side, int points) {
        double[] best = new double[5];
        Arrays.fill(best, Double.POSITIVE_INFINITY);
        int fill = 0;
        for (int run = 0; run < 8; run++) {
            long t0 = System.nanoTime();
            int[] order = NestedDissection.order(graph.matrix(), graph.x(), graph.y());
            long t1 = System.nanoTime();
            var solver = new CholeskySolver(graph.matrix(), order);
            long t2 = System.nanoTime();
            solver.factor();
            long t3 = System.nanoTime();
            solver.factor();
            long t4 = System.nanoTime();
            double[] x = graph.someRightHandSide();
            long t5 = System.nanoTime();
            solver.solve(x, x);
            long t6 = System.nanoTime();
            long[] times = {t1 - t0, t2 - t1, t3 - t2, t4 - t3, t6 - t5};
            for (int k = 0; k < 5; k++) {
                best[k] = Math.min(best[k], times[k] / 1e6);
            }
            fill = solver.fill();
        }
        System.out.printf(
                "%d x %d, %d-point: order %.1f ms, lay out %.1f, first factor %.1f, refactor %.1f, solve %.2f; %.1f entries of L a node%n",
                side, side, points, best[0], best[1], best[2], best[3], best[4], (double) fill / side / side);
    }
}
