package slabfield.desktop.viewmodel;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleDoubleProperty;
import slabfield.desktop.drawing.Edits;
import slabfield.desktop.drawing.Item;
import slabfield.desktop.drawing.Items;
import slabfield.desktop.drawing.Layer;
import slabfield.model.Scenario;

/** Which sheets of the drawing are shown, and which are locked so that nothing on them is changed by the pointer. */
public final class Layers {
    private final ReadOnlyObjectWrapper<Set<Layer>> shown = new ReadOnlyObjectWrapper<>(Set.of(Layer.values()));
    private final ReadOnlyObjectWrapper<Set<Layer>> locked = new ReadOnlyObjectWrapper<>(Set.of());
    private final DoubleProperty pictureOpacity = new SimpleDoubleProperty(0.5);

    public ReadOnlyObjectProperty<Set<Layer>> shown() {
        return shown.getReadOnlyProperty();
    }

    public ReadOnlyObjectProperty<Set<Layer>> locked() {
        return locked.getReadOnlyProperty();
    }

    /** How strongly the picture to trace shows, 0 to 1. */
    public DoubleProperty pictureOpacity() {
        return pictureOpacity;
    }

    public void show(Layer layer, boolean whether) {
        shown.set(with(shown.get(), layer, whether));
    }

    public void lock(Layer layer, boolean whether) {
        locked.set(with(locked.get(), layer, whether));
    }

    /** Layers on which the pointer finds things. */
    Set<Layer> open() {
        return shown.get().stream().filter(l -> !locked.get().contains(l)).collect(Collectors.toUnmodifiableSet());
    }

    /** A scenario with what is on the shown layers alone; slabs stay, since all else lies on them. */
    public Scenario visible(Scenario scenario) {
        List<Item> hidden = Items.all(scenario).stream()
                .filter(i -> i.kind().layer() != Layer.SLABS
                        && i.kind().layer() != Layer.UNDERLAY
                        && !shown.get().contains(i.kind().layer()))
                .toList();
        return hidden.isEmpty() ? scenario : Edits.remove(scenario, hidden);
    }

    private static Set<Layer> with(Set<Layer> layers, Layer layer, boolean whether) {
        EnumSet<Layer> other = EnumSet.noneOf(Layer.class);
        other.addAll(layers);
        if (whether) other.add(layer);
        else other.remove(layer);
        return Set.copyOf(other);
    }
}
