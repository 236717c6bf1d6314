package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One bad file for each message. Each is the short sample with one text replaced. */
class BadFilesTest {
    private static final String WITH = "\"layer\": { \"fill\": \"sand\" }";

    private static List<FileProblem> problems(String text) {
        return catchThrowableOfType(ScenarioProblems.class, () -> ScenarioReader.read(text, "f.json"))
                .problems();
    }

    private static void single(String text, String pointer, String message) {
        assertThat(problems(text)).singleElement().satisfies(p -> {
            assertThat(p.pointer()).isEqualTo(pointer);
            assertThat(p.message()).isEqualTo(message);
        });
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\u0001',
            value = {
                "\"fill\": \"sand\" | \"fill\": \"sand\", \"thickness\": \"-4 in\" | /layer/thickness | \"-4 in\" must be above 0",
                "\"fill\": \"sand\" | \"fill\": \"sand\", \"thickness\": 4 | /layer/thickness | \"4\" has no unit; a length needs its unit, for instance \"4 in\" or \"0.1 m\"",
                "\"fill\": \"sand\" | \"fill\": \"sand\", \"thickness\": \"4 Pa\" | /layer/thickness | \"4 Pa\" is a pressure, but a length is wanted, for instance \"4 in\" or \"0.1 m\"",
                "\"fill\": \"sand\" | \"fill\": \"sand\", \"thickness\": [4] | /layer/thickness | a list must be a length with its unit, such as \"4 in\"",
                "\"fill\": \"sand\" | \"fill\": \"sand\", \"thickness\": \"1e9 m\" | /layer/thickness | \"1e9 m\" is longer than 100 km",
                "\"fill\": \"sand\" | \"fill\": \"sand\", \"thicknes\": \"4 in\" | /layer/thicknes | the layer has no key \"thicknes\"; did you mean \"thickness\"?",
                "\"fill\": \"sand\" | \"fill\": \"snad\" | /layer/fill | \"snad\" is not one of the words for \"fill\"; did you mean \"sand\"?",
                "\"fill\": \"sand\" | \"fill\": null | /layer/fill | null is not one of the words for \"fill\"; there are \"clean stone\", \"mixed\", \"sand\", \"silt or clay\", \"void\"",
                "\"fill\": \"sand\" | \"inertial\": \"5 1/m\" | /layer | the layer needs \"fill\" or \"permeability\"",
                "\"fill\": \"sand\" | \"permeability\": \"0 m2\" | /layer/permeability | \"0 m2\" must be above 0",
                "\"fill\": \"sand\" | \"fill\": \"sand\", \"zones\": {} | /layer/zones | an object { } must be a list [ ]",
                "\"fill\": \"sand\" | \"fill\": \"sand\", \"zones\": [\"z\"] | /layer/zones/0 | \"z\" must be an object { } with \"id\", \"outline\", \"fill\", \"permeability\", \"inertial\" and \"thickness\"",
                "\"lengthUnit\": \"m\" | \"lengthUnit\": \"yard\" | /lengthUnit | \"yard\" is not one of the words for \"lengthUnit\"; there are \"m\", \"cm\", \"mm\", \"in\", \"ft\"",
                "\"name\": \"House\", | | '' | the scenario needs \"name\"",
                "\"fill\": \"sand\" } | \"fill\": \"sand\" }, \"plan\": { \"underlay\": { \"picture\": \"../x.png\", \"corner\": [0, 0], \"pixel\": \"1 mm\" } } | /plan/underlay/picture | \"../x.png\" must lie in the scenario's own folder; write its name without a path",
                "\"fill\": \"sand\" } | \"fill\": \"sand\" }, \"plan\": { \"underlay\": { \"picture\": \"/etc/x.png\", \"corner\": [0, 0], \"pixel\": \"1 mm\" } } | /plan/underlay/picture | \"/etc/x.png\" must lie in the scenario's own folder; write its name without a path",
                "\"fill\": \"sand\" } | \"fill\": \"sand\" }, \"plan\": { \"noDrillAreas\": [{ \"id\": \"gas\", \"outline\": [[0, 0], [1, 1]] }] } | /plan/noDrillAreas/0/outline | no-drill area \"gas\": \"outline\" needs at least three corners",
                "\"fill\": \"sand\" } | \"fill\": \"sand\" }, \"plan\": { \"noDrillAreas\": [{ \"id\": \"gas\", \"outline\": [[0, 0], [1, 1], [1, 0], [0, 1]] }] } | /plan/noDrillAreas/0/outline | no-drill area \"gas\": its outline crosses itself near (0.50 m, 0.50 m); list the corners in order, once around",
                "\"House\" | \"\" | /name | \"\" must not be empty",
                "\"House\" | 7 | /name | 7 must be text between double quotes",
                "\"slabfield\": 1 | \"slabfield\": 2 | /slabfield | the file is written in version 2 of the format, and this program reads version 1; get a newer Slabfield",
                "\"slabfield\": 1 | \"slabfield\": \"one\" | /slabfield | \"one\" is no version of the format; write 1",
                "\"id\": \"basement\", | | /slabs/0 | slab needs \"id\"",
                "[0, 0] | [0, \"0 m\"] | /slabs/0/outline/0 | a place must be two plain numbers [x, y] in the file's lengthUnit, m",
                "[0, 0] | [0, 1e300] | /slabs/0/outline/0 | a place on the plan lies within 100 km of its origin",
                "[0, 0] | 5 | /slabs/0/outline/0 | 5 must be two plain numbers [x, y] in the file's lengthUnit, m",
                "[[0, 0], [10, 0], [10, 8], [0, 8]] | [[0, 0], [10, 0]] | /slabs/0/outline | slab \"basement\": \"outline\" needs at least three corners",
                "[[0, 0], [10, 0], [10, 8], [0, 8]] | [[0, 0], [10, 8], [10, 0], [0, 8]] | /slabs/0/outline | slab \"basement\": its outline crosses itself near (5.00 m, 4.00 m); list the corners in order, once around",
                "\"id\": \"basement\" | \"id\": \"basement\", \"treated\": \"no\" | /slabs/0/treated | \"no\" must be true or false, without quotes",
                "\"id\": \"basement\" | \"id\": \"basement\", \"holes\": [7] | /slabs/0/holes/0 | 7 must be a list of at most 2000 places [x, y]",
            })
    void refusesTheHouseWithTheRemedy(String good, String bad, String pointer, String message) {
        String text = SampleFile.SHORT.replace(good, bad == null ? "" : bad);
        FileProblem first = problems(text).get(0);
        assertThat(first.pointer()).isEqualTo(pointer.equals("''") ? "" : pointer);
        assertThat(first.message()).isEqualTo(message);
        assertThat(problems(text)).hasSize(1);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\u0001',
            value = {
                "\"cell\": \"1 mm\" | /cell | \"1 mm\" makes a grid of 80000000 cells, and this computer's memory takes about 100000; make \"cell\" at least \"2.9 cm\"",
                "\"cell\": \"0 m\" | /cell | \"0 m\" must be above 0",
                "\"soil\": { \"leakance\": \"-1 m/s/Pa\" } | /soil/leakance | \"-1 m/s/Pa\" must not be below 0",
                "\"house\": { \"pressureOutdoorsAtFloor\": \"3\" } | /house/pressureOutdoorsAtFloor | \"3\" has no unit; a pressure needs its unit, for instance \"-250 Pa\" or \"-1 inH2O\"",
                "\"air\": { \"temperature\": \"200 C\" } | /air/temperature | \"200 C\" must lie between -50 C and 60 C",
                "\"target\": { \"vacuum\": \"-5 Pa\", \"choice\": \"x\" } | /target/vacuum | \"-5 Pa\" must be above 0",
                "\"target\": { \"vacuum\": \"5 Pa\" } | /target | target needs \"choice\"",
                "\"display\": { \"flow\": \"cfs\" } | /display/flow | \"cfs\" is not one of the words for \"flow\"; did you mean \"cfm\"?",
                "\"barriers\": [{ \"id\": \"b\", \"path\": [[1, 1], [1, 1]], \"width\": \"16 in\" }] | /barriers/0/path | barrier \"b\": \"path\" has the same point twice in a row (points 1 and 2)",
                "\"barriers\": [{ \"id\": \"b\", \"path\": [[1, 1], [1, 5]] }] | /barriers/0 | barrier \"b\" needs \"width\"",
                "\"barriers\": [{ \"id\": \"b\", \"path\": [[1, 1], [1, 5]], \"width\": \"1 ft\", \"gaps\": [{ \"at\": [1, 2], \"length\": \"-1 ft\" }] }] | /barriers/0/gaps/0/length | \"-1 ft\" must not be below 0",
                "\"drainTile\": [{ \"id\": \"t\", \"path\": [[1, 1], [1, 5]], \"manning\": \"0.017\" }] | /drainTile/0/manning | \"0.017\" must be a plain number, without quotes",
                "\"drainTile\": [{ \"id\": \"t\", \"path\": [[1, 1], [1, 5]], \"sump\": \"s\" }] | /drainTile/0/sump | drain tile \"t\" names the opening \"s\", which is not drawn; there is none yet",
                "\"blockWalls\": [{ \"id\": \"w\", \"path\": [[0, 0], [10, 0]], \"tops\": { \"area\": \"-1 m2/m\" } }] | /blockWalls/0/tops/area | \"-1 m2/m\" must not be below 0",
                "\"blockWalls\": [{ \"id\": \"w\", \"path\": [[0, 0], [10, 0]], \"tops\": { \"sealedFraction\": 0.5 } }] | /blockWalls/0/tops/sealedFraction | block tops: say the \"state\" too, for instance \"state\": \"sealed\"",
                "\"openings\": [{ \"id\": \"o\", \"area\": \"1 in2\" }] | /openings/0 | opening \"o\" needs \"at\", \"path\" or \"perimeterOf\"",
                "\"openings\": [{ \"id\": \"o\", \"at\": [1, 1], \"path\": [[1, 1], [2, 2]], \"area\": \"1 in2\" }] | /openings/0/path | opening \"o\" gives \"at\" and \"path\"; keep one of them",
                "\"openings\": [{ \"id\": \"o\", \"at\": [1, 1] }] | /openings/0 | opening \"o\" needs \"area\" or \"leak\"",
                "\"openings\": [{ \"id\": \"o\", \"at\": [1, 1], \"area\": \"1 in2\", \"bends\": 1 }] | /openings/0/bends | \"bends\" counts only with \"width\"; leave it out",
                "\"openings\": [{ \"id\": \"o\", \"at\": [1, 1], \"leak\": { \"coefficient\": \"1e-4 m3/s/Pa^n\", \"exponent\": 0.6 } }] | /openings/0 | opening \"o\" needs \"radius\", because a leak does not say how large the hole is",
                "\"openings\": [{ \"id\": \"o\", \"path\": [[1, 1], [2, 2]], \"leak\": { \"coefficient\": \"1e-4 m3/s/Pa^0.6\", \"exponent\": 0.6 } }] | /openings/0/leak/coefficient | \"1e-4 m3/s/Pa^0.6\" has the unknown unit \"m3/s/Pa^0.6\" for a leak coefficient; did you mean \"m3/s/Pa^n\"?",
                "\"openings\": [{ \"id\": \"o\", \"path\": [[1, 1], [2, 2]], \"leak\": { \"coefficient\": \"1e-4 m3/s/Pa^n\", \"exponent\": 2 } }] | /openings/0/leak/exponent | 2 must lie between 0.5 and 1",
                "\"openings\": [{ \"id\": \"o\", \"at\": [1, 1], \"area\": \"1 in2\", \"state\": \"sealed\", \"sealedFraction\": 95 }] | /openings/0/sealedFraction | 95 must lie between 0 and 1 (0 % and 100 %)",
                "\"openings\": [{ \"id\": \"o\", \"at\": [1, 1], \"area\": \"1 in2\", \"state\": \"shut\" }] | /openings/0/state | \"shut\" is not one of the words for \"state\"; there are \"open\", \"loose\", \"covered\", \"sealed\"",
                "\"openings\": [{ \"id\": \"sump\", \"at\": [11, 1], \"area\": \"1 in2\" }] | /openings/0/at | opening \"sump\" lies outside every slab outline; move it inside or redraw the outline",
                "\"suctionPoints\": [{ \"id\": \"S1\", \"at\": [1, 1], \"source\": { \"pressure\": \"250 Pa\" } }] | /suctionPoints/0/source/pressure | \"250 Pa\" is above the room's pressure; a suction is negative, so write \"-250 Pa\"",
                "\"suctionPoints\": [{ \"id\": \"S1\", \"at\": [1, 1], \"source\": {} }] | /suctionPoints/0/source | source needs \"pressure\", \"flow\", \"fan\" or \"riser\"",
                "\"suctionPoints\": [{ \"id\": \"S1\", \"at\": [1, 1] }] | /suctionPoints/0 | suction point \"S1\" needs \"source\"",
                "\"suctionPoints\": [{ \"id\": \"S1\", \"at\": [1, 1], \"source\": { \"flow\": \"9 cfm\", \"discharge\": \"0 Pa\" } }] | /suctionPoints/0/source/discharge | \"discharge\" counts only with \"fan\"; leave it out",
                "\"suctionPoints\": [{ \"id\": \"S1\", \"at\": [1, 1], \"source\": { \"fan\": [[\"0 cfm\", \"1 inH2O\"], [\"9 cfm\"]] } }] | /suctionPoints/0/source/fan/1 | a list must be a pair such as [\"80 cfm\", \"250 Pa\"]",
                "\"suctionPoints\": [{ \"id\": \"S1\", \"at\": [1, 1], \"source\": { \"fan\": [[\"0 cfm\", \"1 inH2O\"], [\"9 cfm\", \"2 inH2O\"]] } }] | /suctionPoints/0/source/fan | source: \"fan\" must lose pressure as its flow grows, but it does not from point 1 to point 2; leave out the part left of the peak",
                "\"suctionPoints\": [{ \"id\": \"S1\", \"at\": [1, 1], \"pit\": { \"radius\": \"0 m\" }, \"source\": { \"flow\": \"9 cfm\" } }] | /suctionPoints/0/pit/radius | \"0 m\" must be above 0",
                "\"suctionPoints\": [{ \"id\": \"S1\", \"at\": [1, 1], \"pit\": { \"radius\": \"1 ft\", \"volume\": \"1 ft3\" }, \"source\": { \"flow\": \"9 cfm\" } }] | /suctionPoints/0/pit/volume | pit gives \"radius\" and \"volume\"; keep one of them",
                "\"suctionPoints\": [{ \"id\": \"S1\", \"at\": [1, 1], \"source\": { \"fan\": [[\"0 cfm\", \"1 inH2O\"], [\"9 cfm\", \"0 Pa\"]], \"pipe\": { \"diameter\": \"4 in\", \"length\": \"3 m\", \"ells\": 1.5 } } }] | /suctionPoints/0/source/pipe/ells | 1.5 must be a whole number, without quotes",
                "\"stages\": [{ \"id\": \"a\", \"kind\": \"baselin\" }] | /stages/0/kind | \"baselin\" is not one of the words for \"kind\"; did you mean \"baseline\"?",
                "\"stages\": [{ \"id\": \"a\", \"kind\": \"baseline\", \"openings\": [] }] | /stages/0/openings | a list must give each name a state such as { \"sump\": \"sealed\" }",
                "\"stages\": [{ \"id\": \"a\", \"kind\": \"baseline\", \"time\": \"yesterday\" }] | /stages/0/time | \"yesterday\" must be a day or a moment, such as 2026-01-20 or 2026-01-20T14:05",
                "\"stages\": [{ \"id\": \"a\", \"kind\": \"baseline\", \"readings\": [{ \"hole\": \"T1\", \"fanOff\": \"1 Pa\" }] }] | /stages/0/readings/0/hole | stage \"a\" names the test hole \"T1\", which is not drawn; there is none yet",
                "\"stages\": [{ \"id\": \"a\", \"kind\": \"baseline\", \"openings\": { \"x/y\": \"shut\" } }] | /stages/0/openings/x~1y/state | \"shut\" is not one of the words for \"state\"; there are \"open\", \"loose\", \"covered\", \"sealed\"",
            })
    void refusesWhatIsDrawnInIt(String addition, String pointer, String message) {
        String text = SampleFile.SHORT.replace(WITH, WITH + ",\n  " + addition);
        ScenarioProblems thrown =
                catchThrowableOfType(ScenarioProblems.class, () -> ScenarioReader.read(text, "f.json", 100_000));
        assertThat(thrown.problems()).containsExactly(new FileProblem("f.json", 7, pointer, message));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\u0001',
            value = {
                "{ | column 2: this is not JSON; the file ends before everything that was opened is closed; a quote or a bracket ] or } is missing",
                "{ \"a\": 1, } | column 11: this is not JSON; there is a comma too many, or a value missing, before \"}\"",
                "{ // remark | column 3: this is not JSON; it has no comments; put remarks into \"notes\"",
                "{ \"a\": sand } | column 8: this is not JSON; words stand between double quotes, as in \"sand\"",
                "{ 'a': 1 } | column 3: this is not JSON; texts stand between straight double quotes, as in \"sand\"",
                "{ \"a\": 1 \"b\": 2 } | column 10: this is not JSON; a comma is missing before it",
                "[1 2] | column 4: this is not JSON; a comma or a colon is missing before it, or it is a number with a 0 too many in front",
                "{ \"a\": 1 } [] | something follows after the end of the scenario; delete it",
                "[] | a scenario file is one object { }; this is a list",
            })
    void saysWhereAndWhyItIsNotJson(String text, String message) {
        assertThat(problems(text)).singleElement().satisfies(p -> {
            assertThat(p.message()).isEqualTo(message);
            assertThat(p.line()).isEqualTo(1);
        });
    }

