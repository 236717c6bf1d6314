package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import slabfield.desktop.drawing.Edits;
import slabfield.desktop.drawing.Form;
import slabfield.desktop.drawing.Frame;
import slabfield.desktop.drawing.Item;
import slabfield.desktop.drawing.Items;
import slabfield.desktop.drawing.Kind;
import slabfield.desktop.drawing.Naming;
import slabfield.desktop.drawing.Typed;
import slabfield.model.Barrier;
import slabfield.model.BlockWall;
import slabfield.model.DrainTile;
import slabfield.model.Gap;
import slabfield.model.NoDrillArea;
import slabfield.model.Opening;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Slab;
import slabfield.model.TestHole;
import slabfield.model.Underlay;
import slabfield.quantity.Dimension;
import slabfield.quantity.Quantity;

/** The properties of one drawn thing, in the units shown. */
final class Properties {
    private static final String LENGTH = "A length, such as 12'6 1/2\" or 3.8 m; a number alone has the unit shown.";
    private static final List<String> YES_NO = List.of("yes", "no");

    private final Scenario scenario;
    private final Item item;
    private final Units units;
    private final List<Property> list = new ArrayList<>();

    private Properties(Scenario scenario, Item item, Units units) {
        this.scenario = scenario;
        this.item = item;
        this.units = units;
    }

    static List<Property> of(Scenario scenario, Item item, Units units) {
        Properties properties = new Properties(scenario, item, units);
        properties.fill();
        return properties.list;
    }

    private void fill() {
        if (!item.kind().isPart() && item.kind() != Kind.UNDERLAY)
            text(Inspector.NAME, "What you call it.", item.id(), (s, text) -> Naming.rename(s, item, text));
        switch (item.kind()) {
            case SLAB -> slab(find(scenario.slabs(), Slab::id));
            case ZONE -> list.addAll(FillProperties.ofZone(scenario, item.id(), units));
            case BARRIER -> barrier(find(scenario.barriers(), Barrier::id));
            case TILE -> tile(find(scenario.drainTiles(), DrainTile::id));
            case WALL -> wall(find(scenario.blockWalls(), BlockWall::id));
            case OPENING -> list.addAll(OpeningProperties.of(scenario, item.id(), units));
            case SUCTION -> list.addAll(SuctionProperties.of(scenario, item.id(), units));
            case HOLE -> hole(find(scenario.testHoles(), TestHole::id));
            case NO_DRILL -> noDrill(find(scenario.plan().noDrillAreas(), NoDrillArea::id));
            case UNDERLAY -> picture(scenario.plan().underlay().orElseThrow());
            case GAP -> gap(find(scenario.barriers(), Barrier::id).gaps(), this::barrierGap);
            case TILE_BREAK -> gap(find(scenario.drainTiles(), DrainTile::id).breaks(), this::tileBreak);
            case WATER -> gap(find(scenario.drainTiles(), DrainTile::id).waterFilled(), this::water);
            case CUT_OUT -> {}
        }
        place();
    }

    private <T> T find(List<T> things, Function<T, String> id) {
        return things.stream()
                .filter(t -> id.apply(t).equals(item.id()))
                .findFirst()
                .orElseThrow();
    }

    static <T> List<T> with(List<T> things, Function<T, String> id, String which, UnaryOperator<T> change) {
        return things.stream()
                .map(t -> id.apply(t).equals(which) ? change.apply(t) : t)
                .toList();
    }

    private void text(String label, String help, String value, Property.Change change) {
        list.add(new Property(label, help, List.of(), value, change));
    }

    private void choice(String label, String help, List<String> words, String value, Property.Change change) {
        list.add(new Property(label, help, words, value, change));
    }

    private void length(String label, double value, BiFunction<Scenario, Double, Scenario> change) {
        text(label, LENGTH, units.length(value), (s, text) -> change.apply(s, length(text)));
    }

    private double length(String text) {
        return Typed.length(text, units.length().get());
    }

