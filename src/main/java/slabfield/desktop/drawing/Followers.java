package slabfield.desktop.drawing;

import java.util.Collection;
import java.util.List;
import slabfield.model.Point;
import slabfield.model.Scenario;

/** Lines that begin or end on a slab's corners stay there when the corners move. */
final class Followers {
    private static final double SAME = 1e-3;

    private Followers() {}

    /**
     * @param was corners of a slab before they moved
     * @param is the same corners after
     * @param apart lines that stay where they are
     */
    static Scenario of(Scenario scenario, List<Point> was, List<Point> is, Collection<Item> apart) {
        if (was.size() != is.size()) return scenario;
        Scenario after = scenario;
        for (Item item : Items.all(scenario)) {
            if (apart.contains(item)
                    || item.kind() != Kind.WALL && item.kind() != Kind.OPENING && item.kind() != Kind.BARRIER) continue;
            Form form = Items.form(scenario, item).orElse(null);
            if (form == null || form.fixed() || form.shape() == Form.Shape.SPOT) continue;
            List<Point> points =
                    form.points().stream().map(p -> follow(p, was, is)).toList();
            if (points.equals(form.points()) || Edits.repeats(points)) continue;
            after = Families.of(item.kind()).orElseThrow().reshape(after, item.id(), points);
        }
        return after;
    }

    private static Point follow(Point p, List<Point> was, List<Point> is) {
        for (int i = 0; i < was.size(); i++) if (was.get(i).distanceTo(p) < SAME) return is.get(i);
        return p;
    }
}
