package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import slabfield.desktop.drawing.Edits;
import slabfield.desktop.drawing.Form;
import slabfield.desktop.drawing.Frame;
import slabfield.desktop.drawing.Hit;
import slabfield.desktop.drawing.Item;
import slabfield.desktop.drawing.Items;
import slabfield.desktop.drawing.Kind;
import slabfield.desktop.drawing.Places;
import slabfield.desktop.drawing.Snap;
import slabfield.desktop.drawing.Snapper;
import slabfield.model.Point;
import slabfield.model.Scenario;

/** Choosing and moving things with the pointer. One press to release is one step of the history. */
final class Selecting {
    private enum Doing {
        NOTHING,
        PRESSED,
        MOVING,
        FRAMING,
        SUCTION
    }

    private final Document document;
    private final Solving solving;
    private final Selection selection;
    private final SuctionMoves suctions;
    private final Layers layers;
    private final Units units;
    private Doing doing = Doing.NOTHING;
    private Pointer start;
    private Point end;
    private Hit grip;
    private Scenario before;
    private Snapper snapper;
    private Optional<Snap> snap = Optional.empty();
    private String gesture = "";
    private List<Item> under = List.of();

    Selecting(
            Document document,
            Solving solving,
            Selection selection,
            SuctionMoves suctions,
            Layers layers,
            Units units) {
        this.document = document;
        this.solving = solving;
        this.selection = selection;
        this.suctions = suctions;
        this.layers = layers;
        this.units = units;
    }

    /** What a press would take hold of. */
    Optional<Hit> hover(Pointer p) {
        Optional<Hit> held = selection
                .single()
                .filter(i -> layers.open().contains(i.kind().layer()))
                .flatMap(i -> Hit.grip(document.scenario().get(), i, p.at(), p.reach()));
        return held.isPresent()
                ? held
                : Hit.all(document.scenario().get(), layers.open(), p.at(), p.reach()).stream()
                        .findFirst();
    }

    void press(Pointer p) {
        start = p;
        end = p.at();
        before = document.scenario().get();
        Optional<Hit> hit = hover(p);
        under = Hit.all(before, layers.open(), p.at(), p.reach()).stream()
                .map(Hit::item)
                .distinct()
                .toList();
        if (hit.isEmpty()) {
            doing = Doing.FRAMING;
            if (!p.add()) selection.clear();
            return;
        }
        grip = hit.get();
        if (p.add()) {
            selection.toggle(grip.item());
            doing = Doing.NOTHING;
            return;
        }
        boolean ground = grip.item().kind() == Kind.SLAB && grip.part() == Hit.Part.BODY && !selection.has(grip.item());
        if (!selection.has(grip.item())) {
            selection.set(List.of(grip.item()));
            grip = new Hit(grip.item(), Hit.Part.BODY, 0);
        }
        doing = ground ? Doing.FRAMING : Doing.PRESSED;
    }

    void drag(Pointer p) {
        end = p.at();
        if (doing == Doing.PRESSED && p.at().distanceTo(start.at()) > p.reach() / 3) begin();
        if (doing == Doing.SUCTION) suctions.dragTo(p.at());
        if (doing == Doing.MOVING) move(p);
    }

    private void begin() {
        gesture = selection.gesture();
        List<Item> chosen = selection.items().get();
        if (chosen.size() == 1 && grip.item().kind() == Kind.SUCTION) {
            doing = Doing.SUCTION;
            suctions.begin(grip.item().id());
            return;
        }
        doing = Doing.MOVING;
        List<Item> moved = new ArrayList<>(chosen);
        snapper = new Snapper(before, moved, layers.shown().get(), units.grid(start.reach()));
        solving.dragging().set(true);
    }

    private void move(Pointer p) {
        Form form = Items.form(before, grip.item()).orElseThrow();
        boolean single = selection.items().get().size() == 1;
        Hit.Part part = single ? grip.part() : Hit.Part.BODY;
        Point anchor = part == Hit.Part.CORNER ? form.points().get(grip.index()) : nearest(form);
        Point wanted = Places.moved(
                anchor, p.at().x() - start.at().x(), p.at().y() - start.at().y());
        Snap found = p.free() ? Snap.free(wanted) : snapper.snap(wanted, neighbour(form, part), p.reach());
        snap = Optional.of(found);
        double dx = found.at().x() - anchor.x(), dy = found.at().y() - anchor.y();
        List<Item> moved = selection.items().get();
        Scenario from = before;
        Item item = grip.item();
        int index = grip.index();
        boolean wholeLine = part == Hit.Part.EDGE && form.shape() != Form.Shape.AREA;
        Edit edit = Edit.merging("move " + selection.words(), gesture, s -> switch (wholeLine ? Hit.Part.BODY : part) {
            case CORNER -> Edits.moveCorner(from, item, index, found.at());
            case EDGE -> Edits.moveEdge(from, item, index, dx, dy);
            case BODY -> Edits.move(from, moved, dx, dy);
        });
        document.edit(edit);
    }

