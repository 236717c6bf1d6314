package slabfield.equipment;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.law.AirState;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver;

/** Many solves at once. */
final class Solves {
    private Solves() {}

    static Optional<Result.Solved> one(Scenario scenario) {
        Result result = SlabSolver.solve(scenario, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
        return result instanceof Result.Solved solved ? Optional.of(solved) : Optional.empty();
    }

    /** In the order of the scenarios; empty where one did not converge or the search was cancelled before it. */
    static List<Optional<Result.Solved>> all(List<Scenario> scenarios, Progress progress) {
        AtomicInteger done = new AtomicInteger();
        return scenarios.parallelStream()
                .map(s -> {
                    Optional<Result.Solved> solved = progress.isCancelled() ? Optional.empty() : one(s);
                    progress.step(done.incrementAndGet(), scenarios.size(), Double.NaN);
                    return solved;
                })
                .toList();
    }

    static AirState air(Scenario scenario) {
        return SlabSolver.airOf(scenario);
    }
}
