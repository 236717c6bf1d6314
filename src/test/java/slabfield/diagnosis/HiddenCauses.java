package slabfield.diagnosis;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Air;
import slabfield.model.Barrier;
import slabfield.model.BlockWall;
import slabfield.model.Display;
import slabfield.model.DrainTile;
import slabfield.model.Equipment;
import slabfield.model.Fill;
import slabfield.model.FillWord;
import slabfield.model.Gap;
import slabfield.model.House;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Path;
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
import slabfield.model.Zone;
import slabfield.network.SlabSolver;

/**
 * Invented houses with a hidden cause, and readings taken in them. What is read comes from a finer grid than a diagnosis
 * uses and from other laws: Darcy-Forchheimer in the layer where the drawing has Darcy, power laws where it has orifices, a
 * void where an explanation has a tile, footings, openings and flooded stretches anywhere. Fill, leaks and the pressure
 * outdoors differ from the drawing in every house. Everything follows from the seed.
 */
final class HiddenCauses {
    private static final double TRUE_CELL = 0.2;
    private static final Seal FILLED = new Seal(SealState.SEALED, 0.9995, false);
    private static final double UNREST = 0.5;
    private static final double STEP = 0.1;
    private static final double FLOW_ERROR = 0.07;
    private static final double SUCTION_ERROR = 0.01;

    private final Random random;
    private final double width;
    private final double depth;
    private final double faint;
    private Scenario drawn;

    private HiddenCauses(long seed) {
        random = new Random(seed * 0x9E3779B97F4A7C15L);
        width = between(9, 14);
        depth = between(7, 10);
        faint = random.nextDouble() < 0.3 ? between(0.005, 0.15) : 1;
    }

    /**
     * One house.
     *
     * @param drawn with the readings, which is all that a diagnosis sees
     * @param cause the true one
     * @param effect largest change of a reading by the cause, over its standard error with the model's own share (10 %)
     * @param effectOverNoise the same over the standard error of meter and unrest alone
     */
    record Made(Scenario drawn, Cause cause, double effect, double effectOverNoise) {}

    static Made of(long seed, Cause cause, boolean withFlow) {
        return new HiddenCauses(seed).make(cause, withFlow);
    }

    private double between(double low, double high) {
        return low + random.nextDouble() * (high - low);
    }

    private double logBetween(double low, double high) {
        return Math.exp(between(Math.log(low), Math.log(high)));
    }

    private Made make(Cause cause, boolean withFlow) {
        drawn = drawn(cause);
        Scenario usual = usual(drawn);
        Scenario with = hide(usual, cause);
        List<Stage> stages = new ArrayList<>();
        double effect = 0, overNoise = 0;
        for (Stage stage : drawn.stages()) {
            Result.Solved hidden = solve(with.during(stage)), without = solve(usual.during(stage));
            Stage read = read(stage, hidden, withFlow);
            stages.add(read);
            for (Stage.HoleReading r : read.holes()) {
                Result.Hole a = hidden.hole(r.hole()).orElseThrow(),
                        b = without.hole(r.hole()).orElseThrow();
                for (double[] p : new double[][] {
                    {a.fanOn().orElse(0), b.fanOn().orElse(0)},
                    {a.fanOff().orElse(0), b.fanOff().orElse(0)}
                }) {
                    double noise = Math.hypot(STEP / Math.sqrt(12), UNREST), change = Math.abs(p[0] - p[1]);
                    overNoise = Math.max(overNoise, change / noise);
                    effect = Math.max(effect, change / Math.hypot(noise, 0.1 * p[0]));
                }
            }
            double q = hidden.suctions().get(0).flow(),
                    q0 = without.suctions().get(0).flow();
            if (withFlow) {
                overNoise = Math.max(overNoise, Math.abs(q - q0) / (FLOW_ERROR * q));
                effect = Math.max(effect, Math.abs(q - q0) / (Math.hypot(FLOW_ERROR, 0.1) * q));
            }
        }
        return new Made(drawn.withStages(stages), cause, effect, overNoise);
    }

