package slabfield.model;

import java.util.List;

/**
 * A line of straight pieces on the plan.
 *
 * @param points at least two places, no two neighbours equal; a last point equal to the first closes the line
 */
public record Path(List<Point> points) {
    public Path {
        points = Check.list("path", points);
        if (points.size() < 2) throw new ImpossibleValue("path", "needs at least two points");
        for (int i = 1; i < points.size(); i++)
            if (points.get(i).equals(points.get(i - 1)))
                throw new ImpossibleValue(
                        "path", "has the same point twice in a row (points " + i + " and " + (i + 1) + ")");
    }

    /** Length along the line [m]. */
    public double length() {
        double sum = 0;
        for (int i = 1; i < points.size(); i++) sum += points.get(i - 1).distanceTo(points.get(i));
        return sum;
    }

    public boolean isClosed() {
        return points.size() > 3 && points.get(0).equals(points.get(points.size() - 1));
    }

    /**
     * The place at a distance along the line.
     *
     * @param distance from the first point, held between 0 and the length [m]
     */
    public Point at(double distance) {
        double left = distance;
        for (int i = 1; i < points.size(); i++) {
            Point a = points.get(i - 1), b = points.get(i);
            double piece = a.distanceTo(b);
            if (left <= piece || i == points.size() - 1) {
                double t = Math.max(0, Math.min(1, left / piece));
                return new Point(a.x() + t * (b.x() - a.x()), a.y() + t * (b.y() - a.y()));
            }
            left -= piece;
        }
        throw new IllegalStateException("a path has at least one piece");
    }

    /** Distance along the line of the place on it that is nearest to the given one [m]. */
    public double nearest(Point place) {
        double best = Double.MAX_VALUE, where = 0, along = 0;
        for (int i = 1; i < points.size(); i++) {
            Point a = points.get(i - 1), b = points.get(i);
            double piece = a.distanceTo(b), ux = (b.x() - a.x()) / piece, uy = (b.y() - a.y()) / piece;
            double t = Math.max(0, Math.min(piece, (place.x() - a.x()) * ux + (place.y() - a.y()) * uy));
            double d = Math.hypot(a.x() + t * ux - place.x(), a.y() + t * uy - place.y());
            if (d < best) {
                best = d;
                where = along + t;
            }
            along += piece;
        }
        return where;
    }
}
