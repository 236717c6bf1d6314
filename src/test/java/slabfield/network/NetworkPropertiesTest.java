package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static slabfield.network.Houses.at;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.BlockWall;
import slabfield.model.Gap;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;

/** What must hold of every answer, whatever the house. */
class NetworkPropertiesTest {
    private static final Source SUCTION = new Source.Pressure(-250);

    /** All four edges of a rectangle drained while the soil pushes: a Fourier series; error over three grids. */
    private static double drainedRectangleError(double cell) {
        double lx = 6, ly = 4, lambda = 1.5, push = 100, t = 2e-8 * 0.1 / 1.81e-5;
        Result.Solved s = Houses.on(2e-8, 0)
                .rectangle(0, 0, lx, ly)
                .opening("edge", new Opening.Perimeter("slab 0"), new Opening.PowerLaw(1e6, 1))
                .leakance(t / (lambda * lambda))
                .outdoors(push)
                .cell(cell)
                .solved();
        double worst = 0;
        for (double x : new double[] {1, 2, 3, 5})
            for (double y : new double[] {1, 2, 3}) {
                double exact = push * (1 - Math.cosh((x - lx / 2) / lambda) / Math.cosh(lx / 2 / lambda));
                for (int n = 1; n < 400; n += 2) {
                    double w = n * Math.PI / lx, g = Math.sqrt(w * w + 1 / (lambda * lambda));
                    double b = push * 4 / (n * Math.PI) / (1 + Math.pow(w * lambda, 2));
                    double decay = Math.exp(g * (Math.abs(y - ly / 2) - ly / 2))
                            * (1 + Math.exp(-2 * g * Math.abs(y - ly / 2)))
                            / (1 + Math.exp(-g * ly));
                    exact -= b * Math.sin(w * x) * decay;
                }
                worst = Math.max(worst, Math.abs(at(s, x, y) - exact));
            }
        return worst;
    }

    @Test
    void twoDimensionalFieldIsSecondOrder() {
        double e1 = drainedRectangleError(0.2), e2 = drainedRectangleError(0.1), e3 = drainedRectangleError(0.05);
        assertThat(Math.log(e1 / e2) / Math.log(2)).as("order from 20 to 10 cm").isBetween(1.9, 2.1);
        assertThat(Math.log(e2 / e3) / Math.log(2)).as("order from 10 to 5 cm").isBetween(1.9, 2.1);
    }

    /** The flow of a pit must not hang on the cells: radius from a core hole to a dug pit, anywhere in a cell. */
    @ParameterizedTest
    @CsvSource({
        "0.05,0,0",
        "0.05,0.05,0.05",
        "0.05,0.03,0.01",
        "0.15,0,0",
        "0.15,0.05,0.05",
        "0.15,0.03,0.01",
        "0.1,0.02,0.04"
    })
    void pitFlowDoesNotDependOnTheCells(double radius, double dx, double dy) {
        for (double beta : new double[] {0, 1500}) {
            double[] flow = new double[3];
            double[] cells = {0.2, 0.1, 0.05};
            for (int k = 0; k < 3; k++)
                flow[k] = Houses.on(1e-7, beta)
                        .rectangle(0, 0, 8, 6)
                        .leakance(2e-6)
                        .suction("S", 3 + dx, 2 + dy, radius, SUCTION)
                        .cell(cells[k])
                        .solved()
                        .suctions()
                        .get(0)
                        .flow();
            assertThat(flow[0])
                    .as("20 cm against 5 cm, beta %s", beta)
                    .isCloseTo(flow[2], Percentage.withPercentage(2));
            assertThat(flow[1])
                    .as("10 cm against 5 cm, beta %s", beta)
                    .isCloseTo(flow[2], Percentage.withPercentage(2));
        }
    }

    @Test
    void mirroredHouseHasTheMirroredField() {
        Scenario house = everything(7, 1500).scenario();
        Result.Solved s = Houses.solve(house);
        Result.Solved m = Houses.solve(Mirror.leftRight(house, 10));
        for (double x = 0.45; x < 10; x += 1.1)
            for (double y = 0.45; y < 8; y += 1.3) {
                if (s.field().at(x, y).isEmpty()) continue;
                double p = at(s, x, y);
                assertThat(at(m, 10 - x, y)).isCloseTo(p, within(1e-6 * Math.abs(p) + 1e-9));
            }
        assertThat(m.flows().exhaust()).isCloseTo(s.flows().exhaust(), Percentage.withPercentage(1e-6));
    }

