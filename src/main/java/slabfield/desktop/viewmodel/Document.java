package slabfield.desktop.viewmodel;

import java.nio.file.Path;
import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import slabfield.model.Scenario;

/** The one scenario that is open. Only an {@link Edit}, undo and redo change it. */
public final class Document {
    private final ReadOnlyObjectWrapper<Scenario> scenario;
    private final ReadOnlyObjectWrapper<Optional<Path>> file = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<String>> undoLabel = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<String>> redoLabel = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyBooleanWrapper dirty = new ReadOnlyBooleanWrapper();
    private final ReadOnlyIntegerWrapper opened = new ReadOnlyIntegerWrapper();
    private History history;
    private Scenario asOpened;

    public Document(Scenario first) {
        scenario = new ReadOnlyObjectWrapper<>(first);
        history = new History(first);
        asOpened = first;
    }

    public ReadOnlyObjectProperty<Scenario> scenario() {
        return scenario.getReadOnlyProperty();
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

    /** Puts another scenario in place of this one, with a history of its own. */
    public void open(Scenario other, Optional<Path> from) {
        history = new History(other);
        asOpened = other;
        file.set(from);
        opened.set(opened.get() + 1);
        publish();
    }

    public void edit(Edit edit) {
        if (history.apply(edit)) publish();
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
        file.set(Optional.of(where));
        publish();
    }

    private void publish() {
        undoLabel.set(history.undoLabel());
        redoLabel.set(history.redoLabel());
        dirty.set(history.isDirty());
        scenario.set(history.current());
    }
}
