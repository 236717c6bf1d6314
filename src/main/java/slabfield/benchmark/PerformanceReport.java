package slabfield.benchmark;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import slabfield.io.ScenarioProblems;
import slabfield.solve.Workers;

/**
 * Measures everything that {@code docs/performance.md} states and writes it: {@code OUT.md GRIDS REPETITIONS [PEERS]}.
 * GRIDS is a folder of problem files, or - to leave the section about the grid solver as it stands in OUT.md; PEERS holds one JSON object a line for each run of another solver, with the keys
 * {@code solver}, {@code grid} (name of the problem file without ending), {@code threads} and {@code total_s}.
 */
public final class PerformanceReport {
    private static final List<String> GRIDS = List.of(
            "cell128",
            "cell256",
            "cell512",
            "cell1024",
            "cell2048",
            "hardA",
            "hardB",
            "hardC",
            "hardC2",
            "hardC3",
            "hardC4");
    /** Grid whose plain cycle is looked at closely. */
    private static final String PLAIN_GRID = "cell1024";
    /** How often the whole list of grids is gone through, so that one bad moment does not spoil a row. */
    private static final int ROUNDS = 3;

    /** Column of the total in the table of grids. */
    private static final int TOTAL = 6;

    private static final int[] SIDES = {64, 128, 256};

    private static final String GRID_SECTION = "## The grid solver";
    private static final String FACTOR_SECTION = "## The sparse factor";

    private final StringBuilder out = new StringBuilder();
    private final List<String> peers;
    private final int repetitions;

    private PerformanceReport(List<String> peers, int repetitions) {
        this.peers = peers;
        this.repetitions = repetitions;
    }

    public static void main(String[] args) throws IOException, ScenarioProblems {
        List<String> peers = args.length > 3 ? Files.readAllLines(Path.of(args[3])) : List.of();
        var report = new PerformanceReport(peers, Integer.parseInt(args[2]));
        report.machine();
        if (args[1].equals("-")) report.heldAgainstPeers(gridsIn(Files.readString(Path.of(args[0]))));
        else report.grids(Path.of(args[1]));
        report.factor();
        report.drags();
        report.houses(Path.of("scenarios"));
        report.limits();
        Files.writeString(Path.of(args[0]), report.out);
    }

    private void line(String format, Object... values) {
        out.append(String.format(Locale.ROOT, format, values)).append('\n');
    }

    private void machine() throws IOException {
        var system = ManagementFactory.getOperatingSystemMXBean();
        line("# Performance");
        line("");
        line(
                "Every figure on this page comes from a run of `slabfield.benchmark.PerformanceReport`; DEVELOPERS.md has the command.");
        line(
                "Times are the best of some repetitions, in milliseconds. Where the load is above the number of processors they are too long,");
        line("and only ratios within one row mean much.");
        line("");
        line("- Machine: %s, %d processors, %s", processor(), system.getAvailableProcessors(), system.getArch());
        line(
                "- Java %s, heap at most %d MB",
                Runtime.version(), Runtime.getRuntime().maxMemory() >> 20);
        line("");
    }

