package slabfield.desktop.viewmodel;

import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.ObjectBinding;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import slabfield.figure.MapStyle;
import slabfield.figure.VacuumMap;
import slabfield.figure.VacuumScale.Law;
import slabfield.figure.VacuumScale.Range;
import slabfield.figure.VacuumScale.Sense;

/** How the map is drawn. */
public final class MapLook {
    /** Width and height of what a finger can hit, common practice for touch screens [pixels]. */
    public static final double TARGET = 44;

    private static final double MOUSE_REACH = 9;
    private static final double PRESENTED = 1.5;

    private final Units units;
    private final ObjectProperty<Sense> sense = new SimpleObjectProperty<>(Sense.SIGNED);
    private final ObjectProperty<Law> law = new SimpleObjectProperty<>(Law.SQUARE_ROOT);
    private final ReadOnlyObjectWrapper<Optional<Range>> locked = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final BooleanProperty isolines = new SimpleBooleanProperty(true);
    private final BooleanProperty labels = new SimpleBooleanProperty(true);
    private final BooleanProperty hatch = new SimpleBooleanProperty(true);
    private final BooleanProperty greys = new SimpleBooleanProperty();
    private final BooleanProperty largeTargets = new SimpleBooleanProperty();
    private final BooleanProperty presentation = new SimpleBooleanProperty();
    private final ObjectBinding<MapStyle> style;

    public MapLook(Units units) {
        this.units = units;
        style = Bindings.createObjectBinding(
                this::current, units.shown(), sense, law, locked, isolines, labels, hatch, greys, presentation);
    }

    /** Both signs, or vacuum alone. */
    public ObjectProperty<Sense> sense() {
        return sense;
    }

    /** How colour follows pressure. */
    public ObjectProperty<Law> law() {
        return law;
    }

    /** The range held fixed, so that designs can be compared; empty where it follows each prediction. */
    public ReadOnlyObjectProperty<Optional<Range>> locked() {
        return locked.getReadOnlyProperty();
    }

    /** Holds the range that a prediction is shown with. */
    public void lock(Solving.Picture picture) {
        picture.solved()
                .ifPresent(s ->
                        locked.set(Optional.of(VacuumMap.scale(s, style.get()).range())));
    }

    /** Lets the range follow each prediction again. */
    public void unlock() {
        locked.set(Optional.empty());
    }

    public BooleanProperty isolines() {
        return isolines;
    }

    public BooleanProperty labels() {
        return labels;
    }

    /** Lines across the part that misses the target. */
    public BooleanProperty hatch() {
        return hatch;
    }

    /** Greys alone, as on a printer without colour. */
    public BooleanProperty greys() {
        return greys;
    }

    /** Everything larger, to be seen from the back of a room. */
    public BooleanProperty presentation() {
        return presentation;
    }

    /** Whatever is pressed or dragged is at least {@link #TARGET} wide and high; the type stays as it is. */
    public BooleanProperty largeTargets() {
        return largeTargets;
    }

    /**
     * How near to a thing on the map counts as on it [pixels].
     *
     * @param finger true where a finger points, not a mouse
     */
    public double reach(boolean finger) {
        return finger || presentation.get() || largeTargets.get() ? TARGET / 2 : MOUSE_REACH;
    }

    public ObjectBinding<MapStyle> style() {
        return style;
    }

    private MapStyle current() {
        MapStyle plain = MapStyle.of(units.shown().get())
                .with(sense.get(), law.get())
                .showing(isolines.get(), labels.get(), hatch.get())
                .withMonochrome(greys.get())
                .withFontScale(presentation.get() ? PRESENTED : 1);
        return locked.get().map(plain::with).orElse(plain);
    }
}