    @Test
    void aHouseNeedsASlab() {
        String text = SampleFile.SHORT.replaceFirst("\\[\\{ \"id\".*\\}\\]", "[]");
        single(text, "/slabs", "the scenario: \"slabs\" needs at least one slab");
    }

    @Test
    void anEmptyFileATextOverTwoLinesAndAKeyGivenTwice() {
        single("", "", "the file is empty");
        single(
                "{ \"a\": \"x\ny\" }",
                "",
                "column 10: this is not JSON; a text ends on the line on which it begins; close its quote, or write \\n for a new line");
        single("{ \"a\": 1,\n \"a\": 2 }", "/a", "the key \"a\" stands twice here, first on line 1; delete one");
    }

    @Test
    void limitsAreSaidInPlainWords() {
        single("[".repeat(50) + "]".repeat(50), "", "brackets are nested deeper than 20, which no scenario needs");
        single(
                "[" + "1,".repeat(300_000) + "1]",
                "",
                "there are more than 200000 values, which is more than this program takes");
        single(" ".repeat(9_000_000), "", "the file is larger than 8 MB, which no scenario is");
        String corners = "[0, 0], ".repeat(2000) + "[0, 0]";
        single(
                SampleFile.SHORT.replace("[0, 0]", corners),
                "/slabs/0/outline",
                "the list has 2004 entries; at most 2000 are read");
    }

