package slabfield.desktop.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import slabfield.model.Barrier;
import slabfield.model.DrainTile;
import slabfield.model.Gap;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Slab;

/**
 * The parts of one kind that things of a family have.
 *
 * @param kind what the parts are
 * @param owners what they are parts of
 * @param parts of one owner
 * @param put an owner with other parts
 * @param form how one lies on the plan
 * @param reshaped one of an owner at other points
 */
record Parts<T, P>(
        Kind kind,
        Family<T> owners,
        Function<T, List<P>> parts,
        BiFunction<T, List<P>, T> put,
        Function<P, Form> form,
        Reshape<T, P> reshaped) {

    /** Makes a part at other points. */
    interface Reshape<T, P> {
        P at(T owner, P part, List<Point> points);
    }

    static final Parts<Slab, List<Point>> CUT_OUTS = new Parts<>(
            Kind.CUT_OUT,
            Families.SLABS,
            Slab::holes,
            (s, holes) -> new Slab(s.id(), s.outline(), holes, s.thickness(), s.treated()),
            Form::area,
            (slab, hole, points) -> points);

    static final Parts<Barrier, Gap> GAPS = new Parts<>(
            Kind.GAP,
            Families.BARRIERS,
            Barrier::gaps,
            (b, gaps) -> new Barrier(b.id(), b.path(), b.width(), b.permeability(), b.known(), gaps),
            Parts::spot,
            (b, gap, points) -> Families.on(b.path(), points.get(0), gap.length()));

    static final Parts<DrainTile, Gap> BREAKS = new Parts<>(
            Kind.TILE_BREAK,
            Families.TILES,
            DrainTile::breaks,
            (t, gaps) -> with(t, gaps, t.waterFilled()),
            Parts::spot,
            (t, gap, points) -> Families.on(t.path(), points.get(0), gap.length()));

    static final Parts<DrainTile, Gap> WATER = new Parts<>(
            Kind.WATER,
            Families.TILES,
            DrainTile::waterFilled,
            (t, gaps) -> with(t, t.breaks(), gaps),
            Parts::spot,
            (t, gap, points) -> Families.on(t.path(), points.get(0), gap.length()));

    static final List<Parts<?, ?>> ALL = List.of(CUT_OUTS, GAPS, BREAKS, WATER);

    static Optional<Parts<?, ?>> of(Kind kind) {
        for (Parts<?, ?> parts : ALL) if (parts.kind() == kind) return Optional.of(parts);
        return Optional.empty();
    }

    private static DrainTile with(DrainTile t, List<Gap> breaks, List<Gap> water) {
        return new DrainTile(t.id(), t.path(), t.diameter(), t.manning(), t.slotArea(), breaks, water, t.sump());
    }

    private static Form spot(Gap gap) {
        return Form.spot(gap.at(), gap.length() / 2);
    }

    List<Item> items(Scenario scenario) {
        List<Item> items = new ArrayList<>();
        for (T owner : owners.list().apply(scenario))
            for (int i = 0; i < parts.apply(owner).size(); i++)
                items.add(new Item(kind, owners.name().apply(owner), i));
        return items;
    }

    Optional<P> find(Scenario scenario, Item item) {
        return owners.of(scenario, item.id())
                .findFirst()
                .map(parts)
                .filter(all -> item.part() < all.size())
                .map(all -> all.get(item.part()));
    }

    Optional<Form> form(Scenario scenario, Item item) {
        return find(scenario, item).map(form);
    }

    Scenario reshape(Scenario scenario, Item item, List<Point> points) {
        return owners.change(scenario, item.id(), owner -> {
            List<P> all = new ArrayList<>(parts.apply(owner));
            all.set(item.part(), reshaped.at(owner, all.get(item.part()), points));
            return put.apply(owner, all);
        });
    }

    Scenario without(Scenario scenario, Item item) {
        return owners.change(scenario, item.id(), owner -> {
            List<P> all = new ArrayList<>(parts.apply(owner));
            all.remove(item.part());
            return put.apply(owner, all);
        });
    }

    Scenario with(Scenario scenario, String owner, P another) {
        return owners.change(scenario, owner, o -> {
            List<P> all = new ArrayList<>(parts.apply(o));
            all.add(another);
            return put.apply(o, all);
        });
    }

    /** A copy beside one of the same scenario. */
    Scenario copy(Scenario scenario, Item item, double dx, double dy) {
        return find(scenario, item)
                .map(p -> reshape(
                        with(scenario, item.id(), p),
                        new Item(
                                kind,
                                item.id(),
                                owners.of(scenario, item.id())
                                        .findFirst()
                                        .map(parts)
                                        .orElseThrow()
                                        .size()),
                        Places.moved(form.apply(p).points(), dx, dy)))
                .orElse(scenario);
    }
}
