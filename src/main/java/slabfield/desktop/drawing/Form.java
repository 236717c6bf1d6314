package slabfield.desktop.drawing;

import java.util.ArrayList;
import java.util.List;
import slabfield.model.Path;
import slabfield.model.Point;

/**
 * How a drawn thing lies on the plan.
 *
 * @param shape what its points mean
 * @param points corners in order, none repeated at the end; one place for a spot
 * @param reach how far it extends about its points: radius of a spot, half the width of a line [m]
 * @param fixed true where it follows something else and cannot be changed by itself
 */
public record Form(Shape shape, List<Point> points, double reach, boolean fixed) {
    /** What points mean. */
    public enum Shape {
        /** Corners about an area. */
        AREA,
        /** A line that ends where it begins. */
        LOOP,
        LINE,
        SPOT
    }

    public Form {
        points = List.copyOf(points);
    }

    static Form area(List<Point> corners) {
        return new Form(Shape.AREA, corners, 0, false);
    }

    static Form spot(Point at, double radius) {
        return new Form(Shape.SPOT, List.of(at), radius, false);
    }

    static Form line(Path path, double reach) {
        List<Point> points = path.points();
        return path.isClosed()
                ? new Form(Shape.LOOP, points.subList(0, points.size() - 1), reach, false)
                : new Form(Shape.LINE, points, reach, false);
    }

    /** Whether its last point joins its first. */
    public boolean isRing() {
        return shape == Shape.AREA || shape == Shape.LOOP;
    }

    /** Number of straight pieces. */
    public int edges() {
        return shape == Shape.SPOT ? 0 : isRing() ? points.size() : points.size() - 1;
    }

    /** First place of a straight piece. */
    public Point from(int edge) {
        return points.get(edge);
    }

    /** Last place of a straight piece. */
    public Point to(int edge) {
        return points.get((edge + 1) % points.size());
    }

    /** Fewest points that it can have. */
    int fewest() {
        return switch (shape) {
            case AREA, LOOP -> 3;
            case LINE -> 2;
            case SPOT -> 1;
        };
    }

    /** The line that other points make, where this is a line or a loop. */
    Path path(List<Point> other) {
        List<Point> line = new ArrayList<>(other);
        if (shape == Shape.LOOP) line.add(other.get(0));
        return new Path(line);
    }
}
