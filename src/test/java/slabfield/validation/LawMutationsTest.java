package slabfield.validation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.lang.reflect.InvocationTargetException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/**
 * Changes one number in the source of one law at a time by a twentieth, compiles the laws anew, and looks whether any case
 * that calls laws turns red. Writes docs/validation-mutations.md. It takes minutes, so it runs only when asked for:
 *
 * <pre>mvn test -Dtest=LawMutationsTest -Dslabfield.mutations=true</pre>
 */
@EnabledIfSystemProperty(named = "slabfield.mutations", matches = "true")
class LawMutationsTest {
    private static final Path LAWS = Path.of("src/main/java/slabfield/law");
    private static final Path PAGE = Path.of("docs/validation-mutations.md");
    private static final double FACTOR = 1.05;
    private static final Pattern NUMBER =
            Pattern.compile("(?<![\\w.\"])\\d[\\d_]*(?:\\.\\d+)?(?:[eE][+-]?\\d+)?(?![\\w.])");
    private static final Pattern REMARK = Pattern.compile("/\\*.*?\\*/|//[^\\n]*|\"[^\"\\n]*\"", Pattern.DOTALL);
    /** Lines whose numbers count, index or stop a loop, or only guard an argument. */
    private static final Pattern NO_COEFFICIENT =
            Pattern.compile("for \\(|while \\(|MOST_STEPS|RELATIVE_STEP =|ROUNDING =|\\.length|\\[|Require\\.|\"");

    /** Why a change on such a line alters no number, or none that a source prints. */
    private static final Map<String, String> REASONS = Map.of(
            "double x = -1.8", "first guess of an iteration that ends at the same root",
            "double step =", "step of an iteration that ends at the same root",
            "(low + high) / 2", "step of an iteration that ends at the same root",
            "0.5 * (low + high)", "step of an iteration that ends at the same root",
            "x = difference / 2;", "first guess of an iteration that ends at the same root",
            "porosity < 1", "guard of an argument",
            "EARTH_RADIUS",
                    "a twentieth of the earth's radius moves the pressure at 15,000 ft by 0.002 %, less than tables print");

    private final Path classes = Path.of("target/classes");

    /** One changed number. */
    private record Mutant(Path file, int line, String code, String from, String to, String source) {}

    /** How a mutant fared. */
    private enum Fate {
        RED("red"),
        MOVED("moved only"),
        SURVIVED("SURVIVED"),
        NO_PROGRAM("does not compile");

        private final String word;

        Fate(String word) {
            this.word = word;
        }
    }

    @Test
    void everyNumberOfALawIsHeldByACase() throws Exception {
        List<String> sound = verdicts(classes);
        List<String> rows = new ArrayList<>();
        List<String> survivors = new ArrayList<>();
        int[] counts = new int[Fate.values().length];
        for (Mutant m : mutants()) {
            List<String> turned = new ArrayList<>();
            Fate fate = fate(m, sound, turned);
            counts[fate.ordinal()]++;
            boolean noticed = fate == Fate.RED || fate == Fate.NO_PROGRAM;
            String last = noticed ? String.join(" ", turned.stream().limit(4).toList()) : reason(m);
            (noticed ? rows : survivors)
                    .add("| " + m.file.getFileName() + ":" + m.line + " | `"
                            + m.code.strip().replace("|", "\\|") + "` | " + m.from + " -> " + m.to + " | " + fate.word
                            + " | " + last + " |");
        }
        write(rows, survivors, counts);
        assertThat(survivors)
                .as("changes that no case notices and nothing explains")
                .noneMatch(r -> r.endsWith("|  |"));
    }

    private static String reason(Mutant m) {
        return REASONS.entrySet().stream()
                .filter(e -> m.code.contains(e.getKey()))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse("");
    }

    private static List<Mutant> mutants() throws IOException {
        List<Mutant> mutants = new ArrayList<>();
        try (Stream<Path> files = Files.list(LAWS)) {
            for (Path file : files.sorted().toList()) {
                if (file.endsWith("Require.java")) continue;
                String source = Files.readString(file);
                String code = REMARK.matcher(source).replaceAll(r -> r.group().replaceAll("[^\\n]", " "));
                Matcher number = NUMBER.matcher(code);
                while (number.find()) {
                    int line = (int) code.substring(0, number.start())
                                    .chars()
                                    .filter(c -> c == '\n')
                                    .count()
                            + 1;
                    String whole = source.lines().skip(line - 1L).findFirst().orElseThrow();
                    double value = Double.parseDouble(number.group().replace("_", ""));
                    if (value == 0 || NO_COEFFICIENT.matcher(whole).find()) continue;
                    String to = Double.toString(value * FACTOR);
                    mutants.add(new Mutant(
                            file,
                            line,
                            whole,
                            number.group(),
                            to,
                            source.substring(0, number.start()) + to + source.substring(number.end())));
                }
            }
        }
        return mutants;
    }

