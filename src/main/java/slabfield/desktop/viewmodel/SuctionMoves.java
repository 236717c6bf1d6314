package slabfield.desktop.viewmodel;

import java.util.List;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.SuctionPoint;

/** Moves suction points: a drag, the arrow keys, or a place that is typed. One gesture is one step of the history. */
public final class SuctionMoves {
    private final Document document;
    private final Solving solving;
    private final Units units;
    private final ObjectProperty<Optional<String>> selected = new SimpleObjectProperty<>(Optional.empty());
    private Optional<FreeGround> ground = Optional.empty();
    private long gestures;

    public SuctionMoves(Document document, Solving solving, Units units) {
        this.document = document;
        this.solving = solving;
        this.units = units;
        document.scenario().addListener((o, was, is) -> {
            if (selected.get().flatMap(is::suctionPoint).isEmpty()) selected.set(Optional.empty());
        });
    }

    /** Id of the point that the arrow keys move; empty where they move the probe. */
    public ObjectProperty<Optional<String>> selected() {
        return selected;
    }

    /** Selects the point after the selected one; after the last, none. */
    public void selectNext() {
        List<String> ids = document.scenario().get().suctionPoints().stream()
                .map(SuctionPoint::id)
                .toList();
        int next = selected.get().map(ids::indexOf).orElse(-1) + 1;
        selected.set(next < ids.size() ? Optional.of(ids.get(next)) : Optional.empty());
    }

    /** A drag of a point begins. */
    public void begin(String id) {
        selected.set(Optional.of(id));
        gestures++;
        ground = ground(id);
        solving.dragging().set(true);
    }

    /** The dragged point goes to a place, or to the nearest one where it can stand. */
    public void dragTo(Point wanted) {
        if (ground.isEmpty() || selected.get().isEmpty()) return;
        move(selected.get().get(), ground.get().nearest(wanted), "drag " + gestures);
    }

    /** The drag ends where the point is. */
    public void end() {
        ground = Optional.empty();
        solving.dragging().set(false);
    }

    /** Moves the selected point by some steps of its raster. */
    public void nudge(int right, int up) {
        selected.get().flatMap(id -> document.scenario().get().suctionPoint(id)).ifPresent(p -> {
            Point wanted = new Point(p.at().x() + right * units.step(), p.at().y() + up * units.step());
            ground(p.id()).ifPresent(g -> move(p.id(), g.nearest(wanted), "nudge " + p.id()));
        });
    }

    /** Puts a point at a place, or at the nearest one where it can stand. */
    public void put(String id, Point wanted) {
        gestures++;
        ground(id).ifPresent(g -> move(id, g.nearest(wanted), "put " + gestures));
    }

    private Optional<FreeGround> ground(String id) {
        Scenario scenario = document.scenario().get();
        return scenario.suctionPoint(id).map(p -> new FreeGround(scenario, p, units.step()));
    }

    private void move(String id, Point to, String mergeKey) {
        document.edit(Edit.merging("move " + id, mergeKey, s -> s.withSuctionPoint(id, p -> p.movedTo(to))));
    }
}