    /** Where the thing lies: its place, or the frame about it. */
    private void place() {
        Form form = Items.form(scenario, item).orElseThrow();
        if (form.fixed()) return;
        Frame f = Frame.about(form.points());
        length("x", f.left(), (s, x) -> Edits.setFrame(s, item, new Frame(x, f.low(), x + f.width(), f.high())));
        length("y", f.low(), (s, y) -> Edits.setFrame(s, item, new Frame(f.left(), y, f.right(), y + f.depth())));
        if (form.shape() == Form.Shape.SPOT) return;
        if (f.width() > 0)
            length(
                    "Width",
                    f.width(),
                    (s, w) -> Edits.setFrame(s, item, new Frame(f.left(), f.low(), f.left() + above(w), f.high())));
        if (f.depth() > 0)
            length(
                    "Depth",
                    f.depth(),
                    (s, d) -> Edits.setFrame(s, item, new Frame(f.left(), f.low(), f.right(), f.low() + above(d))));
    }

    private static double above(double size) {
        if (!(size > 0)) throw new IllegalArgumentException("A size must be above 0.");
        return size;
    }

    private void slab(Slab slab) {
        length(
                "Thickness",
                slab.thickness(),
                (s, t) -> s.withSlabs(with(
                        s.slabs(),
                        Slab::id,
                        slab.id(),
                        b -> new Slab(b.id(), b.outline(), b.holes(), t, b.treated()))));
        choice(
                "To be treated",
                "Whether this slab must meet the target.",
                YES_NO,
                yes(slab.treated()),
                (s, word) -> s.withSlabs(with(
                        s.slabs(),
                        Slab::id,
                        slab.id(),
                        b -> new Slab(b.id(), b.outline(), b.holes(), b.thickness(), word.equals("yes")))));
    }

    private void barrier(Barrier barrier) {
        length(
                "Thickness",
                barrier.width(),
                (s, w) -> barriers(s, b -> new Barrier(b.id(), b.path(), w, b.permeability(), b.known(), b.gaps())));
        choice(
                "Known",
                "A suspected barrier is drawn with dots.",
                List.of("known", "suspected"),
                barrier.known() ? "known" : "suspected",
                (s, word) -> barriers(
                        s,
                        b -> new Barrier(
                                b.id(), b.path(), b.width(), b.permeability(), word.equals("known"), b.gaps())));
        text(
                "Permeability",
                "0 where no air passes; else with its unit, such as 1e-12 m2.",
                barrier.permeability() == 0
                        ? "0"
                        : Quantity.format(
                                barrier.permeability(),
                                slabfield.quantity.Unit.find("m2", Dimension.PERMEABILITY)
                                        .orElseThrow(),
                                3),
                (s, text) -> barriers(
                        s,
                        b -> new Barrier(
                                b.id(),
                                b.path(),
                                b.width(),
                                text.strip().equals("0") ? 0 : Quantity.parse(text, Dimension.PERMEABILITY),
                                b.known(),
                                b.gaps())));
    }

    private Scenario barriers(Scenario s, UnaryOperator<Barrier> change) {
        return s.withBarriers(with(s.barriers(), Barrier::id, item.id(), change));
    }

    private void tile(DrainTile tile) {
        length(
                "Diameter",
                tile.diameter(),
                (s, d) -> tiles(
                        s,
                        t -> new DrainTile(
                                t.id(),
                                t.path(),
                                d,
                                t.manning(),
                                t.slotArea(),
                                t.breaks(),
                                t.waterFilled(),
                                t.sump())));
        List<String> sumps = new ArrayList<>(List.of("none"));
        scenario.openings().stream()
                .filter(o -> o.place() instanceof Opening.Spot)
                .map(Opening::id)
                .forEach(sumps::add);
        choice(
                "Ends in",
                "The sump that it runs to.",
                sumps,
                tile.sump().orElse("none"),
                (s, word) -> tiles(
                        s,
                        t -> new DrainTile(
                                t.id(),
                                t.path(),
                                t.diameter(),
                                t.manning(),
                                t.slotArea(),
                                t.breaks(),
                                t.waterFilled(),
                                word.equals("none") ? java.util.Optional.empty() : java.util.Optional.of(word))));
    }

