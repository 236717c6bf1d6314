package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Air;
import slabfield.model.Barrier;
import slabfield.model.BlockWall;
import slabfield.model.Display;
import slabfield.model.DrainTile;
import slabfield.model.Fill;
import slabfield.model.Gap;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Slab;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;
import slabfield.model.Target;
import slabfield.model.TestHole;
import slabfield.model.Zone;

/** Makes houses for tests, in metres. */
final class Houses {
    private final List<Slab> slabs = new ArrayList<>();
    private final List<Zone> zones = new ArrayList<>();
    private final List<Barrier> barriers = new ArrayList<>();
    private final List<DrainTile> tiles = new ArrayList<>();
    private final List<BlockWall> walls = new ArrayList<>();
    private final List<Opening> openings = new ArrayList<>();
    private final List<SuctionPoint> suctions = new ArrayList<>();
    private final List<TestHole> holes = new ArrayList<>();
    private final Fill fill;
    private double leakance;
    private double outdoors;
    private double cell = 0.1;

    private Houses(Fill fill) {
        this.fill = fill;
    }

    static Houses on(double permeability, double inertial) {
        return new Houses(Fill.of(0.1, permeability, inertial));
    }

    Houses rectangle(double x0, double y0, double x1, double y1) {
        slabs.add(new Slab("slab " + slabs.size(), corners(x0, y0, x1, y1), List.of(), 0.1, true));
        return this;
    }

    static List<Point> corners(double x0, double y0, double x1, double y1) {
        return List.of(new Point(x0, y0), new Point(x1, y0), new Point(x1, y1), new Point(x0, y1));
    }

    /** A round slab as a polygon of the same area. */
    Houses round(double radius) {
        int corners = 240;
        double r = radius * Math.sqrt(2 * Math.PI / corners / Math.sin(2 * Math.PI / corners));
        List<Point> points = new ArrayList<>();
        for (int k = 0; k < corners; k++) {
            double a = 2 * Math.PI * (k + 0.5) / corners;
            points.add(new Point(r * Math.cos(a), r * Math.sin(a)));
        }
        slabs.add(new Slab("round", points, List.of(), 0.1, true));
        return this;
    }

    Houses zone(double x0, double y0, double x1, double y1, double permeability) {
        zones.add(new Zone("zone " + zones.size(), corners(x0, y0, x1, y1), Fill.of(0.1, permeability, 0)));
        return this;
    }

    Houses barrier(double width, double permeability, List<Gap> gaps, double... xy) {
        barriers.add(new Barrier("barrier " + barriers.size(), path(xy), width, permeability, true, gaps));
        return this;
    }

    Houses tile(String sump, List<Gap> breaks, double... xy) {
        tiles.add(new DrainTile(
                "tile " + tiles.size(), path(xy), 0.102, 0.017, 2e-3, breaks, List.of(), Optional.ofNullable(sump)));
        return this;
    }

    Houses wall(BlockWall wall) {
        walls.add(wall);
        return this;
    }

    Houses opening(String id, Opening.Place place, Opening.Passage passage) {
        openings.add(new Opening(id, OpeningKind.OTHER, place, passage, Seal.of(SealState.OPEN)));
        return this;
    }

    /** A line without resistance of its own, held at the room's pressure. */
    Houses drainedLine(String id, double... xy) {
        return opening(id, new Opening.Along(path(xy)), new Opening.PowerLaw(1e4, 1));
    }

    Houses suction(String id, double x, double y, double radius, Source source) {
        suctions.add(
                new SuctionPoint(id, new Point(x, y), Optional.empty(), new SuctionPoint.Pit(radius), source, false));
        return this;
    }

    Houses onTile(String id, int tile, double x, double y, Source source) {
        suctions.add(new SuctionPoint(
                id, new Point(x, y), Optional.of("tile " + tile), new SuctionPoint.Pit(0.05), source, false));
        return this;
    }

    Houses hole(String id, double x, double y) {
        holes.add(new TestHole(id, new Point(x, y), ""));
        return this;
    }

    Houses leakance(double value) {
        leakance = value;
        return this;
    }

    Houses outdoors(double pressure) {
        outdoors = pressure;
        return this;
    }

    Houses cell(double side) {
        cell = side;
        return this;
    }

    static Path path(double... xy) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) points.add(new Point(xy[i], xy[i + 1]));
        return new Path(points);
    }

    Scenario scenario() {
        return new Scenario(
                "house",
                "",
                "",
                Display.SI,
                slabs,
                new Layer(fill, zones),
                barriers,
                tiles,
                walls,
                openings,
                leakance,
                outdoors,
                Air.STANDARD,
                suctions,
                holes,
                List.of(),
                Target.COMMON_PRACTICE,
                cell);
    }

    Result.Solved solved() {
        return solve(scenario());
    }

    /** Solves, and holds every answer to the mass balance that all of them must keep. */
    static Result.Solved solve(Scenario scenario) {
        Result result = SlabSolver.solve(scenario, Progress.NONE);
        assertThat(result).as(() -> result.convergence().toString()).isInstanceOf(Result.Solved.class);
        Result.Solved solved = (Result.Solved) result;
        assertThat(Math.abs(solved.convergence().massBalance())).isLessThan(1e-9);
        Result.Flows f = solved.flows();
        double through = Math.abs(f.exhaust()) + Math.abs(f.fromRoom()) + Math.abs(f.fromSoil());
        assertThat(Math.abs(f.fromRoom() + f.fromSoil() + f.fromOutdoors() - f.exhaust()))
                .isLessThanOrEqualTo(1e-9 * through + 1e-30);
        return solved;
    }

    static double at(Result.Solved solved, double x, double y) {
        return solved.field().at(x, y).orElseThrow();
    }
}
