package slabfield.equipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Air;
import slabfield.model.Equipment;
import slabfield.model.FanOffer;
import slabfield.model.NominalPipe;
import slabfield.model.Riser;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.model.Target;

/** Fans, pipes and days in a whole house: each answer held against another solve or a relation that must hold. */
class SystemTest {
    private static final FanOffer WEAK = Basements.offer("weak", 40, 0.05, 10);
    private static final FanOffer MIDDLE = Basements.offer("middle", 300, 0.07, 50);
    private static final FanOffer STRONG = Basements.offer("strong", 700, 0.09, 110);

    private static Scenario drawn() {
        return Basements.of(Basements.fan(300, 0.07))
                .withHouse(Basements.house())
                .withTarget(new Target(10, "a test's"));
    }

    @Test
    void theSmallestFanThatHoldsTheTargetOnTheWorstDayComesFirst() {
        FanRanking ranking = FanRanking.of(drawn(), List.of(STRONG, WEAK, MIDDLE), Progress.NONE);
        assertThat(ranking.fans()).extracting(r -> r.fan().offer().id()).containsExactly("middle", "strong", "weak");
        assertThat(ranking.fans()).extracting(FanRanking.Ranked::meets).containsExactly(true, true, false);
        FanRanking.Ranked best = ranking.fans().get(0);
        assertThat(best.yearlyEnergy().orElseThrow() / 3.6e6).isCloseTo(438, within(1e-9));
        Scenario worst = WorstDay.under(
                FanPlacement.with(drawn(), MIDDLE.curve()),
                HousePressure.onWorstDay(drawn(), 258.15, best.solved().flows().fromRoom())
                        .total());
        assertThat(best.worstDay().orElseThrow())
                .isEqualTo(Held.of(Solves.one(worst).orElseThrow()));
        assertThat(best.margin()).isCloseTo(best.worstDay().get().vacuum() - 10, within(1e-12));
        assertThat(best.worstDay().get().vacuum()).isLessThan(best.drawn().vacuum());
    }

    /** In a house that leaks most to the room, a fan's operating point lies on its curve, less the pipe. */
    @Test
    void operatingPointLiesOnTheCurveOfTheThinAir() {
        Scenario high = new Scenario(
                "high",
                "",
                "",
                drawn().display(),
                drawn().slabs(),
                drawn().layer(),
                List.of(),
                List.of(),
                List.of(),
                drawn().openings(),
                1e-6,
                0,
                new Air(OptionalDouble.empty(), OptionalDouble.of(1500)),
                drawn().suctionPoints(),
                drawn().testHoles(),
                List.of(),
                drawn().target(),
                0.25);
        FanRanking.Ranked ranked =
                FanRanking.of(high, List.of(MIDDLE), Progress.NONE).fans().get(0);
        Result.Suction point = ranked.solved().suctions().get(0);
        double density = Solves.air(high).density();
        assertThat(density).isCloseTo(1.204 * 84560 / 101325, Percentage.withPercentage(0.1));
        double rise = FanCurves.rise(MIDDLE.curve(), point.flow()) * density / 1.204;
        double loss =
                PipeLosses.of(Basements.pipe(), point.flow(), Solves.air(high)).total();
        assertThat(point.pressure()).isCloseTo(loss - rise, within(1e-6));
        assertThat(ranked.watts().orElseThrow()).isCloseTo(50 * density / 1.204, within(1e-9));
    }

