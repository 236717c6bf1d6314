package slabfield.desktop.viewmodel.work;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import slabfield.advice.Measure;
import slabfield.advice.Suggestion;
import slabfield.desktop.viewmodel.Document;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver.Extent;

/** The house with a measure that somebody points at, solved in the background and kept while the house stays as it is. */
public final class Previews {
    /**
     * A measure pointed at.
     *
     * @param result the house with it; empty while that is being solved, or where it has no solution
     */
    public record Preview(Measure measure, Optional<Result.Solved> result) {}

    private final Document document;
    private final Solving.Solver solver;
    private final TaskRunner runner;
    private final Map<Measure, Optional<Result.Solved>> kept = new HashMap<>();
    private final ReadOnlyObjectWrapper<Optional<Preview>> shown = new ReadOnlyObjectWrapper<>(Optional.empty());
    private Optional<TaskRunner.Task> running = Optional.empty();
    private Scenario of;

    public Previews(Document document, Solving.Solver solver, TaskRunner runner) {
        this.document = document;
        this.solver = solver;
        this.runner = runner;
        this.of = document.scenario().get();
        document.scenario().addListener((o, was, is) -> {
            kept.clear();
            of = is;
            shown.set(Optional.empty());
        });
    }

    /** What is pointed at; empty for nothing. */
    public ReadOnlyObjectProperty<Optional<Preview>> shown() {
        return shown.getReadOnlyProperty();
    }

    /** Somebody points at a suggestion, or, where it is empty, at none. */
    public void point(Optional<Suggestion> suggestion) {
        running.ifPresent(TaskRunner.Task::cancel);
        running = Optional.empty();
        if (suggestion.isEmpty()) {
            shown.set(Optional.empty());
            return;
        }
        Measure measure = suggestion.get().measure();
        shown.set(Optional.of(new Preview(measure, kept.getOrDefault(measure, Optional.empty()))));
        if (!kept.containsKey(measure)) solve(measure);
    }

    private void solve(Measure measure) {
        Scenario house = of;
        running = Optional.of(runner.run(
                progress -> solver.solve(measure.apply(house), Extent.FAN_ON_ONLY, progress),
                new TaskRunner.Outcome<>() {
                    @Override
                    public void done(Result result) {
                        if (house != document.scenario().get()) return;
                        Optional<Result.Solved> solved =
                                result instanceof Result.Solved s ? Optional.of(s) : Optional.empty();
                        if (solved.isPresent()) kept.put(measure, solved);
                        if (shown.get().filter(p -> p.measure().equals(measure)).isPresent())
                            shown.set(Optional.of(new Preview(measure, solved)));
                    }

                    @Override
                    public void failed(Throwable reason) {
                        if (shown.get().filter(p -> p.measure().equals(measure)).isPresent())
                            shown.set(Optional.of(new Preview(measure, Optional.empty())));
                    }
                }));
    }
}
