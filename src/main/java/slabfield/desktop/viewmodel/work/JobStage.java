package slabfield.desktop.viewmodel.work;

import java.util.List;

/**
 * One stage of the job, and what it still lacks.
 *
 * @param step which
 * @param open what is missing, the first to do first; empty where nothing is known to be
 * @param blocked true where something forbids to go on
 */
public record JobStage(Step step, List<Open> open, boolean blocked) {
    public JobStage {
        open = List.copyOf(open);
    }

    /** Stages in the order of the job. */
    public enum Step {
        INSPECT("Inspect"),
        PLAN("Plan"),
        COMMUNICATION_TEST("Test"),
        DESIGN("Design"),
        START_UP("Start up"),
        RECORD("Record"),
        RETEST("Retest");

        private final String words;

        Step(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Where something missing is done. */
    public enum Place {
        DRAWING,
        READINGS,
        MEASURES,
        SYSTEM,
        CHECKLIST,
        FILE
    }

    /** Something missing, and where it is done. */
    public record Open(String words, Place place) {}
}