    /** In a linear layer, unit flow at A seen at B equals unit flow at B seen at A. */
    @Test
    void linearLayerIsReciprocal() {
        Houses house = Houses.on(2e-8, 0).rectangle(0, 0, 10, 8).leakance(1e-6).zone(3, 0, 5, 8, 1e-9);
        double ab = pressureAt(2.03, 3.01, 8.02, 6.04), ba = pressureAt(8.02, 6.04, 2.03, 3.01);
        assertThat(ab).isCloseTo(ba, Percentage.withPercentage(1e-7));
        assertThat(house.scenario().slabs()).hasSize(1);
    }

    private static double pressureAt(double x, double y, double seenX, double seenY) {
        return Houses.on(2e-8, 0)
                .rectangle(0, 0, 10, 8)
                .leakance(1e-6)
                .zone(3, 0, 5, 8, 1e-9)
                .barrier(0.3, 0, List.of(new Gap(new Point(6, 4), 1)), 6, 0, 6, 8)
                .suction("A", x, y, 0.15, new Source.Flow(0.01))
                .suction("B", seenX, seenY, 0.15, new Source.Flow(0))
                .solved()
                .suctions()
                .get(1)
                .pressure();
    }

    /** No pressure lies outside those of the boundaries; sealing never weakens and more suction never weakens. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void randomHousesKeepTheMaximumPrincipleAndMonotony(long seed) {
        Scenario house = everything(seed, seed % 2 == 0 ? 1500 : 0).scenario();
        Result.Solved s = Houses.solve(house);
        double low = -250, high = house.outdoorPressure();
        for (double p : s.field().pressure())
            if (!Double.isNaN(p)) assertThat(p).isBetween(low - 1e-9, Math.max(0, high) + 1e-9);
        Result.Solved sealed = Houses.solve(house.withSeal("sump", new Seal(SealState.SEALED, 1, false)));
        Result.Solved stronger = Houses.solve(house.withSuctionPoint("S", p -> p.drawnBy(new Source.Pressure(-300))));
        double[] p = s.field().pressure();
        for (int c = 0; c < p.length; c++) {
            if (Double.isNaN(p[c])) continue;
            assertThat(sealed.field().pressure()[c]).isLessThanOrEqualTo(p[c] + 1e-9);
            assertThat(stronger.field().pressure()[c]).isLessThanOrEqualTo(p[c] + 1e-9);
        }
    }

    @Test
    void fixedFlowAndFixedPressureAreTheSameHouse() {
        Houses[] pair = {Houses.on(2e-8, 500), Houses.on(2e-8, 500)};
        for (Houses h : pair) h.rectangle(0, 0, 6, 5).leakance(1e-6);
        Result.Solved byPressure = pair[0].suction("S", 2, 2, 0.15, SUCTION).solved();
        Result.Solved byFlow = pair[1].suction(
                        "S", 2, 2, 0.15, new Source.Flow(byPressure.flows().exhaust()))
                .solved();
        assertThat(byFlow.suctions().get(0).pressure()).isCloseTo(-250, within(1e-6));
    }

    /** A house with every device, its numbers drawn from a seed. */
    private static Houses everything(long seed, double inertial) {
        Random r = new Random(seed);
        double k = Math.pow(10, -11 + 4 * r.nextDouble());
        BlockWall wall = new BlockWall(
                "north",
                Houses.path(0, 8, 10, 8),
                2,
                Seal.of(SealState.LOOSE),
                0.09 * r.nextDouble(),
                1e-4,
                2e-5,
                1e-5,
                1e-3,
                true,
                Optional.empty());
        return Houses.on(k, k > 1e-8 ? inertial : 0)
                .rectangle(0, 0, 10, 8)
                .zone(0, 0, 4, 3, k * Math.pow(10, 2 - 4 * r.nextDouble()))
                .barrier(0.4, 0, List.of(new Gap(new Point(6, 2 + 4 * r.nextDouble()), 0.9)), 6, 0, 6, 8)
                .tile("sump", List.of(new Gap(new Point(9, 4), 0.3)), 1, 1, 9, 1, 9, 7, 1, 7)
                .wall(wall)
                .opening("sump", new Opening.Spot(new Point(1, 7), 0.23), new Opening.Orifice(0.02, 0.61))
                .opening("joint", new Opening.Perimeter("slab 0"), new Opening.Crack(1e-3 * r.nextDouble() + 1e-4, 1))
                .opening("drain", new Opening.Spot(new Point(4.5, 2.2), 0.05), new Opening.PowerLaw(1e-4, 0.65))
                .leakance(1e-7 * r.nextDouble())
                .outdoors(5 * r.nextDouble())
                .suction("S", 2.5 + r.nextDouble(), 4.5, 0.15, SUCTION)
                .cell(0.2);
    }

