package slabfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class SolveVerbTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @TempDir
    Path folder;

    static List<Path> shipped() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("scenarios"))) {
            return files.filter(f -> f.toString().endsWith(".json")).sorted().toList();
        }
    }

    private static List<String> keys(JsonNode node) {
        return node.properties().stream().map(e -> e.getKey()).toList();
    }

    private List<String> files() {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString()).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @ParameterizedTest
    @MethodSource("shipped")
    void everyShippedHouseIsSolvedOnAPageOfItsOwnUnits(Path file) throws IOException {
        Ran ran = Ran.of("solve", file.toString(), "--cell", "50 cm");
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.err()).isEmpty();
        String name = MAPPER.readTree(file.toFile()).path("name").asText();
        assertThat(ran.out())
                .startsWith(name + "\n")
                .contains(
                        "Converged             yes",
                        "Weakest place",
                        "Weakest test hole",
                        "Area meeting target",
                        "Exhaust",
                        "Share from the room",
                        "Test holes, pressure in ",
                        "Suction points",
                        "Air by source",
                        "all from the room",
                        "Mass balance:",
                        Page.SIGN)
                .endsWith("Locate utilities and tensioned cables\nbefore coring.\n");
        assertThat(ran.out().lines()).allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void theHolesOfTheHouseShowPredictionAndReading() throws IOException {
        Ran ran = Ran.of("solve", SmallHouse.in(folder));
        JsonNode json = MAPPER.readTree(
                Ran.of("solve", SmallHouse.in(folder), "--json", "-").out());
        JsonNode hole = json.path("testHoles").get(0);
        double on = hole.path("predicted_Pa").asDouble(),
                off = hole.path("predictedFanOff_Pa").asDouble();
        assertThat(hole.path("measured_Pa").asDouble()).isEqualTo(-7);
        String row =
                ran.out().lines().filter(l -> l.startsWith("T1 ")).findFirst().orElseThrow();
        assertThat(row.trim().split(" +"))
                .containsExactly("T1", one(on), one(off), one(on - off), "-7.0", one(-7 - on));
    }

    private static String one(double number) {
        return String.format(java.util.Locale.ROOT, "%.1f", number);
    }

    @Test
    void theSharesOfAirAddUpToTheExhaust() throws IOException {
        String out = Ran.of("solve", SmallHouse.in(folder)).out();
        double sum = Stream.of("all from the room", "all from soil", "all from outdoors through walls")
                .mapToDouble(name -> share(out, name))
                .sum();
        assertThat(share(out, "exhaust")).isEqualTo(100);
        assertThat(sum).isBetween(99.8, 100.2);
        assertThat(share(out, "all from the room")).isBetween(50.0, 99.0);
    }

    private static double share(String out, String name) {
        String row =
                out.lines().filter(l -> l.startsWith(name + " ")).findFirst().orElseThrow();
        String[] cells = row.replace(" %", "").trim().split(" +");
        return Double.parseDouble(cells[cells.length - 1]);
    }

    @Test
    void otherUnitsChangeTheNumbersAndTheirHeadings() throws IOException {
        String file = SmallHouse.in(folder);
        assertThat(Ran.of("solve", file).out()).contains("pressure in Pa", "(2.00, 2.00) m", "-200.0", "flow, L/s");
        assertThat(Ran.of("solve", file, "--units", "inH2O,cfm,ft").out())
                .contains("pressure in inH2O", "(6.56, 6.56) ft", "-0.8029", "flow, cfm")
                .doesNotContain(" Pa", "L/s");
        assertThat(Ran.of("--units", "cfm", "solve", file).out()).contains("pressure in Pa", "flow, cfm");
    }

    @Test
    void aStageIsSolvedAsTheHouseStoodThenAndShowsItsReadings() throws IOException {
        String file = SmallHouse.in(folder);
        JsonNode drawn = MAPPER.readTree(Ran.of("solve", file, "--json", "-").out());
        JsonNode sealed = MAPPER.readTree(
                Ran.of("solve", file, "--json", "-", "--stage", "after sealing").out());
        JsonNode before = drawn.path("testHoles").get(0),
                after = sealed.path("testHoles").get(0);
        assertThat(after.path("predicted_Pa").asDouble())
                .isLessThan(before.path("predicted_Pa").asDouble() - 5);
        assertThat(after.path("measured_Pa").asDouble()).isEqualTo(-90);
        Ran wrong = Ran.of("solve", file, "--stage", "after seeling");
        assertThat(wrong.code()).isEqualTo(2);
        assertThat(wrong.err()).contains("did you mean \"after sealing\"?");
    }

    @Test
    void filesHoldTheResultTheFieldAndTheMap() throws IOException {
        Path json = folder.resolve("r.json"), csv = folder.resolve("f.csv"), png = folder.resolve("m.png");
        Ran ran = Ran.of(
                "solve",
                SmallHouse.in(folder),
                "--json",
                json.toString(),
                "--csv",
                csv.toString(),
                "--png",
                png.toString(),
                "--width",
                "640",
                "--dpi",
                "100",
                "--vacuum-only",
                "--quiet");
        assertThat(ran).isEqualTo(new Ran(0, "", ""));
        JsonNode result = MAPPER.readTree(json.toFile());
        assertThat(keys(result))
                .containsExactly(
                        "writtenBy",
                        "scenario",
                        "outcome",
                        "massBalance_relative",
                        "testHoles",
                        "suctionPoints",
                        "flows_m3_per_s",
                        "coverage",
                        "unreached",
                        "doubts");
        assertThat(result.path("outcome").path("converged").asBoolean()).isTrue();
        assertThat(Files.readAllLines(csv)).hasSize(1 + 12 * 8).first().isEqualTo("x_m,y_m,pressure_Pa,kind");
        assertThat(ImageIO.read(png.toFile()).getWidth()).isEqualTo(640);
    }

    @Test
    void vacuumOnlyChangesTheMap() throws IOException {
        Path both = folder.resolve("both.png"), vacuum = folder.resolve("vacuum.png");
        String file = SmallHouse.in(folder);
        Ran.of("solve", file, "--quiet", "--png", both.toString());
        Ran.of("solve", file, "--quiet", "--png", vacuum.toString(), "--vacuum-only");
        assertThat(Files.readAllBytes(vacuum)).isNotEqualTo(Files.readAllBytes(both));
    }

    @Test
    void aFileThatIsThereIsKeptUnlessForced() throws IOException {
        String file = SmallHouse.in(folder), there = SmallHouse.put(folder, "r.json", "mine");
        Ran kept = Ran.of("solve", file, "--json", there);
        assertThat(kept.code()).isEqualTo(5);
        assertThat(kept.err()).contains("--json " + there, "a file that this program did not write", "--force");
        assertThat(Path.of(there)).hasContent("mine");
        assertThat(Ran.of("solve", file, "--json", there, "--force").code()).isZero();
        assertThat(MAPPER.readTree(Path.of(there).toFile()).path("scenario").asText())
                .isEqualTo("Small house");
    }

    /** The command of the README can be run again. */
    @Test
    void resultsOfThisProgramAreReplaced() throws IOException {
        String file = SmallHouse.in(folder);
        String[] command = {
            "solve",
            file,
            "--json",
            folder.resolve("a.json").toString(),
            "--csv",
            folder.resolve("a.csv").toString(),
            "--png",
            folder.resolve("a.png").toString()
        };
        assertThat(Ran.of(command).code()).isZero();
        assertThat(Ran.of(command).code()).isZero();
    }

    @Test
    void theScenarioItselfAndADeviceAreNeverWrittenTo() throws IOException {
        String file = SmallHouse.in(folder);
        Ran ran = Ran.of("solve", file, "--force", "--json", file, "--csv", "/dev/null");
        assertThat(ran.code()).isEqualTo(5);
        assertThat(ran.err()).contains("this is the scenario itself", "this is no ordinary file");
        assertThat(Path.of(file)).hasContent(SmallHouse.TEXT);
    }

    @Test
    void twoOutputsInOnePlaceAndAMissingFolderAreRefusedAtOnce() throws IOException {
        String twice = folder.resolve("x").toString(),
                nowhere = folder.resolve("none/y.png").toString();
        Ran ran = Ran.of("solve", SmallHouse.in(folder), "--json", twice, "--csv", twice, "--png", nowhere);
        assertThat(ran.code()).isEqualTo(5);
        assertThat(ran.err()).contains("--json is to go there too", "its folder does not exist");
        assertThat(files()).containsExactly("house.json");
    }

    @Test
    void aHouseWithoutAnAnswerEndsInFourAndStillWritesItsOutcome() throws IOException {
        String file = SmallHouse.put(folder, "tight.json", SmallHouse.AIRTIGHT);
        Path json = folder.resolve("r.json"), csv = folder.resolve("f.csv"), png = folder.resolve("m.png");
        Ran ran = Ran.of("solve", file, "--json", json.toString(), "--csv", csv.toString(), "--png", png.toString());
        assertThat(ran.code()).isEqualTo(4);
        assertThat(ran.out()).isEmpty();
        assertThat(ran.err()).contains("into which no air can come").doesNotContain("\tat ");
        JsonNode result = MAPPER.readTree(json.toFile());
        assertThat(keys(result)).containsExactly("writtenBy", "scenario", "outcome", "massBalance_relative");
        assertThat(result.path("outcome").path("converged").asBoolean()).isFalse();
        assertThat(result.path("outcome").path("reason").asText()).isNotBlank();
        assertThat(files()).containsExactly("r.json", "tight.json");
    }

    @Test
    void aBadFileGivesAllItsProblemsAndWritesNothing() throws IOException {
        String bad = SmallHouse.put(
                folder, "bad.json", SmallHouse.TEXT.replace("\"1 mm\"", "\"1\"").replace("[4, 2]", "[40, 2]"));
        Ran ran = Ran.of("solve", bad, "--json", folder.resolve("r.json").toString());
        assertThat(ran.code()).isEqualTo(2);
        assertThat(ran.err()).contains("/openings/0/width", "/testHoles/0/at").doesNotContain("\tat ");
        assertThat(ran.out()).isEmpty();
        assertThat(files()).containsExactly("bad.json");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--cell 3",
                "--cell 0_m",
                "--cell 1_um",
                "--units bananas",
                "--units Pa,kPa",
                "--width 10",
                "--dpi x",
                "--stage",
                "--jsn x",
                "other.json"
            })
    void wrongOptionsEndInTwo(String options) throws IOException {
        List<String> args = new java.util.ArrayList<>(List.of("solve", SmallHouse.in(folder)));
        for (String word : options.split(" ")) args.add(word.replace('_', ' '));
        Ran ran = Ran.of(args.toArray(String[]::new));
        assertThat(ran.code()).as(ran.err()).isEqualTo(2);
        assertThat(ran.err()).isNotBlank().doesNotContain("\tat ", "Exception");
        assertThat(ran.out()).isEmpty();
    }

    @Test
    void aGridFarTooFineIsRefusedBeforeItIsLaid() throws IOException {
        assertThat(Ran.of("solve", SmallHouse.in(folder), "--cell", "0.05 mm").err())
                .contains("a grid of 9600000000 cells", "give a larger cell");
    }

    @Test
    void aScenarioComesFromStandardInputToo() {
        assertThat(Ran.withInput(SmallHouse.TEXT, "solve", "-").out()).startsWith("Small house\n");
        Ran bad = Ran.withInput("{", "solve", "-");
        assertThat(bad.code()).isEqualTo(2);
        assertThat(bad.err()).startsWith("standard input has 1 problem:");
    }
}
