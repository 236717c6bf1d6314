package slabfield.diagnosis;

import java.util.List;
import java.util.Optional;
import slabfield.fit.Fitted;
import slabfield.fit.Observation;

/**
 * What the readings of a house say about what is wrong with it.
 *
 * @param answer how far it can be told
 * @param causes all that were weighed, the likeliest first; their probabilities add up to one
 * @param next the cheapest check that would tell the first two apart; empty where none is needed or none is found
 * @param notes what to know about the answer, in sentences
 */
public record Diagnosis(Answer answer, List<Weighed> causes, Optional<NextCheck> next, List<String> notes) {
    /** How far the cause can be told. */
    public enum Answer {
        /** One cause is far likelier than all others together. */
        TOLD,
        /** The house as drawn explains the readings; a cause too weak to show in them is not excluded. */
        AS_DRAWN,
        /** Several explanations are about as likely, or none fits. */
        CANNOT_TELL
    }

    /**
     * One cause.
     *
     * @param explanation the best of its explanations
     * @param fitted that explanation fitted to all readings
     * @param probability of the cause, all its explanations together
     * @param speaks the reading that speaks most for it against the house as drawn, if any does
     */
    public record Weighed(Explanation explanation, Fitted fitted, double probability, Optional<Speaks> speaks) {
        public Cause cause() {
            return explanation.cause();
        }
    }

    /**
     * A reading that speaks for a cause.
     *
     * @param observation what was read
     * @param explained what the cause makes of it
     * @param drawn what the house as drawn makes of it, fitted as well as it can be
     */
    public record Speaks(Observation observation, double explained, double drawn) {}

    /** The likeliest. */
    public Weighed first() {
        return causes.get(0);
    }
}
