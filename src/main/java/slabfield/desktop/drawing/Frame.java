package slabfield.desktop.drawing;

import java.util.List;
import slabfield.model.Point;

/** A rectangle with its sides along the plan's axes [m]. */
public record Frame(double left, double low, double right, double high) {
    /** The smallest about some places, of which there is at least one. */
    public static Frame about(List<Point> points) {
        return new Frame(
                points.stream().mapToDouble(Point::x).min().orElseThrow(),
                points.stream().mapToDouble(Point::y).min().orElseThrow(),
                points.stream().mapToDouble(Point::x).max().orElseThrow(),
                points.stream().mapToDouble(Point::y).max().orElseThrow());
    }

    public double width() {
        return right - left;
    }

    public double depth() {
        return high - low;
    }

    public boolean holds(Point p) {
        return p.x() >= left && p.x() <= right && p.y() >= low && p.y() <= high;
    }

    /** Whether a form lies inside as a whole. */
    public boolean holds(Form form) {
        return form.points().stream().allMatch(this::holds);
    }

    /** Whether any part of a form lies inside. */
    public boolean touches(Form form) {
        if (form.points().stream().anyMatch(this::holds)) return true;
        List<Point> ring = Places.rectangle(new Point(left, low), new Point(right, high));
        for (int edge = 0; edge < form.edges(); edge++)
            for (int side = 0; side < 4; side++)
                if (Places.meet(form.from(edge), form.to(edge), ring.get(side), ring.get((side + 1) % 4))) return true;
        return form.shape() == Form.Shape.AREA && Places.inside(ring.get(0), form.points());
    }
}
