package slabfield.desktop.drawing;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Underlay;

/** All drawn things of a scenario, each by its {@link Item}. */
public final class Items {
    /** Length of the sign by which a picture is moved: its lower left corner [m]. */
    private static final double CORNER = 0.2;

    private Items() {}

    /** All of them, the lowest on the plan first; of a family the later drawn lie above the earlier. */
    public static List<Item> all(Scenario scenario) {
        List<Item> items = new ArrayList<>();
        if (scenario.plan().underlay().isPresent()) items.add(Item.of(Kind.UNDERLAY, "picture"));
        for (Family<?> family : Families.ALL) {
            items.addAll(ofFamily(family, scenario));
            for (Parts<?, ?> parts : Parts.ALL) if (parts.owners() == family) items.addAll(parts.items(scenario));
        }
        return items;
    }

    private static <T> List<Item> ofFamily(Family<T> family, Scenario scenario) {
        return family.list().apply(scenario).stream()
                .map(t -> Item.of(family.kind(), family.name().apply(t)))
                .toList();
    }

    /** How one lies on the plan; empty where there is no such thing. */
    public static Optional<Form> form(Scenario scenario, Item item) {
        if (item.kind() == Kind.UNDERLAY) return scenario.plan().underlay().map(u -> Form.spot(u.corner(), CORNER));
        Optional<Parts<?, ?>> parts = Parts.of(item.kind());
        return parts.isPresent()
                ? parts.get().form(scenario, item)
                : Families.of(item.kind()).flatMap(f -> form(f, scenario, item.id()));
    }

    private static <T> Optional<Form> form(Family<T> family, Scenario scenario, String id) {
        return family.of(scenario, id)
                .findFirst()
                .map(t -> family.form().apply(scenario, t))
                .filter(f -> !f.points().isEmpty());
    }

    /** The scenario with one thing at other points; ends of lines on a slab's corners go along with the corners. */
    public static Scenario reshape(Scenario scenario, Item item, List<Point> points) {
        return reshape(scenario, item, points, Set.of());
    }

    /**
     * @param apart what does not go along, since it is moved by itself
     */
    static Scenario reshape(Scenario scenario, Item item, List<Point> points, Collection<Item> apart) {
        if (item.kind() == Kind.UNDERLAY) return withUnderlay(scenario, points.get(0));
        Optional<Parts<?, ?>> parts = Parts.of(item.kind());
        if (parts.isPresent()) return parts.get().reshape(scenario, item, points);
        Scenario after = Families.of(item.kind()).orElseThrow().reshape(scenario, item.id(), points);
        return item.kind() == Kind.SLAB
                ? Followers.of(after, form(scenario, item).orElseThrow().points(), points, apart)
                : after;
    }

    private static Scenario withUnderlay(Scenario scenario, Point corner) {
        return scenario.withPlan(scenario.plan()
                .withUnderlay(
                        scenario.plan().underlay().map(u -> new Underlay(u.picture(), corner, u.pixel(), u.turned()))));
    }

    /** Names that a kind of thing may not take, because another has them. */
    static Set<String> taken(Scenario scenario, Kind kind) {
        boolean sealed = kind == Kind.OPENING || kind == Kind.WALL;
        Set<String> names = new HashSet<>();
        for (Item item : all(scenario))
            if (item.kind() == kind || sealed && (item.kind() == Kind.OPENING || item.kind() == Kind.WALL))
                names.add(item.id());
        return names;
    }

    /** A name that is free, made from a stem and a number, such as "T3". */
    static String free(Scenario scenario, Kind kind, String stem) {
        Set<String> taken = taken(scenario, kind);
        int n = 1;
        while (taken.contains(stem + n)) n++;
        return stem + n;
    }

    /** A free name for a copy of something: its own with the next number. */
    static String freeAfter(Scenario scenario, Kind kind, String id) {
        String stem = id.replaceFirst("\\d+$", "");
        return stem.equals(id) && taken(scenario, kind).contains(id)
                ? free(scenario, kind, id + " ")
                : taken(scenario, kind).contains(id) ? free(scenario, kind, stem) : id;
    }
}
