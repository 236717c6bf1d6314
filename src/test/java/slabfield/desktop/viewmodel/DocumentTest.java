package slabfield.desktop.viewmodel;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import slabfield.model.Scenario;
import slabfield.model.Target;

class DocumentTest {
    private final Scenario first = Bench.house();
    private final Document document = new Document(first);

    private void target(double vacuum) {
        document.edit(Edit.of("target " + vacuum, s -> s.withTarget(new Target(vacuum, "test"))));
    }

    private void drag(String gesture, double vacuum) {
        document.edit(Edit.merging("drag", gesture, s -> s.withTarget(new Target(vacuum, "test"))));
    }

    private double target() {
        return document.scenario().get().target().vacuum();
    }

    @Test
    void undoAndRedoGoThroughAllStatesAndTellWhatTheyDo() {
        for (int k = 1; k <= 50; k++) target(10 + k);
        assertThat(document.undoLabel().get()).contains("target 60.0");
        for (int k = 0; k < 50; k++) document.undo();
        assertThat(document.scenario().get()).isSameAs(first);
        assertThat(document.undoLabel().get()).isEmpty();
        assertThat(document.redoLabel().get()).contains("target 11.0");
        document.redo();
        document.redo();
        assertThat(target()).isEqualTo(12);
    }

    @Test
    void undoAtTheStartAndRedoAtTheEndChangeNothing() {
        document.undo();
        document.redo();
        assertThat(document.scenario().get()).isSameAs(first);
    }

    @Test
    void aGestureIsOneStepAndTheNextGestureAnother() {
        drag("a", 11);
        drag("a", 12);
        drag("b", 13);
        drag("b", 14);
        document.undo();
        assertThat(target()).isEqualTo(12);
        document.undo();
        assertThat(document.scenario().get()).isSameAs(first);
    }

    @Test
    void aGestureThatEndsWhereItBeganLeavesNoStep() {
        drag("a", 11);
        drag("a", first.target().vacuum());
        document.edit(Edit.merging("drag", "a", s -> s.withTarget(first.target())));
        assertThat(document.undoLabel().get()).isEmpty();
        assertThat(document.dirty().get()).isFalse();
    }

    @Test
    void anEditThatChangesNothingIsNotRecorded() {
        document.edit(Edit.of("nothing", s -> s.withTarget(s.target())));
        assertThat(document.undoLabel().get()).isEmpty();
    }

    @Test
    void anEditAfterUndoForgetsWhatWasUndone() {
        target(11);
        document.undo();
        target(12);
        assertThat(document.redoLabel().get()).isEmpty();
        document.undo();
        assertThat(document.scenario().get()).isSameAs(first);
    }

    @Test
    void dirtyIsToldByTheSavedStepAndNotByCounting() {
        target(11);
        assertThat(document.dirty().get()).isTrue();
        document.savedTo(Path.of("house.json"));
        assertThat(document.dirty().get()).isFalse();
        document.undo();
        assertThat(document.dirty().get()).isTrue();
        target(12);
        assertThat(document.dirty().get()).isTrue();
        document.undo();
        assertThat(document.dirty().get()).isTrue();
    }

    @Test
    void aDragAcrossASaveKeepsTheSavedState() {
        drag("a", 11);
        document.savedTo(Path.of("house.json"));
        drag("a", 12);
        assertThat(document.dirty().get()).isTrue();
        document.undo();
        assertThat(target()).isEqualTo(11);
        assertThat(document.dirty().get()).isFalse();
    }

    @Test
    void anotherFileHasAHistoryOfItsOwn() {
        target(11);
        document.open(first, Optional.of(Path.of("other.json")));
        assertThat(document.undoLabel().get()).isEmpty();
        assertThat(document.dirty().get()).isFalse();
        assertThat(document.file().get()).contains(Path.of("other.json"));
    }
}
