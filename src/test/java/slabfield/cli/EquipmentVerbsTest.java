package slabfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class EquipmentVerbsTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @TempDir
    Path folder;

    private String riserHouse() throws IOException {
        String text = Files.readString(Path.of("scenarios", "two-points-one-riser.json"))
                .replace("\"6 in\",", "\"2 ft\",");
        return SmallHouse.put(folder, "riser.json", text);
    }

    @Test
    void sizeShowsEveryPart() throws IOException {
        Ran ran = Ran.of("size", riserHouse());
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out())
                .contains(
                        "Fans in the whole network",
                        "two small in series",
                        "small is invented",
                        "Pipes: all stretches in one size",
                        "lost to pipe",
                        "riser",
                        "Worst day",
                        "Stack at -4 F",
                        "Through the year",
                        "A year of 365 days",
                        "XYZ",
                        "heat, at least (quadrature)",
                        "Fuel in therm of gas",
                        "against your limits",
                        "invented, for the water heater",
                        "replaces no draft test")
                .endsWith("before coring.\n");
        assertThat(ran.out().toLowerCase(java.util.Locale.ROOT)).doesNotContainPattern("\\bsafe\\b");
        assertThat(ran.out().lines()).allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void sizeWritesItsNumbersAndTakesAnotherFanAndTables() throws IOException {
        String table =
                SmallHouse.put(folder, "mine.csv", "flow cfm,rise inH2O,power W\n0,3.5,90\n100,2,99\n200,0,90\n");
        Ran ran = Ran.of("size", riserHouse(), "--fan-csv", table, "--fan", "small", "--json", "-");
        assertThat(ran.code()).as(ran.err()).isZero();
        JsonNode root = MAPPER.readTree(ran.out());
        assertThat(root.path("fans")).extracting(f -> f.path("id").asText()).contains("mine", "small", "as drawn");
        assertThat(root.path("chosen").asText()).isEqualTo("small");
        JsonNode small = root.path("fans").get(4);
        assertThat(small.path("id").asText()).as("holds least, so last").isIn("small", "two small in series");
        assertThat(root.path("pipes")).hasSize(5);
        assertThat(root.path("pipes").get(1).path("nominal").asText()).isEqualTo("2 in");
        assertThat(root.path("pipes").get(0).path("stretches")).hasSize(3);
        double total = root.path("worstDay").path("total_Pa").asDouble();
        assertThat(total)
                .isEqualTo(root.path("worstDay").path("stack_Pa").asDouble()
                        + root.path("worstDay").path("wind_Pa").asDouble()
                        + root.path("worstDay").path("exhaust_Pa").asDouble());
        assertThat(root.path("season")).hasSize(4);
        assertThat(root.path("year").path("fanCost").asDouble()).isPositive();
        assertThat(root.path("yearAllSealed").path("heatAtMost_J").asDouble())
                .isLessThan(root.path("year").path("heatAtMost_J").asDouble());
        assertThat(root.path("limits").get(0).path("limit_Pa").asDouble()).isEqualTo(3);
    }

    @Test
    void sizeOfABarePlanSaysWhatItLacksAndThatItsFansAreInvented() throws IOException {
        Ran ran = Ran.of("size", SmallHouse.in(folder));
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out())
                .contains(
                        "all invented",
                        "only give an idea",
                        "No pipe is given for S1",
                        "the scenario lacks house.designDay",
                        "No cost without your \"tariff\"",
                        "needs \"blowerDoor\"",
                        "Readings of \"first look\", on less off, scaled to");
    }

    @Test
    void sizeRefusesWhatIsNotThere() throws IOException {
        String house = riserHouse();
        assertThat(Ran.of("size", house, "--fan", "midle").err()).contains("did you mean \"middle\"?");
        assertThat(Ran.of("size", house, "--fan-csv", folder.resolve("no.csv").toString())
                        .err())
                .contains("the table cannot be read");
        assertThat(Ran.of(
                                "size",
                                house,
                                "--fan-csv",
                                SmallHouse.put(folder, "small.csv", "flow cfm,rise Pa\n0,9\n1,0\n"))
                        .err())
                .contains("there is a fan \"small\" already");
        String bare = SmallHouse.put(
                folder,
                "bare.json",
                SmallHouse.TEXT
                        .replaceAll("(?s)\"suctionPoints\".*?\\],\\s+\"testHoles\"", "\"testHoles\"")
                        .replaceAll("(?s)\"system\": \\[.*?\\] \\},", "\"notes\": \"\" },"));
        assertThat(Ran.of("size", bare)).satisfies(r -> {
            assertThat(r.code()).isEqualTo(2);
            assertThat(r.err()).contains("no suction point");
        });
    }

    @Test
    void flowGivesBoundsAndATestPipe() {
        // 83528 Pa at 1600 m (US Standard Atmosphere 1976) over 287.055 x 293.15
        Ran ran = Ran.of("flow", "--nominal", "3 in", "--velocity-pressure", "12 Pa", "--altitude", "1600 m");
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out()).contains("Air                   0.993 kg/m3", "Between", "cfm", "log-linear");
        assertThat(Ran.of("flow", "--nominal", "3 in", "--velocity-pressure", "0.3 Pa")
                        .out())
                .contains("test length of 2 in pipe");
        assertThat(Ran.of("flow", "--diameter", "78 mm", "--velocity", "5 m/s").out())
                .contains("Between");
        Ran traverse =
                Ran.of("flow", "--diameter", "100 mm", "--velocity-pressure", "9 Pa", "--velocity-pressure", "16 Pa");
        // mean of sqrt(2*9/1.204) and sqrt(2*16/1.204) m/s over 0.00785 m2
        assertThat(traverse.out()).contains("Flow                  75.1 cfm = 35.4 L/s");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--nominal;5 in;--velocity;5 m/s | there are 2 in, 3 in, 4 in and 6 in",
                "--velocity;5 m/s | Give --nominal or --diameter",
                "--nominal;3 in | Give --velocity-pressure or --velocity",
                "--nominal;3 in;--velocity;-5 m/s | is above 0",
                "--nominal;3 in;--velocity;5 m/s;--altitude;9000 m | --altitude lies between",
                "--nominal;3 in;--velocity;5 Pa | a speed is wanted"
            })
    void flowRefusesPlainly(String options, String message) {
        Ran ran = Ran.of(("flow;" + options).split(";"));
        assertThat(ran.code()).isEqualTo(2);
        assertThat(ran.err()).contains(message);
    }

    @Test
    void anUntouchedChecklistWritesNothing() throws IOException {
        Ran ran = Ran.of("checklist", SmallHouse.in(folder));
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out())
                .contains(
                        "Record                open",
                        "Fan                   not started",
                        "utilities",
                        "unanswered",
                        "none is recorded. Its steps:",
                        "silica dust",
                        "Open before the record can be complete");
        assertThat(ran.out().toLowerCase(java.util.Locale.ROOT)).doesNotContainPattern("\\bsafe\\b");
        assertThat(ran.out().lines()).allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(100));
        assertThat(folder.resolve("house.record.json")).doesNotExist();
    }

    @Test
    void aFailedDraftTestBlocksTheStartAndAPassedOneFreesIt() throws IOException {
        String house = SmallHouse.in(folder);
        Ran failed = Ran.of(
                "checklist",
                house,
                "--draft-test",
                "water heater",
                "--outcome",
                "failed",
                "--radon-fan",
                "off",
                "--house-pressure",
                "-4 Pa",
                "--spillage",
                "60 s",
                "--co-ppm",
                "90",
                "--step",
                "weather=yes",
                "--by",
                "A",
                "--time",
                "2026-01-20T08:00");
        assertThat(failed.code()).as(failed.err()).isZero();
        assertThat(failed.out()).contains("start blocked", "-4.0", "60", "90", "appliances cold, house shut");
        Ran start = Ran.of("checklist", house, "--start", "--time", "2026-01-20T09:00");
        assertThat(start.code()).isEqualTo(6);
        assertThat(start.err()).contains("The fan cannot be started", "\"water heater\" failed");
        Ran passed = Ran.of(
                "checklist",
                house,
                "--draft-test",
                "water heater",
                "--outcome",
                "passed",
                "--radon-fan",
                "off",
                "--time",
                "2026-01-20T10:00");
        assertThat(passed.code()).as(passed.err()).isZero();
        Ran again = Ran.of("checklist", house, "--start", "--time", "2026-01-20T11:00");
        assertThat(again.code()).as(again.err()).isZero();
        assertThat(again.out())
                .contains("Fan                   started 2026-01-20T11:00", "not before 2026-01-21T11:00");
        assertThat(Ran.of("checklist", house, "--radon-test", "", "--time", "2026-01-20T20:00")
                        .err())
                .contains("24 h after start-up");
        Ran running = Ran.of(
                "checklist",
                house,
                "--draft-test",
                "water heater",
                "--outcome",
                "failed",
                "--radon-fan",
                "running",
                "--time",
                "2026-01-20T12:00");
        assertThat(running.out()).contains("Fan                   must be off");
    }

    @Test
    void completionWaitsForEveryGate() throws IOException {
        String house = SmallHouse.in(folder);
        String[] gates = {"CO alarm", "utilities", "structural slab", "drainage", "gas on site", "law and licence"};
        for (String gate : gates)
            assertThat(Ran.of("checklist", house, "--answer", gate + "=yes", "--time", "2026-01-20T08:00")
                            .code())
                    .isZero();
        assertThat(Ran.of("checklist", house, "--start", "--time", "2026-01-20T09:00")
                        .code())
                .isZero();
        Ran early = Ran.of("checklist", house, "--complete");
        assertThat(early.code()).isEqualTo(6);
        assertThat(early.err()).contains("\"combustion\" is unanswered.").doesNotContain("utilities");
        Ran done = Ran.of(
                "checklist", house, "--answer", "combustion=not present", "--complete", "--time", "2026-01-20T10:00");
        assertThat(done.code()).as(done.err()).isZero();
        assertThat(done.out()).contains("marked complete 2026-01-20T10:00", "Nothing is open in this record");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "--answer;utilites=yes;did you mean \"utilities\"?",
                "--answer;utilities=perhaps;there is no \"perhaps\"",
                "--answer;CO alarm=not present;answer \"yes\" or \"no\"",
                "--time;noon;write a local time such as"
            })
    void checklistRefusesPlainly(String options) throws IOException {
        String[] parts = options.split(";");
        Ran ran = Ran.of("checklist", SmallHouse.in(folder), parts[0], parts[1]);
        assertThat(ran.code()).isEqualTo(2);
        assertThat(ran.err()).contains(parts[2]);
        assertThat(folder.resolve("house.record.json")).doesNotExist();
    }
}
