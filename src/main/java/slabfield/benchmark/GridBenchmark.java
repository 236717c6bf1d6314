package slabfield.benchmark;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import slabfield.solve.GridMultigrid;
import slabfield.solve.GridOperator;
import slabfield.solve.IterationResult;
import slabfield.solve.Watch;
import slabfield.solve.Workers;

/**
 * Times the grid solver on a problem file and prints one line of JSON: {@code FILE.grid THREADS REPETITIONS}. Set-up and
 * solve start from nothing and from zero; the best of the repetitions counts. A work unit is one pass of the plain
 * five-point operator in double precision on the same grid with the same threads. {@code peakHeap_MB} is the heap in use
 * after a collection while everything is held, the problem's own arrays included.
 *
 * <p>A file holds, little-endian and row by row: int64 N; N*N float64 transmissivities; N*N float64 leak
 * conductances; N*N int8 mask; N*N int8 suction numbers (0: none; else the cell is held at -1).
 */
public final class GridBenchmark {
    private GridBenchmark() {}

    /** The equations of a problem file. */
    record Problem(GridOperator operator, double[] rightHandSide) {}

    public static void main(String[] args) throws IOException {
        Problem problem = read(Path.of(args[0]));
        int threads = Integer.parseInt(args[1]);
        int repetitions = Integer.parseInt(args[2]);
        try (var team = new Workers(threads)) {
            System.out.println(measure(problem, team, repetitions).json());
        }
    }

    /** Runs are repeated for that long whatever the count, until the code is compiled for the problem [ns]. */
    static final long AT_LEAST = 2_000_000_000L;

    /**
     * The best of some runs.
     *
     * @param cells active ones
     * @param residual true relative residual reached
     * @param setUp set-up [s]
     * @param solve iterating [s]
     * @param stencil one pass of the plain operator [s]
     * @param own heap that the solver holds [byte]
     * @param heap in use, the problem's own arrays included [byte]
     */
    record Measurement(
            int n,
            int threads,
            int cells,
            double residual,
            int iterations,
            double setUp,
            double solve,
            double stencil,
            long own,
            long heap) {
        double total() {
            return setUp + solve;
        }

        /** The quicker of two runs of the same problem, with the quicker of their passes and the less of their heaps. */
        Measurement orBetter(Measurement other) {
            Measurement best = other.total() < total() ? other : this;
            return new Measurement(
                    n,
                    threads,
                    cells,
                    best.residual,
                    best.iterations,
                    best.setUp,
                    best.solve,
                    Math.min(stencil, other.stencil),
                    Math.min(own, other.own),
                    Math.min(heap, other.heap));
        }

        double workUnits() {
            return total() / stencil;
        }

        String json() {
            return String.format(
                    Locale.ROOT,
                    "{\"n\":%d,\"threads\":%d,\"relativeResidual\":%.2e,\"iterations\":%d,\"setup_s\":%.6f,\"solve_s\":%.6f,"
                            + "\"total_s\":%.6f,\"stencil_s\":%.7f,\"workUnits\":%.1f,\"solverHeap_MB\":%d,\"peakHeap_MB\":%d}",
                    n,
                    threads,
                    residual,
                    iterations,
                    setUp,
                    solve,
                    total(),
                    stencil,
                    workUnits(),
                    own >> 20,
                    heap >> 20);
        }
    }

    static Measurement measure(Problem problem, Workers team, int repetitions) {
        GridOperator operator = problem.operator();
        double[] x = new double[operator.size()];
        double best = Double.POSITIVE_INFINITY, setUp = 0;
        IterationResult result = null;
        // A team holds on to its last task and what that holds.
        team.run(me -> {});
        long before = heapInUse();
        var multigrid = new GridMultigrid(operator, team);
        long warm = System.nanoTime() + AT_LEAST;
        for (int run = 0; run < repetitions || System.nanoTime() < warm; run++) {
            Arrays.fill(x, 0);
            long start = System.nanoTime();
            multigrid.update();
            long ready = System.nanoTime();
            result = multigrid.solve(problem.rightHandSide(), x, 1e-8, 200, Watch.NONE);
            double total = (System.nanoTime() - start) * 1e-9;
            if (total < best) {
                best = total;
                setUp = (ready - start) * 1e-9;
            }
        }
        // One more run keeps the solver in use until its heap has been measured.
        long heap = heapInUse();
        multigrid.update();
        double pass = new StencilPass(operator, team).best(repetitions);
        int cells = 0;
        for (boolean active : operator.active()) {
            cells += active ? 1 : 0;
        }
        return new Measurement(
                operator.columns(),
                team.count(),
                cells,
                result.residual(),
                result.iterations(),
                setUp,
                best - setUp,
                pass,
                heap - before,
                heap);
    }

    private static long heapInUse() {
        System.gc();
        Runtime runtime = Runtime.getRuntime();
        return runtime.totalMemory() - runtime.freeMemory();
    }

    static Problem read(Path file) throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN);
        int n = (int) bytes.getLong();
        int cells = n * n;
        double[] t = new double[cells];
        double[] leak = new double[cells];
        bytes.asDoubleBuffer().get(t).get(leak);
        bytes.position(8 + 16 * cells);
        boolean[] inside = new boolean[cells];
        boolean[] active = new boolean[cells];
        for (int c = 0; c < cells; c++) {
            inside[c] = bytes.get() != 0;
        }
        for (int c = 0; c < cells; c++) {
            active[c] = bytes.get() == 0 && inside[c];
        }
        double[] east = new double[cells];
        double[] north = new double[cells];
        double[] b = new double[cells];
        for (int c = 0; c < cells; c++) {
            if (c % n + 1 < n && inside[c] && inside[c + 1]) {
                east[c] = join(c, c + 1, 2 * t[c] * t[c + 1] / (t[c] + t[c + 1]), active, leak, b);
            }
            if (c + n < cells && inside[c] && inside[c + n]) {
                north[c] = join(c, c + n, 2 * t[c] * t[c + n] / (t[c] + t[c + n]), active, leak, b);
            }
        }
        return new Problem(new GridOperator(n, n, east, north, leak, active), b);
    }

    /** Moves a link to a suction cell, held at -1, into the other cell's leak and right-hand side. */
    private static double join(int a, int c, double conductance, boolean[] active, double[] leak, double[] b) {
        if (active[a] != active[c]) {
            int free = active[a] ? a : c;
            leak[free] += conductance;
            b[free] -= conductance;
        }
        return conductance;
    }
}
