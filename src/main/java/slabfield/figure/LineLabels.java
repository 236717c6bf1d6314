package slabfield.figure;

import java.util.ArrayList;
import java.util.List;

/** Finds places for text along a line: where the line is nearly straight, upright, and nothing else stands. */
final class LineLabels {
    private static final double SHORTEST = 2.2;
    private static final double STRAIGHT = 0.97;

    /**
     * Middle of a text.
     *
     * @param angle clockwise on the page, between -90 and 90 degrees so that it is never upside down [radians]
     */
    record Spot(double x, double y, double angle) {}

    private LineLabels() {}

    /**
     * Up to so many places, taken at once; none on a line shorter than about twice the text.
     *
     * @param line on the page
     * @param width of the text
     * @param size of the letters
     */
    static List<Spot> places(double[] line, double width, double size, int most, Labels labels) {
        List<Spot> found = new ArrayList<>();
        double length = Lines.length(line);
        if (length < SHORTEST * width) return found;
        for (int part = 0; part < most; part++) {
            double middle = length * (part + 0.5) / most, reach = length / most / 2 - width / 2;
            for (double away = 0; away <= reach; away += 0.4 * width)
                if (tried(line, middle + away, width, size, labels, found)
                        || away > 0 && tried(line, middle - away, width, size, labels, found)) break;
        }
        return found;
    }

    private static boolean tried(
            double[] line, double middle, double width, double size, Labels labels, List<Spot> found) {
        double[] a = Lines.at(line, middle - width / 2), b = Lines.at(line, middle + width / 2);
        double[] m = Lines.at(line, middle);
        double dx = b[0] - a[0], dy = b[1] - a[1];
        if (Math.hypot(dx, dy) < STRAIGHT * width) return false;
        double angle = Math.atan2(dy, dx);
        if (angle > Math.PI / 2) angle -= Math.PI;
        if (angle <= -Math.PI / 2) angle += Math.PI;
        double c = Math.abs(Math.cos(angle)), s = Math.abs(Math.sin(angle));
        double halfX = (c * width + s * size) / 2 + 1, halfY = (s * width + c * size) / 2 + 1;
        Box box = new Box(m[0] - halfX, m[1] - halfY, m[0] + halfX, m[1] + halfY);
        if (!labels.isFree(box)) return false;
        labels.take(box);
        found.add(new Spot(m[0], m[1], angle));
        return true;
    }
}
