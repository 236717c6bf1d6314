package slabfield.desktop.viewmodel;

import java.util.Optional;
import java.util.function.UnaryOperator;
import slabfield.model.Scenario;

/**
 * Something that the user did to the document.
 *
 * @param label in the user's words, to stand after "Undo", such as "move S1"
 * @param mergeKey edits in a row with the same key are one step of the history, such as all moves of one drag
 * @param change makes the next scenario from the current one
 */
public record Edit(String label, Optional<String> mergeKey, UnaryOperator<Scenario> change) {
    /** A step of its own. */
    public static Edit of(String label, UnaryOperator<Scenario> change) {
        return new Edit(label, Optional.empty(), change);
    }

    /** A step together with the edits before it that have the same key. */
    public static Edit merging(String label, String mergeKey, UnaryOperator<Scenario> change) {
        return new Edit(label, Optional.of(mergeKey), change);
    }
}