    @Test
    void allProblemsComeAtOnceEachWithItsLine() {
        String text = SampleFile.SHORT.replace(WITH, """
                "layer": {
                    "fill": "sand",
                    "thickness": "-4 in"
                  },
                  "openings": [
                    { "id": "bad", "at": [1, 1] },
                    { "id": "joint", "perimeterOf": "basement", "width": "1 mm" }
                  ],
                  "suctionPoints": [
                    { "id": "S1", "at": [3, 3], "source": { "pressure": "-100 Pa" } },
                    { "id": "S2", "at": [14.2, 3.0], "source": { "pressure": "-100 Pa" } }
                  ]""");
        assertThatThrownBy(() -> ScenarioReader.read(text, "scenarios/barn.json"))
                .hasToString("""
                scenarios/barn.json has 3 problems:
                  line 8   /layer/thickness      "-4 in" must be above 0.
                  line 11  /openings/0           opening "bad" needs "area" or "leak".
                  line 16  /suctionPoints/1/at   suction point "S2" lies outside every slab outline; move it inside or redraw the outline.""");
    }

    @Test
    void placesInTheFileStayRightBehindAnEntryThatCouldNotBeRead() {
        String text = SampleFile.SHORT.replace(
                WITH, WITH + ", \"testHoles\": [{ \"id\": \"T1\" }, { \"id\": \"T2\", \"at\": [99, 1] }]");
        assertThat(problems(text)).extracting(FileProblem::pointer).containsExactly("/testHoles/0", "/testHoles/1/at");
    }