    private Fate fate(Mutant m, List<String> sound, List<String> turned) throws Exception {
        Path out = Files.createTempDirectory("law-mutant"), sources = Files.createTempDirectory("law-source");
        try {
            if (!compiles(m, sources, out)) return Fate.NO_PROGRAM;
            List<String> now = verdicts(out);
            boolean moved = false;
            for (int i = 0; i < sound.size(); i++) {
                String[] before = sound.get(i).split(" "), after = now.get(i).split(" ");
                if (before[1].equals("agrees") && !after[1].equals("agrees")) turned.add(after[0].substring(0, 4));
                moved |= !after[2].equals(before[2]);
            }
            List<String> distinct = turned.stream().distinct().toList();
            turned.clear();
            turned.addAll(distinct);
            return !turned.isEmpty() ? Fate.RED : moved ? Fate.MOVED : Fate.SURVIVED;
        } finally {
            delete(out);
            delete(sources);
        }
    }

    private boolean compiles(Mutant m, Path sources, Path out) throws IOException {
        Path changed = sources.resolve(m.file.getFileName());
        Files.writeString(changed, m.source);
        List<String> arguments =
                new ArrayList<>(List.of("-proc:none", "-nowarn", "-d", out.toString(), "-cp", classes.toString()));
        try (Stream<Path> files = Files.list(LAWS)) {
            files.filter(f -> !f.getFileName().equals(changed.getFileName())).forEach(f -> arguments.add(f.toString()));
        }
        arguments.add(changed.toString());
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        StringWriter said = new StringWriter();
        var units = compiler.getStandardFileManager(null, null, null)
                .getJavaFileObjectsFromStrings(arguments.subList(6, arguments.size()));
        return compiler.getTask(said, null, null, arguments.subList(0, 6), null, units)
                .call();
    }

    /** What every number of every case that calls laws alone says, with the laws of a folder. */
    @SuppressWarnings("unchecked")
    private List<String> verdicts(Path laws) throws Exception {
        List<URL> path = new ArrayList<>(List.of(laws.toUri().toURL()));
        for (String part : System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"))
                .split(java.io.File.pathSeparator))
            path.add(Path.of(part).toUri().toURL());
        try (URLClassLoader loader =
                new URLClassLoader(path.toArray(URL[]::new), ClassLoader.getPlatformClassLoader())) {
            return (List<String>) loader.loadClass("slabfield.validation.LawMutationsTest$Probe")
                    .getMethod("verdicts")
                    .invoke(null);
        } catch (InvocationTargetException e) {
            throw new IllegalStateException(e.getCause());
        }
    }

    /** Runs the cases inside a class loader of its own. */
    public static final class Probe {
        private Probe() {}

        /** For each claim: its case, whether it agrees, and whether it stands. */
        public static List<String> verdicts() throws IOException, CaseProblem {
            List<String> out = new ArrayList<>();
            for (ValidationCase c : Validation.cases(Path.of("validation"))) {
                if (c.solves()) continue;
                Outcome o = CaseRunner.run(c, false);
                int claims = c.claims().size();
                for (int i = 0; i < claims; i++)
                    out.add(c.id() + " "
                            + (o.problem().isPresent()
                                    ? "broken broken"
                                    : (o.checks().get(i).agrees() ? "agrees" : "out") + " "
                                            + (o.checks().get(i).stands() ? "stands" : "moved")));
            }
            return out;
        }
    }

    private static void write(List<String> rows, List<String> survivors, int[] counts) throws IOException {
        List<String> lines = new ArrayList<>(List.of(
                "# Laws changed one number at a time",
                "",
                "Written by `LawMutationsTest`; do not edit. Each number in the source of a law that is no loop"
                        + " count, index or guard of an argument was made a twentieth larger, the laws were compiled anew, and the cases"
                        + " that call laws without solving a slab were run.",
                "",
                String.format(
                        Locale.ROOT,
                        "%d changes: %d turn a case red, %d only move a number from its accepted value (which `mvn verify` refuses as"
                                + " well), %d are not noticed, %d do not compile.",
                        counts[0] + counts[1] + counts[2] + counts[3],
                        counts[0],
                        counts[1],
                        counts[2],
                        counts[3]),
                "",
                "## Not turned red",
                "",
                "| place | line | change | fate | why |",
                "| --- | --- | --- | --- | --- |"));
        lines.addAll(survivors);
        lines.addAll(List.of(
                "",
                "## Turned red",
                "",
                "| place | line | change | fate | cases |",
                "| --- | --- | --- | --- | --- |"));
        lines.addAll(rows);
        Files.write(PAGE, lines);
    }

    private static void delete(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path f : files.sorted(Comparator.reverseOrder()).toList()) Files.delete(f);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
