package slabfield.safety;

import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import slabfield.model.ImpossibleValue;

/**
 * A draft test of one appliance under worst-case exhaust, as a person carried it out and judged it.
 *
 * @param appliance what the user calls it
 * @param fanRunning whether the radon fan ran
 * @param outcome the person's judgement
 * @param steps answers to the steps; those not asked are not in it
 * @param housePressure room relative to outdoors, negative where the room is lower [Pa]
 * @param draft in the flue relative to the room, negative where it draws [Pa]
 * @param spillage how long it spilled after lighting [s]
 * @param carbonMonoxide in the flue, parts per million
 * @param by who tested, or empty
 * @param time when
 * @param note free text
 */
public record DraftTest(
        String appliance,
        boolean fanRunning,
        Outcome outcome,
        Map<DraftStep, Answer> steps,
        OptionalDouble housePressure,
        OptionalDouble draft,
        OptionalDouble spillage,
        OptionalDouble carbonMonoxide,
        String by,
        LocalDateTime time,
        String note) {
    /** What the person found. A passed test says how the appliance drew on that day, no more. */
    public enum Outcome {
        PASSED("passed"),
        FAILED("failed");

        private final String word;

        Outcome(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public DraftTest {
        if (appliance == null || appliance.isBlank()) throw new ImpossibleValue("appliance", "must not be empty");
        Objects.requireNonNull(outcome, "outcome");
        steps = Map.copyOf(steps);
        notNegative("spillage", spillage);
        notNegative("carbonMonoxide", carbonMonoxide);
        Objects.requireNonNull(housePressure, "housePressure");
        Objects.requireNonNull(draft, "draft");
        Objects.requireNonNull(by, "by");
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(note, "note");
    }

    private static void notNegative(String part, OptionalDouble value) {
        if (value.isPresent() && !(value.getAsDouble() >= 0)) throw new ImpossibleValue(part, "must not be below 0");
    }

    /** Steps that were not answered, or with "no". */
    public List<DraftStep> open() {
        return Arrays.stream(DraftStep.values())
                .filter(s -> steps.getOrDefault(s, Answer.NO) == Answer.NO)
                .toList();
    }
}
