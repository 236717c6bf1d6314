package slabfield.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import slabfield.equipment.FanClasses;
import slabfield.model.DrainTile;
import slabfield.model.Gap;
import slabfield.model.NominalPipe;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.SealState;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;

class MeasureTest {
    private static final Gap BREAK = new Gap(new Point(5, 0.5), 0.4), WATER = new Gap(new Point(9.5, 4), 1);

    private static Scenario house() {
        DrainTile tile = new DrainTile(
                "loop",
                new Path(List.of(new Point(0.5, 0.5), new Point(9.5, 0.5), new Point(9.5, 7.5))),
                0.1,
                0.017,
                2e-3,
                List.of(BREAK),
                List.of(WATER),
                Optional.empty());
        Source.Fan fan =
                new Source.Fan(FanClasses.INVENTED.get(1).curve(), List.of(new Source.Pipe(0.1, 6, 3, 1.5, 1.5e-6)), 0);
        return Basements.plain()
                .withDrainTiles(List.of(tile))
                .withBarriers(List.of(Basements.footing(6, true)))
                .withSuctionPoint("S1", s -> s.drawnBy(fan));
    }

    private static SuctionPoint first(Scenario s) {
        return s.suctionPoints().get(0);
    }

    /** Each measure twice is the same as once, save those that add something. */
    static Stream<Measure> all() {
        return Stream.of(
                new Measure.SealOpening("drain"),
                new Measure.SealGroup("every penetration", List.of("drain", "pinhole")),
                new Measure.SealAll(),
                new Measure.CoverForTest("drain"),
                new Measure.MoveSuction("S1", new Point(7, 5)),
                new Measure.EnlargePit("S1", new SuctionPoint.Pit(0.24)),
                new Measure.TeeIntoTile("S1", "loop", new Point(2, 0.5)),
                new Measure.MendTile("loop"),
                new Measure.EmptyTile("loop"),
                new Measure.ChangeFan(FanClasses.INVENTED.get(2)),
                new Measure.ChangePipe(NominalPipe.FOUR_INCH));
    }

    @ParameterizedTest
    @MethodSource("all")
    void isDoneOnceAndCanBeUndone(Measure m) {
        Scenario before = house(), after = m.apply(before);
        assertThat(after).as(m.words()).isNotEqualTo(before);
        assertThat(m.apply(after)).isEqualTo(after);
        assertThat(before).as("the house before is not changed").isEqualTo(house());
        assertThat(m.words()).isNotBlank();
    }

    @Test
    void changesWhatItSays() {
        Scenario h = house();
        assertThat(new Measure.SealGroup("every penetration", List.of("drain", "pinhole"))
                        .apply(h)
                        .openings())
                .extracting(o -> o.seal().state())
                .containsExactly(SealState.OPEN, SealState.SEALED, SealState.SEALED);
        assertThat(new Measure.CoverForTest("joint")
                        .apply(h)
                        .opening("joint")
                        .orElseThrow()
                        .seal()
                        .state())
                .isEqualTo(SealState.COVERED);
        assertThat(new Measure.MendTile("loop").apply(h).drainTiles().get(0).breaks())
                .isEmpty();
        assertThat(new Measure.MendTile("loop").apply(h).drainTiles().get(0).waterFilled())
                .containsExactly(WATER);
        assertThat(new Measure.EmptyTile("loop").apply(h).drainTiles().get(0).breaks())
                .containsExactly(BREAK);
        assertThat(new Measure.OpenBarrier("footing", new Gap(new Point(6, 3), 0.3))
                        .apply(h)
                        .barriers()
                        .get(0)
                        .gaps())
                .hasSize(1);
        assertThat(first(new Measure.TeeIntoTile("S1", "loop", new Point(2, 0.5)).apply(h))
                        .tile())
                .contains("loop");
        assertThat(first(new Measure.MoveSuction("S1", new Point(7, 5)).apply(h))
                        .at())
                .isEqualTo(new Point(7, 5));
    }

    @Test
    void fanAndPipeAreExchangedAndNothingElse() {
        Scenario h = house();
        Source.Fan fan = (Source.Fan) first(new Measure.ChangeFan(FanClasses.INVENTED.get(2)).apply(h))
                .source();
        assertThat(fan.curve().rises().get(0)).isCloseTo(750, within(1e-9));
        assertThat(fan.run()).isEqualTo(((Source.Fan) first(h).source()).run());
        Source.Fan piped = (Source.Fan)
                first(new Measure.ChangePipe(NominalPipe.FOUR_INCH).apply(h)).source();
        assertThat(piped.run().get(0)).isEqualTo(new Source.Pipe(4.026 * 0.0254, 6, 3, 1.5, 1.5e-6));
    }

    /** A fan of the list is found again by its curve, so that its power is known. */
    @Test
    void powerIsKnownForFansOfTheList() {
        Scenario h = house();
        assertThat(Advisor.watts(Basements.solve(h))).as("drawn, without power").isEmpty();
        Scenario offered = h.withEquipment(h.equipment().withFans(FanClasses.INVENTED));
        assertThat(Advisor.watts(Basements.solve(offered)).orElseThrow()).isCloseTo(55, within(1e-9));
        assertThat(Advisor.watts(Basements.solve(new Measure.ChangeFan(FanClasses.INVENTED.get(0)).apply(offered)))
                        .orElseThrow())
                .isCloseTo(20, within(1e-9));
    }

    @Test
    void aLaterMeasureTakesThePlaceOfWhatItReplaces() {
        CombinedPlan plan = new CombinedPlan(
                List.of(new Measure.SealOpening("drain"), new Measure.ChangeFan(FanClasses.INVENTED.get(0))),
                house(),
                Basements.solve(house()).coverage(),
                Basements.solve(house()).flows(),
                java.util.OptionalDouble.empty());
        assertThat(plan.and(new Measure.SealAll()))
                .extracting(Measure::kind)
                .containsExactly(Measure.Kind.EQUIPMENT, Measure.Kind.SEAL);
        assertThat(plan.and(new Measure.ChangeFan(FanClasses.INVENTED.get(1)))).hasSize(2);
        assertThat(plan.and(new Measure.SealOpening("joint"))).hasSize(3);
    }
}