    private static Result.Solved solve(Scenario s) {
        if (SlabSolver.solve(s.withCellSize(TRUE_CELL), Progress.NONE) instanceof Result.Solved solved) return solved;
        throw new IllegalStateException("an invented house has no solution");
    }

    private Stage read(Stage stage, Result.Solved s, boolean withFlow) {
        List<Stage.HoleReading> holes = new ArrayList<>();
        for (Result.Hole h : s.holes())
            holes.add(new Stage.HoleReading(
                    h.id(),
                    OptionalDouble.of(shown(h.fanOff().orElse(0))),
                    OptionalDouble.of(shown(h.fanOn().orElse(0))),
                    OptionalDouble.of(UNREST),
                    OptionalInt.of(1),
                    OptionalDouble.of(STEP),
                    OptionalDouble.empty(),
                    ""));
        Result.Suction suction = s.suctions().get(0);
        double flow = suction.flow() * (1 + FLOW_ERROR * random.nextGaussian());
        double pressure = suction.pressure() * (1 + SUCTION_ERROR * random.nextGaussian());
        return stage.with(
                holes,
                List.of(new Stage.SystemReading(
                        "S1",
                        withFlow ? OptionalDouble.of(Math.max(1e-5, flow)) : OptionalDouble.empty(),
                        OptionalDouble.of(pressure),
                        "")));
    }

    private double shown(double pressure) {
        return Math.rint((pressure + UNREST * random.nextGaussian()) / STEP) * STEP;
    }

    private Scenario drawn(Cause cause) {
        Slab slab = new Slab(
                "basement",
                List.of(new Point(0, 0), new Point(width, 0), new Point(width, depth), new Point(0, depth)),
                List.of(),
                0.1,
                true);
        Source fan = new Source.Fan(
                new Source.FanCurve(List.of(0.0, 0.03, 0.06, 0.09), List.of(420.0, 340.0, 200.0, 0.0)),
                new Source.Pipe(0.0779, 9, 3, 1.5, 1.5e-6),
                0);
        boolean tile = cause == Cause.TILE_CUT, walls = cause == Cause.WALL_TOPS || random.nextInt(4) == 0;
        Point at = tile ? new Point(1, depth / 2) : new Point(between(1.5, 3.5), between(1.5, depth - 1.5));
        boolean soil = cause == Cause.DEPRESSURIZED_HOUSE;
        double snug = soil ? 0.03 : 1;
        List<Opening> openings = List.of(
                new Opening(
                        "sump",
                        OpeningKind.SUMP,
                        new Opening.Spot(new Point(width - 1.2, between(1, depth - 1)), 0.2),
                        new Opening.Orifice(snug * logBetween(3e-4, 1.5e-3), 0.61),
                        Seal.of(SealState.OPEN)),
                new Opening(
                        "joint",
                        OpeningKind.JOINT,
                        new Opening.Perimeter("basement"),
                        new Opening.Orifice(snug * logBetween(5e-4, 3e-3), 0.61),
                        Seal.of(SealState.OPEN)));
        List<BlockWall> blocks = walls
                ? List.of(new BlockWall(
                        "north wall",
                        new Path(List.of(new Point(0, depth), new Point(width, depth))),
                        2.1,
                        FILLED,
                        0.09,
                        1e-5,
                        1e-6,
                        1e-6,
                        1e-3,
                        true,
                        Optional.empty()))
                : List.of();
        List<DrainTile> tiles = tile ? List.of(loop()) : List.of();
        SuctionPoint suction = new SuctionPoint(
                "S1", at, tile ? Optional.of("loop") : Optional.empty(), new SuctionPoint.Pit(0.2), fan, false);
        List<Stage> stages = new ArrayList<>();
        stages.add(new Stage("test", StageKind.COMMUNICATION_TEST, Map.of(), Map.of(), List.of(), List.of(), "", ""));
        Map<String, Seal> covers = new LinkedHashMap<>();
        if (walls) covers.put("north wall", FILLED);
        if (walls)
            stages.add(
                    new Stage("tops covered", StageKind.AFTER_SEALING, covers, Map.of(), List.of(), List.of(), "", ""));
        return new Scenario(
                "invented",
                "",
                "",
                Display.SI,
                List.of(slab),
                new Layer(Fill.of(FillWord.MIXED, 0.1), List.of()),
                List.of(),
                tiles,
                blocks,
                openings,
                soil ? logBetween(3e-8, 2e-7) : logBetween(1e-9, 2e-8),
                0,
                Air.STANDARD,
                List.of(suction),
                holes(at),
                stages,
                Target.COMMON_PRACTICE,
                0.25,
                Equipment.NONE,
                House.UNKNOWN,
                Plan.EMPTY);
    }

