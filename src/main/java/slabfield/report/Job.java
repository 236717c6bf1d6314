package slabfield.report;

import java.util.List;
import java.util.Optional;
import slabfield.equipment.Sizing;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.readings.Comparison;
import slabfield.safety.JobRecord;

/**
 * All that a report is made of.
 *
 * @param result of the house as drawn
 * @param stages with readings, in the scenario's order
 * @param sizing of the fan; empty where none was worked out
 * @param record of gates, tests and details; empty answers where nothing was asked
 */
public record Job(
        Result.Solved result, List<Read> stages, Optional<Sizing> sizing, JobRecord record, Provenance provenance) {
    /**
     * Readings of one stage beside what the model says of the house as it stood then.
     *
     * @param comparison empty where that solve did not converge
     */
    public record Read(Stage stage, Optional<Comparison> comparison) {}

    public Job {
        stages = List.copyOf(stages);
    }

    Scenario scenario() {
        return result.scenario();
    }
}