    @Test
    void nothingIsSaidToBeMissingThatOnlyCouldNotBeRead() {
        String text = SampleFile.SHORT.replace(
                WITH,
                WITH
                        + ", \"openings\": [{ \"id\": \"sump\", \"at\": [1, 1] }], \"drainTile\": [{ \"id\": \"t\", \"path\": [[1, 1], [1, 5]], \"sump\": \"sump\" }]");
        assertThat(problems(text)).extracting(FileProblem::pointer).containsExactly("/openings/0");
        String noSlab = SampleFile.SHORT
                .replace("\"id\": \"basement\",", "")
                .replace(WITH, WITH + ", \"testHoles\": [{ \"id\": \"T1\", \"at\": [1, 1] }]");
        assertThat(problems(noSlab)).extracting(FileProblem::pointer).containsExactly("/slabs/0");
    }

    @Test
    void filesThatCannotBeOpened(@TempDir Path folder) throws IOException {
        assertThatThrownBy(() -> ScenarioReader.read(folder.resolve("none.json")))
                .hasMessageEndingWith("none.json has 1 problem:\n  there is no such file; check its name and folder.");
        assertThatThrownBy(() -> ScenarioReader.read(folder))
                .hasMessageEndingWith("this is a folder, not a scenario file.");
        Path latin = Files.write(
                folder.resolve("l.json"), "{ \"name\": \"K\u00fcche\" }".getBytes(StandardCharsets.ISO_8859_1));
        assertThatThrownBy(() -> ScenarioReader.read(latin))
                .hasMessageEndingWith("the file is not UTF-8 text; save it again with that encoding.");
        Path large = Files.write(folder.resolve("large.json"), new byte[9_000_000]);
        assertThatThrownBy(() -> ScenarioReader.read(large))
                .hasMessageEndingWith("the file is larger than 8 MB, which no scenario is.");
    }

