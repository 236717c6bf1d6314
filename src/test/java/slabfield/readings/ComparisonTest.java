package slabfield.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.io.ScenarioReader;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.network.SlabSolver;
import slabfield.readings.Comparison.HoleComparison;
import slabfield.readings.Comparison.Verdict;

/** Readings against a solved house: differences, bands, verdicts and remarks. */
class ComparisonTest {
    private static final Scenario HOUSE = house();
    private static final Result.Solved SOLVED = (Result.Solved) SlabSolver.solve(HOUSE, Progress.NONE);

    private static Scenario house() {
        try {
            return ScenarioReader.read(Path.of("scenarios/large-slab-on-grade.json"));
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    private static double predicted(String hole) {
        return SOLVED.hole(hole).orElseThrow().fanOn().orElseThrow();
    }

    /** What is to be read with the fan off. */
    private static double off(String hole) {
        return SOLVED.hole(hole).orElseThrow().fanOff().orElseThrow();
    }

    private static Stage stage(List<Stage.HoleReading> holes, List<Stage.SystemReading> systems) {
        return new Stage("visit", StageKind.LATER_VISIT, Map.of(), Map.of(), holes, systems, "", "");
    }

    private static Stage.HoleReading reading(String hole, double off, double on) {
        return new Stage.HoleReading(
                hole,
                OptionalDouble.of(off),
                OptionalDouble.of(on),
                OptionalDouble.of(0.5),
                OptionalDouble.of(0.1),
                "");
    }

    private static Comparison compare(Stage stage) {
        return Comparison.of(HOUSE, stage, SOLVED, Band.USUAL);
    }

    /** Half-width: 2 sqrt(step^2/12 + spread^2 + (share p)^2), written out again. */
    @ParameterizedTest
    @CsvSource({"-40", "-5", "0"})
    void bandAddsMeterUnrestAndModel(double p) {
        double width = Band.USUAL.halfWidth(reading("T1", 0, p), OptionalDouble.of(p));
        assertThat(width).isCloseTo(2 * Math.sqrt(0.01 / 12 + 0.25 + Math.pow(0.2 * p, 2)), within(1e-12));
    }

    @Test
    void bandAssumesWhatWasNotNoted() {
        Stage.HoleReading bare = new Stage.HoleReading(
                "T1",
                OptionalDouble.empty(),
                OptionalDouble.of(-3),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "");
        assertThat(Band.USUAL.halfWidth(bare, OptionalDouble.empty()))
                .isCloseTo(Band.USUAL.halfWidth(reading("T1", 0, -3), OptionalDouble.empty()), within(1e-12));
    }

    /** Share of the prediction by which the reading is off, and the verdict. The band is about 40 % here. */
    @ParameterizedTest
    @CsvSource({"0, AS_EXPECTED", "0.3, AS_EXPECTED", "-0.3, AS_EXPECTED", "0.6, STRONGER", "-0.6, WEAKER"})
    void verdictFollowsTheBand(double share, Verdict verdict) {
        double p = predicted("T1");
        HoleComparison c = compare(stage(List.of(reading("T1", off("T1"), p * (1 + share))), List.of()))
                .holes()
                .get(0);
        assertThat(c.verdict()).isEqualTo(verdict);
        assertThat(c.difference().orElseThrow()).isCloseTo(p * share, within(1e-9));
    }

    @Test
    void biasAndScatterAreOverAllHoles() {
        Comparison c = compare(stage(
                List.of(reading("T1", off("T1"), predicted("T1") + 3), reading("T2", off("T2"), predicted("T2") - 1)),
                List.of()));
        assertThat(c.bias().orElseThrow()).isCloseTo(1, within(1e-9));
        assertThat(c.scatter().orElseThrow()).isCloseTo(Math.sqrt(5), within(1e-9));
    }

    @Test
    void aHoleWithoutAReadingHasNothingToCompare() {
        Stage.HoleReading none = new Stage.HoleReading(
                "T1",
                OptionalDouble.of(0.2),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "");
        Comparison c = compare(stage(List.of(none), List.of()));
        assertThat(c.holes().get(0).verdict()).isEqualTo(Verdict.NOTHING_TO_COMPARE);
        assertThat(c.bias()).isEmpty();
    }

    @Test
    void systemReadingsStandBesideTheirPrediction() {
        Stage.SystemReading s = new Stage.SystemReading("S2", OptionalDouble.of(0.01), OptionalDouble.of(-280), "");
        Comparison.SystemComparison c =
                compare(stage(List.of(), List.of(s))).systems().get(0);
        assertThat(c.predictedFlow())
                .isEqualTo(SOLVED.suction("S2").orElseThrow().flow());
        assertThat(c.predictedPressure()).isCloseTo(-300, within(1e-9));
    }

    @Test
    void remarksNameReadingsThatCannotBe() {
        Stage.SystemReading s = new Stage.SystemReading("S1", OptionalDouble.empty(), OptionalDouble.of(-100), "");
        Comparison c = compare(
                stage(List.of(reading("T1", 0, -120), reading("T2", -4, -4), reading("T3", -1, 2)), List.of(s)));
        assertThat(c.remarks())
                .hasSize(4)
                .anyMatch(r -> r.startsWith("Hole \"T1\"") && r.contains("stronger than any riser"))
                .anyMatch(r -> r.startsWith("Hole \"T2\"") && r.contains("the same with the fan on and off"))
                .anyMatch(r -> r.startsWith("Hole \"T3\"") && r.contains("higher with the fan on than off"))
                .anyMatch(r -> r.contains("No flow was measured"));
    }

    @Test
    void soundReadingsHaveNoRemark() {
        Stage.SystemReading s = new Stage.SystemReading("S1", OptionalDouble.of(0.01), OptionalDouble.of(-300), "");
        assertThat(compare(stage(List.of(reading("T1", 0.3, -90)), List.of(s))).remarks())
                .isEmpty();
    }

    @Test
    void theWindAndTheStackCancelWhereBothWereRead() {
        double drop = predicted("T1") - off("T1");
        HoleComparison c = compare(stage(List.of(reading("T1", 4, 4 + drop)), List.of()))
                .holes()
                .get(0);
        assertThat(c.byPair()).isTrue();
        assertThat(c.difference().getAsDouble()).isCloseTo(0, within(1e-9));
        assertThat(c.verdict()).isEqualTo(Verdict.AS_EXPECTED);
    }

    /** A reading that could not have shown even the loss of all vacuum says nothing. */
    @Test
    void aBandAsWideAsThePredictionCannotTell() {
        Stage.HoleReading shaky = new Stage.HoleReading(
                "T1",
                OptionalDouble.empty(),
                OptionalDouble.of(predicted("T1")),
                OptionalDouble.of(Math.abs(predicted("T1"))),
                OptionalDouble.of(0.1),
                "");
        assertThat(compare(stage(List.of(shaky), List.of())).holes().get(0).verdict())
                .isEqualTo(Verdict.CANNOT_TELL);
    }

    @Test
    void chiSquareIsInUnitsOfTheNoise() {
        Stage.HoleReading r = reading("T1", 0, 0);
        double noise = Noise.ofChange(r);
        Comparison c = compare(stage(List.of(reading("T1", off("T1"), predicted("T1") + 3 * noise)), List.of()));
        assertThat(c.fit().chiSquare().getAsDouble()).isCloseTo(9, within(1e-6));
    }

    @Test
    void flowsAndSuctionHaveVerdictsToo() {
        Result.Suction s2 = SOLVED.suction("S2").orElseThrow();
        Stage.SystemReading s = new Stage.SystemReading(
                "S2", OptionalDouble.of(3 * s2.flow()), OptionalDouble.of(s2.pressure() / 3), "");
        Comparison.SystemComparison c =
                compare(stage(List.of(), List.of(s))).systems().get(0);
        assertThat(c.flowVerdict()).isEqualTo(Verdict.STRONGER);
        assertThat(c.pressureVerdict()).isEqualTo(Verdict.WEAKER);
        assertThat(belowMeter(10 * s2.flow())).isEqualTo(Verdict.CANNOT_TELL);
        // the bound itself counts, not its half: the prediction less its band of 0.51 is 0.49 of the flow
        assertThat(belowMeter(0.55 * s2.flow())).isEqualTo(Verdict.CANNOT_TELL);
        assertThat(belowMeter(0.3 * s2.flow())).isEqualTo(Verdict.WEAKER);
    }

    private static Verdict belowMeter(double bound) {
        Stage.SystemReading below = new Stage.SystemReading(
                "S2",
                java.util.Optional.of(new slabfield.model.FlowReading.Below(bound)),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "");
        return compare(stage(List.of(), List.of(below))).systems().get(0).flowVerdict();
    }

    @Test
    void theParityPlotHasEveryHoleWithBothValues() {
        Comparison c = compare(stage(List.of(reading("T1", 0, -80), reading("T2", 0, -4)), List.of()));
        assertThat(c.parity()).extracting(Comparison.ParityPoint::hole).containsExactly("T1", "T2");
        assertThat(c.parity().get(0).residual())
                .isCloseTo(c.holes().get(0).difference().getAsDouble(), within(1e-12));
    }
}
