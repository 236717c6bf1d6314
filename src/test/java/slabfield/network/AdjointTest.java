package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import slabfield.field.Progress;
import slabfield.model.BlockWall;
import slabfield.model.Fill;
import slabfield.model.Gap;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;
import slabfield.model.Zone;

/** The adjoint's gradient against central differences of whole solves. */
class AdjointTest {
    private static final double STEP = 1e-3;
    private static final Seal HALF = new Seal(SealState.LOOSE, 0.5, false);

    /** All devices, a patch of stone whose permeability can be stepped, and seals half closed. */
    static Scenario house(double inertial, Source source) {
        BlockWall wall = new BlockWall(
                "north", Houses.path(0, 6, 8, 6), 2, HALF, 0.01, 1e-4, 2e-5, 1e-5, 1e-3, true, Optional.empty());
        Scenario s = Houses.on(2e-8, inertial)
                .rectangle(0, 0, 8, 6)
                .zone(3, 2, 3.4, 2.2, 2e-8)
                .barrier(0.4, 0, List.of(new Gap(new Point(5, 3), 0.9)), 5, 0, 5, 6)
                .tile("sump", List.of(), 6.03, 1, 7.4, 1, 7.4, 5)
                .wall(wall)
                .opening("sump", new Opening.Spot(new Point(7.4, 5), 0.2), new Opening.Orifice(2e-3, 0.61))
                .opening("joint", new Opening.Perimeter("slab 0"), new Opening.Crack(1e-3, 1))
                .opening("drain", new Opening.Spot(new Point(4.1, 4.4), 0.05), new Opening.PowerLaw(1e-4, 0.65))
                .leakance(1e-6)
                .outdoors(3)
                .suction("S", 2.03, 2.5, 0.15, source)
                .cell(0.2)
                .scenario();
        return s.withSeal("sump", HALF).withSeal("joint", HALF).withSeal("drain", HALF);
    }

    private static Scenario withPatch(Scenario s, double factor) {
        Zone z = s.layer().zones().get(0);
        Fill f = z.fill();
        double k = f.permeability() * factor;
        Zone other = new Zone(z.id(), z.outline(), new Fill(f.word(), f.thickness(), k, f.inertial(), false));
        return new Scenario(
                s.name(),
                "",
                "",
                s.display(),
                s.slabs(),
                new Layer(s.layer().fill(), List.of(other)),
                s.barriers(),
                s.drainTiles(),
                s.blockWalls(),
                s.openings(),
                s.soilLeakance(),
                s.outdoorPressure(),
                s.air(),
                s.suctionPoints(),
                s.testHoles(),
                s.stages(),
                s.target(),
                s.cellSize());
    }

    private static double difference(
            Scenario s, Function<Adjoint, Adjoint.Gradient> number, Function<Double, UnaryOperator<Scenario>> change) {
        double up = value(change.apply(STEP).apply(s), number),
                down = value(change.apply(-STEP).apply(s), number);
        double up2 = value(change.apply(2 * STEP).apply(s), number),
                down2 = value(change.apply(-2 * STEP).apply(s), number);
        return (8 * (up - down) - (up2 - down2)) / (12 * STEP);
    }

    private static double value(Scenario s, Function<Adjoint, Adjoint.Gradient> number) {
        return number.apply(Adjoint.of(s, Progress.NONE).orElseThrow()).value();
    }

    private static void check(Scenario s, Function<Adjoint, Adjoint.Gradient> number) {
        Adjoint.Gradient g = number.apply(Adjoint.of(s, Progress.NONE).orElseThrow());
        double patch = 0;
        for (int i : new int[] {15, 16}) patch += g.byPermeability()[10 * 40 + i];
        // the largest of the effects sets the scale on which one of them can be told from rounding
        double scale = g.byLeak().values().stream().mapToDouble(Math::abs).max().orElseThrow();
        Offset<Double> close = Offset.offset(1e-6 * scale);
        assertThat(patch).as("patch").isCloseTo(difference(s, number, e -> h -> withPatch(h, Math.exp(e))), close);
        for (String id : List.of("sump", "joint", "drain"))
            assertThat(g.byLeak().get(id))
                    .as(id)
                    .isCloseTo(difference(s, number, e -> h -> h.withSeal(id, left(Math.exp(e)))), close);
        assertThat(g.byLeak().get("north: block tops"))
                .as("tops")
                .isCloseTo(difference(s, number, e -> h -> h.withTops("north", left(Math.exp(e)))), close);
    }

    private static Seal left(double factor) {
        return new Seal(SealState.LOOSE, 1 - 0.5 * factor, false);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1500})
    void pressureAtAHole(double inertial) {
        check(house(inertial, new Source.Pressure(-250)), a -> a.pressure(new Point(6.6, 3.1)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1500})
    void weakestPlace(double inertial) {
        check(house(inertial, new Source.Pressure(-250)), a -> a.weakest(2));
    }

    @ParameterizedTest
    @CsvSource({"0", "1500"})
    void exhaustOfAFixedPressure(double inertial) {
        check(house(inertial, new Source.Pressure(-250)), Adjoint::exhaust);
    }

    @Test
    void exhaustOfAFan() {
        Source fan = new Source.Fan(
                new Source.FanCurve(List.of(0.0, 0.03, 0.06), List.of(400.0, 300.0, 0.0)),
                new Source.Pipe(0.1, 8, 3, 1.5, 1.5e-6),
                0);
        check(house(0, fan), Adjoint::exhaust);
    }
}
