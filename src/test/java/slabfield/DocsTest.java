package slabfield;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine.Command;
import slabfield.cli.CommandLineFace;

/** What the documents say about files, classes and commands is there. */
class DocsTest {
    /** A name of the code in back quotes: a class, or a class with a nested class, a method or a constant. */
    private static final Pattern NAME = Pattern.compile("`([A-Z](?=\\w*[a-z])\\w{2,})((?:\\.\\w+)*)`");

    private static final Pattern LINK = Pattern.compile("]\\(([^)\\s]+)\\)");
    private static final Set<String> WRITES =
            Set.of("--png", "--svg", "--pdf", "--json", "--csv", "--grid", "--write", "--out");
    private static final Path README = Path.of("README.md");
    private static final Path DECISIONS = Path.of("docs", "decisions");

    private static List<Path> under(String folder, String ending) {
        try (Stream<Path> files = Files.walk(Path.of(folder))) {
            return files.filter(f -> f.toString().endsWith(ending)).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Stream<Path> documents() {
        return Stream.of(List.of(README, Path.of("DEVELOPERS.md")), under("docs", ".md"))
                .flatMap(List::stream);
    }

    static Stream<Path> decisions() {
        return under(DECISIONS.toString(), ".md").stream()
                .filter(f -> !f.getFileName().toString().equals("README.md"));
    }

    /** Source files by the name of their class; a name used twice keeps both. */
    private static final Map<String, List<Path>> SOURCES = under("src", ".java").stream()
            .collect(Collectors.groupingBy(f -> f.getFileName().toString().replace(".java", "")));

    @ParameterizedTest
    @MethodSource("documents")
    void everyNameOfTheCodeExists(Path document) {
        assertThat(NAME.matcher(text(document))
                        .results()
                        .filter(n -> !exists(n))
                        .map(MatchResult::group))
                .as("names in %s without a class or member", document)
                .isEmpty();
    }

    private static boolean exists(MatchResult name) {
        return SOURCES.getOrDefault(name.group(1), List.of()).stream()
                .map(DocsTest::text)
                .anyMatch(source -> Stream.of(name.group(2).split("\\."))
                        .filter(member -> !member.isEmpty())
                        .allMatch(member -> declares(source, member)));
    }

    private static boolean declares(String source, String member) {
        return Pattern.compile(
                        "\\b(class|record|interface|enum|[\\w\\[\\]>]+) " + member + "\\s*[({=]|^    " + member + "\\(",
                        Pattern.MULTILINE)
                .matcher(source)
                .find();
    }

    @ParameterizedTest
    @MethodSource("documents")
    void everyRelativeLinkLeadsSomewhere(Path document) {
        Path folder = document.toAbsolutePath().getParent();
        assertThat(LINK.matcher(text(document))
                        .results()
                        .map(link -> link.group(1))
                        .filter(link -> !link.contains("://") && !link.startsWith("#"))
                        .filter(link -> !Files.exists(folder.resolve(link.replaceAll("#.*", "")))))
                .as("broken links in %s", document)
                .isEmpty();
    }

    @Test
    void theReadmeListsEveryScenario() {
        assertThat(under("scenarios", ".json"))
                .isNotEmpty()
                .allSatisfy(file -> assertThat(text(README))
                        .contains("| [" + file.getFileName() + "](scenarios/" + file.getFileName() + ") |"));
    }

    @Test
    void theReadmeListsEveryVerbAndShowsEachInUse() {
        List<String> verbs = Stream.of(
                        CommandLineFace.class.getAnnotation(Command.class).subcommands())
                .map(verb -> verb.getAnnotation(Command.class).name())
                .toList();
        assertThat(verbs)
                .isNotEmpty()
                .allSatisfy(verb -> assertThat(text(README))
                        .contains("| `" + verb + "` |")
                        .containsPattern("java -jar target/slabfield\\.jar " + verb + "\\b"));
    }

    static Stream<String> commands() {
        return Pattern.compile("java -jar target/slabfield\\.jar (\\w.*)$", Pattern.MULTILINE)
                .matcher(text(README))
                .results()
                .map(m -> m.group(1));
    }

    /** Runs what the README shows, with the files that it writes in a folder of the test's own. */
    @ParameterizedTest
    @MethodSource("commands")
    void everyCommandOfTheReadmeRuns(String command, @TempDir Path folder) {
        String[] words = Pattern.compile("\"([^\"]*)\"|(\\S+)")
                .matcher(command)
                .results()
                .map(m -> m.group(1) != null ? m.group(1) : m.group(2))
                .toArray(String[]::new);
        for (int i = 1; i < words.length; i++)
            if (WRITES.contains(words[i - 1]))
                words[i] = folder.resolve(words[i]).toString();
        PrintStream terminal = System.out;
        System.setOut(new PrintStream(OutputStream.nullOutputStream()));
        try {
            assertThat(CommandLineFace.run(words))
                    .as("exit code of %s", command)
                    .isZero();
        } finally {
            System.setOut(terminal);
        }
    }

    @ParameterizedTest
    @MethodSource("decisions")
    void everyDecisionIsListedAndNamesTheTestThatKeepsIt(Path decision) {
        assertThat(text(DECISIONS.resolve("README.md"))).contains("(" + decision.getFileName() + ")");
        String text = text(decision);
        int at = text.indexOf("**Confirmation: kept by test** ");
        assertThat(at).as("confirmation in %s", decision).isPositive();
        assertThat(text.substring(at)).containsPattern("`\\w+Test[.`]").doesNotContain("\n\n");
    }

    @Test
    void theRunOnABareMachineIsTheReadmesOwn() {
        assertThat(text(README)).contains("\nmvn -B verify\n");
        assertThat(text(Path.of(".ci", "run"))).contains("mvn -B verify\n");
    }

    @Test
    void equationsOfTheTheoryAreNumberedInOrderAndOnce() {
        List<Integer> numbers = Pattern.compile("\\*\\*\\((\\d+)\\)|^\\| \\((\\d+)\\)", Pattern.MULTILINE)
                .matcher(text(Path.of("docs", "theory.md")))
                .results()
                .map(m -> Integer.valueOf(m.group(1) != null ? m.group(1) : m.group(2)))
                .toList();
        assertThat(numbers)
                .isEqualTo(Stream.iterate(1, n -> n + 1).limit(numbers.size()).toList());
        assertThat(numbers).hasSizeGreaterThan(20);
    }
}