    @Test
    void aByteOrderMarkIsNoProblem() throws ScenarioProblems {
        assertThat(ScenarioReader.read("\ufeff" + SampleFile.SHORT, "bom").name())
                .isEqualTo("House");
    }

    /** Files with single characters or stretches changed either read or give problems; nothing else is ever thrown. */
    @Test
    void damagedFilesNeverBreakTheReader() {
        Random random = new Random(7);
        String letters = "{}[]\",:0123456789.-eE abm/\\\u00e9\u0000null";
        int refused = 0;
        for (int i = 0; i < 300; i++) {
            StringBuilder text = new StringBuilder(SampleFile.FULL);
            for (int k = random.nextInt(4); k >= 0; k--) {
                int at = random.nextInt(text.length()), length = random.nextInt(6);
                text.replace(
                        at,
                        Math.min(text.length(), at + length),
                        "" + letters.charAt(random.nextInt(letters.length())));
            }
            try {
                ScenarioReader.read(text.toString(), "damaged");
            } catch (ScenarioProblems e) {
                refused++;
                assertThat(e.problems())
                        .isNotEmpty()
                        .allSatisfy(p -> assertThat(p.message()).isNotBlank());
            }
        }
        assertThat(refused).isGreaterThan(100);
    }

    /** Each value of the full sample in turn replaced by one of another kind. */
    @Test
    void valuesOfTheWrongKindNeverBreakTheReader() throws Exception {
        ObjectMapper mapper = new ObjectMapper();
        String[] others = {"null", "true", "-1", "1e308", "\"\"", "\"-1 m\"", "[]", "[[]]", "{}", "{ \"id\": 3 }"};
        List<String> places = new ArrayList<>();
        collect(mapper.readTree(SampleFile.FULL), "", places);
        for (int i = 0; i < places.size(); i++) {
            JsonNode tree = mapper.readTree(SampleFile.FULL), other = mapper.readTree(others[i % others.length]);
            JsonPointer pointer = JsonPointer.compile(places.get(i));
            JsonNode parent = tree.at(pointer.head());
            if (parent instanceof ObjectNode object) object.set(pointer.last().getMatchingProperty(), other);
            if (parent instanceof ArrayNode array) array.set(pointer.last().getMatchingIndex(), other);
            try {
                ScenarioReader.read(tree.toString(), "changed");
            } catch (ScenarioProblems e) {
                assertThat(e.problems()).isNotEmpty();
            }
        }
    }

    private static void collect(JsonNode node, String at, List<String> places) {
        if (!at.isEmpty()) places.add(at);
        node.properties().forEach(p -> collect(p.getValue(), at + "/" + JsonTree.escaped(p.getKey()), places));
        if (node.isArray()) for (int i = 0; i < node.size(); i++) collect(node.get(i), at + "/" + i, places);
    }
}
