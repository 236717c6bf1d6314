package slabfield.model;

/**
 * A place on the plan, seen from above.
 *
 * @param x distance to the right of the plan's origin [m]
 * @param y distance up the plan from the origin [m]
 */
public record Point(double x, double y) {
    public Point {
        Check.finite("x", x);
        Check.finite("y", y);
    }

    /** Straight-line distance to another place [m]. */
    public double distanceTo(Point other) {
        return Math.hypot(x - other.x, y - other.y);
    }
}
