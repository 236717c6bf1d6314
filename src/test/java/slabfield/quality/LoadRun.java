package slabfield.quality;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.io.ScenarioProblems;
import slabfield.io.ScenarioReader;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver;

/**
 * One heavy job in a process of its own, whose memory the caller sets. Prints a row of a table: job, heap allowed and used,
 * time. {@code hall N}: a square hall on mixed fill of N times N cells of 10 cm; {@code stone-hall N}: one on clean stone; {@code objects N}: a house with N openings, holes and
 * footings; {@code row N}: N houses, one after the other.
 */
final class LoadRun {
    private static final int WARM = 5;

    private LoadRun() {}

    public static void main(String[] args) throws ScenarioProblems, IOException {
        int n = Integer.parseInt(args[1]);
        long start = System.nanoTime();
        String job = switch (args[0]) {
            case "hall" -> hall(n, "mixed");
            case "stone-hall" -> hall(n, "clean stone");
            case "objects" -> objects(n);
            default -> row(n);
        };
        System.out.printf(
                Locale.ROOT,
                "| %s | %d MiB | %d MiB | %.0f s | %.0f s |%n",
                job,
                Runtime.getRuntime().maxMemory() >> 20,
                peak() >> 20,
                (System.nanoTime() - start) / 1e9,
                processorTime());
    }

    private static double processorTime() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                        .getProcessCpuTime()
                / 1e9;
    }

    private static String hall(int side, String fill) throws ScenarioProblems {
        double metres = side / 10.0;
        solve(ScenarioReader.read(house(metres, "10 cm", "", "").replace("clean stone", fill), "hall"));
        return String.format(
                Locale.ROOT, "a hall of %.0f m x %.0f m on %s, %,d cells", metres, metres, fill, (long) side * side);
    }

    /** A third each of penetrations, holes and short footings, on a lattice. */
    private static String objects(int n) throws ScenarioProblems {
        int each = n / 3, row = (int) Math.ceil(Math.sqrt(each));
        List<String> openings = new ArrayList<>(), holes = new ArrayList<>(), barriers = new ArrayList<>();
        for (int k = 0; k < each; k++) {
            double x = 1 + 1.5 * (k % row), y = 1 + 1.5 * (k / row);
            openings.add(String.format(
                    Locale.ROOT,
                    "{\"id\":\"p%d\",\"kind\":\"penetration\",\"at\":[%.2f,%.2f],\"radius\":\"3 cm\",\"area\":\"1 cm2\",\"state\":\"open\"}",
                    k,
                    x,
                    y));
            holes.add(String.format(Locale.ROOT, "{\"id\":\"T%d\",\"at\":[%.2f,%.2f]}", k, x + 0.5, y));
            barriers.add(String.format(
                    Locale.ROOT,
                    "{\"id\":\"f%d\",\"path\":[[%.2f,%.2f],[%.2f,%.2f]],\"width\":\"10 cm\"}",
                    k,
                    x,
                    y + 0.7,
                    x + 0.8,
                    y + 0.7));
        }
        solve(ScenarioReader.read(
                house(
                        1.5 * row + 2,
                        "10 cm",
                        String.join(",", openings),
                        ",\"testHoles\":[" + String.join(",", holes) + "],\"barriers\":[" + String.join(",", barriers)
                                + "]"),
                "objects"));
        return String.format(Locale.ROOT, "a house with %,d objects", 3 * each);
    }

    private static String house(double side, String cell, String openings, String more) {
        return String.format(
                Locale.ROOT,
                "{\"slabfield\":1,\"name\":\"Load\",\"lengthUnit\":\"m\",\"cell\":\"%s\",\"slabs\":[{\"id\":\"slab\","
                        + "\"outline\":[[0,0],[%3$f,0],[%3$f,%3$f],[0,%3$f]]}],\"layer\":{\"fill\":\"clean stone\"},\"openings\":[{\"id\":\"joint\","
                        + "\"kind\":\"joint\",\"perimeterOf\":\"slab\",\"width\":\"0.5 mm\",\"state\":\"open\"}%s],\"suctionPoints\":[{\"id\":\"S1\","
                        + "\"at\":[%4$f,%4$f],\"source\":{\"pressure\":\"-200 Pa\"}}]%5$s}",
                cell,
                openings.isEmpty() ? "" : "," + openings,
                side,
                side / 2 + 0.3,
                more);
    }

    /** Every house of the scenarios folder in turn, on cells of 30 cm; what stays in memory must not grow. */
    private static String row(int n) throws ScenarioProblems, IOException {
        List<Scenario> houses = new ArrayList<>();
        try (Stream<Path> files = Files.list(Path.of("scenarios"))) {
            for (Path file :
                    files.filter(f -> f.toString().endsWith(".json")).sorted().toList())
                houses.add(ScenarioReader.read(file).withCellSize(0.3));
        }
        long warm = 0;
        for (int k = 0; k < n; k++) {
            solve(houses.get(k % houses.size()));
            if (k == WARM) warm = kept();
        }
        long grown = kept() - warm;
        if (grown > 4 << 20) throw new IllegalStateException("memory grew by " + (grown >> 10) + " KiB");
        return String.format(
                Locale.ROOT, "%,d houses in a row; kept in memory grew by %d KiB since house %d", n, grown >> 10, WARM);
    }

    private static void solve(Scenario scenario) {
        if (SlabSolver.solve(scenario, Progress.NONE) instanceof Result.Unsolved unsolved)
            throw new IllegalStateException(unsolved.reason());
    }

    /** Memory in use after everything that can be thrown away is gone [byte]. */
    private static long kept() {
        for (int k = 0; k < 3; k++) System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    private static long peak() {
        return ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(p -> p.getType() == MemoryType.HEAP)
                .map(MemoryPoolMXBean::getPeakUsage)
                .mapToLong(u -> u.getUsed())
                .sum();
    }
}
