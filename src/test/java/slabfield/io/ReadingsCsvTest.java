package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import slabfield.model.FlowReading;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.model.TestHole;
import slabfield.quantity.Unit;

class ReadingsCsvTest {
    private static Scenario house() {
        try {
            return ScenarioReader.read(SampleFile.FULL, "full");
        } catch (ScenarioProblems e) {
            throw new AssertionError(e);
        }
    }

    private static Scenario in(String text) throws ScenarioProblems {
        return ReadingsCsv.into(house(), Optional.of("start"), text, "table");
    }

    private static List<FileProblem> problems(String text) {
        ScenarioProblems found = catchThrowableOfType(ScenarioProblems.class, () -> in(text));
        assertThat(found).as(text).isNotNull();
        return found.problems();
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void whatIsWrittenIsReadBackEqual(boolean decimalComma) throws ScenarioProblems {
        Scenario full = house();
        String table = ReadingsCsv.text(full.stages(), decimalComma);
        Stage first = full.stages().get(0);
        Scenario empty = full.withStages(
                List.of(first.with(List.of(), List.of()), full.stages().get(1)));
        assertThat(empty).isNotEqualTo(full);
        assertThat(ReadingsCsv.into(empty, Optional.empty(), table, "table")).isEqualTo(full);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "hole,fan off [Pa],fan on [Pa]~T1,0.5,-12.5",
                "Hole;Fan off (Pa);Fan on Pa~T1;0,5;-12,5",
                "hole\tfan on [mmH2O]\tfan_off_inH2O~T1\t-1,27464525\t0.00200731542",
                "hole,fan on [Pa],fan off [Pa]~\"T1\",\u221212.5 Pa,\"0,5\"",
                "hole,,fan off [Pa],fan on [Pa],~T1,,0.5,-12.5,~,,,,"
            })
    void pointCommaAndTabAreRead(String text) throws ScenarioProblems {
        Stage stage =
                in(text.replace('~', '\n').replace("\\t", "\t")).stage("start").orElseThrow();
        assertThat(stage.holes()).hasSize(1);
        assertThat(stage.holes().get(0).fanOff().orElseThrow()).isCloseTo(0.5, within(1e-6));
        assertThat(stage.holes().get(0).fanOn().orElseThrow()).isCloseTo(-12.5, within(1e-6));
    }

    @Test
    void aReadingAtTheSamePlaceIsReplacedAndAStageAdded() throws ScenarioProblems {
        Scenario read = in("stage,kind,hole,fan on [Pa],count\nvacuum cleaner,,T1,-3,\nnew,after sealing,T2,-4,6\n");
        assertThat(read.stages()).extracting(Stage::id).containsExactly("vacuum cleaner", "start", "new");
        assertThat(read.stages().get(0).holes()).hasSize(1);
        assertThat(read.stages().get(0).holes().get(0).fanOn()).hasValue(-3);
        assertThat(read.stages().get(0).sources())
                .isEqualTo(house().stages().get(0).sources());
        assertThat(read.stages().get(2).kind()).isEqualTo(StageKind.AFTER_SEALING);
        assertThat(read.stages().get(2).holes().get(0).count()).hasValue(6);
    }

    @Test
    void flowsAreReadInAllTheirForms() throws ScenarioProblems {
        Stage stage =
                in("suction point,flow [cfm],velocity pressure [Pa],velocity [fpm],pipe diameter [in],riser [inH2O]\n"
                                + "S1,<5,,,,-1\nS2,40,,,,\nS3,,9 11 10,,4,\nS4,,,900,3,\n")
                        .stage("start")
                        .orElseThrow();
        assertThat(stage.systems().stream().map(s -> s.flowReading().orElseThrow()))
                .containsExactly(
                        new FlowReading.Below(Unit.CFM.toSi(5)),
                        new FlowReading.Stated(Unit.CFM.toSi(40), OptionalDouble.empty()),
                        new FlowReading.InPipe(
                                List.of(9.0, 11.0, 10.0),
                                false,
                                0.1016,
                                true,
                                OptionalDouble.empty(),
                                OptionalDouble.empty()),
                        new FlowReading.InPipe(
                                List.of(Unit.FOOT_PER_MINUTE.toSi(900)),
                                true,
                                0.0762,
                                false,
                                OptionalDouble.empty(),
                                OptionalDouble.empty()));
        assertThat(stage.systems().get(0).riser()).hasValue(-249.08891);
    }

