package slabfield.readings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Air;
import slabfield.model.Display;
import slabfield.model.Equipment;
import slabfield.model.Fill;
import slabfield.model.FillWord;
import slabfield.model.FlowReading;
import slabfield.model.House;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Plan;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Slab;
import slabfield.model.Source;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.model.SuctionPoint;
import slabfield.model.Target;
import slabfield.model.TestHole;
import slabfield.network.SlabSolver;

class ReadingChecksTest {
    private static final OptionalDouble NONE = OptionalDouble.empty();
    private static Scenario house;
    private static Result.Solved solved;

    @BeforeAll
    static void solve() {
        Slab slab = new Slab(
                "basement",
                List.of(new Point(0, 0), new Point(9, 0), new Point(9, 6), new Point(0, 6)),
                List.of(),
                0.1,
                true);
        Opening sump = new Opening(
                "sump",
                OpeningKind.SUMP,
                new Opening.Spot(new Point(8, 5), 0.2),
                new Opening.Orifice(2e-3, 0.61),
                Seal.of(SealState.OPEN));
        SuctionPoint suction = new SuctionPoint(
                "S1",
                new Point(1.5, 1.5),
                Optional.empty(),
                new SuctionPoint.Pit(0.2),
                new Source.Pressure(-250),
                false);
        List<TestHole> holes = List.of(
                new TestHole("near", new Point(2.5, 1.5), ""),
                new TestHole("middle", new Point(5, 3), ""),
                new TestHole("far", new Point(8.5, 1), ""));
        house = new Scenario(
                "checked",
                "",
                "",
                Display.SI,
                List.of(slab),
                new Layer(Fill.of(FillWord.SAND, 0.1), List.of()),
                List.of(),
                List.of(),
                List.of(),
                List.of(sump),
                2e-9,
                0,
                Air.STANDARD,
                List.of(suction),
                holes,
                List.of(),
                Target.COMMON_PRACTICE,
                0.25,
                Equipment.NONE,
                House.UNKNOWN,
                Plan.EMPTY);
        solved = (Result.Solved) SlabSolver.solve(house, Progress.NONE);
    }

    private static double at(String hole) {
        return solved.hole(hole).orElseThrow().fanOn().getAsDouble();
    }

    private static Stage.HoleReading read(String hole, double off, double on) {
        return new Stage.HoleReading(
                hole,
                OptionalDouble.of(off),
                OptionalDouble.of(on),
                OptionalDouble.of(0.3),
                OptionalInt.empty(),
                OptionalDouble.of(0.1),
                NONE,
                "");
    }

    private static Stage.SystemReading flow(double flow) {
        return new Stage.SystemReading("S1", OptionalDouble.of(flow), NONE, "");
    }

    private static Stage stage(List<Stage.HoleReading> holes, Stage.SystemReading... systems) {
        return new Stage("now", StageKind.LATER_VISIT, Map.of(), Map.of(), holes, List.of(systems), "", "");
    }

    private static List<Finding.Kind> kinds(Stage stage, boolean predicted) {
        return ReadingChecks.of(house, stage, predicted ? Optional.of(solved) : Optional.empty()).stream()
                .map(Finding::kind)
                .toList();
    }

    @Test
    void soundReadingsSayNothing() {
        Stage sound = stage(
                List.of(
                        read("near", 0.4, at("near") + 0.4),
                        read("middle", 0.4, at("middle")),
                        read("far", 0.4, at("far"))),
                flow(0.003));
        assertThat(kinds(sound, true)).isEmpty();
        assertThat(kinds(sound, false)).isEmpty();
    }

    /** No hole can fall below the deepest suction (maximum principle); a rise of the baseline is taken off first. */
    @ParameterizedTest
    @CsvSource({"-251, 0, false", "-258, 0, true", "-258, -8, false"})
    void noHoleIsStrongerThanTheSource(double on, double off, boolean odd) {
        assertThat(kinds(stage(List.of(read("near", off, on)), flow(0.003)), true)
                        .contains(Finding.Kind.STRONGER_THAN_SOURCE))
                .isEqualTo(odd);
    }

    @Test
    void inchesEnteredAsPascalsAreSuspected() {
        List<Finding> found = ReadingChecks.of(
                house, stage(List.of(read("near", 0, at("near") / 249)), flow(0.003)), Optional.of(solved));
        assertThat(found).extracting(Finding::kind).containsExactly(Finding.Kind.UNIT_SLIP);
        assertThat(found.get(0).sentence()).contains("inches of water", "Enter it with its unit");
        assertThat(kinds(stage(List.of(read("near", 0, at("near") * 249)), flow(0.003)), true))
                .containsExactly(Finding.Kind.UNIT_SLIP);
        assertThat(kinds(stage(List.of(read("near", 0, at("near") / 8)), flow(0.003)), true))
                .isEmpty();
    }

