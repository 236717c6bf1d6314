package slabfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OtherVerbsTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @TempDir
    Path folder;

    @Test
    void compareTakesEachStageWithReadingsInTheHouseOfItsTime() throws IOException {
        Ran ran = Ran.of("compare", SmallHouse.in(folder));
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out())
                .contains(
                        "Stage \"first look\" (communication test)",
                        "Stage \"after sealing\"\n",
                        "weaker than expected",
                        "S1, suction Pa",
                        "S1, flow L/s",
                        "chi-square per reading",
                        "bias",
                        "scatter",
                        Page.SIGN,
                        "No flow was measured in this stage",
                        "T2 ")
                .doesNotContain("no readings")
                .endsWith("before coring.\n");
        assertThat(ran.out().lines()).allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void compareWritesItsNumbers() throws IOException {
        JsonNode root = MAPPER.readTree(
                Ran.of("compare", SmallHouse.in(folder), "--json", "-").out());
        JsonNode stage = root.path("stages").get(0),
                hole = stage.path("testHoles").get(0);
        assertThat(root.path("stages")).hasSize(2);
        assertThat(stage.properties().stream().map(e -> e.getKey()))
                .containsExactly(
                        "stage",
                        "kind",
                        "converged",
                        "testHoles",
                        "suctionPoints",
                        "bias_Pa",
                        "scatter_Pa",
                        "chiSquarePerReading",
                        "remarks");
        assertThat(hole.path("difference_Pa").asDouble())
                .isEqualTo(hole.path("found_Pa").asDouble()
                        - hole.path("expected_Pa").asDouble());
        assertThat(hole.path("found_Pa").asDouble())
                .isEqualTo(hole.path("measured_Pa").asDouble()
                        - hole.path("measuredFanOff_Pa").asDouble());
        assertThat(hole.path("measured_Pa").asDouble()).isEqualTo(-7);
        assertThat(stage.path("suctionPoints")
                        .get(0)
                        .path("measuredFlow_m3_per_s")
                        .asDouble())
                .isEqualTo(0.004);
        assertThat(stage.path("testHoles").get(1).path("verdict").asText()).isEqualTo("weaker than expected");
        double alone = MAPPER.readTree(
                        Ran.of("compare", SmallHouse.in(folder), "--stage", "after sealing", "--json", "-")
                                .out())
                .path("stages")
                .get(0)
                .path("testHoles")
                .get(0)
                .path("predicted_Pa")
                .asDouble();
        assertThat(alone).isLessThan(hole.path("predicted_Pa").asDouble() - 5);
    }

    @Test
    void compareSaysWhereThereIsNothingToCompare() throws IOException {
        String file = SmallHouse.in(folder);
        Ran empty = Ran.of("compare", file, "--stage", "no readings");
        assertThat(empty.code()).isEqualTo(2);
        assertThat(empty.err()).contains("Stage \"no readings\" holds no readings.");
        Ran unsolved = Ran.of("compare", SmallHouse.put(folder, "tight.json", SmallHouse.AIRTIGHT));
        assertThat(unsolved.code()).isEqualTo(4);
        assertThat(unsolved.err()).contains("Stage \"first look\": A suction point draws");
        assertThat(unsolved.out()).contains("Not solved");
    }

    @Test
    void suggestRanksAndSaysWhatDoesNothing() throws IOException {
        String idle = SmallHouse.TEXT.replace(
                "\"kind\": \"penetration\", \"at\": [5, 1], \"area\": \"10 cm2\"",
                "\"kind\": \"penetration\", \"at\": [5, 1], \"area\": \"0.0001 cm2\"");
        Ran ran = Ran.of("suggest", SmallHouse.put(folder, "idle.json", idle), "--top", "50");
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.err()).isEmpty();
        assertThat(ran.out())
                .contains(
                        "1  ",
                        "seal \"joint\"",
                        "seal \"pipe\": does nothing here",
                        "core a suction point at (",
                        " -> ",
                        "each by itself",
                        "98.0 %")
                .endsWith("before coring.\n");
        assertThat(ran.out().lines()).allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void suggestWritesAsManyAsAskedBestFirst() throws IOException {
        Ran ran = Ran.of("suggest", SmallHouse.in(folder), "--top", "2", "--json", "-", "--progress");
        JsonNode list = MAPPER.readTree(ran.out()).path("suggestions");
        assertThat(list).hasSize(2);
        JsonNode best = list.get(0);
        assertThat(best.path("gain_Pa").asDouble())
                .isGreaterThanOrEqualTo(list.get(1).path("gain_Pa").asDouble())
                .isEqualTo(best.path("after").path("weakest_Pa").asDouble()
                        - best.path("before").path("weakest_Pa").asDouble());
        assertThat(ran.err()).contains("\rtried 1 of ").endsWith("\n");
        assertThat(Ran.of("suggest", SmallHouse.put(folder, "tight.json", SmallHouse.AIRTIGHT))
                        .code())
                .isEqualTo(4);
        assertThat(Ran.of("suggest", SmallHouse.in(folder), "--top", "0").code())
                .isEqualTo(2);
    }

    @Test
    void checkReadsAllFilesAndListsAllProblems() throws IOException {
        String good = SmallHouse.in(folder);
        String bad = SmallHouse.put(folder, "bad.json", SmallHouse.TEXT.replace("\"mixed\"", "\"mixd\""));
        assertThat(Ran.of("check", good)).isEqualTo(new Ran(0, good + ": no problems\n", ""));
        Ran ran = Ran.of("check", bad, good, folder.resolve("none.json").toString());
        assertThat(ran.code()).isEqualTo(2);
        assertThat(ran.out()).contains(good + ": no problems");
        assertThat(ran.err()).contains("did you mean \"mixed\"?", "none.json has 1 problem");
    }

    @Test
    void examplesAreListedAndWrittenOnce() throws IOException {
        Path to = folder.resolve("a/b");
        assertThat(Ran.of("examples").out()).contains("tight-sand-loop.json - Loop in tight sand\n    In tight sand");
        Ran ran = Ran.of("examples", "--write", to.toString());
        assertThat(ran.code()).isZero();
        List<String> shipped;
        try (Stream<Path> files = Files.list(Path.of("scenarios"))) {
            shipped = files.map(f -> f.getFileName().toString()).toList();
        }
        for (String file : shipped) assertThat(to.resolve(file)).hasSameBinaryContentAs(Path.of("scenarios", file));
        assertThat(Ran.of("examples", "--write", to.toString())).isEqualTo(new Ran(0, "", ""));
        Files.writeString(to.resolve("stone-footing.json"), "mine");
        Ran again = Ran.of("examples", "--write", to.toString());
        assertThat(again.code()).isEqualTo(5);
        assertThat(again.err()).contains("stone-footing.json is there already and differs");
        assertThat(to.resolve("stone-footing.json")).hasContent("mine");
    }

    @Test
    void completionKnowsTheVerbs() {
        assertThat(Ran.of("completion").out()).startsWith("#!").contains("suggest", "--vacuum-only", "complete -F");
    }

    @Test
    void helpNamesEveryExitCode() {
        String help = Ran.of("--help").out();
        for (Exit exit : Exit.values()) assertThat(help).containsPattern("(?m)^  " + exit.code() + " ");
        assertThat(help).contains("Verbs:", "To start:").doesNotContain("\u001b");
        assertThat(Ran.of("--version").out()).startsWith("Slabfield ");
    }

    @ParameterizedTest
    @ValueSource(strings = {"solve", "compare", "suggest", "check", "examples", "completion"})
    void theExampleOfEveryVerbWorks(String verb) throws IOException {
        SmallHouse.in(folder);
        SmallHouse.put(folder, "other-house.json", SmallHouse.TEXT);
        String help = Ran.of(verb, "--help").out();
        String example = help.substring(help.indexOf("\nExample"))
                .lines()
                .filter(l -> l.startsWith("  "))
                .findFirst()
                .orElseThrow();
        Matcher word = Pattern.compile("\"([^\"]*)\"|([^ ()]+)")
                .matcher(example.substring(example.indexOf("slabfield ") + 10));
        List<String> args = new ArrayList<>();
        while (word.find()) args.add(word.group(1) != null ? word.group(1) : word.group(2));
        args.replaceAll(
                a -> a.matches(".*\\.(json|png)|my-houses") ? folder.resolve(a).toString() : a);
        assertThat(args).first().isEqualTo(verb);
        Ran ran = Ran.of(args.toArray(String[]::new));
        assertThat(ran.code()).as(Arrays.toString(args.toArray()) + ran.err()).isZero();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "solv house.json", "--nonsense", "solve", "check", "house.json", "--units"})
    void whatIsNoVerbEndsInTwoWithAWayOn(String line) {
        Ran ran = Ran.of(line.isEmpty() ? new String[] {"--no-color"} : line.split(" "));
        assertThat(ran.code()).isEqualTo(2);
        assertThat(ran.err()).contains("--help\"").doesNotContain("\tat ");
    }

    @Test
    void aMisspeltVerbIsGuessed() {
        assertThat(Ran.of("solv").err()).startsWith("There is no verb \"solv\"; did you mean \"solve\"?");
    }

    @Test
    void namesInAFileCannotSteerTheTerminal() throws IOException {
        String sly = SmallHouse.TEXT
                .replace("\"Small house\"", "\"Small \\u001b[2J house\"")
                .replace("\"T2\"", "\"T\\u001b2\"");
        Ran ran = Ran.of("solve", SmallHouse.put(folder, "sly.json", sly));
        assertThat(ran.out() + ran.err()).contains("Small ?[2J house").doesNotContain("\u001b");
    }
}
