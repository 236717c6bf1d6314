package slabfield.desktop.drawing;

import java.util.List;
import java.util.Optional;
import slabfield.model.Barrier;
import slabfield.model.BlockWall;
import slabfield.model.DrainTile;
import slabfield.model.Gap;
import slabfield.model.Layer;
import slabfield.model.NoDrillArea;
import slabfield.model.Opening;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Slab;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;
import slabfield.model.Zone;

/** The families of a scenario, one for each kind that has names. */
final class Families {
    /** A test hole has no size that matters; it is drawn as a sign [m]. */
    private static final double HOLE = 0.01;

    static final Family<Slab> SLABS = new Family<>(
            Kind.SLAB,
            Scenario::slabs,
            Scenario::withSlabs,
            Slab::id,
            (s, id) -> new Slab(id, s.outline(), s.holes(), s.thickness(), s.treated()),
            (scenario, s) -> Form.area(s.outline()),
            Families::reshaped);

    static final Family<Zone> ZONES = new Family<>(
            Kind.ZONE,
            s -> s.layer().zones(),
            (s, zones) -> s.withLayer(new Layer(s.layer().fill(), zones)),
            Zone::id,
            (z, id) -> new Zone(id, z.outline(), z.fill()),
            (scenario, z) -> Form.area(z.outline()),
            (z, points) -> new Zone(z.id(), points, z.fill()));

    static final Family<Barrier> BARRIERS = new Family<>(
            Kind.BARRIER,
            Scenario::barriers,
            Scenario::withBarriers,
            Barrier::id,
            (b, id) -> new Barrier(id, b.path(), b.width(), b.permeability(), b.known(), b.gaps()),
            (scenario, b) -> Form.line(b.path(), b.width() / 2),
            Families::reshaped);

    static final Family<DrainTile> TILES = new Family<>(
            Kind.TILE,
            Scenario::drainTiles,
            Scenario::withDrainTiles,
            DrainTile::id,
            (t, id) -> new DrainTile(
                    id, t.path(), t.diameter(), t.manning(), t.slotArea(), t.breaks(), t.waterFilled(), t.sump()),
            (scenario, t) -> Form.line(t.path(), t.diameter() / 2),
            Families::reshaped);

    static final Family<BlockWall> WALLS = new Family<>(
            Kind.WALL,
            Scenario::blockWalls,
            Scenario::withBlockWalls,
            BlockWall::id,
            (w, id) -> with(w, id, w.path()),
            (scenario, w) -> Form.line(w.path(), 0.1),
            (w, points) -> with(w, w.id(), Form.line(w.path(), 0).path(points)));

    static final Family<Opening> OPENINGS = new Family<>(
            Kind.OPENING,
            Scenario::openings,
            Scenario::withOpenings,
            Opening::id,
            (o, id) -> new Opening(id, o.kind(), o.place(), o.passage(), o.seal()),
            Families::form,
            Families::reshaped);

    static final Family<SuctionPoint> SUCTIONS = new Family<>(
            Kind.SUCTION,
            Scenario::suctionPoints,
            Scenario::withSuctionPoints,
            SuctionPoint::id,
            (s, id) -> new SuctionPoint(id, s.at(), s.tile(), s.pit(), s.source(), s.openWhenOff()),
            (scenario, s) -> Form.spot(s.at(), s.pit().radius()),
            (s, points) -> s.movedTo(points.get(0)));

    static final Family<TestHole> HOLES = new Family<>(
            Kind.HOLE,
            Scenario::testHoles,
            Scenario::withTestHoles,
            TestHole::id,
            (h, id) -> new TestHole(id, h.at(), h.found()),
            (scenario, h) -> Form.spot(h.at(), HOLE),
            (h, points) -> new TestHole(h.id(), points.get(0), h.found()));

    static final Family<NoDrillArea> NO_DRILL = new Family<>(
            Kind.NO_DRILL,
            s -> s.plan().noDrillAreas(),
            (s, areas) -> s.withPlan(s.plan().withNoDrillAreas(areas)),
            NoDrillArea::id,
            (a, id) -> new NoDrillArea(id, a.outline(), a.reason()),
            (scenario, a) -> Form.area(a.outline()),
            (a, points) -> new NoDrillArea(a.id(), points, a.reason()));

