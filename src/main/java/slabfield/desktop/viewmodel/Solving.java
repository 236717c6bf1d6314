package slabfield.desktop.viewmodel;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import slabfield.field.Convergence;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Problem;
import slabfield.model.Scenario;
import slabfield.model.ScenarioCheck;
import slabfield.network.SlabSolver.Extent;

/**
 * Keeps a prediction for the document. Every change cancels the solve under way and starts another; a result lands only
 * if nothing was asked for since. While the user drags, solves on a coarse grid follow one another ({@link Following}), so
 * that the map moves along; the solve of the whole follows when the drag ends.
 */
public final class Solving {
    private static final Convergence NOT_YET = new Convergence(Convergence.Ending.CANCELLED, 0, Double.NaN, Double.NaN);

    /** How things stand. */
    public enum State {
        /** The map shows the document as it is. */
        UP_TO_DATE,
        /** A solve is under way; the map is out of date. */
        SOLVING,
        /** The document as it is has no prediction; the map, if any, is out of date. */
        FAILED
    }

    /** What computes a prediction. */
    public interface Solver {
        Result solve(Scenario scenario, Extent extent, Progress progress);
    }

    /**
     * What there is to show.
     *
     * @param result the last prediction; before the first one of a document, the plan without a field
     * @param state whether it is of the document as it is
     * @param quick true for the coarse grid of a drag
     * @param reason why there is no newer one, where the state is FAILED; else empty
     */
    public record Picture(Result result, State state, boolean quick, String reason) {
        public Optional<Result.Solved> solved() {
            return result instanceof Result.Solved s ? Optional.of(s) : Optional.empty();
        }

        /** The whole prediction of the document as it is. */
        public Optional<Result.Solved> current() {
            return state == State.UP_TO_DATE && !quick ? solved() : Optional.empty();
        }
    }

    private final Document document;
    private final Solver solver;
    private Solver next;
    private final TaskRunner runner;
    private final BooleanProperty dragging = new SimpleBooleanProperty();
    private final Following following;
    private final ReadOnlyObjectWrapper<Picture> picture;
    private final ReadOnlyObjectWrapper<List<Problem>> problems = new ReadOnlyObjectWrapper<>(List.of());
    private Optional<TaskRunner.Task> running = Optional.empty();
    private boolean anotherHouse;
    private long asked;
    private long shown;

    public Solving(Document document, Solver solver, TaskRunner runner) {
        this.document = document;
        this.solver = solver;
        this.next = solver;
        this.runner = runner;
        this.picture = new ReadOnlyObjectWrapper<>(planOnly());
        this.following = new Following(solver, runner, this::followed, (number, drawn, reason) -> {
            if (dragging.get() && number > shown) show(number, true, number == asked, unsolved(drawn, reason));
        });
        document.opened().addListener((o, was, is) -> {
            anotherHouse = true;
            dragging.set(false);
        });
        document.scenario().addListener((o, was, is) -> changed());
        dragging.addListener((o, was, is) -> {
            if (!is) changed();
        });
    }

    /** What there is to show. */
    public ReadOnlyObjectProperty<Picture> picture() {
        return picture.getReadOnlyProperty();
    }

    /** What stands in the drawing as it cannot; while there is any, the last map stays and is out of date. */
    public ReadOnlyObjectProperty<List<Problem>> problems() {
        return problems.getReadOnlyProperty();
    }

    /** True while the user drags something. */
    public BooleanProperty dragging() {
        return dragging;
    }

    /** Asks for the first prediction. */
    public void start() {
        changed();
    }

    /** As {@link #start()}, by a solver that may know the answer already. */
    public void start(Solver first) {
        next = first;
        changed();
        next = solver;
    }

    /** As {@link #start()}, with the answer; one of another house is not taken. */
    public void start(Result answer) {
        if (answer.scenario() != document.scenario().get()) {
            changed();
            return;
        }
        asked++;
        anotherHouse = false;
        show(asked, false, true, answer);
    }

    private void changed() {
        asked++;
        if (dragging.get() && !anotherHouse) {
            running.ifPresent(TaskRunner.Task::cancel);
            Picture old = picture.get();
            if (old.current().isPresent()) picture.set(new Picture(old.result(), State.SOLVING, false, ""));
            following.want(asked, document.scenario().get());
            return;
        }
        following.stop();
        Picture last = anotherHouse ? planOnly() : picture.get();
        anotherHouse = false;
        List<Problem> found = ScenarioCheck.problems(document.scenario().get());
        tell(found);
        if (!found.isEmpty()) {
            running.ifPresent(TaskRunner.Task::cancel);
            picture.set(new Picture(last.result(), State.FAILED, last.quick(), reason(found)));
            return;
        }
        picture.set(new Picture(last.result(), State.SOLVING, last.quick(), ""));
        solve();
    }

    private void tell(List<Problem> found) {
        if (!found.equals(problems.get())) problems.set(found);
    }

    private static String reason(List<Problem> found) {
        String first = found.get(0).message();
        String more = found.size() == 1 ? "" : " (and " + (found.size() - 1) + " more in the Problems tab)";
        return first.substring(0, 1).toUpperCase(Locale.ROOT) + first.substring(1) + more + ".";
    }

    private void solve() {
        running.ifPresent(TaskRunner.Task::cancel);
        long number = asked;
        Scenario scenario = document.scenario().get();
        Solver now = next;
        running = Optional.of(runner.run(
                progress -> now.solve(scenario, Extent.FULL, progress), new TaskRunner.Outcome<>() {
                    @Override
                    public void done(Result result) {
                        if (number == asked) show(number, false, true, result);
                    }

                    @Override
                    public void failed(Throwable reason) {
                        if (number == asked) show(number, false, true, unsolved(scenario, reason));
                    }
                }));
    }

    private static Result unsolved(Scenario scenario, Throwable reason) {
        String words = reason instanceof OutOfMemoryError
                ? "There is not enough memory for this grid; give the scenario larger cells."
                : "The solve failed: " + reason.getMessage();
        return new Result.Unsolved(scenario, NOT_YET, words);
    }

    /** A house of a drag is solved; the newest may be another by now, but the map moves along. */
    private void followed(Following.Step step) {
        if (!dragging.get() || step.number() <= shown) return;
        boolean newest = step.number() == asked;
        tell(step.problems());
        if (step.result().isPresent())
            show(step.number(), true, newest, step.result().get());
        else {
            shown = step.number();
            picture.set(new Picture(
                    picture.get().result(), State.FAILED, picture.get().quick(), reason(step.problems())));
        }
    }

    private void show(long number, boolean quick, boolean newest, Result result) {
        shown = number;
        if (result instanceof Result.Unsolved unsolved) {
            Result last = picture.get().solved().isPresent() ? picture.get().result() : unsolved;
            State state = newest ? State.FAILED : State.SOLVING;
            picture.set(new Picture(last, state, picture.get().quick(), newest ? unsolved.reason() : ""));
        } else picture.set(new Picture(result, newest ? State.UP_TO_DATE : State.SOLVING, quick, ""));
    }

    private Picture planOnly() {
        return new Picture(new Result.Unsolved(document.scenario().get(), NOT_YET, ""), State.SOLVING, false, "");
    }
}
