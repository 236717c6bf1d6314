package slabfield.figure;

/** A rectangle on the page, in points, y counted down. */
public record Box(double left, double top, double right, double bottom) {
    public static Box around(double x, double y, double reach) {
        return new Box(x - reach, y - reach, x + reach, y + reach);
    }

    public double width() {
        return right - left;
    }

    public double height() {
        return bottom - top;
    }

    public boolean overlaps(Box other) {
        return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }

    public boolean holds(Box other) {
        return left <= other.left && top <= other.top && right >= other.right && bottom >= other.bottom;
    }

    /** The same rectangle made smaller by a margin on every side, or larger where the margin is negative. */
    public Box inset(double margin) {
        return new Box(left + margin, top + margin, right - margin, bottom - margin);
    }

    /** Its four corners, x0, y0, x1, y1 ... */
    public double[] ring() {
        return new double[] {left, top, right, top, right, bottom, left, bottom};
    }
}
