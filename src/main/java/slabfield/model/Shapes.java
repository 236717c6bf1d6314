package slabfield.model;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** What is drawn, as plane geometry in metres. */
public final class Shapes {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    /** Pieces of a quarter circle by which a disc is drawn; its area is then 0.16 % short. */
    private static final int QUARTER_CIRCLE = 16;

    private Shapes() {}

    /** The area inside an outline. */
    public static Geometry area(List<Point> outline) {
        Coordinate[] corners = new Coordinate[outline.size() + 1];
        for (int i = 0; i < corners.length; i++) corners[i] = coordinate(outline.get(i % outline.size()));
        LinearRing ring = FACTORY.createLinearRing(corners);
        return FACTORY.createPolygon(ring);
    }

    /** A slab without its holes. */
    public static Geometry area(Slab slab) {
        Geometry area = area(slab.outline());
        for (List<Point> hole : slab.holes()) area = without(area, area(hole));
        return area;
    }

    /** All slabs together; those that touch become one piece. */
    public static Geometry union(List<Slab> slabs) {
        return OverlayNGRobust.union(slabs.stream().map(Shapes::area).toList(), FACTORY);
    }

    /** A path as a line. */
    public static LineString line(Path path) {
        return FACTORY.createLineString(
                path.points().stream().map(Shapes::coordinate).toArray(Coordinate[]::new));
    }

    /** A barrier's strip with butt ends and mitred corners, its gaps left out. */
    public static Geometry strip(Barrier barrier) {
        BufferParameters butt = new BufferParameters(
                QUARTER_CIRCLE,
                BufferParameters.CAP_FLAT,
                BufferParameters.JOIN_MITRE,
                BufferParameters.DEFAULT_MITRE_LIMIT);
        List<Geometry> strips = pieces(barrier.path(), barrier.gaps()).stream()
                .map(piece -> BufferOp.bufferOp(line(piece), barrier.width() / 2, butt))
                .toList();
        return OverlayNGRobust.union(strips, FACTORY);
    }

    /** The strips of all barriers that no air passes, as one. */
    public static Geometry airtight(List<Barrier> barriers) {
        List<Geometry> strips = barriers.stream()
                .filter(b -> b.permeability() == 0)
                .map(Shapes::strip)
                .toList();
        return OverlayNGRobust.union(strips, FACTORY);
    }

    /** A pit, a hole or a spot opening. */
    public static Geometry disc(Point middle, double radius) {
        return point(middle).buffer(radius, QUARTER_CIRCLE);
    }

    /** What both have in common. */
    public static Geometry common(Geometry a, Geometry b) {
        return OverlayNGRobust.overlay(a, b, OverlayNG.INTERSECTION);
    }

    /** Outlines of the areas that two outlines without holes have in common. */
    public static List<List<Point>> common(List<Point> a, List<Point> b) {
        Geometry both = common(area(a), area(b));
        List<List<Point>> outlines = new ArrayList<>();
        for (int g = 0; g < both.getNumGeometries(); g++)
            if (both.getGeometryN(g) instanceof Polygon p && !p.isEmpty())
                outlines.add(Arrays.stream(p.getExteriorRing().getCoordinates())
                        .skip(1)
                        .map(c -> new Point(c.x, c.y))
                        .toList());
        return outlines;
    }

    /** What is left of the first when the second is taken out. */
    public static Geometry without(Geometry a, Geometry b) {
        return OverlayNGRobust.overlay(a, b, OverlayNG.DIFFERENCE);
    }

    /** A place. */
    public static org.locationtech.jts.geom.Point point(Point place) {
        return FACTORY.createPoint(coordinate(place));
    }

    /**
     * What is left of a path when stretches of it are taken out, in order along it. A stretch of no length cuts the path
     * and takes nothing away. A closed path is closed over its first point: what is left on both sides of it is one piece.
     */
    public static List<Path> pieces(Path path, List<Gap> gaps) {
        if (gaps.isEmpty()) return List.of(path);
        double length = path.length();
        List<double[]> cuts = cuts(path, gaps, length);
        List<Path> pieces = new ArrayList<>();
        double from = 0;
        for (double[] cut : cuts) {
            if (cut[0] > from) pieces.add(between(path, from, cut[0]));
            from = Math.max(from, cut[1]);
        }
        if (from < length) pieces.add(between(path, from, length));
        boolean cutAtStart = cuts.get(0)[0] <= 0 || cuts.get(cuts.size() - 1)[1] >= length;
        if (path.isClosed() && !cutAtStart) {
            List<Point> over = new ArrayList<>(pieces.remove(pieces.size() - 1).points());
            List<Point> first = pieces.isEmpty()
                    ? List.of(path.points().get(0))
                    : pieces.remove(0).points();
            over.addAll(first.subList(1, first.size()));
            pieces.add(new Path(over));
        }
        return pieces;
    }

    /** Stretches to take out, sorted by their start, held within the path; those over a loop's first point in two. */
    private static List<double[]> cuts(Path path, List<Gap> gaps, double length) {
        List<double[]> cuts = new ArrayList<>();
        for (Gap gap : gaps) {
            double middle = path.nearest(gap.at()), half = Math.min(gap.length(), length) / 2;
            cuts.add(new double[] {Math.max(0, middle - half), Math.min(length, middle + half)});
            if (!path.isClosed()) continue;
            if (middle - half < 0) cuts.add(new double[] {length + middle - half, length});
            if (middle + half > length) cuts.add(new double[] {0, middle + half - length});
        }
        cuts.sort((a, b) -> Double.compare(a[0], b[0]));
        return cuts;
    }

    private static Path between(Path path, double from, double to) {
        List<Point> points = new ArrayList<>(List.of(path.at(from)));
        double along = 0;
        for (int i = 1; i < path.points().size(); i++) {
            along += path.points().get(i - 1).distanceTo(path.points().get(i));
            if (along > from && along < to) points.add(path.points().get(i));
        }
        Point end = path.at(to);
        if (points.size() > 1 && points.get(points.size() - 1).equals(end)) points.remove(points.size() - 1);
        points.add(end);
        return new Path(points);
    }

    private static Coordinate coordinate(Point place) {
        return new Coordinate(place.x(), place.y());
    }
}