    @Test
    void narrowPipeIsShownAsVacuumLostAtTheSlab() {
        List<PipeComparison> pipes = PipeComparison.of(drawn(), Progress.NONE);
        assertThat(pipes)
                .extracting(PipeComparison::size)
                .containsExactly(
                        Optional.empty(),
                        Optional.of(NominalPipe.TWO_INCH),
                        Optional.of(NominalPipe.THREE_INCH),
                        Optional.of(NominalPipe.FOUR_INCH),
                        Optional.of(NominalPipe.SIX_INCH));
        List<PipeComparison> sizes = pipes.subList(1, 5);
        for (int i = 1; i < 4; i++) {
            assertThat(sizes.get(i).lost()).isLessThan(sizes.get(i - 1).lost()).isPositive();
            assertThat(sizes.get(i).fastest()).isLessThan(sizes.get(i - 1).fastest());
            assertThat(sizes.get(i).solved().flows().exhaust())
                    .isGreaterThan(sizes.get(i - 1).solved().flows().exhaust());
        }
        assertThat(pipes.get(0).held().vacuum())
                .as("drawn with 4 in")
                .isCloseTo(pipes.get(3).held().vacuum(), within(1e-9));
        Scenario none = Basements.of(new Source.Fan(Basements.curve(300, 0.07), List.of(), 0));
        double lossless = Held.of(Solves.one(none).orElseThrow()).vacuum();
        assertThat(pipes.get(0).held().vacuum() + pipes.get(0).lost())
                .isCloseTo(lossless, Percentage.withPercentage(0.02));
    }

    /** At the temperature found the target is held, half a kelvin colder it is not. */
    @Test
    void heldDownToTheTemperatureFound() {
        Scenario house = FanPlacement.with(drawn(), WEAK.curve());
        double room = 0.005;
        double wanted = vacuumAt(house, 263.15, room);
        WorstDay.HeldDownTo.Temperature found =
                (WorstDay.HeldDownTo.Temperature) WorstDay.heldDownTo(house, wanted, room);
        assertThat(found.temperature()).isCloseTo(263.15, within(0.3));
        assertThat(vacuumAt(house, found.temperature(), room)).isGreaterThanOrEqualTo(wanted);
        assertThat(vacuumAt(house, found.temperature() - 0.5, room)).isLessThan(wanted);
        assertThat(WorstDay.heldDownTo(house, 1000, room)).isInstanceOf(WorstDay.HeldDownTo.NotAtAll.class);
        assertThat(WorstDay.heldDownTo(house, 1e-3, room)).isInstanceOf(WorstDay.HeldDownTo.AnyTried.class);
    }

    private static double vacuumAt(Scenario house, double temperature, double roomAir) {
        double outdoors = HousePressure.onWorstDay(house, temperature, roomAir).total();
        return Held.of(Solves.one(WorstDay.under(house, outdoors)).orElseThrow())
                .vacuum();
    }

    @Test
    void theSeasonIsWorseWhereItIsColder() {
        List<WorstDay.SeasonPoint> season = WorstDay.season(drawn(), Progress.NONE);
        assertThat(season).hasSize(2);
        assertThat(season.get(0).outdoorPressure())
                .isCloseTo(3461.6 * (1 / 263.15 - 1 / 293.15) * 3.5, Percentage.withPercentage(0.2));
        assertThat(season.get(0).held().vacuum())
                .isLessThan(season.get(1).held().vacuum());
    }

    /** With one point in a Darcy layer with linear leaks, readings scale as the pit pressures. */
    @Test
    void aTestScalesAsThePitPressureInSlowFlow() {
        Scenario linear = Basements.of(Basements.fan(300, 0.07)).withOpenings(List.of());
        Stage test = new Stage(
                "test",
                StageKind.COMMUNICATION_TEST,
                Map.of(),
                Map.of("S1", new Source.Pressure(-1000)),
                List.of(new Stage.HoleReading(
                        "T1",
                        OptionalDouble.of(1),
                        OptionalDouble.of(-19),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        "")),
                List.of(),
                "",
                "");
        TestScaling scaled = TestScaling.of(linear, test, linear).get(0);
        double pit = Solves.one(linear).orElseThrow().suctions().get(0).pressure();
        assertThat(scaled.measured()).isEqualTo(-20);
        assertThat(scaled.factor()).isCloseTo(pit / -1000, Percentage.withPercentage(0.001));
        assertThat(scaled.expected()).isCloseTo(-20 * scaled.factor(), within(1e-12));
    }

