package slabfield.io;

import java.util.List;
import java.util.Optional;
import slabfield.model.BlockWall;
import slabfield.model.DrainTile;
import slabfield.model.Gap;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.quantity.Dimension;

/** Reads drain tiles, block walls and openings. */
final class DeviceReader {
    private DeviceReader() {}

    static Optional<DrainTile> drainTile(Entry e) {
        String id = e.text("id");
        List<Point> path = e.points("path");
        double diameter = e.quantity("diameter", Dimension.LENGTH, DrainTile.USUAL_DIAMETER);
        double manning = e.number("manning", DrainTile.USUAL_MANNING);
        double slots = e.quantity("slots", Dimension.AREA_PER_LENGTH, DrainTile.USUAL_SLOT_AREA);
        List<Gap> breaks = e.list("breaks", FileObject.BREAK, GroundReader::gap);
        List<Gap> waterFilled = e.list("waterFilled", FileObject.GAP, GroundReader::gap);
        Optional<String> sump = e.has("sump") ? Optional.of(e.text("sump")) : Optional.empty();
        return e.make(() -> new DrainTile(id, new Path(path), diameter, manning, slots, breaks, waterFilled, sump));
    }

    static Optional<BlockWall> blockWall(Entry e) {
        String id = e.text("id");
        List<Point> path = e.points("path");
        double height = e.quantity("height", Dimension.LENGTH, BlockWall.USUAL_HEIGHT);
        Entry top = e.entry("tops", FileObject.TOPS);
        Optional<Seal> tops = seal(top);
        double topArea = top.quantity("area", Dimension.AREA_PER_LENGTH, BlockWall.FULLY_OPEN_TOP_AREA);
        double joint = e.quantity("joint", Dimension.CONDUCTANCE_PER_LENGTH, BlockWall.USUAL_JOINT);
        double toRoom = e.quantity("faceToRoom", Dimension.LEAKANCE, BlockWall.USUAL_FACE);
        double toOutdoors = e.quantity("faceToOutdoors", Dimension.LEAKANCE, 0);
        double along = e.quantity("along", Dimension.CONDUCTANCE_TIMES_LENGTH, BlockWall.USUAL_ALONG);
        boolean joins = e.truth("joinsAtCorners", true);
        Optional<BlockWall.TileJoint> tile =
                e.has("tile") ? tileJoint(e.entry("tile", FileObject.TILE_JOINT)) : Optional.empty();
        return e.make(() -> new BlockWall(
                id,
                new Path(path),
                height,
                tops.orElseThrow(),
                topArea,
                joint,
                toRoom,
                toOutdoors,
                along,
                joins,
                tile));
    }

    private static Optional<BlockWall.TileJoint> tileJoint(Entry e) {
        String tile = e.text("id");
        double conductance = e.quantity("conductance", Dimension.CONDUCTANCE_PER_LENGTH);
        return e.make(() -> new BlockWall.TileJoint(tile, conductance));
    }

    /** A state with the fraction that its word assumes, or with one of the user's. */
    static Optional<Seal> seal(Entry e) {
        SealState state = e.word("state", Words.STATES, SealState.OPEN);
        if (!e.has("sealedFraction")) return e.make(() -> Seal.of(state));
        if (!e.has("state") && e.has("sealedFraction"))
            e.problem("sealedFraction", e.title() + ": say the \"state\" too, for instance \"state\": \"sealed\"");
        double fraction = e.fraction("sealedFraction");
        return e.make(() -> new Seal(state, fraction, false));
    }

    static Optional<Opening> opening(Entry e) {
        String id = e.text("id");
        OpeningKind kind = e.word("kind", Words.OPENINGS, OpeningKind.OTHER);
        boolean spot = e.oneOf("at", "path", "perimeterOf").filter("at"::equals).isPresent();
        boolean line = e.has("path") || e.has("perimeterOf");
        Optional<Opening.Passage> passage = passage(e, line);
        Optional<Opening.Place> place = place(e, spot, passage);
        Optional<Seal> seal = seal(e);
        return e.make(() -> new Opening(id, kind, place.orElseThrow(), passage.orElseThrow(), seal.orElseThrow()));
    }

    private static Optional<Opening.Place> place(Entry e, boolean spot, Optional<Opening.Passage> passage) {
        e.onlyIf(e.has("at"), "radius", "for a spot with \"at\"");
        if (!spot) {
            List<Point> path = e.points("path");
            return e.make(() ->
                    e.has("path") ? new Opening.Along(new Path(path)) : new Opening.Perimeter(e.text("perimeterOf")));
        }
        Point at = e.point("at");
        if (!e.has("radius") && e.has("leak"))
            e.problemHere(e.title() + " needs \"radius\", because a leak does not say how large the hole is");
        double radius = e.has("radius")
                ? e.quantity("radius", Dimension.LENGTH)
                : passage.map(DeviceReader::radius).orElse(1.0);
        return e.make(() -> new Opening.Spot(at, radius));
    }

    /** Radius of a circle of an orifice's area [m]. */
    private static double radius(Opening.Passage passage) {
        return passage instanceof Opening.Orifice hole ? Math.sqrt(hole.area() / Math.PI) : 1;
    }

    private static Optional<Opening.Passage> passage(Entry e, boolean line) {
        e.onlyIf(line, "width", "for a line with \"path\" or \"perimeterOf\"; a spot has an \"area\"");
        e.onlyIf(e.has("width"), "bends", "with \"width\"");
        e.onlyIf(e.has("area"), "dischargeCoefficient", "with \"area\"");
        String given = (line ? e.oneOf("width", "area", "leak") : e.oneOf("area", "leak")).orElse("");
        double area = e.quantity("area", Dimension.AREA);
        double coefficient = e.number("dischargeCoefficient", Opening.Orifice.USUAL_COEFFICIENT);
        double width = e.quantity("width", Dimension.LENGTH);
        int bends = e.whole("bends", 0);
        if (given.equals("leak")) return leak(e.entry("leak", FileObject.LEAK));
        return e.make(
                () -> given.equals("width") ? new Opening.Crack(width, bends) : new Opening.Orifice(area, coefficient));
    }

    private static Optional<Opening.Passage> leak(Entry e) {
        double coefficient = e.quantity("coefficient", Dimension.LEAK_COEFFICIENT);
        double exponent = e.number("exponent", 1);
        return e.make(() -> new Opening.PowerLaw(coefficient, exponent));
    }
}
