package slabfield.desktop.drawing;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import slabfield.model.Point;
import slabfield.model.Scenario;

/** What can be done to drawn things: each a function from a scenario to the next. */
public final class Edits {
    /** Sine of the largest angle that counts as square, to either side. */
    private static final double SQUARE = 1e-3;

    private Edits() {}

    /**
     * What a paste makes.
     *
     * @param scenario with the copies
     * @param items the copies
     */
    public record Pasted(Scenario scenario, List<Item> items) {}

    /** Moves things; a part that is moved together with its owner goes once. */
    public static Scenario move(Scenario scenario, Collection<Item> items, double dx, double dy) {
        Scenario after = scenario;
        for (Item item : items) {
            if (item.kind().isPart() && items.stream().anyMatch(o -> !o.kind().isPart() && owns(o, item))) continue;
            Optional<Form> form = Items.form(scenario, item);
            if (form.isEmpty() || form.get().fixed()) continue;
            after = Items.reshape(after, item, Places.moved(form.get().points(), dx, dy), items);
        }
        return after;
    }

    private static boolean owns(Item owner, Item part) {
        Kind of = switch (part.kind()) {
            case CUT_OUT -> Kind.SLAB;
            case GAP -> Kind.BARRIER;
            case TILE_BREAK, WATER -> Kind.TILE;
            default -> part.kind();
        };
        return owner.kind() == of && owner.id().equals(part.id());
    }

    /** Puts one corner elsewhere; stays as it is where the corner would fall on its neighbour. */
    public static Scenario moveCorner(Scenario scenario, Item item, int corner, Point to) {
        return changed(scenario, item, points -> points.set(corner, Places.whole(to.x(), to.y())));
    }

    /** Puts a straight piece elsewhere, its direction kept. */
    public static Scenario moveEdge(Scenario scenario, Item item, int edge, double dx, double dy) {
        return changed(scenario, item, points -> {
            int next = (edge + 1) % points.size();
            points.set(edge, Places.moved(points.get(edge), dx, dy));
            points.set(next, Places.moved(points.get(next), dx, dy));
        });
    }

    /** Adds a corner on a straight piece. */
    public static Scenario splitEdge(Scenario scenario, Item item, int edge, Point at) {
        return changed(scenario, item, points -> points.add(edge + 1, Places.whole(at.x(), at.y())));
    }

    /** Takes a corner away; stays as it is where too few would be left. */
    public static Scenario deleteCorner(Scenario scenario, Item item, int corner) {
        boolean enough = Items.form(scenario, item)
                .filter(f -> f.points().size() > f.fewest())
                .isPresent();
        return enough ? changed(scenario, item, points -> points.remove(corner)) : scenario;
    }

    /**
     * Gives a straight piece another length: its far end moves along it. Where the next piece stands square on it, that
     * piece goes along, so that a right-angled outline stays right-angled.
     *
     * @param length above 0 [m]
     */
    public static Scenario setLength(Scenario scenario, Item item, int edge, double length) {
        Form form = Items.form(scenario, item).orElseThrow();
        Point a = form.from(edge), b = form.to(edge);
        double was = a.distanceTo(b), ux = (b.x() - a.x()) / was, uy = (b.y() - a.y()) / was, by = length - was;
        return changed(scenario, item, points -> {
            int far = (edge + 1) % points.size(), beyond = (edge + 2) % points.size();
            boolean hasNext = form.isRing() ? points.size() > 3 : edge + 2 < points.size();
            Point next = points.get(beyond);
            double along = (next.x() - b.x()) * ux + (next.y() - b.y()) * uy;
            points.set(far, Places.moved(b, by * ux, by * uy));
            if (hasNext && Math.abs(along) <= SQUARE * b.distanceTo(next))
                points.set(beyond, Places.moved(next, by * ux, by * uy));
        });
    }

    /** Stretches a thing to another frame. */
    public static Scenario setFrame(Scenario scenario, Item item, Frame to) {
        Form form = Items.form(scenario, item).orElseThrow();
        Frame was = Frame.about(form.points());
        return changed(
                scenario,
                item,
                points -> points.replaceAll(p -> Places.whole(
                        stretched(p.x(), was.left(), was.width(), to.left(), to.width()),
                        stretched(p.y(), was.low(), was.depth(), to.low(), to.depth()))));
    }

    private static double stretched(double x, double from, double size, double to, double newSize) {
        return size == 0 ? to : to + (x - from) * newSize / size;
    }

    /** Takes things away, and every word that other things have of them. */
    public static Scenario remove(Scenario scenario, Collection<Item> items) {
        Scenario after = scenario;
        List<Item> parts = items.stream()
                .filter(i -> i.kind().isPart())
                .sorted(Comparator.comparingInt(Item::part).reversed())
                .toList();
        for (Item item : parts) after = Parts.of(item.kind()).orElseThrow().without(after, item);
        for (Item item : items) {
            if (item.kind().isPart()) continue;
            if (item.kind() == Kind.UNDERLAY)
                after = after.withPlan(after.plan().withUnderlay(Optional.empty()));
            else
                after = Naming.forget(
                        Families.of(item.kind()).orElseThrow().without(after, item.id()), item.kind(), item.id());
        }
        return after;
    }

    /**
     * Puts copies of things, each under a name of its own; a part is copied only within its own scenario, beside itself.
     *
     * @param from where they are
     * @param to where the copies go
     */
    public static Pasted paste(Scenario from, Collection<Item> items, Scenario to, double dx, double dy) {
        Scenario after = to;
        Set<Item> made = new LinkedHashSet<>();
        for (Item item : items) {
            if (item.kind() == Kind.UNDERLAY) continue;
            if (item.kind().isPart()) {
                if (items.stream().noneMatch(o -> !o.kind().isPart() && owns(o, item)))
                    after = Parts.of(item.kind()).orElseThrow().copy(after, item, dx, dy);
                continue;
            }
            String name = Items.freeAfter(after, item.kind(), item.id());
            after = Families.of(item.kind()).orElseThrow().copy(from, item.id(), after, name, dx, dy);
            made.add(Item.of(item.kind(), name));
        }
        return new Pasted(after, List.copyOf(made));
    }

    private interface Change {
        void of(List<Point> points);
    }

    private static Scenario changed(Scenario scenario, Item item, Change change) {
        Form form = Items.form(scenario, item).orElseThrow();
        if (form.fixed()) return scenario;
        List<Point> points = new ArrayList<>(form.points());
        change.of(points);
        boolean closes = form.isRing() && points.get(0).equals(points.get(points.size() - 1));
        return closes || repeats(points) ? scenario : Items.reshape(scenario, item, points);
    }

    /** Whether two neighbours are the same place. */
    static boolean repeats(List<Point> points) {
        for (int i = 1; i < points.size(); i++) if (points.get(i).equals(points.get(i - 1))) return true;
        return false;
    }
}
