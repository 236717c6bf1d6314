package slabfield.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.equipment.Sizing;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.network.SlabSolver;
import slabfield.readings.Band;
import slabfield.readings.Comparison;
import slabfield.safety.JobRecord;

/** Works out all that a report says of a house. */
public final class Jobs {
    private Jobs() {}

    /**
     * Compares every stage with the house as it stood then, and sizes the fan.
     *
     * @param solved the house as drawn
     * @param sized whether fans are tried, which takes many solves
     */
    public static Job of(
            Result.Solved solved, JobRecord record, Provenance provenance, boolean sized, Progress progress) {
        Scenario scenario = solved.scenario();
        List<Job.Read> reads = new ArrayList<>();
        for (Stage stage : scenario.stages()) {
            if (stage.holes().isEmpty() && stage.systems().isEmpty()) continue;
            reads.add(new Job.Read(stage, comparison(solved, stage, progress)));
        }
        Optional<Sizing> sizing = sized && !scenario.suctionPoints().isEmpty()
                ? Optional.of(Sizing.of(scenario, Optional.empty(), progress))
                        .filter(s -> s.chosen().isPresent())
                : Optional.empty();
        return new Job(solved, reads, sizing, record, provenance);
    }

    private static Optional<Comparison> comparison(Result.Solved solved, Stage stage, Progress progress) {
        Scenario then = solved.scenario().during(stage);
        Result result = stage.asDrawn() ? solved : SlabSolver.solve(then, progress);
        return result instanceof Result.Solved s
                ? Optional.of(Comparison.of(solved.scenario(), stage, s, Band.USUAL))
                : Optional.empty();
    }
}