    private DrainTile loop() {
        return new DrainTile(
                "loop",
                new Path(List.of(
                        new Point(1, 1),
                        new Point(width - 1, 1),
                        new Point(width - 1, depth - 1),
                        new Point(1, depth - 1),
                        new Point(1, 1))),
                0.1016,
                0.017,
                2e-3,
                List.of(),
                List.of(),
                Optional.empty());
    }

    /** One near, the others spread: one in each of five parts of the slab. */
    private List<TestHole> holes(Point suction) {
        List<TestHole> holes = new ArrayList<>();
        double angle = between(0, 2 * Math.PI);
        holes.add(new TestHole(
                "T1", inside(suction.x() + 1.2 * Math.cos(angle), suction.y() + 1.2 * Math.sin(angle)), ""));
        double[][] parts = {{0.42, 0.25}, {0.45, 0.78}, {0.68, 0.5}, {0.9, 0.2}, {0.9, 0.85}};
        for (double[] p : parts) {
            Point at = inside(width * p[0] + between(-0.6, 0.6), depth * p[1] + between(-0.5, 0.5));
            if (at.distanceTo(suction) > 1) holes.add(new TestHole("T" + (holes.size() + 1), at, ""));
        }
        return holes;
    }

    private Point inside(double x, double y) {
        return new Point(Math.max(0.4, Math.min(width - 0.4, x)), Math.max(0.4, Math.min(depth - 0.4, y)));
    }

    /** The house as it is apart from the cause. */
    private Scenario usual(Scenario h) {
        Scenario filled = Changes.leaks(
                Changes.fill(h, Math.exp(Math.log(1.8) * random.nextGaussian())),
                Math.exp(Math.log(1.5) * random.nextGaussian()));
        return otherLaws(filled).withOutdoorPressure(1 + random.nextGaussian());
    }

    /** Forchheimer's law with Ward's coefficient; power laws that pass what the orifices pass at 30 Pa. */
    private static Scenario otherLaws(Scenario h) {
        Fill f = h.layer().fill();
        List<Opening> openings = h.openings().stream()
                .map(o -> o.passage() instanceof Opening.Orifice a
                        ? new Opening(
                                o.id(),
                                o.kind(),
                                o.place(),
                                new Opening.PowerLaw(
                                        a.dischargeCoefficient()
                                                * a.area()
                                                * Math.sqrt(2 / 1.204)
                                                * Math.pow(30, 0.5 - 0.62),
                                        0.62),
                                o.seal())
                        : o)
                .toList();
        return h.withOpenings(openings)
                .withLayer(new Layer(
                        new Fill(f.word(), f.thickness(), f.permeability(), 0.55 / Math.sqrt(f.permeability()), false),
                        h.layer().zones()));
    }

