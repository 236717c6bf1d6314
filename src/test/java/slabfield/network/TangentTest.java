package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Barrier;
import slabfield.model.Fill;
import slabfield.model.Gap;
import slabfield.model.Layer;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;

/** Readings and their changes against whole solves and their central differences. */
class TangentTest {
    private static final List<Point> PLACES = List.of(new Point(6.6, 3.1), new Point(1, 5), new Point(2.1, 2.5));
    private static final Source FAN = new Source.Fan(
            new Source.FanCurve(List.of(0.0, 0.03, 0.06), List.of(400.0, 300.0, 0.0)),
            new Source.Pipe(0.1, 8, 3, 1.5, 1.5e-6),
            0);
    private static final double STEP = 1e-4;

    private static Tangent tangent(Scenario s, boolean fanOn) {
        return Tangent.of(s, fanOn, PLACES, new Grounds(), Optional.empty(), Progress.NONE)
                .orElseThrow();
    }

    @Test
    void readsWhatTheSolverFinds() {
        Scenario s = AdjointTest.house(0, FAN);
        Result.Solved solved = Houses.solve(s);
        Tangent.Reading on = tangent(s, true).reading(), off = tangent(s, false).reading();
        for (int i = 0; i < PLACES.size(); i++) {
            Point p = PLACES.get(i);
            assertThat(on.places()[i]).isCloseTo(Houses.at(solved, p.x(), p.y()), Offset.offset(1e-6));
            assertThat(off.places()[i])
                    .isCloseTo(solved.fanOff().orElseThrow().at(p.x(), p.y()).orElseThrow(), Offset.offset(1e-6));
        }
        assertThat(on.risers()[0]).isCloseTo(solved.suctions().get(0).pressure(), Offset.offset(1e-6));
        assertThat(on.flows()[0]).isCloseTo(solved.suctions().get(0).flow(), Offset.offset(1e-9));
        assertThat(off.flows()[0]).isZero();
    }

    static List<Arguments> drawn() {
        BiFunction<Scenario, Double, Scenario> fill = (s, e) -> {
            Fill f = s.layer().fill();
            return s.withLayer(new Layer(
                    new Fill(f.word(), f.thickness(), f.permeability() * Math.exp(e), f.inertial(), false),
                    s.layer().zones()));
        };
        BiFunction<Scenario, Double, Scenario> inertial = (s, e) -> {
            Fill f = s.layer().fill();
            return s.withLayer(new Layer(
                    new Fill(f.word(), f.thickness(), f.permeability(), f.inertial() * Math.exp(e), false),
                    s.layer().zones()));
        };
        BiFunction<Scenario, Double, Scenario> joint =
                (s, e) -> s.withSeal("joint", new Seal(SealState.LOOSE, 1 - 0.5 * Math.exp(e), false));
        BiFunction<Scenario, Double, Scenario> gap = (s, e) -> {
            Barrier b = s.barriers().get(0);
            Gap g = new Gap(b.gaps().get(0).at(), 0.93 * Math.exp(e));
            return s.withBarriers(
                    List.of(new Barrier(b.id(), b.path(), b.width(), b.permeability(), b.known(), List.of(g))));
        };
        BiFunction<Scenario, Double, Scenario> pit = (s, e) -> s.withSuctionPoint(
                "S",
                p -> new SuctionPoint(
                        p.id(),
                        p.at(),
                        p.tile(),
                        new SuctionPoint.Pit(0.13 * Math.exp(e)),
                        p.source(),
                        p.openWhenOff()));
        BiFunction<Scenario, Double, Scenario> outdoors = (s, e) -> s.withOutdoorPressure(3 + e);
        return List.of(
                Arguments.of("fill", 0.0, FAN, true, fill),
                Arguments.of("fill of stone", 1500.0, new Source.Pressure(-250), true, fill),
                Arguments.of("inertial", 1500.0, new Source.Pressure(-250), true, inertial),
                Arguments.of("joint", 0.0, FAN, true, joint),
                Arguments.of("joint, drawn flow", 0.0, new Source.Flow(0.01), true, joint),
                Arguments.of("gap", 0.0, FAN, true, gap),
                Arguments.of("pit", 0.0, FAN, true, pit),
                Arguments.of("outdoors", 0.0, FAN, true, outdoors),
                Arguments.of("outdoors, fan off", 0.0, FAN, false, outdoors));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("drawn")
    void changesAsWholeSolvesDo(
            String name, double inertial, Source source, boolean fanOn, BiFunction<Scenario, Double, Scenario> change) {
        Scenario s = change.apply(AdjointTest.house(inertial, source), 0.0);
        Tangent.Reading slope = tangent(s, fanOn)
                .change(change.apply(s, -STEP), change.apply(s, STEP), STEP, new Grounds())
                .orElseThrow();
        double far = 1e-3;
        Tangent.Reading up = tangent(change.apply(s, far), fanOn).reading();
        Tangent.Reading down = tangent(change.apply(s, -far), fanOn).reading();
        check(slope.places(), up.places(), down.places(), 2 * far, 1e-4);
        check(slope.risers(), up.risers(), down.risers(), 2 * far, 1e-4);
        check(slope.flows(), up.flows(), down.flows(), 2 * far, 1e-4);
    }

    /** Central differences of whole solves are good to some parts in 1e5 of the largest slope. */
    private static void check(double[] slope, double[] up, double[] down, double over, double part) {
        double largest = 0;
        for (int i = 0; i < slope.length; i++) largest = Math.max(largest, Math.abs(up[i] - down[i]) / over);
        for (int i = 0; i < slope.length; i++)
            assertThat(slope[i]).isCloseTo((up[i] - down[i]) / over, Offset.offset(part * largest + 1e-12));
    }

    @Test
    void aGapThatClosesIsLeftToWholeSolves() {
        Scenario s = AdjointTest.house(0, FAN);
        Barrier b = s.barriers().get(0);
        Scenario closed = s.withBarriers(
                List.of(new Barrier(b.id(), b.path(), b.width(), b.permeability(), b.known(), List.of())));
        assertThat(tangent(s, true).change(closed, s, STEP, new Grounds())).isEmpty();
    }
}
