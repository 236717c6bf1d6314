package slabfield.desktop.drawing;

import java.util.List;
import slabfield.model.Point;

/** Plane geometry of a drawing. */
public final class Places {
    /** Places are whole nanometres, as in a scenario file. */
    private static final double NANOMETRE = 1e9;

    private Places() {}

    /** The same place in whole nanometres. */
    public static Point whole(double x, double y) {
        return new Point(Math.rint(x * NANOMETRE) / NANOMETRE, Math.rint(y * NANOMETRE) / NANOMETRE);
    }

    public static Point moved(Point p, double dx, double dy) {
        return whole(p.x() + dx, p.y() + dy);
    }

    public static List<Point> moved(List<Point> points, double dx, double dy) {
        return points.stream().map(p -> moved(p, dx, dy)).toList();
    }

    public static Point middle(Point a, Point b) {
        return new Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
    }

    /** A place at a distance and direction, counter-clockwise from the plan's right [rad]. */
    public static Point at(Point from, double distance, double angle) {
        return whole(from.x() + distance * Math.cos(angle), from.y() + distance * Math.sin(angle));
    }

    /** Direction from one place to another, counter-clockwise from the plan's right, above -pi to pi [rad]. */
    public static double angle(Point from, Point to) {
        return Math.atan2(to.y() - from.y(), to.x() - from.x());
    }

    /** The place of a straight piece that is nearest to another place. */
    public static Point nearest(Point p, Point a, Point b) {
        double dx = b.x() - a.x(), dy = b.y() - a.y(), square = dx * dx + dy * dy;
        if (square == 0) return a;
        double t = Math.max(0, Math.min(1, ((p.x() - a.x()) * dx + (p.y() - a.y()) * dy) / square));
        return new Point(a.x() + t * dx, a.y() + t * dy);
    }

    /** Whether a place lies inside a ring, by the even-odd rule. */
    public static boolean inside(Point p, List<Point> ring) {
        boolean inside = false;
        for (int i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            Point a = ring.get(i), b = ring.get(j);
            if (a.y() > p.y() != b.y() > p.y() && p.x() < (b.x() - a.x()) * (p.y() - a.y()) / (b.y() - a.y()) + a.x())
                inside = !inside;
        }
        return inside;
    }

    /** Twice the area inside a ring, negative where its corners run clockwise [m2]. */
    public static double twiceArea(List<Point> ring) {
        double sum = 0;
        for (int i = 0, j = ring.size() - 1; i < ring.size(); j = i++)
            sum += ring.get(j).x() * ring.get(i).y()
                    - ring.get(i).x() * ring.get(j).y();
        return sum;
    }

    /** Whether two straight pieces meet. */
    public static boolean meet(Point a, Point b, Point c, Point d) {
        return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
    }

    private static double side(Point a, Point b, Point p) {
        return Math.signum((b.x() - a.x()) * (p.y() - a.y()) - (b.y() - a.y()) * (p.x() - a.x()));
    }

    /** The four corners of a rectangle with its sides along the axes, counter-clockwise from its lower left. */
    public static List<Point> rectangle(Point a, Point b) {
        double left = Math.min(a.x(), b.x()), right = Math.max(a.x(), b.x());
        double low = Math.min(a.y(), b.y()), high = Math.max(a.y(), b.y());
        return List.of(whole(left, low), whole(right, low), whole(right, high), whole(left, high));
    }
}
