package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.model.TestHole;
import slabfield.network.SlabSolver.Extent;
import slabfield.readings.Band;
import slabfield.readings.Comparison;

/**
 * Readings of one stage beside the prediction for the house as it stood then. A stage that differs from what is drawn has
 * a solve of its own.
 */
public final class Readings {
    private static final String CHANGED = "You changed the house; the readings were taken before.";

    private final Document document;
    private final Solving solving;
    private final Solving.Solver solver;
    private final TaskRunner runner;
    private final ObservableList<Stage> stages = FXCollections.observableArrayList();
    private final ObjectProperty<Optional<Stage>> stage = new SimpleObjectProperty<>(Optional.empty());
    private final ObservableList<HoleRow> rows = FXCollections.observableArrayList();
    private final ReadOnlyObjectWrapper<Optional<Comparison>> comparison =
            new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<String> note = new ReadOnlyObjectWrapper<>("");
    /** Stage whose readings stand in the rows. */
    private Optional<Stage> shown = Optional.empty();

    private Optional<TaskRunner.Task> running = Optional.empty();
    private long asked;

    public Readings(Document document, Solving solving, Solving.Solver solver, TaskRunner runner) {
        this.document = document;
        this.solving = solving;
        this.solver = solver;
        this.runner = runner;
        document.scenario().addListener((o, was, is) -> takeStages());
        solving.picture().addListener((o, was, is) -> {
            if (!solving.dragging().get()) update();
        });
        stage.addListener((o, was, is) -> update());
        takeStages();
    }

    private void takeStages() {
        List<Stage> now = document.scenario().get().stages();
        if (now.equals(stages)) return;
        stages.setAll(now);
        stage.set(now.isEmpty() ? Optional.empty() : Optional.of(now.get(now.size() - 1)));
    }

    /** In the scenario's order. */
    public ObservableList<Stage> stages() {
        return stages;
    }

    /** The stage that is compared; empty for the prediction alone. */
    public ObjectProperty<Optional<Stage>> stage() {
        return stage;
    }

    /** All test holes, in the scenario's order. */
    public ObservableList<HoleRow> rows() {
        return rows;
    }

    /** The comparison behind the rows; empty while there is none. */
    public ReadOnlyObjectProperty<Optional<Comparison>> comparison() {
        return comparison.getReadOnlyProperty();
    }

    /** Why there is no comparison, or which house is predicted; empty where nothing needs to be said. */
    public ReadOnlyObjectProperty<String> note() {
        return note.getReadOnlyProperty();
    }

    private void update() {
        asked++;
        running.ifPresent(TaskRunner.Task::cancel);
        running = Optional.empty();
        Optional<Result.Solved> solved = solving.picture().get().current();
        if (stage.get().isEmpty()) {
            show(solving.picture().get().solved(), Optional.empty(), "");
            return;
        }
        Stage chosen = stage.get().get();
        if (solved.isEmpty()) {
            boolean failed = solving.picture().get().state() == Solving.State.FAILED;
            String words = failed ? "No prediction to compare with." : "Waiting for the prediction.";
            if (shown.equals(stage.get()) && sameHoles()) note.set(words);
            else show(Optional.empty(), Optional.empty(), words);
            return;
        }
        if (chosen.asDrawn()) compare(chosen, solved.get(), "");
        else solveStage(chosen);
    }

    private boolean sameHoles() {
        return rows.stream()
                .map(HoleRow::hole)
                .toList()
                .equals(document.scenario().get().testHoles().stream()
                        .map(TestHole::id)
                        .toList());
    }

    private void solveStage(Stage chosen) {
        long number = asked;
        Scenario then = document.scenario().get().during(chosen);
        note.set("Solving the house as it stood at this stage.");
        running = Optional.of(runner.run(
                progress -> solver.solve(then, Extent.FULL, progress), new TaskRunner.Outcome<>() {
                    @Override
                    public void done(Result result) {
                        if (number != asked) return;
                        if (result instanceof Result.Solved solved)
                            compare(
                                    chosen,
                                    solved,
                                    "Predicted for the house as it stood at this stage, which differs from the map.");
                        else if (result instanceof Result.Unsolved unsolved)
                            failed(new IllegalStateException(unsolved.reason()));
                    }

                    @Override
                    public void failed(Throwable reason) {
                        if (number == asked)
                            show(
                                    Optional.empty(),
                                    Optional.empty(),
                                    "No prediction for this stage: " + reason.getMessage());
                    }
                }));
    }

    private void compare(Stage chosen, Result.Solved solved, String words) {
        Comparison made = Comparison.of(document.scenario().get(), chosen, solved, Band.USUAL);
        show(Optional.of(solved), Optional.of(made), words);
    }

    private void show(Optional<Result.Solved> solved, Optional<Comparison> made, String words) {
        List<HoleRow> now = new ArrayList<>();
        for (TestHole hole : document.scenario().get().testHoles()) {
            Optional<Comparison.HoleComparison> compared = made.flatMap(c ->
                    c.holes().stream().filter(h -> h.hole().equals(hole.id())).findFirst());
            now.add(compared.map(c -> compared(hole, c)).orElseGet(() -> alone(hole, solved)));
        }
        rows.setAll(now);
        shown = stage.get();
        comparison.set(made);
        note.set(made.isPresent() && document.isChanged() ? (CHANGED + " " + words).strip() : words);
    }

    private static HoleRow compared(TestHole hole, Comparison.HoleComparison c) {
        boolean off = c.verdict() == Comparison.Verdict.WEAKER || c.verdict() == Comparison.Verdict.STRONGER;
        OptionalDouble band = c.difference().isPresent() ? OptionalDouble.of(c.band()) : OptionalDouble.empty();
        return new HoleRow(
                hole.id(),
                hole.at(),
                hole.found(),
                c.predicted(),
                c.predictedOff(),
                c.measured(),
                c.measuredOff(),
                c.difference(),
                band,
                c.verdict().words(),
                off);
    }

    /** Prediction and reading where there is at most one of the two. */
    private HoleRow alone(TestHole hole, Optional<Result.Solved> solved) {
        Optional<Result.Hole> found = solved.flatMap(s -> s.hole(hole.id()));
        Optional<Stage.HoleReading> read = stage.get()
                .flatMap(s -> s.holes().stream()
                        .filter(r -> r.hole().equals(hole.id()))
                        .findFirst());
        OptionalDouble none = OptionalDouble.empty();
        return new HoleRow(
                hole.id(),
                hole.at(),
                hole.found(),
                found.map(Result.Hole::fanOn).orElse(none),
                found.map(Result.Hole::fanOff).orElse(none),
                read.map(Stage.HoleReading::fanOn).orElse(none),
                read.map(Stage.HoleReading::fanOff).orElse(none),
                none,
                none,
                read.isPresent() ? "no prediction" : "not read",
                false);
    }
}
