package slabfield.desktop.drawing;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import slabfield.model.Barrier;
import slabfield.model.BlockWall;
import slabfield.model.DrainTile;
import slabfield.model.Fill;
import slabfield.model.FillWord;
import slabfield.model.NoDrillArea;
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
import slabfield.model.TestHole;
import slabfield.model.Zone;

/** New things with usual values, common practice all of them, to be changed by who knows better. */
public final class Makers {
    private static final double FOOTING = 0.4;
    private static final double JOINT = 0.5e-3;
    private static final double PIPE_PASSAGE = 0.05;
    private static final double PASSAGE_AREA = 5e-4;
    private static final double TEST_PIT = 0.15;
    /** What a wet/dry vacuum cleaner or a usual fan may hold at the slab [Pa]. */
    private static final double SUCTION = -250;
    /** How far from the foot of the wall a tile usually runs inside [m]. */
    private static final double TILE_INSIDE = 0.3;

    private static final double NEAR_TILE = 0.1;

    private Makers() {}

    /**
     * What was made.
     *
     * @param scenario with it
     * @param item its name
     */
    public record Made(Scenario scenario, Item item) {}

    public static Made slab(Scenario s, List<Point> corners) {
        String id = s.slabs().isEmpty() ? "basement" : Items.free(s, Kind.SLAB, "slab ");
        double thickness =
                s.slabs().isEmpty() ? Slab.USUAL_THICKNESS : s.slabs().get(0).thickness();
        return made(Families.SLABS, s, id, new Slab(id, corners, List.of(), thickness, true));
    }

    /** A hole in the slab about its first corner; nothing where there is none. */
    public static Optional<Made> cutOut(Scenario s, List<Point> corners) {
        return s.slabs().stream()
                .filter(slab -> Places.inside(corners.get(0), slab.outline()))
                .findFirst()
                .map(slab -> new Made(
                        Parts.CUT_OUTS.with(s, slab.id(), corners),
                        new Item(Kind.CUT_OUT, slab.id(), slab.holes().size())));
    }

    public static Made zone(Scenario s, List<Point> corners) {
        String id = Items.free(s, Kind.ZONE, "zone ");
        return made(
                Families.ZONES,
                s,
                id,
                new Zone(id, corners, Fill.of(FillWord.SAND, s.layer().fill().thickness())));
    }

    public static Made noDrill(Scenario s, List<Point> corners) {
        String id = Items.free(s, Kind.NO_DRILL, "no-drill ");
        return made(Families.NO_DRILL, s, id, new NoDrillArea(id, corners, ""));
    }

    public static Made barrier(Scenario s, List<Point> line) {
        String id = Items.free(s, Kind.BARRIER, "footing ");
        return made(Families.BARRIERS, s, id, new Barrier(id, new Path(line), FOOTING, 0, false, List.of()));
    }

    public static Made tile(Scenario s, Path path) {
        String id = Items.free(s, Kind.TILE, "tile ");
        return made(
                Families.TILES,
                s,
                id,
                new DrainTile(
                        id,
                        path,
                        DrainTile.USUAL_DIAMETER,
                        DrainTile.USUAL_MANNING,
                        DrainTile.USUAL_SLOT_AREA,
                        List.of(),
                        List.of(),
                        Optional.empty()));
    }

    public static Made wall(Scenario s, List<Point> line) {
        String id = Items.free(s, Kind.WALL, "wall ");
        return made(
                Families.WALLS,
                s,
                id,
                new BlockWall(
                        id,
                        new Path(line),
                        BlockWall.USUAL_HEIGHT,
                        Seal.of(SealState.OPEN),
                        BlockWall.FULLY_OPEN_TOP_AREA,
                        BlockWall.USUAL_JOINT,
                        BlockWall.USUAL_FACE,
                        BlockWall.USUAL_FACE,
                        BlockWall.USUAL_ALONG,
                        true,
                        Optional.empty()));
    }

    /** The joint round a whole slab. */
    public static Made perimeter(Scenario s, String slab) {
        String id = Items.free(s, Kind.OPENING, "joint ");
        return opening(s, id, OpeningKind.JOINT, new Opening.Perimeter(slab), new Opening.Crack(JOINT, 0));
    }

    public static Made joint(Scenario s, List<Point> line) {
        String id = Items.free(s, Kind.OPENING, "joint ");
        return opening(s, id, OpeningKind.JOINT, new Opening.Along(new Path(line)), new Opening.Crack(JOINT, 0));
    }

