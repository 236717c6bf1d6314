package slabfield.desktop.viewmodel.find;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import slabfield.desktop.viewmodel.Document;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver.Extent;

/** Other houses that somebody points at, solved in the background and kept while the drawn house stays as it is. */
public final class Glances {
    /**
     * A subject pointed at.
     *
     * @param result its house; empty while that is being solved, and where it has no solution
     * @param failed true where it has no solution
     */
    public record Glance(Sheet.Subject subject, Optional<Result.Solved> result, boolean failed) {}

    private static final int MOST_KEPT = 40;

    private final Solving.Solver solver;
    private final TaskRunner runner;
    private final Map<Scenario, Optional<Result.Solved>> kept = new HashMap<>();
    private final ReadOnlyObjectWrapper<Optional<Glance>> shown = new ReadOnlyObjectWrapper<>(Optional.empty());
    private Optional<TaskRunner.Task> running = Optional.empty();
    private long asked;

    public Glances(Document document, Solving.Solver solver, TaskRunner runner) {
        this.solver = solver;
        this.runner = runner;
        document.scenario().addListener((o, was, is) -> {
            kept.clear();
            point(Optional.empty());
        });
    }

    /** What is pointed at; empty for nothing. */
    public ReadOnlyObjectProperty<Optional<Glance>> shown() {
        return shown.getReadOnlyProperty();
    }

    /** Somebody points at something, or, where it is empty, at nothing. */
    public void point(Optional<Sheet.Subject> subject) {
        if (shown.get().map(Glance::subject).equals(subject)) return;
        running.ifPresent(TaskRunner.Task::cancel);
        running = Optional.empty();
        asked++;
        Optional<Scenario> house = subject.flatMap(Sheet.Subject::house);
        Optional<Optional<Result.Solved>> known = house.map(kept::get);
        shown.set(subject.map(s -> new Glance(
                s,
                known.orElse(Optional.empty()),
                known.filter(Optional::isEmpty).isPresent())));
        if (house.isPresent() && known.isEmpty()) solve(house.get());
    }

    private void solve(Scenario house) {
        long number = asked;
        running = Optional.of(runner.run(
                progress -> solver.solve(house, Extent.FAN_ON_ONLY, progress), new TaskRunner.Outcome<>() {
                    @Override
                    public void done(Result result) {
                        if (number == asked)
                            landed(house, result instanceof Result.Solved s ? Optional.of(s) : Optional.empty());
                    }

                    @Override
                    public void failed(Throwable reason) {
                        if (number == asked) landed(house, Optional.empty());
                    }
                }));
    }

    private void landed(Scenario house, Optional<Result.Solved> solved) {
        if (kept.size() >= MOST_KEPT) kept.clear();
        kept.put(house, solved);
        shown.set(shown.get().map(g -> new Glance(g.subject(), solved, solved.isEmpty())));
    }
}