    /** A throttled test vacuum: the valve takes what the fan lifts beyond the pit's vacuum. */
    @Test
    void aValveThrottlesATestVacuum() {
        Source.Pipe hose = new Source.Pipe(0.05, 3, 0, 1.5, 1e-5);
        Source open = new Source.Fan(FanClasses.TEST_VACUUM.curve(), hose, 0);
        Source throttled = new Source.Fan(FanClasses.TEST_VACUUM.curve(), hose.withValve(500), 0);
        Result.Suction wide =
                Solves.one(Basements.of(open)).orElseThrow().suctions().get(0);
        Result.Suction tight =
                Solves.one(Basements.of(throttled)).orElseThrow().suctions().get(0);
        assertThat(tight.flow()).isLessThan(0.7 * wide.flow());
        double head = 1.204 / 2 * Math.pow(tight.flow() / (Math.PI / 4 * 0.0025), 2);
        double others = PipeLosses.of(hose, tight.flow(), Solves.air(Basements.of(open)))
                .total();
        assertThat(FanCurves.rise(FanClasses.TEST_VACUUM.curve(), tight.flow()))
                .isCloseTo(-tight.pressure() + others + 500 * head, Percentage.withPercentage(1e-6));
    }

    @Test
    void sizingOfADrawnHouseAnswersEverything() {
        Sizing sizing = Sizing.of(
                drawn().withEquipment(Equipment.NONE.withFans(List.of(MIDDLE, STRONG))),
                Optional.empty(),
                Progress.NONE);
        assertThat(sizing.ranking().fans())
                .extracting(r -> r.fan().offer().id())
                .containsExactlyInAnyOrder("middle", "strong", Sizing.DRAWN);
        assertThat(sizing.inventedOnly()).isFalse();
        assertThat(sizing.chosen().orElseThrow().meets()).isTrue();
        assertThat(sizing.pipes()).hasSize(5);
        assertThat(sizing.missing()).isEmpty();
        assertThat(sizing.worstDay().orElseThrow().total()).isPositive();
        assertThat(sizing.heldDownTo()).isPresent();
        assertThat(sizing.season()).hasSize(2);
        assertThat(sizing.limits()).hasSize(2);
        assertThat(sizing.withoutPipe()).isEmpty();
        double saved = sizing.cost().orElseThrow().heatMost().orElseThrow()
                - sizing.costSealed().orElseThrow().heatMost().orElseThrow();
        assertThat(saved).as("sealing saves heat").isPositive();
    }

    @Test
    void withoutFansTheInventedClassesAreRankedAndSaySo() {
        Scenario plan = Basements.of(new Source.Pressure(-250));
        Sizing sizing = Sizing.of(plan, Optional.empty(), Progress.NONE);
        assertThat(sizing.inventedOnly()).isTrue();
        assertThat(sizing.withoutPipe()).containsExactly("S1");
        assertThat(sizing.worstDay()).isEmpty();
        assertThat(sizing.missing()).contains("house.designDay");
        assertThat(sizing.ranking().fans()).hasSize(4);
    }

    /** Two equal points on one riser: its fan carries both, and stands once in the list of places. */
    @Test
    void aRiserIsOnePlace() {
        Source branch = new Source.Branch("R", List.of(new Source.Pipe(0.078, 3, 1, 0.5, 1.5e-6)));
        Riser riser = new Riser("R", Basements.curve(300, 0.07), List.of(Basements.pipe()), 0);
        Scenario house = Basements.of(List.of(Basements.point("A", 2, 3, branch), Basements.point("B", 6, 3, branch)))
                .withEquipment(Equipment.NONE.withRisers(List.of(riser)));
        FanRanking.Ranked ranked =
                FanRanking.of(house, List.of(MIDDLE), Progress.NONE).fans().get(0);
        assertThat(ranked.flows()).containsOnlyKeys("R");
        assertThat(ranked.flows().get("R")).isCloseTo(ranked.solved().flows().exhaust(), within(1e-12));
        assertThat(ranked.watts()).hasValue(50);
        assertThat(PipeComparison.runs(ranked.solved())).containsOnlyKeys("A", "B", "riser R");
    }
}