    @Test
    void allMistakesAreNamedAtOnceWithRowAndColumn() {
        List<FileProblem> found = problems("hole,suction point,fan on [Pa],flow [cfm],count,time\n"
                + "T9,,-1,,,\n"
                + "T1,,abc,,2.5,\n"
                + "T1,,\"-1,234\",40,,\n"
                + "T1,S1,-1,,,\n"
                + "T2,,,,,\n"
                + "T2,,-1,,,\n");
        assertThat(found).extracting(FileProblem::line).containsExactly(2, 3, 3, 4, 4, 4, 5, 6, 7);
        assertThat(found.get(0)).satisfies(p -> {
            assertThat(p.pointer()).isEqualTo("column 1, hole");
            assertThat(p.message()).contains("no test hole \"T9\"", "T1");
        });
        assertThat(found.get(1).pointer()).isEqualTo("column 3, fan on");
        assertThat(found)
                .extracting(FileProblem::message)
                .anyMatch(m -> m.contains("whole number"))
                .anyMatch(m -> m.contains("only a suction point has this"))
                .anyMatch(m -> m.contains("can mean two things"))
                .anyMatch(m -> m.contains("two rows in stage \"start\""))
                .anyMatch(m -> m.contains("one of them"))
                .anyMatch(m -> m.contains("has no reading"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "hole,fan on~T1,-1                    | column 2          | has no unit",
                "hole,fan on [cfm]~T1,-1              | column 2          | a pressure",
                "hole,fan onn [Pa],xyz~T1,-1,2        | column 2          | fan onn",
                "hole,fan on [Pa],fan on [Pa]~T1,-1,2 | column 3          | two columns",
                "fan on [Pa]~-1                       | ''                | needs a column \"hole\"",
                "hole,fan on [Pa]~T1,-1,5             | column 3          | under no heading",
                "hole,fan on [Pa]                     | ''                | no readings below",
                "suction point,velocity [m/s]~S1,5    | pipe diameter     | inside diameter",
                "suction point,velocity [m/s],pipe diameter [in],position~S1,5,3,middle | column 4, position | centre line",
                "suction point,velocity [m/s],flow [cfm],pipe diameter [in]~S1,5,3,4 | column 2, velocity | keep one"
            })
    void aTableThatCannotBeReadSaysWhere(String text, String column, String message) {
        assertThat(problems(text.replace('~', '\n'))).anySatisfy(p -> {
            assertThat(p.pointer()).isEqualTo(column);
            assertThat(p.message()).contains(message);
        });
    }

    @Test
    void aRowNeedsAStage() {
        ScenarioProblems found = catchThrowableOfType(
                ScenarioProblems.class,
                () -> ReadingsCsv.into(house(), Optional.empty(), "hole,fan on [Pa]\nT1,-2", "table"));
        assertThat(found).hasMessageContaining("names no stage");
    }

    /** A spreadsheet would run a cell that begins like a formula; a negative number is none. */
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+cmd", "-2+3", "@sum", "'quoted", "two\nlines", "a,b;c\td", "say \"no\""})
    void namesCannotActAsFormulas(String name) throws ScenarioProblems {
        Stage stage = new Stage(
                name,
                StageKind.BASELINE,
                Map.of(),
                Map.of(),
                List.of(new Stage.HoleReading(
                        name,
                        OptionalDouble.empty(),
                        OptionalDouble.of(-2.5),
                        OptionalDouble.empty(),
                        OptionalInt.of(3),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        "")),
                List.of(),
                "",
                "");
        Scenario house = house().withTestHoles(List.of(new TestHole(name, new Point(5, 5), "")))
                .withStages(List.of());
        String text = ReadingsCsv.text(List.of(stage), false);
        for (DelimitedText.Row row : DelimitedText.read(text).rows())
            assertThat(row.cells())
                    .allMatch(c -> c.isEmpty() || "=+@\t".indexOf(c.charAt(0)) < 0)
                    .allMatch(c -> !c.startsWith("-") || c.equals("-2.5"));
        assertThat(ReadingsCsv.into(house, Optional.empty(), text, "table").stages())
                .containsExactly(stage);
    }
}