    private Scenario hide(Scenario h, Cause cause) {
        return switch (cause) {
            case AS_DRAWN -> h;
            case LEAK -> leak(h);
            case WALL_TOPS -> Changes.tops(h, between(0.7, 1) * faint);
            case SHORT_CIRCUIT -> {
                double angle = between(0, 2 * Math.PI), away = between(0.5, 1.1);
                Point s = h.suctionPoints().get(0).at();
                yield opening(
                        h,
                        inside(s.x() + away * Math.cos(angle), s.y() + away * Math.sin(angle)),
                        logBetween(2e-3, 6e-3) * faint);
            }
            case BARRIER -> footing(h, 0);
            case BARRIER_WITH_GAP -> footing(h, between(0.6, 1.5));
            case TIGHT_FILL -> otherLaws(Changes.fill(h, Math.pow(logBetween(15, 60), -faint)));
            case LOOSE_FILL -> otherLaws(Changes.fill(h, Math.pow(logBetween(15, 60), faint)));
            case TILE_CUT -> {
                double length = h.drainTiles().get(0).path().length();
                yield Changes.flooded(
                        h,
                        "loop",
                        new Gap(
                                h.drainTiles().get(0).path().at(between(0.1, 0.9) * length),
                                between(0.25, 0.5) * faint * length));
            }
            case HIDDEN_PATH -> path(h);
            case DEPRESSURIZED_HOUSE -> h.withOutdoorPressure(h.outdoorPressure() + between(7, 15) * faint);
            case BLOCKED_PIPE -> Changes.blocked(h, logBetween(200, 5000) * faint * faint);
        };
    }

    private Scenario leak(Scenario h) {
        double more = 1 + between(6, 20) * faint;
        int kind = random.nextInt(3);
        if (kind < 2) return Changes.leak(h, kind == 0 ? "sump" : "joint", more);
        Point hole =
                h.testHoles().get(1 + random.nextInt(h.testHoles().size() - 1)).at();
        double angle = between(0, 2 * Math.PI), away = between(0.4, 1);
        return opening(
                h,
                inside(hole.x() + away * Math.cos(angle), hole.y() + away * Math.sin(angle)),
                logBetween(1e-3, 6e-3) * faint);
    }

    private static Scenario opening(Scenario h, Point at, double area) {
        return otherLaws(Changes.opening(h, "hidden", at, area));
    }

    /** A footing anywhere between the suction and the far holes; a faint one is nearly as open as the fill. */
    private Scenario footing(Scenario h, double gap) {
        double x = between(h.suctionPoints().get(0).at().x() + 1.5, width * 0.85);
        Path path = new Path(List.of(new Point(x, 0), new Point(x, depth)));
        List<Gap> gaps = gap > 0 ? List.of(new Gap(new Point(x, between(0.1, 0.9) * depth), gap)) : List.of();
        double k = faint < 1
                ? h.layer().fill().permeability() * (1 - faint)
                : h.layer().fill().permeability() * 1e-5;
        return Changes.barrier(h, new Barrier("hidden", path, 0.4, k, true, gaps));
    }

    /** A trench of a hand's breadth with little in it, from beside the pit to beside a far hole. */
    private Scenario path(Scenario h) {
        Point s = h.suctionPoints().get(0).at();
        Point to = h.testHoles().stream()
                .map(TestHole::at)
                .filter(p -> p.distanceTo(s) > 4)
                .skip(random.nextInt(2))
                .findFirst()
                .orElseThrow();
        double d = s.distanceTo(to),
                ux = (to.x() - s.x()) / d,
                uy = (to.y() - s.y()) / d,
                half = 0.15,
                end = d - between(0.2, 0.6);
        List<Point> outline = List.of(
                new Point(s.x() - uy * half, s.y() + ux * half),
                new Point(s.x() + uy * half, s.y() - ux * half),
                new Point(s.x() + ux * end + uy * half, s.y() + uy * end - ux * half),
                new Point(s.x() + ux * end - uy * half, s.y() + uy * end + ux * half));
        double k = faint < 1 ? h.layer().fill().permeability() * (1 + 10 * faint) : 1e-5;
        return h.withLayer(new Layer(
                h.layer().fill(), List.of(new Zone("trench", outline, new Fill(FillWord.VOID, 0.1, k, 0, false)))));
    }
}
