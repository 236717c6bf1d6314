package slabfield.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.fit.ModelError;
import slabfield.io.ScenarioReader;
import slabfield.model.NoDrillArea;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.SealState;
import slabfield.network.SlabSolver;

/** Measures against full solves of the house with them. */
class AdvisorTest {
    private static Scenario house;
    private static List<Suggestion> all;

    @BeforeAll
    static void search() throws Exception {
        house = ScenarioReader.read(Path.of("scenarios/stone-footing.json")).withCellSize(0.2);
        all = Advisor.suggest(house, Progress.NONE);
    }

    private static Result.Solved solve(Scenario s) {
        return (Result.Solved) SlabSolver.solve(s, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
    }

    /** What is told of a measure is what a solve of the house with it gives. */
    @Test
    void beforeAndAfterAreFullSolves() {
        Result.Solved before = solve(house);
        assertThat(all).isNotEmpty().allSatisfy(s -> {
            Result.Solved after = solve(s.measure().apply(house));
            assertThat(s.before().weakest()).isCloseTo(before.coverage().weakest(), within(1e-6));
            assertThat(s.after().weakest()).isCloseTo(after.coverage().weakest(), within(1e-4));
            assertThat(s.gain())
                    .isCloseTo(after.coverage().weakest() - before.coverage().weakest(), within(1e-4));
            assertThat(s.roomAirSaved())
                    .isCloseTo(before.flows().fromRoom() - after.flows().fromRoom(), within(1e-7));
        });
    }

    @Test
    void bestComesFirst() {
        for (int k = 1; k < all.size(); k++)
            assertThat(all.get(k).gain()).isLessThanOrEqualTo(all.get(k - 1).gain() + 1e-3);
    }

    @Test
    void everyOpeningThatIsOpenIsTriedAndAllTogether() {
        List<String> sealed = all.stream()
                .map(Suggestion::measure)
                .filter(m -> m instanceof Measure.SealOpening)
                .map(m -> ((Measure.SealOpening) m).opening())
                .toList();
        assertThat(sealed)
                .containsExactlyInAnyOrderElementsOf(
                        house.openings().stream().map(Opening::id).toList());
        assertThat(all).anyMatch(s -> s.measure() instanceof Measure.SealAll);
    }

    /** Beyond the footing lies what is weak, so the first place for a point is there. */
    @Test
    void theBestPlaceIsBeyondTheFooting() {
        Measure.AddSuction first = all.stream()
                .map(Suggestion::measure)
                .filter(m -> m instanceof Measure.AddSuction)
                .map(m -> (Measure.AddSuction) m)
                .findFirst()
                .orElseThrow();
        assertThat(first.at().x()).isGreaterThan(6.8);
        assertThat(house.suctionPoint(first.id())).isEmpty();
    }

    @Test
    void placesKeepTheirDistance() {
        List<Point> places = DrillPlaces.forCores(house).net(0.75);
        assertThat(places).hasSizeGreaterThan(20);
        for (Point p : places) {
            assertThat(p.distanceTo(house.suctionPoints().get(0).at()))
                    .isGreaterThanOrEqualTo(DrillPlaces.CORE_FROM_OPENING - 0.01);
            assertThat(Math.abs(p.x() - 6.7056))
                    .as("from the footing")
                    .isGreaterThanOrEqualTo(0.2 + DrillPlaces.CORE_FROM_EDGE - 0.01);
        }
    }

    @Test
    void sealingWhatIsSealedIsNotOffered() {
        Scenario tight = new Measure.SealAll().apply(house);
        assertThat(tight.openings()).allMatch(o -> o.seal().state() == SealState.SEALED);
        assertThat(tight.openings()).noneMatch(Measure::worthSealing);
    }

    @Test
    void aCancelledSearchStops() {
        AtomicInteger steps = new AtomicInteger();
        List<Suggestion> some = Advisor.suggest(house, new Progress() {
            @Override
            public boolean isCancelled() {
                return steps.get() >= 2;
            }

            @Override
            public void step(int done, int total, double residual) {
                steps.incrementAndGet();
            }
        });
        assertThat(some.size()).isLessThan(all.size());
    }

    /** Where drilling is forbidden, nothing is cored; breaks and other work need no core. */
    @Test
    void nothingIsCoredWhereDrillingIsForbidden() {
        Scenario plain = Basements.plain();
        Scenario kept = plain.withPlan(plain.plan()
                .withNoDrillAreas(List.of(new NoDrillArea("heated floor", Basements.rectangle(4, 0, 10, 8), ""))));
        List<Point> cores = Advisor.suggest(kept, Progress.NONE).stream()
                .filter(s -> s.measure().kind() == Measure.Kind.SUCTION)
                .map(s -> s.measure().where().orElseThrow())
                .toList();
        assertThat(cores).isNotEmpty().allMatch(p -> p.x() < 4);
        assertThat(Advisor.suggest(plain, Progress.NONE))
                .as("without the area it is cored there")
                .anyMatch(s -> s.measure().where().filter(p -> p.x() > 4).isPresent());
    }

    @Test
    void whatDoesNothingIsSaidToDoNothing() {
        List<Suggestion> found = Advisor.suggest(Basements.plain(), Progress.NONE);
        assertThat(found)
                .filteredOn(s -> s.measure().equals(new Measure.SealOpening("pinhole")))
                .singleElement()
                .matches(Suggestion::doesNothing);
        assertThat(found)
                .filteredOn(s -> s.measure().equals(new Measure.SealOpening("joint")))
                .singleElement()
                .matches(s -> !s.doesNothing());
    }

    /** Bands are those of whole solves of every plausible house; on equal cells nothing is corrected. */
    @Test
    void oddsAreOfWholeSolvesOfEveryHouse() {
        Scenario plain = Basements.plain();
        List<Houses.Member> members = Houses.assumed(plain, 19, 4).members();
        List<Suggestion> found = Advisor.suggest(new Houses(plain, members, Houses.Basis.READINGS), 2, Progress.NONE);
        Suggestion first = found.get(0);
        double[] gains = members.stream()
                .mapToDouble(m -> weakest(first.measure().apply(m.house()), m.error()) - weakest(m.house(), m.error()))
                .toArray();
        Suggestion.Odds odds = first.odds().orElseThrow();
        assertThat(odds.gain().low()).isCloseTo(Range.of(gains).low(), within(1e-3));
        assertThat(odds.gain().high()).isCloseTo(Range.of(gains).high(), within(1e-3));
        long meeting = members.stream()
                .filter(m -> weakest(m.house(), m.error()) >= plain.target().vacuum())
                .count();
        assertThat(odds.meetsBefore()).isCloseTo(meeting / 19.0, within(1e-12));
        assertThat(odds.houses()).isEqualTo(19);
        assertThat(found.get(1).odds()).isPresent();
        assertThat(found.get(2).odds()).as("only as many as were asked for").isEmpty();
    }

    private static double weakest(Scenario house, ModelError error) {
        Result.Solved s = solve(house);
        return error.pressure(s.coverage().weakest(), s.strongest());
    }

    @Test
    void aCoverOverALargeLeakTellsAndOneOverAPinholeDoesNot() {
        List<TestCover> covers = Advisor.covers(Basements.plain(), Progress.NONE);
        assertThat(covers)
                .extracting(c -> c.measure().id())
                .as("a hole lies beside the drain")
                .containsExactly("drain", "joint", "pinhole");
        assertThat(covers.get(0).tells()).isTrue();
        assertThat(covers.get(2).tells()).isFalse();
        double before =
                solve(Basements.plain()).hole("H4").orElseThrow().fanOn().orElseThrow();
        double after = solve(new Measure.CoverForTest("drain").apply(Basements.plain()))
                .hole("H4")
                .orElseThrow()
                .fanOn()
                .orElseThrow();
        assertThat(covers.get(0).holes().get(3).gain()).isCloseTo(before - after, within(1e-4));
    }
}
