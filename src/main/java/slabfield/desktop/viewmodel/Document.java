package slabfield.desktop.viewmodel;

import java.nio.file.Path;
import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import slabfield.model.Point;
import slabfield.model.Scenario;

/** The one scenario that is open. Only an {@link Edit}, undo and redo change it. */
public final class Document {
    private final ReadOnlyObjectWrapper<Scenario> scenario;
    private final ReadOnlyObjectWrapper<Pins> pins = new ReadOnlyObjectWrapper<>(Pins.NONE);
    private final ReadOnlyObjectWrapper<Optional<Path>> file = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<String>> undoLabel = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<String>> redoLabel = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyBooleanWrapper dirty = new ReadOnlyBooleanWrapper();
    private final ReadOnlyIntegerWrapper opened = new ReadOnlyIntegerWrapper();
    private final ReadOnlyIntegerWrapper saves = new ReadOnlyIntegerWrapper();
    private History history;
    private Scenario asOpened;
    private boolean unsavedBeside;

    /** A line of states with its own undo and redo, to be put aside and taken up again. */
    public static final class Line {
        private final History history;

        private Line(History history) {
            this.history = history;
        }

        /** A line that begins with a scenario. */
        public static Line of(Scenario first) {
            return new Line(new History(first));
        }

        /** Its present state. */
        public Scenario scenario() {
            return history.current();
        }
    }

    public Document(Scenario first) {
        scenario = new ReadOnlyObjectWrapper<>(first);
        history = new History(first);
        asOpened = first;
    }

    public ReadOnlyObjectProperty<Scenario> scenario() {
        return scenario.getReadOnlyProperty();
    }

    /** The places pinned on the map. */
    public ReadOnlyObjectProperty<Pins> pins() {
        return pins.getReadOnlyProperty();
    }

    /** True where the house differs from what was opened. */
    public boolean isChanged() {
        return !scenario.get().equals(asOpened);
    }

    /** Where it was read from or saved to; empty for an example. */
    public ReadOnlyObjectProperty<Optional<Path>> file() {
        return file.getReadOnlyProperty();
    }

    /** What undo takes back; empty where there is nothing. */
    public ReadOnlyObjectProperty<Optional<String>> undoLabel() {
        return undoLabel.getReadOnlyProperty();
    }

    /** What redo does again; empty where there is nothing. */
    public ReadOnlyObjectProperty<Optional<String>> redoLabel() {
        return redoLabel.getReadOnlyProperty();
    }

    /** True where something would be lost if it were closed now. */
    public ReadOnlyBooleanProperty dirty() {
        return dirty.getReadOnlyProperty();
    }

    /** Counts the scenarios opened; grows before {@link #scenario} changes to the new one. */
    public ReadOnlyIntegerProperty opened() {
        return opened.getReadOnlyProperty();
    }

    /** Counts how often the document was written to a file. */
    public ReadOnlyIntegerProperty saves() {
        return saves.getReadOnlyProperty();
    }

    /** The line of states that undo and redo go along now. */
    public Line line() {
        return new Line(history);
    }

    /** Takes up another line of states of the same document, with that one's undo and redo; the pins of this one come along. */
    public void resume(Line other) {
        if (history != other.history) other.history.carry(history.pins());
        history = other.history;
        publish();
    }

    /** Something that is saved together with the scenario has changed. */
    public void changedBeside() {
        unsavedBeside = true;
        dirty.set(true);
    }

    /** Puts another scenario in place of this one, with a history of its own. */
    public void open(Scenario other, Optional<Path> from) {
        history = new History(other);
        asOpened = other;
        unsavedBeside = false;
        file.set(from);
        opened.set(opened.get() + 1);
        publish();
    }

    public void edit(Edit edit) {
        if (history.apply(edit)) publish();
    }

    /** Pins a place of the map. */
    public void pin(Point at) {
        pin("pin " + (pins.get().last() + 1), Optional.empty(), pins.get().with(at));
    }

    /** Takes a pin away; a number that no pin has changes nothing. */
    public void unpin(int number) {
        pin("remove pin " + number, Optional.empty(), pins.get().without(number));
    }

    /**
     * Moves a pin.
     *
     * @param drag moves in a row with the same number are one step of the history
     */
    public void movePin(int number, Point to, int drag) {
        pin(
                "move pin " + number,
                Optional.of("pin " + number + " drag " + drag),
                pins.get().moved(number, to));
    }

    private void pin(String label, Optional<String> mergeKey, Pins after) {
        if (history.pin(label, mergeKey, after)) publish();
    }

    public void undo() {
        history.undo();
        publish();
    }

    public void redo() {
        history.redo();
        publish();
    }

    /** The current state has been written to a file. */
    public void savedTo(Path where) {
        history.markSaved();
        unsavedBeside = false;
        file.set(Optional.of(where));
        publish();
        saves.set(saves.get() + 1);
    }

    private void publish() {
        undoLabel.set(history.undoLabel());
        redoLabel.set(history.redoLabel());
        pins.set(history.pins());
        dirty.set(unsavedBeside || history.isDirty());
        scenario.set(history.current());
    }
}