    private Scenario tiles(Scenario s, UnaryOperator<DrainTile> change) {
        return s.withDrainTiles(with(s.drainTiles(), DrainTile::id, item.id(), change));
    }

    private void wall(BlockWall wall) {
        length(
                "Height",
                wall.height(),
                (s, h) -> s.withBlockWalls(with(
                        s.blockWalls(),
                        BlockWall::id,
                        item.id(),
                        w -> new BlockWall(
                                w.id(),
                                w.path(),
                                h,
                                w.tops(),
                                w.topArea(),
                                w.joint(),
                                w.faceToRoom(),
                                w.faceToOutdoors(),
                                w.along(),
                                w.joinsAtCorners(),
                                w.tile()))));
        choice(
                "Block tops",
                "Whether the hollow cores are closed at the top.",
                states(),
                wall.tops().state().word(),
                (s, word) -> s.withTops(item.id(), Seal.of(state(word))));
    }

    static List<String> states() {
        return Arrays.stream(SealState.values()).map(SealState::word).toList();
    }

    static SealState state(String word) {
        return Arrays.stream(SealState.values())
                .filter(s -> s.word().equals(word))
                .findFirst()
                .orElseThrow();
    }

    private void hole(TestHole hole) {
        text(
                "Found",
                "What the drill met: gravel, sand, clay, water ...",
                hole.found(),
                (s, text) -> s.withTestHoles(
                        with(s.testHoles(), TestHole::id, item.id(), h -> new TestHole(h.id(), h.at(), text))));
    }

    private void noDrill(NoDrillArea area) {
        text(
                "Reason",
                "Why nothing may be cored here.",
                area.reason(),
                (s, text) -> s.withPlan(s.plan()
                        .withNoDrillAreas(with(
                                s.plan().noDrillAreas(),
                                NoDrillArea::id,
                                item.id(),
                                a -> new NoDrillArea(a.id(), a.outline(), text)))));
    }

    private void picture(Underlay picture) {
        text("Turned", "Degrees counter-clockwise.", Double.toString(picture.turned()), (s, text) -> {
            double degrees = Math.toDegrees(Typed.angle(text));
            return s.withPlan(s.plan()
                    .withUnderlay(
                            s.plan().underlay().map(u -> new Underlay(u.picture(), u.corner(), u.pixel(), degrees))));
        });
    }

    private void gap(List<Gap> gaps, BiFunction<Scenario, Gap, Scenario> put) {
        Gap gap = gaps.get(item.part());
        length("Length", gap.length(), (s, l) -> put.apply(s, new Gap(gap.at(), above(l))));
    }

    private List<Gap> put(List<Gap> gaps, Gap gap) {
        List<Gap> others = new ArrayList<>(gaps);
        others.set(item.part(), gap);
        return others;
    }

    private Scenario barrierGap(Scenario s, Gap gap) {
        return barriers(
                s, b -> new Barrier(b.id(), b.path(), b.width(), b.permeability(), b.known(), put(b.gaps(), gap)));
    }

    private Scenario tileBreak(Scenario s, Gap gap) {
        return tiles(
                s,
                t -> new DrainTile(
                        t.id(),
                        t.path(),
                        t.diameter(),
                        t.manning(),
                        t.slotArea(),
                        put(t.breaks(), gap),
                        t.waterFilled(),
                        t.sump()));
    }

    private Scenario water(Scenario s, Gap gap) {
        return tiles(
                s,
                t -> new DrainTile(
                        t.id(),
                        t.path(),
                        t.diameter(),
                        t.manning(),
                        t.slotArea(),
                        t.breaks(),
                        put(t.waterFilled(), gap),
                        t.sump()));
    }

    private static String yes(boolean is) {
        return is ? "yes" : "no";
    }
}