    private void run() {
        line(
                "Run of %s, %d repetitions, load when it began %.1f.",
                LocalDate.now(),
                repetitions,
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
        line("");
    }

    private static String gridsIn(String page) {
        return page.substring(page.indexOf(GRID_SECTION), page.indexOf(FACTOR_SECTION));
    }

    private static String processor() throws IOException {
        Path info = Path.of("/proc/cpuinfo");
        if (!Files.isReadable(info)) return "processor not named";
        return Files.readAllLines(info).stream()
                .filter(l -> l.startsWith("model name"))
                .map(l -> l.substring(l.indexOf(':') + 1).strip())
                .findFirst()
                .orElse("processor not named");
    }

    private void grids(Path folder) throws IOException {
        line(GRID_SECTION);
        line("");
        run();
        line("The whole list was gone through %d times; the quickest of all runs of a row counts.", ROUNDS);
        line(
                "Set-up and solve from zero to a true relative residual of 1e-8. An iteration is one of preconditioned conjugate gradients,");
        line(
                "however much its cycle does. A work unit is one pass of the five-point operator in the same run. Bytes a cell: heap that");
        line(
                "the solver holds after the solve, over active cells; in brackets with the problem, its right-hand side and answer.");
        if (!peers.isEmpty()) {
            line("");
            line(
                    "The other solver, %s, ran over the same files on the same machine right before and after this run, to the same residual",
                    peers.stream()
                            .map(l -> value(l, "solver"))
                            .distinct()
                            .sorted()
                            .reduce((x, y) -> x + ", " + y)
                            .orElse(""));
            line("and with as many threads or processes; the least of its times counts.");
        }
        line("");
        line(
                "cell: an L of stone with a quadrant of sand, two strips one cell wide with a door each. hardA: blocks of 7 by 7 cells over");
        line(
                "four decades. hardB: every cell by itself over four decades. hardC, C2, C3, C4: ten strips each way, four doors in each, and");
        line(
                "200 pads cut out, from four seeds. Where plain V-cycles turn out slow, the solver goes over to a K-cycle with two");
        line("smoothings, whose iterations cost more.");
        line("");
        line(
                "| grid | threads | iterations | set-up | solve | total | work units | bytes a cell | fastest other solver | ratio |");
        line("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        List<String> names = GRIDS.stream()
                .filter(g -> Files.isReadable(folder.resolve(g + ".grid")))
                .toList();
        double[] bandwidth = new double[3];
        Map<String, GridBenchmark.Measurement> best = new LinkedHashMap<>();
        for (int round = 0; round < ROUNDS; round++) for (String name : names) measure(folder, name, bandwidth, best);
        List<String> scaling = new ArrayList<>();
        for (String name : names) {
            var one = best.get(name + 1);
            var two = best.get(name + 2);
            row(name, one);
            row(name, two);
            scaling.add(String.format(
                    Locale.ROOT,
                    "| %s | %.2f | %.2f |",
                    name,
                    one.total() / two.total(),
                    one.stencil() / two.stencil()));
        }
        line("");
        line(
                "Two threads against one. Memory bandwidth (triad): %.1f GB/s with one thread, %.1f GB/s with two, so a solve that",
                bandwidth[1] * 1e-9, bandwidth[2] * 1e-9);
        line("only waits for memory gains %.2f times.", bandwidth[2] / bandwidth[1]);
        line("");
        line("| grid | solve, times faster | five-point pass, times faster |");
        line("| --- | ---: | ---: |");
        scaling.forEach(s -> line("%s", s));
        line("");
        gridShares(folder, bandwidth, best);
    }

    /** One round for one grid, with one thread and with two; keeps the better of all rounds. */
    private void measure(Path folder, String name, double[] bandwidth, Map<String, GridBenchmark.Measurement> best)
            throws IOException {
        var problem = GridBenchmark.read(folder.resolve(name + ".grid"));
        int times =
                Math.max(3, repetitions * 512 / Math.max(512, problem.operator().columns()));
        for (int threads = 1; threads <= 2; threads++)
            try (var team = new Workers(threads)) {
                bandwidth[threads] = Math.max(bandwidth[threads], Bandwidth.triad(team, 3));
                best.merge(
                        name + threads,
                        GridBenchmark.measure(problem, team, times),
                        GridBenchmark.Measurement::orBetter);
            }
    }

    private void row(String name, GridBenchmark.Measurement m) {
        line(
                "| %s | %d | %d | %.2f | %.2f | %.2f | %.0f | %.0f (%.0f) |%s",
                name,
                m.threads(),
                m.iterations(),
                1e3 * m.setUp(),
                1e3 * m.solve(),
                1e3 * m.total(),
                m.workUnits(),
                (double) m.own() / m.cells(),
                (double) m.heap() / m.cells(),
                against(peer(name, m.threads()), 1e3 * m.total()));
    }

    /**
     * The last two cells of a row.
     *
     * @param peer time of the fastest other solver [s]
     * @param total own time [ms]
     */
    private static String against(OptionalDouble peer, double total) {
        if (peer.isEmpty()) return " not run |  |";
        double theirs = 1e3 * peer.getAsDouble();
        return String.format(Locale.ROOT, " %.2f | %.2f |", theirs, total / theirs);
    }

    /** Rows of grids measured before, held against all runs of the other solvers, those after it among them. */
    private void heldAgainstPeers(String section) {
        section.lines().forEach(row -> {
            String[] cells = row.split("\\|");
            boolean measured = cells.length > TOTAL + 3 && GRIDS.contains(cells[1].strip());
            line("%s", measured ? heldAgainstPeers(row, cells) : row);
        });
    }

    private String heldAgainstPeers(String row, String[] cells) {
        OptionalDouble peer = peer(cells[1].strip(), Integer.parseInt(cells[2].strip()));
        String own = String.join("|", List.of(cells).subList(0, TOTAL + 3)) + "|";
        return peer.isEmpty() ? row : own + against(peer, Double.parseDouble(cells[TOTAL].strip()));
    }

    private void gridShares(Path folder, double[] bandwidth, Map<String, GridBenchmark.Measurement> best)
            throws IOException {
        line("### Where a grid's time goes");
        line("");
        line(
                "Shares in percent, set-up and solve one after the other; of two threads both are counted. A thread can be looked at only"
                        + " where it\nmay be stopped, which is seldom within a pass over rows and always in a wait, so shares of waiting are too"
                        + " high. What two threads lose\nis told by the table above.");
        line("");
        for (String name : List.of(PLAIN_GRID, "hardC")) {
            if (!best.containsKey(name + 1)) continue;
            var problem = GridBenchmark.read(folder.resolve(name + ".grid"));
            for (int threads = 1; threads <= 2; threads++)
                try (var team = new Workers(threads)) {
                    line("%s", GridProfile.shares(name, problem, team));
                }
        }
        line("");
        line(
                "The least that has to move: each array once for every pass over it, counted from the passes of a plain iteration.");
        line("");
        for (int threads = 1; threads <= 2; threads++)
            if (best.containsKey(PLAIN_GRID + threads))
                line("- %s", GridProfile.limit(PLAIN_GRID, best.get(PLAIN_GRID + threads), bandwidth[threads]));
        line("");
    }

    private OptionalDouble peer(String grid, int threads) {
        return peers.stream()
                .filter(l ->
                        value(l, "grid").equals(grid) && value(l, "threads").equals(Integer.toString(threads)))
                .mapToDouble(l -> Double.parseDouble(value(l, "total_s")))
                .min();
    }

    private static String value(String json, String key) {
        Matcher m = Pattern.compile("\"" + key + "\"\\s*:\\s*\"?([^\",}]+)").matcher(json);
        return m.find() ? m.group(1).strip() : "";
    }

    private void factor() {
        line(FACTOR_SECTION);
        line("");
        run();
        line(
                "Five-point grids. A further column of the inverse is what one more place costs in a placement map, before it is judged.");
        line("");
        line("| side | order | analyse | factor | one solve | a column in a batch of 64 | entries of L a node |");
        line("| ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        for (int side : SIDES) line("%s", FactorBenchmark.row(side, repetitions));
        line("");
    }

    private void drags() {
        line("## Drags");
        line("");
        run();
        line(
                "An N x N grid whose laws are linear, and a held pit of %d cells on it. *Move*: the whole field after the pit has moved by a cell,",
                DragBenchmark.PIT);
        line(
                "from kept responses that are at hand. *Fetch and move*: the same where those of the cells newly under or beside the pit must be");
        line(
                "taken from the kept factor first. *Warm*: the same by cycles on the grid, from the last field and the coarse levels where the grid");
        line(
                "has not changed, which is looked at first; there is no factor. *Strength*: the field after the pit is held lower. *Error*: largest");
        line("difference of a move to a new factor of the changed grid, over the pit's pressure.");
        line("");
        line("| N | move | fetch and move | warm | strength | one solve | new factor | error |");
        line("| ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        for (int side : new int[] {128, 256}) line("%s", DragBenchmark.row(side, repetitions));
        line("");
        line(
                "The invented house of 150 m2, all laws as they are, in one `SolveSession`, results read in full: the pit moved by a cell, by a");
        line("third of a cell, and its fan changed. Median and best of %d.", DragBenchmark.MOVES);
        line("");
        line("| cells | moved by a cell | by a third of a cell | another fan |");
        line("| ---: | ---: | ---: | ---: |");
        for (double cell : new double[] {0.2, 0.1}) line("%s", DragBenchmark.houseRow(cell, repetitions));
        line("");
    }

    private void houses(Path folder) throws IOException, ScenarioProblems {
        line("## Whole houses");
        line("");
        run();
        line(
                "The scenarios to learn from, and an invented house of 150 m2 with inertial fill, tile, hollow walls on four sides, a joint, a");
        line(
                "sump and a fan; suction on. In brackets: Newton steps. Warm: the first suction point has moved by a cell. The map");
        line(
                "tries a pit held at -200 Pa at every 20 cm; where cells are that wide, as those of large-slab-on-grade, every cell is a place.");
        line("");
        line("| scenario | cells | cold | warm | places | placement map |");
        line("| --- | ---: | ---: | ---: | ---: | ---: |");
        int times = Math.max(3, repetitions / 4);
        line(
                "%s",
                HouseBenchmark.row(
                        HouseBenchmark.measure("everything at once, 150 m2", WholeHouse.withCells(0.1), times)));
        try (var files = Files.list(folder)) {
            for (Path file :
                    files.filter(f -> f.toString().endsWith(".json")).sorted().toList())
                line("%s", HouseBenchmark.row(HouseBenchmark.measure(file, times)));
        }
    }

    private void limits() {
        line("");
        line("### Where the time goes");
        line("");
        line(
                "Shares in percent for the invented house of 150 m2 with everything. A drag is meant to take 30 ms, a solve from nothing 100 ms and a");
        line(
                "map 500 ms; what is above that is above it for these parts. A drag needs about one new factor, as the inertial loss around the pit");
        line(
                "bends the curvature, and several solves with it; both use two processors but for the last separators. A map needs its samples because joint,");
        line(
                "tile and fill all bend, and each sample is a whole solve on wider cells; where spot openings alone bend it takes none.");
        line("");
        shares("Drag", () -> DragBenchmark.drag(5 * repetitions));
        shares("From nothing", () -> DragBenchmark.cold(3 * repetitions));
        shares("Placement map, one of its threads", () -> DragBenchmark.maps(Math.max(2, repetitions / 2)));
    }

    private void shares(String what, Runnable run) {
        run.run();
        var shares = Profile.of(run);
        line(
                "- %s: %s.",
                what,
                shares.entrySet().stream()
                        .map(e -> e.getKey() + " " + e.getValue())
                        .collect(java.util.stream.Collectors.joining(", ")));
    }
}
