package slabfield.benchmark;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import slabfield.solve.GridMultigrid;
import slabfield.solve.IterationResult;
import slabfield.solve.Watch;
import slabfield.solve.Workers;

/** Where the time of a grid's solve goes, and how much of it the memory alone would take. */
final class GridProfile {
    /**
     * Bytes a cell that one plain iteration has to bring through on the cells, each array once for every pass over it; two cells
     * make one element of an array. Restriction: residual, reciprocal diagonal, five coefficients, corner weights, coarse right
     * side. Correction: the same, coarse answer, last product, result. Direction 12, product 36, step 32 an element.
     */
    private static final double ON_CELLS = (38 + 46 + 12 + 36 + 32) / 2.0;
    /**
     * The same on coarse levels, of which the first has a fourth of the cells and all together a third: some seven
     * coefficients, right side and answer, in three and a half passes of four bytes each.
     */
    private static final double ON_COARSE = 9 * 4 * 3.5 / 3;

    /** Time that is watched [ns]. */
    private static final long WATCHED = 3_000_000_000L;

    private GridProfile() {}

    /** A line: shares in percent. */
    static String shares(String name, GridBenchmark.Problem problem, Workers team) {
        var multigrid = new GridMultigrid(problem.operator(), team);
        double[] x = new double[problem.operator().size()];
        repeat(multigrid, problem, x);
        var shares = Profile.ofGrid(() -> repeat(multigrid, problem, x));
        return String.format(
                Locale.ROOT,
                "- %s, %d thread%s: %s.",
                name,
                team.count(),
                team.count() == 1 ? "" : "s",
                shares.entrySet().stream()
                        .map(e -> e.getKey() + " " + e.getValue())
                        .collect(Collectors.joining(", ")));
    }

    private static void repeat(GridMultigrid multigrid, GridBenchmark.Problem problem, double[] x) {
        long end = System.nanoTime() + WATCHED;
        while (System.nanoTime() < end) {
            Arrays.fill(x, 0);
            multigrid.update();
            IterationResult result = multigrid.solve(problem.rightHandSide(), x, 1e-8, 200, Watch.NONE);
            if (!result.hasConverged()) throw new IllegalStateException("the grid of the benchmark has an answer");
        }
    }

    /**
     * A sentence on how much of a plain solve the memory alone would take.
     *
     * @param bandwidth of the memory with as many threads [byte/s]
     */
    static String limit(String name, GridBenchmark.Measurement m, double bandwidth) {
        double bytes = ON_CELLS + ON_COARSE, took = m.solve() / m.iterations(), least = bytes * m.cells() / bandwidth;
        return String.format(
                Locale.ROOT,
                "%s, %d thread%s: an iteration takes %.2f ms and has to move some %.0f bytes a cell, which at the triad's %.1f GB/s"
                        + " takes %.2f ms, %.0f %% of it.",
                name,
                m.threads(),
                m.threads() == 1 ? "" : "s",
                1e3 * took,
                bytes,
                bandwidth * 1e-9,
                1e3 * least,
                100 * least / took);
    }
}
