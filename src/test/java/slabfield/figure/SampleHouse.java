package slabfield.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.field.CellKind;
import slabfield.field.Convergence;
import slabfield.field.Convergence.Ending;
import slabfield.field.Grid;
import slabfield.field.PressureField;
import slabfield.field.Result;
import slabfield.model.*;

/** An L-shaped basement with everything that a map can show, and a made-up field over it. */
final class SampleHouse {
    static final double TARGET = 5;
    private static final Point SUCTION = new Point(2.4, 5.2);
    private static final List<Point> OUTLINE = points(0, 0, 12, 0, 12, 6, 7, 6, 7, 9, 0, 9);
    private static final List<Point> CHIMNEY = points(4.6, 3.4, 5.6, 3.4, 5.6, 4.3, 4.6, 4.3);
    private static final double FOOTING = 8.2, HALF_FOOTING = 0.2, DOOR_FROM = 2.6, DOOR_TO = 3.5;

    private SampleHouse() {}

    static List<Point> points(double... xy) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) points.add(new Point(xy[i], xy[i + 1]));
        return points;
    }

    static Path path(double... xy) {
        return new Path(points(xy));
    }

    static Scenario scenario() {
        return new Scenario(
                "Bearing-wall footing with a doorway, perimeter joint loose",
                "",
                "",
                Display.SI,
                List.of(new Slab("basement", OUTLINE, List.of(CHIMNEY), Slab.USUAL_THICKNESS, true)),
                new Layer(
                        Fill.of(FillWord.SAND, Fill.USUAL_THICKNESS),
                        List.of(new Zone(
                                "stone strip", points(0, 0, 3, 0, 3, 2, 0, 2), Fill.of(FillWord.CLEAN_STONE, 0.1)))),
                List.of(
                        new Barrier(
                                "bearing wall",
                                path(FOOTING, 0, FOOTING, 6),
                                2 * HALF_FOOTING,
                                0,
                                true,
                                List.of(new Gap(new Point(FOOTING, 3.05), DOOR_TO - DOOR_FROM))),
                        new Barrier("old porch wall", path(0, 7.2, 7, 7.2), 0.25, 0, false, List.of())),
                List.of(new DrainTile(
                        "loop",
                        path(0.5, 0.5, 11.5, 0.5, 11.5, 5.5, 6.5, 5.5, 6.5, 8.5, 0.5, 8.5, 0.5, 0.5),
                        0.1,
                        0.017,
                        2e-3,
                        List.of(new Gap(new Point(3.5, 0.5), 0.3)),
                        List.of(new Gap(new Point(11.5, 3), 2)),
                        Optional.of("sump"))),
                List.of(
                        wall("north", path(0, 9, 7, 9), SealState.OPEN),
                        wall("east", path(12, 0, 12, 6), SealState.LOOSE)),
                openings(),
                1e-7,
                3,
                Air.STANDARD,
                List.of(new SuctionPoint(
                        "S1", SUCTION, Optional.empty(), new SuctionPoint.Pit(0.25), new Source.Pressure(-120), false)),
                List.of(
                        hole("T1", 1, 1),
                        hole("T2", 6.1, 8.1),
                        hole("T3", 6.9, 1.4),
                        hole("T4", 11.2, 5.2),
                        hole("T5", 10.6, 1),
                        hole("T6", 10.9, 5.1)),
                stages(),
                Target.COMMON_PRACTICE,
                0.1);
    }

    private static BlockWall wall(String id, Path path, SealState tops) {
        return new BlockWall(id, path, 2.1, Seal.of(tops), 0.09, 1e-4, 2e-5, 0, 1e-3, true, Optional.empty());
    }

    private static List<Opening> openings() {
        var area = new Opening.Orifice(0.01, 0.61);
        return List.of(
                new Opening(
                        "perimeter joint",
                        OpeningKind.JOINT,
                        new Opening.Perimeter("basement"),
                        new Opening.Crack(1e-3, 0),
                        Seal.of(SealState.LOOSE)),
                new Opening(
                        "sump",
                        OpeningKind.SUMP,
                        new Opening.Spot(new Point(10.9, 3.2), 0.23),
                        area,
                        Seal.of(SealState.COVERED)),
                new Opening(
                        "soil pipe",
                        OpeningKind.PENETRATION,
                        new Opening.Spot(new Point(3.9, 2.1), 0.06),
                        area,
                        Seal.of(SealState.OPEN)),
                new Opening(
                        "bath",
                        OpeningKind.BLOCK_OUT,
                        new Opening.Spot(new Point(1.3, 7.9), 0.3),
                        area,
                        Seal.of(SealState.LOOSE)),
                new Opening(
                        "floor drain",
                        OpeningKind.FLOOR_DRAIN,
                        new Opening.Spot(new Point(5.5, 6.3), 0.08),
                        area,
                        Seal.of(SealState.SEALED)),
                new Opening(
                        "crack",
                        OpeningKind.CRACK,
                        new Opening.Along(path(8.9, 2.2, 10, 2.7, 10.4, 4.4)),
                        new Opening.Crack(5e-4, 0),
                        Seal.of(SealState.OPEN)));
    }

    private static TestHole hole(String id, double x, double y) {
        return new TestHole(id, new Point(x, y), "");
    }

    private static List<Stage> stages() {
        var before = new Stage(
                "bare",
                StageKind.COMMUNICATION_TEST,
                Map.of("sump", Seal.of(SealState.OPEN)),
                Map.of(),
                List.of(reading("T1", -1)),
                List.of(),
                "",
                "");
        var older = new Stage(
                "first",
                StageKind.AFTER_SEALING,
                Map.of(),
                Map.of(),
                List.of(reading("T1", -99), reading("T4", 0.4)),
                List.of(),
                "",
                "");
        var now = new Stage(
                "now",
                StageKind.START_UP,
                Map.of(),
                Map.of(),
                List.of(reading("T1", -12.3), reading("T3", -2.1)),
                List.of(),
                "",
                "");
        return List.of(before, older, now, before);
    }

    private static Stage.HoleReading reading(String hole, double fanOn) {
        return new Stage.HoleReading(
                hole,
                OptionalDouble.empty(),
                OptionalDouble.of(fanOn),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "");
    }

    /** Falls away from the suction point; behind the footing it is weak, at its far corner above the room's. */
    static double pressure(double x, double y) {
        double r = Math.hypot(x - SUCTION.x(), y - SUCTION.y());
        if (x < FOOTING) return -120 * Math.exp(-Math.max(0, r - 0.25) / 1.6);
        double d = Math.hypot(x - FOOTING, y - 3.05);
        return -2.6 * Math.exp(-d / 1.2) + 1.4 * Math.min(1, d / 5);
    }

    static PressureField field(double cell) {
        Grid grid = new Grid(0, 0, cell, cell, (int) Math.round(12 / cell), (int) Math.round(9 / cell));
        CellKind[] kind = new CellKind[grid.cells()];
        double[] pressure = new double[grid.cells()], open = new double[grid.cells()];
        boolean[] counts = new boolean[grid.cells()];
        for (int j = 0; j < grid.rows(); j++)
            for (int i = 0; i < grid.columns(); i++) {
                int c = grid.index(i, j);
                kind[c] = kind(grid.x(i), grid.y(j));
                boolean has = kind[c] == CellKind.LAYER || kind[c] == CellKind.DISC;
                pressure[c] = has ? pressure(grid.x(i), grid.y(j)) : Double.NaN;
                counts[c] = kind[c] == CellKind.LAYER;
                open[c] = counts[c] ? cell * cell : 0;
            }
        return new PressureField(grid, kind, pressure, counts, open);
    }

    private static CellKind kind(double x, double y) {
        if (x > 7 && y > 6 || x > 4.6 && x < 5.6 && y > 3.4 && y < 4.3) return CellKind.OUTSIDE;
        if (Math.abs(x - FOOTING) < HALF_FOOTING && (y < DOOR_FROM || y > DOOR_TO)) return CellKind.BARRIER;
        if (x > 10.8 && y < 0.9) return CellKind.UNREACHED;
        return Math.hypot(x - SUCTION.x(), y - SUCTION.y()) < 0.25 ? CellKind.DISC : CellKind.LAYER;
    }

    static Result.Solved solved() {
        Scenario s = scenario();
        PressureField field = field(s.cellSize());
        List<Result.Hole> holes = s.testHoles().stream()
                .map(h -> new Result.Hole(h.id(), h.at(), field.at(h.at().x(), h.at().y()), OptionalDouble.of(0)))
                .toList();
        return new Result.Solved(
                s,
                new Convergence(Ending.CONVERGED, 5, 1e-9, 1e-10),
                field,
                Optional.empty(),
                new Result.Flows(0.02, 0.015, 0.005, 0, Map.of()),
                holes,
                List.of(new Result.Suction("S1", SUCTION, -120, 0.0384)),
                coverage(field),
                List.of(new Result.Unreached(new Point(11.4, 0.4), 1.1)),
                List.of("The momentum term in tile 'loop' exceeds 5 % of the local vacuum."),
                new double[field.grid().cells()]);
    }

    private static Result.Coverage coverage(PressureField field) {
        int meets = 0, all = 0, weakest = -1;
        for (int c = 0; c < field.pressure().length; c++) {
            if (!field.counts()[c]) continue;
            all++;
            if (field.pressure()[c] <= -TARGET) meets++;
            if (weakest < 0 || field.pressure()[c] > field.pressure()[weakest]) weakest = c;
        }
        var g = field.grid();
        Point at = new Point(g.x(weakest % g.columns()), g.y(weakest / g.columns()));
        return new Result.Coverage(TARGET, (double) meets / all, field.pressure()[weakest], at, g.width());
    }

    static Result.Unsolved unsolved() {
        return new Result.Unsolved(
                scenario(),
                new Convergence(Ending.SINGULAR, 0, 1, 1),
                "Suction point 'S1' draws a fixed flow from a part of the layer that air cannot enter. Give it an opening, a "
                        + "soil leakance, or a pressure instead of a flow.");
    }

    static UnitsShown feet() {
        return new UnitsShown("inH2O", p -> p / 249.08891, "cfm", q -> q / 0.000471947443, "ft", x -> x / 0.3048);
    }
}
