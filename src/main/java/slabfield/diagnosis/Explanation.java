package slabfield.diagnosis;

import java.util.List;
import slabfield.fit.Parameter;
import slabfield.model.Scenario;

/**
 * One way in which a cause could explain the readings.
 *
 * @param cause what is wrong
 * @param words where and how, for a person
 * @param house as drawn, changed by the cause
 * @param unknowns what is left open: what every house has, and the size of the cause
 * @param own how many of the unknowns, the last ones, are the cause's own
 * @param share what it has of its cause's prior probability, relative to the cause's other explanations
 */
public record Explanation(Cause cause, String words, Scenario house, List<Parameter> unknowns, int own, double share) {
    public Explanation {
        unknowns = List.copyOf(unknowns);
        if (!(share > 0)) throw new IllegalArgumentException("an explanation has a share above 0");
        if (own < 0 || own > unknowns.size()) throw new IllegalArgumentException("own counts some of the unknowns");
    }
}
