package slabfield.desktop.viewmodel;

import java.time.LocalDateTime;
import java.util.Optional;
import slabfield.safety.DraftStep;
import slabfield.safety.DraftTest;
import slabfield.safety.Gate;
import slabfield.safety.GateAnswer;
import slabfield.safety.JobRecord;

/** How a job record stands, in words. */
public final class RecordWords {
    private RecordWords() {}

    /** Whether it is complete. */
    public static String state(JobRecord record) {
        return record.completed()
                .map(t -> "marked complete " + time(t))
                .orElse(record.openBeforeCompletion().isEmpty() ? "nothing is open; not marked complete" : "open");
    }

    /** What became of the fan. */
    public static String fan(JobRecord record) {
        if (record.openBeforeStartUp().isEmpty())
            return record.startUp().map(t -> "started " + time(t)).orElse("not started");
        return record.startUp().isPresent() ? "must be off" : "start blocked";
    }

    /** When a radon test may start. */
    public static String radonTest(JobRecord record) {
        return "not before " + record.earliestRadonTest().map(RecordWords::time).orElse("24 h after start-up")
                + ", house shut from 12 h before; again at least every two years and after changes";
    }

    /** The answer to a gate with who gave it and when, or that there is none. */
    public static String answer(JobRecord record, Gate gate) {
        Optional<GateAnswer> given = record.answer(gate);
        if (given.isEmpty()) return gate.mustBeAnswered() ? "UNANSWERED" : "not answered";
        String by = given.get().by().isEmpty() ? "" : ", " + given.get().by();
        return given.get().answer().word() + by + ", " + time(given.get().time());
    }

    /** Number of gates that must be answered and are not, and of all that must. */
    public static String unanswered(JobRecord record) {
        long must = 0, open = 0;
        for (Gate gate : Gate.values()) {
            if (!gate.mustBeAnswered()) continue;
            must++;
            if (record.answer(gate).isEmpty()) open++;
        }
        return open == 0 ? "all " + must + " answered" : open + " of " + must + " unanswered";
    }

    /** Steps of a test that are unanswered or answered with no. */
    public static String openSteps(DraftTest test) {
        return test.open().isEmpty()
                ? "none"
                : String.join(", ", test.open().stream().map(DraftStep::word).toList());
    }

    /** A time to the minute. */
    public static String time(LocalDateTime time) {
        return time.toString().replace('T', ' ');
    }
}