    @Test
    void aMissingSignIsSuspected() {
        assertThat(kinds(stage(List.of(read("near", 0, -at("near"))), flow(0.003)), true))
                .containsExactly(Finding.Kind.SIGN_SLIP);
        assertThat(kinds(stage(List.of(read("near", 0, 3)), flow(0.003)), true))
                .containsExactly(Finding.Kind.RISES_WITH_FAN);
    }

    @Test
    void aHoleThatDoesNotAnswerIsNamed() {
        assertThat(kinds(stage(List.of(read("near", -0.3, -0.3)), flow(0.003)), true))
                .containsExactly(Finding.Kind.ON_EQUALS_OFF);
    }

    /** Where unrest is larger than what is expected, an equal pair is no news; without a prediction it is. */
    @Test
    void aHoleThatNeedNotAnswerIsNotNamed() {
        Stage.HoleReading restless = new Stage.HoleReading(
                "far",
                OptionalDouble.of(-0.3),
                OptionalDouble.of(-0.3),
                OptionalDouble.of(2 * Math.abs(at("far"))),
                OptionalInt.empty(),
                OptionalDouble.of(0.1),
                NONE,
                "");
        assertThat(kinds(stage(List.of(restless), flow(0.003)), true)).doesNotContain(Finding.Kind.ON_EQUALS_OFF);
        assertThat(kinds(stage(List.of(restless), flow(0.003)), false)).containsExactly(Finding.Kind.ON_EQUALS_OFF);
    }

    @Test
    void aFarHoleMuchStrongerThanANearOneIsNamed() {
        List<Stage.HoleReading> odd = List.of(read("near", 0, -20), read("far", 0, -60));
        assertThat(kinds(stage(odd, flow(0.003)), true)).containsExactly(Finding.Kind.FAR_STRONGER_THAN_NEAR);
        assertThat(kinds(stage(odd, flow(0.003)), false)).containsExactly(Finding.Kind.FAR_STRONGER_THAN_NEAR);
        assertThat(kinds(stage(List.of(read("near", 0, -20), read("far", 0, -24)), flow(0.003)), true))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0.006, open, true", "0.0031, open, false", "0.006, covered, false"})
    void moreFlowWithLessVacuumMeansThatSomethingOpened(double flow, String before, boolean odd) {
        SealState state = before.equals("open") ? SealState.OPEN : SealState.COVERED;
        Stage earlier = new Stage(
                "first",
                StageKind.BASELINE,
                Map.of("sump", Seal.of(state)),
                Map.of(),
                List.of(read("near", 0, -90), read("far", 0, -30)),
                List.of(flow(0.003)),
                "",
                "");
        Stage now = stage(List.of(read("near", 0, -70), read("far", 0, -12)), flow(flow));
        Scenario with = house.withStages(List.of(earlier, now));
        assertThat(ReadingChecks.of(with, now, Optional.of(solved)).stream()
                        .anyMatch(f -> f.kind() == Finding.Kind.MORE_FLOW_LESS_VACUUM))
                .isEqualTo(odd);
    }

    /** 7 m of sand at 1e-10 m2 take 26 s. */
    @ParameterizedTest
    @CsvSource({"10, true", "40, false"})
    void aReadingBeforeTheLayerSettlesIsNamed(double waited, boolean early) {
        Stage.HoleReading r = new Stage.HoleReading(
                "far",
                NONE,
                OptionalDouble.of(at("far")),
                NONE,
                OptionalInt.empty(),
                NONE,
                OptionalDouble.of(waited),
                "");
        List<Finding> found = ReadingChecks.of(house, stage(List.of(r), flow(0.003)), Optional.of(solved));
        assertThat(found.stream().anyMatch(f -> f.kind() == Finding.Kind.NOT_SETTLED))
                .isEqualTo(early);
        if (early) assertThat(found.get(0).sentence()).contains("10 s after switching on", "26 s to settle", "sand");
    }

    @Test
    void aFlowThatIsMissingOrTooSmallIsNamed() {
        List<Stage.HoleReading> holes = List.of(read("near", 0, at("near")));
        assertThat(kinds(stage(holes), true)).containsExactly(Finding.Kind.NO_FLOW);
        Stage.SystemReading small = new Stage.SystemReading(
                "S1",
                Optional.of(new FlowReading.InPipe(List.of(0.1), false, 0.0779, false, OptionalDouble.of(0.1), NONE)),
                NONE,
                NONE,
                NONE,
                NONE,
                "");
        assertThat(kinds(stage(holes, small), true)).containsExactly(Finding.Kind.FLOW_BELOW_METER);
    }
}
