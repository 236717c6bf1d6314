package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.io.ScenarioReader;
import slabfield.model.Gap;
import slabfield.model.NoDrillArea;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;

/** The map against the house solved anew with the further point, place by place. */
class PlacementMapTest {
    private static final SuctionPoint.Pit PIT = new SuctionPoint.Pit(0.15);
    /** Open area that a solve takes out under such a pit: nine cells and parts of four [m2]. */
    private static final double PIT_AREA = Math.PI * 0.15 * 0.15;

    private static final Source FAN = new Source.Fan(
            new Source.FanCurve(List.of(0.0, 0.04, 0.08), List.of(420.0, 250.0, 0.0)),
            new Source.Pipe(0.1, 9, 3, 1.5, 1.5e-6),
            0);

    private static Result.Solved withPoint(Scenario s, Point at, Source source) {
        List<SuctionPoint> points = new ArrayList<>(s.suctionPoints());
        points.add(new SuctionPoint("new", at, Optional.empty(), PIT, source, false));
        return (Result.Solved)
                SlabSolver.solve(s.withSuctionPoints(points), SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
    }

    /** Largest difference of weakest vacuums over that at the best place, and of flows, at the best place and some others. */
    private static double[] errors(Scenario s, Source source, PlacementMap map, int count) {
        int[] places = IntStream.range(0, map.weakest().length)
                .filter(c -> !Double.isNaN(map.weakest()[c]))
                .toArray();
        double best = map.weakest()[map.best().orElseThrow()];
        double[] worst = new double[3];
        Random random = new Random(3);
        for (int k = 0; k < count; k++) {
            int c = k == 0 ? map.best().orElseThrow() : places[random.nextInt(places.length)];
            Result.Solved full = withPoint(s, map.at(c), source);
            double flow = full.suction("new").orElseThrow().flow(),
                    covered = full.coverage().meeting() * (map.area() - PIT_AREA);
            worst[0] = Math.max(
                    worst[0], Math.abs(map.weakest()[c] - full.coverage().weakest()) / best);
            worst[1] = Math.max(worst[1], Math.abs(map.flow()[c] / flow - 1));
            worst[2] = Math.max(worst[2], Math.abs(map.covered()[c] - covered) / map.area());
        }
        return worst;
    }

    private static PlacementMap map(Scenario s, Source source, double spacing) {
        return PlacementMap.of(s, new PlacementMap.Question(PIT, source, spacing), Progress.NONE)
                .orElseThrow();
    }

    @Test
    void linearHouseIsExactButForThePitsTie() {
        Scenario s = house(0, new Opening.PowerLaw(1e-5, 1));
        for (Source source : List.of(new Source.Pressure(-200), FAN)) {
            PlacementMap map = map(s, source, 0.2);
            assertThat(map.misfit()).isZero();
            assertThat(map.grid().width()).isCloseTo(0.2, within(1e-9));
            double[] e = errors(s, source, map, 4);
            assertThat(e[0]).as("weakest").isLessThan(0.005);
            assertThat(e[1]).as("flow").isLessThan(0.02);
            assertThat(e[2]).as("area").isLessThan(0.002);
        }
    }

    /** An orifice at one spot enters with its own law, so no samples are needed, not even beside it. */
    @Test
    void aSpotsOwnLawIsExact() {
        Scenario s = house(0, new Opening.Orifice(0.002, 0.61));
        PlacementMap map = map(s, FAN, 0.2);
        assertThat(map.misfit()).isZero();
        double best = map.weakest()[map.best().orElseThrow()];
        for (double[] p : new double[][] {{11.6, 6.6}, {12.5, 7.4}, {9, 5}}) {
            int c = map.grid().index(map.grid().column(p[0]), map.grid().row(p[1]));
            assertThat(map.weakest()[c])
                    .as("(%s, %s)", p[0], p[1])
                    .isCloseTo(withPoint(s, map.at(c), FAN).coverage().weakest(), within(0.01 * best));
        }
    }

    /** Footing with a door, orifice, coarse stone, new fan. */
    @Test
    void coarseStoneIsWithinTheStatedTolerance() {
        Scenario s = house(1500, new Opening.Orifice(0.002, 0.61));
        PlacementMap map = map(s, FAN, 0.4);
        double[] e = errors(s, FAN, map, 5);
        assertThat(e[0]).as("weakest").isLessThan(0.1);
        assertThat(e[1]).as("flow").isLessThan(0.15);
        assertThat(map.misfit()).isBetween(1e-6, 0.2);
    }

    /** A drain tile, an existing fan, a joint: scenarios to learn from. */
    @ParameterizedTest
    @ValueSource(strings = {"tight-sand-loop", "l-shaped-addition"})
    void wholeHousesAreWithinTheStatedTolerance(String name) throws Exception {
        Scenario s = ScenarioReader.read(Path.of("scenarios/" + name + ".json"));
        assertThat(errors(s, FAN, map(s, FAN, 0.4), 4)[0]).isLessThan(0.1);
    }

    @Test
    void withoutAnySuctionYet() {
        Scenario s = house(0, new Opening.PowerLaw(1e-5, 1)).withSuctionPoints(List.of());
        PlacementMap map = map(s, new Source.Flow(0.01), 0.4);
        assertThat(map.weakestNow()).isZero();
        assertThat(map.flow()[map.best().orElseThrow()]).isEqualTo(0.01);
        assertThat(errors(s, new Source.Flow(0.01), map, 3)[0]).isLessThan(0.005);
    }

    @Test
    void noPlaceOnABarrierAnOpeningAPitTheRimOrWhereDrillingIsForbidden() {
        NoDrillArea pipes = new NoDrillArea("pipes", Houses.corners(8, 1, 10, 3), "");
        Scenario s = house(0, new Opening.PowerLaw(1e-5, 1));
        PlacementMap map = map(s.withPlan(s.plan().withNoDrillAreas(List.of(pipes))), new Source.Pressure(-200), 0.2);
        double[][] blocked = {{6, 7}, {5.75, 7}, {12, 7}, {12.2, 7.1}, {2, 4}, {2.25, 4}, {0.1, 5}, {9, 2}};
        for (double[] p : blocked)
            assertThat(at(map, p[0], p[1])).as("(%s, %s)", p[0], p[1]).isNaN();
        for (double[] p : new double[][] {{6, 4}, {5.3, 7}, {3, 4}, {0.5, 5}, {11, 2}})
            assertThat(at(map, p[0], p[1])).isPositive();
    }

    private static double at(PlacementMap map, double x, double y) {
        return map.weakest()[map.grid().index(map.grid().column(x), map.grid().row(y))];
    }

    /** A hold that is weaker than what is there lets air in and weakens. */
    @Test
    void aWeakPitWeakens() {
        Scenario s = house(0, new Opening.PowerLaw(1e-5, 1));
        PlacementMap map = map(s, new Source.Pressure(-5), 0.4);
        assertThat(at(map, 3, 5)).isLessThan(map.weakestNow());
        assertThat(map.flow()[map.grid().index(map.grid().column(3), map.grid().row(5))])
                .isNegative();
    }

    @Test
    void cancelledGivesNothingAndABranchIsRefused() {
        Progress stopped = new Progress() {
            @Override
            public boolean isCancelled() {
                return true;
            }
        };
        var question = new PlacementMap.Question(PIT, new Source.Pressure(-200), 0.4);
        assertThat(PlacementMap.of(house(0, new Opening.PowerLaw(1e-5, 1)), question, stopped))
                .isEmpty();
        Source branch = new Source.Branch("riser", List.of(new Source.Pipe(0.1, 1, 0, 0, 0)));
        assertThatIllegalArgumentException().isThrownBy(() -> new PlacementMap.Question(PIT, branch, 0.4));
    }

    private static Scenario house(double inertial, Opening.Passage drain) {
        return Houses.on(2e-8, inertial)
                .rectangle(0, 0, 15, 10)
                .barrier(0.4, 0, List.of(new Gap(new Point(6, 4), 0.9)), 6, 0, 6, 10)
                .opening("drain", new Opening.Spot(new Point(12, 7), 0.1), drain)
                .leakance(2e-6)
                .suction("S", 2, 4, 0.15, new Source.Pressure(-200))
                .scenario();
    }
}
