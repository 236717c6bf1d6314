package slabfield.desktop.view;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.stage.Window;
import javax.management.JMException;
import javax.management.ObjectName;
import slabfield.field.Result;
import slabfield.model.Scenario;

/** What a window holds at one moment: memory, objects, threads and files of the whole process. */
final class SoakMeter {
    private static final int COLLECTIONS = 4;
    /** Between two collections: work that was cancelled ends meanwhile [ms]. */
    private static final long UNTIL_WORK_ENDS = 400 + 8 * Long.getLong("slabfield.soak.pause", 0);

    private static final String NODE = "javafx.scene.";
    /** Colours, gradients, shadows and fonts: the toolkit keeps one for each state of each style as it is first met. */
    private static final List<String> STYLE =
            List.of("javafx.scene.paint.", "javafx.scene.effect.", "javafx.scene.text.Font");

    private static final String OWN = "slabfield.desktop.";
    private static final String CLOSURE = "$$Lambda";

    private SoakMeter() {}

    /**
     * What is held.
     *
     * @param heap size of the objects that are alive, after a collection, the least of some [byte]
     * @param numbers part of it that arrays of numbers have: fields, factors that are kept and come and go, pictures [byte]
     * @param shown nodes in the scenes of all windows
     * @param parts objects of the toolkit's scene packages that are alive, shown or not, without the values of styles (they
     *     count in the heap)
     * @param closures listeners and other closures of the window's own code that are alive
     * @param houses scenarios and predictions that are alive
     * @param threads of the process
     * @param files open in the process
     * @param resident memory that the system gave to the process [byte]
     * @param classes live objects of each class
     */
    record Held(
            long heap,
            long numbers,
            long shown,
            long parts,
            long closures,
            long houses,
            long threads,
            long files,
            long resident,
            Map<String, Long> classes) {
        static final String HEAD =
                "| after | rounds | actions | objects alive | nodes shown | parts of scenes alive | closures alive | houses and predictions alive | threads"
                        + " | open files | memory of the process |\n| ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |";

        String row(double minutes, int rounds, int actions) {
            return String.format(
                    Locale.ROOT,
                    "| %.1f min | %d | %d | %.2f MiB | %d | %d | %d | %d | %d | %d | %.0f MiB |",
                    minutes,
                    rounds,
                    actions,
                    heap / 1048576.0,
                    shown,
                    parts,
                    closures,
                    houses,
                    threads,
                    files,
                    resident / 1048576.0);
        }

        /** Classes of the window and of its toolkit's scenes of which there are more by at least {@code least} than before, the most first. */
        String more(Held before, long least) {
            StringBuilder out = new StringBuilder();
            classes.entrySet().stream()
                    .map(e -> Map.entry(
                            e.getKey(), e.getValue() - before.classes().getOrDefault(e.getKey(), 0L)))
                    .filter(e -> e.getValue() >= least
                            && (e.getKey().startsWith(NODE) || e.getKey().startsWith("slabfield.")))
                    .sorted(Map.Entry.<String, Long>comparingByValue().reversed())
                    .limit(40)
                    .forEach(e ->
                            out.append("\n  +").append(e.getValue()).append(' ').append(e.getKey()));
            return out.toString();
        }
    }

    static Held held() {
        Map<String, Long> classes = Map.of();
        long heap = Long.MAX_VALUE, numbers = 0;
        for (int i = 0; i < COLLECTIONS; i++) {
            Stand.pause(UNTIL_WORK_ENDS);
            Stand.run(() -> {});
            String histogram = histogram();
            long live = live(histogram);
            if (live < heap) {
                classes = classes(histogram);
                numbers = numbers(histogram);
            }
            heap = Math.min(heap, live);
        }
        return new Held(
                heap,
                numbers,
                Stand.fx(() -> Window.getWindows().stream()
                        .mapToLong(w -> nodes(w.getScene().getRoot()))
                        .sum()),
                parts(classes),
                sum(classes, OWN, CLOSURE),
                classes.getOrDefault(Scenario.class.getName(), 0L)
                        + classes.getOrDefault(Result.Solved.class.getName(), 0L),
                ManagementFactory.getThreadMXBean().getThreadCount(),
                files(),
                resident(),
                classes);
    }

    private static long nodes(Node node) {
        long sum = 1;
        if (node instanceof Parent parent) for (Node child : parent.getChildrenUnmodifiable()) sum += nodes(child);
        return sum;
    }

    private static long parts(Map<String, Long> classes) {
        return sum(classes, NODE, "")
                - STYLE.stream().mapToLong(start -> sum(classes, start, "")).sum();
    }

    private static long sum(Map<String, Long> classes, String start, String part) {
        return classes.entrySet().stream()
                .filter(e -> e.getKey().startsWith(start) && e.getKey().contains(part))
                .mapToLong(Map.Entry::getValue)
                .sum();
    }

    /** Number and size of the live objects of each class, after a collection. */
    private static String histogram() {
        try {
            return (String) ManagementFactory.getPlatformMBeanServer()
                    .invoke(
                            new ObjectName("com.sun.management:type=DiagnosticCommand"),
                            "gcClassHistogram",
                            new Object[] {new String[0]},
                            new String[] {String[].class.getName()});
        } catch (JMException reason) {
            throw new IllegalStateException(reason);
        }
    }

    /** Size of all live objects: the last line is "Total objects bytes" [byte]. */
    private static long live(String histogram) {
        return histogram
                .lines()
                .filter(line -> line.startsWith("Total"))
                .mapToLong(line -> Long.parseLong(line.strip().split("\\s+")[2]))
                .sum();
    }

    /** Size of the arrays of numbers [byte]. */
    private static long numbers(String histogram) {
        return histogram
                .lines()
                .map(line -> line.strip().split("\\s+"))
                .filter(f -> f.length >= 4 && f[3].matches("\\[+[BDFIJ]"))
                .mapToLong(f -> Long.parseLong(f[2]))
                .sum();
    }

    /** Live objects of each class; closures of one place in the code count as one class. */
    private static Map<String, Long> classes(String histogram) {
        Map<String, Long> out = new HashMap<>();
        histogram
                .lines()
                .map(line -> line.strip().split("\\s+"))
                .filter(f -> f.length >= 4 && f[0].endsWith(":"))
                .forEach(f -> out.merge(f[3].replaceFirst("/0x.*", ""), Long.parseLong(f[1]), Long::sum));
        return out;
    }

    private static long files() {
        try (Stream<Path> open = Files.list(Path.of("/proc/self/fd"))) {
            return open.count();
        } catch (IOException elsewhere) {
            return 0;
        }
    }

    private static long resident() {
        Path status = Path.of("/proc/self/status");
        if (!Files.isReadable(status)) return 0;
        try (Stream<String> lines = Files.lines(status)) {
            return lines.filter(l -> l.startsWith("VmRSS"))
                    .mapToLong(l -> 1024 * Long.parseLong(l.replaceAll("\\D", "")))
                    .sum();
        } catch (IOException reason) {
            throw new UncheckedIOException(reason);
        }
    }
}