    /** Mirrors what {@link #everything} draws. */
    private static final class Mirror {
        static Scenario leftRight(Scenario s, double width) {
            List<slabfield.model.Zone> zones = new ArrayList<>();
            for (var z : s.layer().zones())
                zones.add(new slabfield.model.Zone(z.id(), flip(z.outline(), width), z.fill()));
            var barriers = s.barriers().stream()
                    .map(b -> new slabfield.model.Barrier(
                            b.id(),
                            flip(b.path(), width),
                            b.width(),
                            b.permeability(),
                            b.known(),
                            gaps(b.gaps(), width)))
                    .toList();
            var tiles = s.drainTiles().stream()
                    .map(t -> new slabfield.model.DrainTile(
                            t.id(),
                            flip(t.path(), width),
                            t.diameter(),
                            t.manning(),
                            t.slotArea(),
                            gaps(t.breaks(), width),
                            List.of(),
                            t.sump()))
                    .toList();
            var walls = s.blockWalls().stream()
                    .map(w -> new BlockWall(
                            w.id(),
                            flip(w.path(), width),
                            w.height(),
                            w.tops(),
                            w.topArea(),
                            w.joint(),
                            w.faceToRoom(),
                            w.faceToOutdoors(),
                            w.along(),
                            w.joinsAtCorners(),
                            w.tile()))
                    .toList();
            var openings = s.openings().stream()
                    .map(o -> o.place() instanceof Opening.Spot p
                            ? new Opening(
                                    o.id(),
                                    o.kind(),
                                    new Opening.Spot(flip(p.at(), width), p.radius()),
                                    o.passage(),
                                    o.seal())
                            : o)
                    .toList();
            var suctions = s.suctionPoints().stream()
                    .map(p -> p.movedTo(flip(p.at(), width)))
                    .toList();
            return new Scenario(
                    s.name(),
                    "",
                    "",
                    s.display(),
                    s.slabs(),
                    new slabfield.model.Layer(s.layer().fill(), zones),
                    barriers,
                    tiles,
                    walls,
                    openings,
                    s.soilLeakance(),
                    s.outdoorPressure(),
                    s.air(),
                    suctions,
                    List.of(),
                    List.of(),
                    s.target(),
                    s.cellSize());
        }

        static Point flip(Point p, double width) {
            return new Point(width - p.x(), p.y());
        }

        static List<Point> flip(List<Point> points, double width) {
            return points.stream().map(p -> flip(p, width)).toList();
        }

        static slabfield.model.Path flip(slabfield.model.Path path, double width) {
            return new slabfield.model.Path(flip(path.points(), width));
        }

        static List<Gap> gaps(List<Gap> gaps, double width) {
            return gaps.stream()
                    .map(g -> new Gap(flip(g.at(), width), g.length()))
                    .toList();
        }
    }

    @Test
    void everyRandomHouseIsSolvedOrRefusedWithAReason() {
        for (long seed = 100; seed < 140; seed++) {
            Result r =
                    SlabSolver.solve(everything(seed, 1500).scenario(), SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
            assertThat(r).as("seed %s: %s", seed, r.convergence()).isInstanceOf(Result.Solved.class);
        }
    }
}
