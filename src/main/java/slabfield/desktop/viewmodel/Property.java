package slabfield.desktop.viewmodel;

import java.util.List;
import slabfield.model.Scenario;

/**
 * One thing to know about what is chosen, and how to change it.
 *
 * @param label in the user's words
 * @param help what may be typed, or what it means
 * @param choices the words to choose from; empty where text is typed
 * @param value as it is shown
 * @param change makes the scenario with another value
 */
public record Property(String label, String help, List<String> choices, String value, Change change) {
    /** What is shown where several things differ. */
    public static final String MIXED = "mixed";

    /** Makes the scenario with another value. */
    public interface Change {
        /**
         * @throws IllegalArgumentException where the text is no such value, with words for the user
         */
        Scenario of(Scenario scenario, String text);
    }

    public Property {
        choices = List.copyOf(choices);
    }
}