    public static Made crack(Scenario s, List<Point> line) {
        String id = Items.free(s, Kind.OPENING, "crack ");
        return opening(s, id, OpeningKind.CRACK, new Opening.Along(new Path(line)), new Opening.Crack(JOINT, 0));
    }

    public static Made spot(Scenario s, Point at) {
        String id = Items.free(s, Kind.OPENING, "opening ");
        return opening(
                s,
                id,
                OpeningKind.PENETRATION,
                new Opening.Spot(at, PIPE_PASSAGE),
                new Opening.Orifice(PASSAGE_AREA, Opening.Orifice.USUAL_COEFFICIENT));
    }

    private static Made opening(Scenario s, String id, OpeningKind kind, Opening.Place place, Opening.Passage passage) {
        return made(Families.OPENINGS, s, id, new Opening(id, kind, place, passage, Seal.of(SealState.OPEN)));
    }

    /** A suction point with a pit, teed into a tile where it stands on one. */
    public static Made suction(Scenario s, Point at) {
        String id = Items.free(s, Kind.SUCTION, "S");
        Optional<String> tile = s.drainTiles().stream()
                .filter(t -> t.path().at(t.path().nearest(at)).distanceTo(at) <= NEAR_TILE)
                .map(DrainTile::id)
                .findFirst();
        Source source = s.suctionPoints().isEmpty()
                ? new Source.Pressure(SUCTION)
                : s.suctionPoints().get(s.suctionPoints().size() - 1).source();
        return made(
                Families.SUCTIONS,
                s,
                id,
                new SuctionPoint(id, at, tile, new SuctionPoint.Pit(TEST_PIT), source, false));
    }

    public static Made hole(Scenario s, Point at) {
        String id = Items.free(s, Kind.HOLE, "T");
        return made(Families.HOLES, s, id, new TestHole(id, at, ""));
    }

    /** A gap in the barrier that is nearest; nothing where there is none. */
    public static Optional<Made> gap(Scenario s, Point at, double length) {
        return s.barriers().stream()
                .min(Comparator.comparingDouble(b -> away(b.path(), at)))
                .map(b -> new Made(
                        Parts.GAPS.with(s, b.id(), Families.on(b.path(), at, length)),
                        new Item(Kind.GAP, b.id(), b.gaps().size())));
    }

    /** A break in the tile that is nearest; nothing where there is none. */
    public static Optional<Made> tileBreak(Scenario s, Point at, double length) {
        return s.drainTiles().stream()
                .min(Comparator.comparingDouble(t -> away(t.path(), at)))
                .map(t -> new Made(
                        Parts.BREAKS.with(s, t.id(), Families.on(t.path(), at, length)),
                        new Item(Kind.TILE_BREAK, t.id(), t.breaks().size())));
    }

    private static double away(Path path, Point p) {
        return path.at(path.nearest(p)).distanceTo(p);
    }

    /** The loop that a tile usually takes inside a slab: beside its edge. Nothing where the slab is too narrow. */
    public static Optional<Path> loopInside(Slab slab) {
        List<Point> ring = slab.outline();
        int n = ring.size();
        double side = Math.signum(Places.twiceArea(ring)) * TILE_INSIDE;
        List<Point> loop = new java.util.ArrayList<>();
        for (int i = 0; i < n; i++) {
            Point before = ring.get((i + n - 1) % n), at = ring.get(i), after = ring.get((i + 1) % n);
            double a = Places.angle(before, at), b = Places.angle(at, after), half = (b - a) / 2;
            if (Math.abs(Math.cos(half)) < 0.2) return Optional.empty();
            double mitre = side / Math.cos(half), normal = a + half + Math.PI / 2;
            loop.add(Places.whole(at.x() + mitre * Math.cos(normal), at.y() + mitre * Math.sin(normal)));
        }
        boolean sound = Math.signum(Places.twiceArea(loop)) == Math.signum(side)
                && loop.stream().allMatch(p -> Places.inside(p, ring));
        loop.add(loop.get(0));
        return sound ? Optional.of(new Path(loop)) : Optional.empty();
    }

    private static <T> Made made(Family<T> family, Scenario s, String id, T thing) {
        return new Made(family.with(s, thing), Item.of(family.kind(), id));
    }
}