    /** All of them, the lowest on the plan first. */
    static final List<Family<?>> ALL =
            List.of(SLABS, ZONES, NO_DRILL, TILES, BARRIERS, WALLS, OPENINGS, HOLES, SUCTIONS);

    private Families() {}

    static Optional<Family<?>> of(Kind kind) {
        for (Family<?> family : ALL) if (family.kind() == kind) return Optional.of(family);
        return Optional.empty();
    }

    private static Form form(Scenario scenario, Opening o) {
        if (o.place() instanceof Opening.Spot spot) return Form.spot(spot.at(), spot.radius());
        if (o.place() instanceof Opening.Along along) return Form.line(along.path(), 0);
        Opening.Perimeter edge = (Opening.Perimeter) o.place();
        return SLABS.of(scenario, edge.slab())
                .findFirst()
                .map(s -> new Form(Form.Shape.LOOP, s.outline(), 0, true))
                .orElseGet(() -> new Form(Form.Shape.LOOP, List.of(), 0, true));
    }

    private static Opening reshaped(Opening o, List<Point> points) {
        Opening.Place place = o.place();
        if (o.place() instanceof Opening.Spot spot) place = new Opening.Spot(points.get(0), spot.radius());
        else if (o.place() instanceof Opening.Along along)
            place = new Opening.Along(Form.line(along.path(), 0).path(points));
        return new Opening(o.id(), o.kind(), place, o.passage(), o.seal());
    }

    /** Cut-outs go along where the slab is moved as a whole. */
    private static Slab reshaped(Slab s, List<Point> points) {
        Optional<Point> shift = shift(s.outline(), points);
        List<List<Point>> holes = shift.isEmpty()
                ? s.holes()
                : s.holes().stream()
                        .map(h -> Places.moved(h, shift.get().x(), shift.get().y()))
                        .toList();
        return new Slab(s.id(), points, holes, s.thickness(), s.treated());
    }

    private static Barrier reshaped(Barrier b, List<Point> points) {
        Path path = Form.line(b.path(), 0).path(points);
        return new Barrier(b.id(), path, b.width(), b.permeability(), b.known(), along(b.gaps(), b.path(), path));
    }

    private static DrainTile reshaped(DrainTile t, List<Point> points) {
        Path path = Form.line(t.path(), 0).path(points);
        return new DrainTile(
                t.id(),
                path,
                t.diameter(),
                t.manning(),
                t.slotArea(),
                along(t.breaks(), t.path(), path),
                along(t.waterFilled(), t.path(), path),
                t.sump());
    }

    private static BlockWall with(BlockWall w, String id, Path path) {
        return new BlockWall(
                id,
                path,
                w.height(),
                w.tops(),
                w.topArea(),
                w.joint(),
                w.faceToRoom(),
                w.faceToOutdoors(),
                w.along(),
                w.joinsAtCorners(),
                w.tile());
    }

    /** Gaps of a line on another line: moved along with it, else at the nearest place. */
    private static List<Gap> along(List<Gap> gaps, Path was, Path is) {
        Point shift = shift(was.points(), is.points()).orElse(new Point(0, 0));
        return gaps.stream()
                .map(g -> on(is, Places.moved(g.at(), shift.x(), shift.y()), g.length()))
                .toList();
    }

    /** A gap of a line at its place nearest to the given one. */
    static Gap on(Path line, Point near, double length) {
        Point at = line.at(line.nearest(near));
        return new Gap(Places.whole(at.x(), at.y()), length);
    }

    /** By how much all points have moved alike; empty where they have not. */
    private static Optional<Point> shift(List<Point> was, List<Point> is) {
        if (was.size() != is.size()) return Optional.empty();
        double dx = is.get(0).x() - was.get(0).x(),
                dy = is.get(0).y() - was.get(0).y();
        for (int i = 1; i < was.size(); i++)
            if (is.get(i).distanceTo(new Point(was.get(i).x() + dx, was.get(i).y() + dy)) > 1e-6)
                return Optional.empty();
        return Optional.of(new Point(dx, dy));
    }
}
