package slabfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AdviceVerbsTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @TempDir
    Path folder;

    @Test
    void suggestSaysThatItHasNoBand() throws IOException {
        Ran ran = Ran.of("suggest", SmallHouse.in(folder));
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out()).contains("Without a band", "--band readings", "As drawn");
    }

    @Test
    void suggestShowsRangesPlansAndCovers() throws IOException {
        Ran ran =
                Ran.of("suggest", SmallHouse.in(folder), "--top", "2", "--band", "assumed", "--plans", "2", "--covers");
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out())
                .contains(
                        "Ranges that hold nine times of ten, from assumed ranges, not from readings (39 plausible houses)",
                        "Plans that no other beats",
                        "as drawn",
                        "What a temporary cover would show",
                        "does it tell?")
                .doesNotContain("Without a band");
        assertThat(ran.out().lines()).allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void suggestWritesOddsAndPlans() throws IOException {
        JsonNode root = MAPPER.readTree(Ran.of(
                        "suggest",
                        SmallHouse.in(folder),
                        "--top",
                        "1",
                        "--band",
                        "readings",
                        "--plans",
                        "1",
                        "--covers",
                        "--json",
                        "-")
                .out());
        JsonNode first = root.path("suggestions").get(0), odds = first.path("odds");
        assertThat(odds.path("basis").asText()).isEqualTo("from the readings");
        assertThat(odds.path("gain_Pa").path("low").asDouble())
                .isLessThanOrEqualTo(odds.path("gain_Pa").path("high").asDouble());
        assertThat(first.path("kind").asText()).isNotEmpty();
        assertThat(root.path("frontier"))
                .isNotEmpty()
                .allMatch(p -> p.path("weakest_Pa").isNumber());
        assertThat(root.path("strongest").get(0).path("measures")).isEmpty();
        assertThat(root.path("covers").get(0).path("testHoles")).hasSize(2);
    }

    @Test
    void nextHoleNamesPlacesAndWhatTheLayoutLacks() throws IOException {
        Path json = folder.resolve("next.json");
        Ran ran = Ran.of("next-hole", SmallHouse.in(folder), "--assumed", "--top", "2", "--json", json.toString());
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out())
                .contains(
                        "120 plausible houses",
                        "Best places for the next hole",
                        "A house needs at least three test holes; this one has 2.",
                        Page.SIGN);
        JsonNode root = MAPPER.readTree(json.toFile());
        assertThat(root.path("places")).hasSizeBetween(1, 2);
        assertThat(root.path("places").get(0).path("doubtLeft_bit").asDouble())
                .isLessThanOrEqualTo(root.path("doubt_bit").asDouble() + 0.1);
        assertThat(root.path("layoutLacks").get(0).path("rule").asText()).isEqualTo("THREE_HOLES");
    }

    @Test
    void leakMapSaysHowMuchTheReadingsSay() throws IOException {
        Path json = folder.resolve("leaks.json");
        Ran ran = Ran.of("leak-map", SmallHouse.in(folder), "--json", json.toString());
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out()).contains("Best gain", "If there is just one leak more", "smoke");
        JsonNode root = MAPPER.readTree(json.toFile());
        JsonNode grid = root.path("grid");
        assertThat(root.path("gain_nat_byCell"))
                .hasSize(grid.path("columns").asInt() * grid.path("rows").asInt());
        assertThat(root.path("readingsSay").asBoolean())
                .isEqualTo(root.path("bestGain_nat").asDouble() >= 3);
    }

    @ParameterizedTest
    @ValueSource(strings = {"leak-map", "suggest --band readings"})
    void withoutReadingsItSaysWhatToRead(String words) throws IOException {
        String bare = SmallHouse.put(
                folder, "bare.json", SmallHouse.TEXT.replaceAll("(?s),\\s*\"stages\": \\[.*\\] }", " }"));
        String[] verb = words.split(" ");
        String[] line = new String[verb.length + 1];
        System.arraycopy(verb, 0, line, 0, verb.length);
        line[verb.length] = bare;
        Ran ran = Ran.of(line);
        assertThat(ran.code()).isEqualTo(Exit.WRONG_INPUT.code());
        assertThat(ran.err()).contains("too little to fit", "measure the flow");
    }

    @ParameterizedTest
    @ValueSource(strings = {"suggest --plans 0", "suggest --top 0", "next-hole --top 0", "suggest --band perhaps"})
    void wrongNumbersAreRefused(String words) throws IOException {
        String[] verb = (words + " " + SmallHouse.in(folder)).split(" ");
        assertThat(Ran.of(verb).code()).isEqualTo(Exit.WRONG_INPUT.code());
    }
}
