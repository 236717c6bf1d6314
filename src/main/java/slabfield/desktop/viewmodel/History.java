package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.model.Scenario;

/** All states of a document by value, so that no inverse of an edit has to be written. */
final class History {
    private record Step(String label, Optional<String> mergeKey, Scenario scenario) {}

    private final List<Step> steps = new ArrayList<>();
    private int at;
    private Step saved;

    /** A document as it was opened, with nothing to save. */
    History(Scenario first) {
        steps.add(new Step("", Optional.empty(), first));
        saved = steps.get(0);
    }

    Scenario current() {
        return steps.get(at).scenario();
    }

    /**
     * Makes a step, or prolongs the current one where the merge keys agree and it was not saved meanwhile. What was undone
     * is forgotten.
     *
     * @return false where the edit changes nothing; then nothing is recorded
     */
    boolean apply(Edit edit) {
        Step before = steps.get(at);
        Scenario after = edit.change().apply(before.scenario());
        if (after.equals(before.scenario())) return false;
        boolean prolongs = edit.mergeKey().isPresent() && edit.mergeKey().equals(before.mergeKey()) && before != saved;
        if (prolongs) at--;
        steps.subList(at + 1, steps.size()).clear();
        if (prolongs && after.equals(current())) return true;
        steps.add(new Step(edit.label(), edit.mergeKey(), after));
        at++;
        return true;
    }

    /** What an undo would take back. */
    Optional<String> undoLabel() {
        return at > 0 ? Optional.of(steps.get(at).label()) : Optional.empty();
    }

    /** What a redo would do again. */
    Optional<String> redoLabel() {
        return at + 1 < steps.size() ? Optional.of(steps.get(at + 1).label()) : Optional.empty();
    }

    void undo() {
        if (at > 0) at--;
    }

    void redo() {
        if (at + 1 < steps.size()) at++;
    }

    void markSaved() {
        saved = steps.get(at);
    }

    /** True where the current step is not the one last saved or opened. */
    boolean isDirty() {
        return steps.get(at) != saved;
    }
}