    private Point nearest(Form form) {
        return form.points().stream()
                .min(Comparator.comparingDouble(q -> q.distanceTo(start.at())))
                .orElseThrow();
    }

    /** The corner before the one that is dragged, so that it can be drawn straight. */
    private Optional<Point> neighbour(Form form, Hit.Part part) {
        if (part != Hit.Part.CORNER || form.points().size() < 2) return Optional.empty();
        int before = grip.index() == 0 ? (form.isRing() ? form.points().size() - 1 : 1) : grip.index() - 1;
        return Optional.of(form.points().get(before));
    }

    void release(Pointer p) {
        if (doing == Doing.FRAMING && p.at().distanceTo(start.at()) > p.reach() / 3) frame(p);
        if (doing == Doing.SUCTION) suctions.end();
        if (doing == Doing.MOVING) solving.dragging().set(false);
        stop();
    }

    private void frame(Pointer p) {
        Frame frame = Frame.about(List.of(start.at(), p.at()));
        boolean inside = p.at().x() >= start.at().x();
        List<Item> chosen = new ArrayList<>(p.add() ? selection.items().get() : List.of());
        for (Item item : Items.all(before))
            if (layers.open().contains(item.kind().layer()) && item.kind() != Kind.UNDERLAY)
                Items.form(before, item)
                        .filter(f -> inside ? frame.holds(f) : frame.touches(f))
                        .ifPresent(f -> chosen.add(item));
        selection.set(chosen);
    }

    /** Takes back what is under way. */
    void cancel() {
        Scenario was = before;
        if (doing == Doing.MOVING) {
            document.edit(Edit.merging("move " + selection.words(), gesture, s -> was));
            solving.dragging().set(false);
        }
        if (doing == Doing.SUCTION) suctions.end();
        stop();
    }

    private void stop() {
        doing = Doing.NOTHING;
        snap = Optional.empty();
    }

    /** Chooses the next of the things that lay under the last press. */
    boolean cycle() {
        if (under.size() < 2 || selection.single().isEmpty()) return false;
        selection.set(List.of(under.get((under.indexOf(selection.single().get()) + 1) % under.size())));
        return true;
    }

    /** Adds a corner where an edge of the chosen thing was pressed. */
    boolean split(Pointer p) {
        Optional<Hit> edge = selection
                .single()
                .flatMap(i -> Hit.grip(document.scenario().get(), i, p.at(), p.reach()))
                .filter(h -> h.part() == Hit.Part.EDGE);
        edge.ifPresent(h -> document.edit(Edit.of("add a corner to " + h.item().title(), s -> {
            Form form = Items.form(s, h.item()).orElseThrow();
            return Edits.splitEdge(
                    s, h.item(), h.index(), Places.nearest(p.at(), form.from(h.index()), form.to(h.index())));
        })));
        return edge.isPresent();
    }

    /** Takes the corner away that was pressed. */
    boolean deleteCorner(Pointer p) {
        Optional<Hit> corner = selection
                .single()
                .flatMap(i -> Hit.grip(document.scenario().get(), i, p.at(), p.reach()))
                .filter(h -> h.part() == Hit.Part.CORNER);
        corner.ifPresent(h -> document.edit(
                Edit.of("delete a corner of " + h.item().title(), s -> Edits.deleteCorner(s, h.item(), h.index()))));
        return corner.isPresent();
    }

    Sketch sketch() {
        if (doing == Doing.FRAMING)
            return new Sketch(Places.rectangle(start.at(), end), true, true, Optional.empty(), "");
        if (doing != Doing.MOVING || snap.isEmpty()) return Sketch.NONE;
        return new Sketch(
                List.of(snap.get().at()),
                false,
                false,
                snap,
                units.place(snap.get().at()));
    }
}
