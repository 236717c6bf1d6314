package slabfield.desktop.viewmodel;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Problem;
import slabfield.model.Scenario;
import slabfield.model.ScenarioCheck;
import slabfield.network.SlabSolver.Extent;

/**
 * Solves what is dragged on a coarse grid, without pause: a solve takes up the house as it is when it begins, so that of
 * the places between only the last counts, and the next one waits behind it already.
 */
final class Following {
    /**
     * One house of a drag.
     *
     * @param number of the change that led to it
     * @param drawn the house
     * @param problems what stands in it as it cannot
     * @param result its prediction; empty where there are problems
     */
    record Step(long number, Scenario drawn, List<Problem> problems, Optional<Result> result) {}

    /** What went wrong with one. */
    interface Failure {
        void of(long number, Scenario drawn, Throwable reason);
    }

    private record Wanted(long number, Scenario drawn) {}

    private final Solving.Solver solver;
    private final TaskRunner runner;
    private final Consumer<Step> landed;
    private final Failure failure;
    private final Pace pace = new Pace();
    private final AtomicReference<Wanted> wanted = new AtomicReference<>();
    private Optional<TaskRunner.Task> last = Optional.empty();

    Following(Solving.Solver solver, TaskRunner runner, Consumer<Step> landed, Failure failure) {
        this.solver = solver;
        this.runner = runner;
        this.landed = landed;
        this.failure = failure;
    }

    /** Asks for a house; one that waits for its turn is forgotten. */
    void want(long number, Scenario drawn) {
        if (wanted.getAndSet(new Wanted(number, drawn)) != null) return;
        AtomicReference<Wanted> taken = new AtomicReference<>();
        last = Optional.of(runner.run(
                progress -> {
                    taken.set(wanted.getAndSet(null));
                    return Optional.ofNullable(taken.get()).map(w -> step(w, progress));
                },
                new TaskRunner.Outcome<Optional<Step>>() {
                    @Override
                    public void done(Optional<Step> step) {
                        step.ifPresent(landed);
                    }

                    @Override
                    public void failed(Throwable reason) {
                        if (taken.get() != null)
                            failure.of(taken.get().number(), taken.get().drawn(), reason);
                    }
                }));
    }

    private Step step(Wanted now, Progress progress) {
        List<Problem> problems = ScenarioCheck.problems(now.drawn());
        if (!problems.isEmpty()) return new Step(now.number(), now.drawn(), problems, Optional.empty());
        long begun = System.nanoTime();
        double cell = pace.cell(now.drawn());
        Result result = solver.solve(now.drawn().withCellSize(cell), Extent.FAN_ON_ONLY, progress);
        pace.took(cell, System.nanoTime() - begun);
        return new Step(now.number(), now.drawn(), problems, Optional.of(result));
    }

    /** The drag is over. */
    void stop() {
        wanted.set(null);
        last.ifPresent(TaskRunner.Task::cancel);
        last = Optional.empty();
    }
}
