package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.model.Scenario;

/** All states of a document by value, its pins among them, so that no inverse of an edit has to be written. */
final class History {
    private record Step(String label, Optional<String> mergeKey, Scenario scenario, Pins pins) {}

    private final List<Step> steps = new ArrayList<>();
    private int at;
    private Scenario saved;

    /** A document as it was opened, with nothing to save. */
    History(Scenario first) {
        steps.add(new Step("", Optional.empty(), first, Pins.NONE));
        saved = first;
    }

    Scenario current() {
        return steps.get(at).scenario();
    }

    Pins pins() {
        return steps.get(at).pins();
    }

    /**
     * Makes a step, or prolongs the current one where the merge keys agree and it was not saved meanwhile. What was undone
     * is forgotten.
     *
     * @return false where the edit changes nothing; then nothing is recorded
     */
    boolean apply(Edit edit) {
        Scenario after = edit.change().apply(current());
        if (after.equals(current())) return false;
        step(edit.label(), edit.mergeKey(), after, pins(), current() != saved);
        return true;
    }

    /** Makes a step of other pins, as {@link #apply} does of another house. */
    boolean pin(String label, Optional<String> mergeKey, Pins after) {
        if (after.equals(pins())) return false;
        step(label, mergeKey, current(), after, true);
        return true;
    }

    private void step(String label, Optional<String> mergeKey, Scenario scenario, Pins pins, boolean mayProlong) {
        boolean prolongs = mayProlong
                && mergeKey.isPresent()
                && mergeKey.equals(steps.get(at).mergeKey());
        if (prolongs) at--;
        steps.subList(at + 1, steps.size()).clear();
        if (prolongs && scenario.equals(current()) && pins.equals(pins())) return;
        steps.add(new Step(label, mergeKey, scenario, pins));
        at++;
    }

    /** Has the same pins at every step; steps that were of pins alone are forgotten. */
    void carry(Pins pins) {
        List<Step> carried = new ArrayList<>();
        int now = 0;
        for (int k = 0; k < steps.size(); k++) {
            Step s = steps.get(k);
            if (k == 0 || s.scenario() != steps.get(k - 1).scenario())
                carried.add(new Step(s.label(), s.mergeKey(), s.scenario(), pins));
            if (k == at) now = carried.size() - 1;
        }
        steps.clear();
        steps.addAll(carried);
        at = now;
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
        saved = current();
    }

    /** True where the house is not the one last saved or opened; pins are not saved. */
    boolean isDirty() {
        return current() != saved;
    }
}
