package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import slabfield.desktop.drawing.Edits;
import slabfield.desktop.drawing.Form;
import slabfield.desktop.drawing.Item;
import slabfield.desktop.drawing.Items;
import slabfield.desktop.drawing.Kind;
import slabfield.model.Point;
import slabfield.model.Scenario;

/** The drawn things that are chosen, and what can be done with all of them at once. */
public final class Selection {
    /** How far beside the original a copy appears [m]. */
    private static final double BESIDE = 0.5;

    private static final int MOST_DIMENSIONS = 16;

    /**
     * A measure of the chosen thing that can be clicked and changed.
     *
     * @param edge which straight piece of it
     * @param length [m]
     */
    public record Dimension(Item item, int edge, Point from, Point to, double length) {}

    private record Clip(Scenario scenario, List<Item> items, int pasted) {}

    private final Document document;
    private final ReadOnlyObjectWrapper<List<Item>> items = new ReadOnlyObjectWrapper<>(List.of());
    private Optional<Clip> clip = Optional.empty();
    private long gestures;

    Selection(Document document) {
        this.document = document;
        document.scenario()
                .addListener((o, was, is) -> set(items.get().stream()
                        .filter(i -> Items.form(is, i).isPresent())
                        .toList()));
        document.opened().addListener((o, was, is) -> set(List.of()));
    }

    /** What is chosen, in the order of choosing. */
    public ReadOnlyObjectProperty<List<Item>> items() {
        return items.getReadOnlyProperty();
    }

    /** The one thing that is chosen; empty where there are none or several. */
    public Optional<Item> single() {
        return items.get().size() == 1 ? Optional.of(items.get().get(0)) : Optional.empty();
    }

    public void set(Collection<Item> chosen) {
        List<Item> others = List.copyOf(new LinkedHashSet<>(chosen));
        if (!others.equals(items.get())) items.set(others);
    }

    public void clear() {
        set(List.of());
    }

    /** Chooses a thing too, or no longer. */
    public void toggle(Item item) {
        List<Item> others = new ArrayList<>(items.get());
        if (!others.remove(item)) others.add(item);
        set(others);
    }

    public boolean has(Item item) {
        return items.get().contains(item);
    }

    /** Chooses everything on the layers that can be changed. */
    void all(Set<slabfield.desktop.drawing.Layer> layers) {
        set(Items.all(scenario()).stream()
                .filter(i -> layers.contains(i.kind().layer()) && !i.kind().isPart())
                .toList());
    }

    public void delete() {
        List<Item> gone = items.get();
        if (!gone.isEmpty()) document.edit(Edit.of("delete " + words(), s -> Edits.remove(s, gone)));
    }

    /** Moves what is chosen; many nudges in a row of the same things are one step. */
    public void nudge(double dx, double dy) {
        List<Item> moved = items.get();
        if (!moved.isEmpty())
            document.edit(Edit.merging("move " + words(), "nudge " + moved, s -> Edits.move(s, moved, dx, dy)));
    }

    public void copy() {
        if (!items.get().isEmpty()) clip = Optional.of(new Clip(scenario(), items.get(), 0));
    }

    public void cut() {
        copy();
        delete();
    }

    /** Puts a copy of what was copied last beside it, further on each time, and chooses it. */
    public void paste() {
        if (clip.isEmpty()) return;
        Clip c = clip.get();
        clip = Optional.of(new Clip(c.scenario(), c.items(), c.pasted() + 1));
        put(c.scenario(), c.items(), BESIDE * (c.pasted() + 1), "paste ");
    }

    /** Copies what is chosen beside it. */
    public void duplicate() {
        if (!items.get().isEmpty()) put(scenario(), items.get(), BESIDE, "duplicate ");
    }

    private void put(Scenario from, List<Item> copied, double beside, String verb) {
        Edits.Pasted pasted = Edits.paste(from, copied, scenario(), beside, -beside);
        document.edit(Edit.of(verb + words(copied), s -> pasted.scenario()));
        set(pasted.items());
    }

    /** Measures of the one chosen thing, edge by edge; none where they would crowd the plan. */
    public List<Dimension> dimensions() {
        Optional<Form> form = single().filter(i -> i.kind() != Kind.UNDERLAY).flatMap(i -> Items.form(scenario(), i));
        if (form.isEmpty() || form.get().fixed() || form.get().edges() > MOST_DIMENSIONS) return List.of();
        List<Dimension> dimensions = new ArrayList<>();
        for (int edge = 0; edge < form.get().edges(); edge++) {
            Point a = form.get().from(edge), b = form.get().to(edge);
            dimensions.add(new Dimension(single().get(), edge, a, b, a.distanceTo(b)));
        }
        return dimensions;
    }

    /** Gives an edge another length. */
    void change(Dimension dimension, double length) {
        document.edit(Edit.of(
                "change a length of " + dimension.item().title(),
                s -> Edits.setLength(s, dimension.item(), dimension.edge(), length)));
    }

    /** A key under which all edits of one gesture become one step. */
    String gesture() {
        return "gesture " + ++gestures;
    }

    String words() {
        return words(items.get());
    }

    private static String words(List<Item> items) {
        return items.size() == 1 ? items.get(0).title() : items.size() + " things";
    }

    private Scenario scenario() {
        return document.scenario().get();
    }
}
