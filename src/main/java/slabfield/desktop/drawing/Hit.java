package slabfield.desktop.drawing;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import slabfield.model.Point;
import slabfield.model.Scenario;

/**
 * What lies under the pointer.
 *
 * @param item the thing
 * @param part which part of it
 * @param index of the corner or edge; 0 for the body
 */
public record Hit(Item item, Part part, int index) {
    /** A part of a thing. */
    public enum Part {
        CORNER,
        EDGE,
        BODY
    }

    private record Scored(Hit hit, double rank, double distance) {}

    /**
     * Everything under a place, what is meant most likely first: spots before lines, lines before areas; of these the one
     * drawn above.
     *
     * @param layers where to look
     * @param reach how near counts as under [m]
     */
    public static List<Hit> all(Scenario scenario, Collection<Layer> layers, Point p, double reach) {
        List<Scored> found = new ArrayList<>();
        List<Item> items = Items.all(scenario);
        for (int i = items.size() - 1; i >= 0; i--) {
            Item item = items.get(i);
            if (!layers.contains(item.kind().layer())) continue;
            Items.form(scenario, item).flatMap(f -> hit(item, f, p, reach)).ifPresent(found::add);
        }
        found.sort(Comparator.comparingDouble(Scored::rank).thenComparingDouble(s -> s.rank() < 1 ? s.distance() : 0));
        return found.stream().map(Scored::hit).toList();
    }

    /** The corner of a thing under a place, or else its edge. */
    public static Optional<Hit> grip(Scenario scenario, Item item, Point p, double reach) {
        return Items.form(scenario, item)
                .filter(f -> !f.fixed() && f.shape() != Form.Shape.SPOT)
                .flatMap(f -> corner(item, f, p, reach).or(() -> edge(item, f, p, reach)));
    }

    private static Optional<Scored> hit(Item item, Form form, Point p, double reach) {
        if (form.shape() == Form.Shape.SPOT) {
            double distance = form.points().get(0).distanceTo(p);
            boolean near = distance <= Math.max(reach, form.reach());
            return near ? Optional.of(new Scored(new Hit(item, Part.BODY, 0), 0, distance)) : Optional.empty();
        }
        double rank = form.fixed() ? 1.5 : form.shape() == Form.Shape.AREA ? 1.2 : 1;
        Optional<Hit> line = corner(item, form, p, reach).or(() -> edge(item, form, p, Math.max(reach, form.reach())));
        if (line.isPresent()) return line.map(h -> new Scored(h, rank, 0));
        if (form.shape() != Form.Shape.AREA || !Places.inside(p, form.points())) return Optional.empty();
        double area = Math.abs(Places.twiceArea(form.points()));
        return Optional.of(new Scored(new Hit(item, Part.BODY, 0), 2 + area / (1 + area), 0));
    }

    private static Optional<Hit> corner(Item item, Form form, Point p, double reach) {
        int best = -1;
        for (int i = 0; i < form.points().size(); i++) {
            double d = form.points().get(i).distanceTo(p);
            if (d <= reach && (best < 0 || d < form.points().get(best).distanceTo(p))) best = i;
        }
        return best < 0 ? Optional.empty() : Optional.of(new Hit(item, Part.CORNER, best));
    }

    private static Optional<Hit> edge(Item item, Form form, Point p, double reach) {
        for (int i = 0; i < form.edges(); i++)
            if (Places.nearest(p, form.from(i), form.to(i)).distanceTo(p) <= reach)
                return Optional.of(new Hit(item, Part.EDGE, i));
        return Optional.empty();
    }
}
