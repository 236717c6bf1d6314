package slabfield.desktop.viewmodel.lesson;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Units;
import slabfield.desktop.viewmodel.lesson.Lesson.Question;
import slabfield.field.Result;
import slabfield.figure.VacuumScale;
import slabfield.figure.VacuumScale.Range;
import slabfield.figure.VacuumScale.Sense;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver.Extent;

/**
 * Runs lessons: the learner predicts, then sees what the solver says, then reads why. Both houses of a lesson are solved in
 * the background while the learner thinks; nothing of the second is shown before every question is answered.
 */
public final class Course {
    /**
     * What became of an answer.
     *
     * @param given by the learner
     * @param truth as solved
     * @param words with both numbers
     */
    public record Verdict(Question question, Change given, Change truth, String words) {
        public boolean isRight() {
            return given == truth;
        }
    }

    /** Both houses of a lesson, solved. */
    public record Solved(Result.Solved before, Result.Solved after) {
        /** One range that holds both [Pa]. */
        public Range range(Sense sense, double unit) {
            Range a = VacuumScale.rangeOf(before.field(), sense, unit),
                    b = VacuumScale.rangeOf(after.field(), sense, unit);
            return new Range(Math.min(a.low(), b.low()), Math.max(a.high(), b.high()));
        }
    }

    private final List<Lesson> lessons;
    private final Function<String, Scenario> houses;
    private final Units units;
    private final ScoreBook scores;
    private final Solving.Solver solver;
    private final TaskRunner runner;
    private final ObjectProperty<Lesson> lesson;
    private final Map<Question, Change> answers = new HashMap<>();
    private final Map<String, Solved> kept = new HashMap<>();
    private final ReadOnlyObjectWrapper<Optional<Solved>> solved = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyBooleanWrapper revealed = new ReadOnlyBooleanWrapper();
    private final ReadOnlyBooleanWrapper ready = new ReadOnlyBooleanWrapper();
    private final ReadOnlyIntegerWrapper scored = new ReadOnlyIntegerWrapper();
    private String trouble = "";

    /** @param houses finds a lesson's house by its file name */
    public Course(
            List<Lesson> lessons,
            Function<String, Scenario> houses,
            Units units,
            ScoreBook scores,
            Solving.Solver solver,
            TaskRunner runner) {
        this.lessons = List.copyOf(lessons);
        this.houses = houses;
        this.units = units;
        this.scores = scores;
        this.solver = solver;
        this.runner = runner;
        this.lesson = new SimpleObjectProperty<>(lessons.get(0));
        lesson.addListener((o, was, is) -> begin());
    }

    public List<Lesson> lessons() {
        return lessons;
    }

    /** The lesson that is open. */
    public ObjectProperty<Lesson> lesson() {
        return lesson;
    }

    /** Both houses; empty while they are being solved. */
    public ReadOnlyObjectProperty<Optional<Solved>> solved() {
        return solved.getReadOnlyProperty();
    }

    /** Whether the outcome is shown. */
    public ReadOnlyBooleanProperty revealed() {
        return revealed.getReadOnlyProperty();
    }

    /** Whether every question is answered and the outcome is known. */
    public ReadOnlyBooleanProperty ready() {
        return ready.getReadOnlyProperty();
    }

    /** Counts the changes of scores. */
    public ReadOnlyIntegerProperty scored() {
        return scored.getReadOnlyProperty();
    }

    /** Why the houses could not be solved; else empty. */
    public String trouble() {
        return trouble;
    }

    /** Score of a lesson so far. */
    public ScoreBook.Score score(Lesson of) {
        return scores.of(of.id());
    }

    /** Begins the open lesson anew, and solves its houses if that was not done. */
    public void begin() {
        answers.clear();
        revealed.set(false);
        trouble = "";
        Lesson now = lesson.get();
        solved.set(Optional.ofNullable(kept.get(now.id())));
        review();
        if (solved.get().isPresent()) return;
        runner.run(
                progress -> {
                    Scenario house = houses.apply(now.file());
                    Result before = solver.solve(now.before().apply(house), Extent.FAN_ON_ONLY, progress);
                    return List.of(before, solver.solve(now.after().apply(house), Extent.FAN_ON_ONLY, progress));
                },
                new TaskRunner.Outcome<>() {
                    @Override
                    public void done(List<Result> both) {
                        if (both.get(0) instanceof Result.Solved a && both.get(1) instanceof Result.Solved b)
                            landed(now, new Solved(a, b));
                        else failed(new IllegalStateException("no solution"));
                    }

                    @Override
                    public void failed(Throwable reason) {
                        if (now == lesson.get())
                            trouble = "This lesson's houses could not be solved: " + reason.getMessage();
                    }
                });
    }

    private void landed(Lesson of, Solved both) {
        kept.put(of.id(), both);
        if (of != lesson.get()) return;
        solved.set(Optional.of(both));
        review();
    }

    /** The learner answers a question, as often as he likes before the outcome is shown. */
    public void answer(Question question, Change change) {
        if (revealed.get()) return;
        answers.put(question, change);
        review();
    }

    /** The answer given to a question. */
    public Optional<Change> answer(Question question) {
        return Optional.ofNullable(answers.get(question));
    }

    private void review() {
        ready.set(solved.get().isPresent()
                && answers.keySet().containsAll(lesson.get().questions()));
    }

    /** Shows the outcome and counts it; does nothing before every question is answered. */
    public void reveal() {
        if (!ready.get() || revealed.get()) return;
        revealed.set(true);
        long right = verdicts().stream().filter(Verdict::isRight).count();
        scores.keep(
                lesson.get().id(),
                score(lesson.get()).plus((int) right, lesson.get().questions().size()));
        scored.set(scored.get() + 1);
    }

    /** What became of each answer; empty before the outcome is shown. */
    public List<Verdict> verdicts() {
        if (!revealed.get()) return List.of();
        Solved both = solved.get().orElseThrow();
        List<Verdict> out = new ArrayList<>();
        for (Question q : lesson.get().questions()) {
            String words = Quantities.words(both.before(), q.quantity(), units) + " before, "
                    + Quantities.words(both.after(), q.quantity(), units) + " after";
            out.add(new Verdict(q, answers.get(q), truth(q, both), words));
        }
        return out;
    }

    private static Change truth(Question q, Solved both) {
        return Change.of(Quantities.of(both.before(), q.quantity()), Quantities.of(both.after(), q.quantity()));
    }

    /** Why it is so, with the numbers solved; empty before the outcome is shown. */
    public String explanation() {
        if (!revealed.get()) return "";
        Solved both = solved.get().orElseThrow();
        return Quantities.filled(lesson.get().explanation(), both.before(), both.after(), units);
    }

    /** The lesson as a sheet to print; empty until it is solved. */
    public Optional<Worksheet> worksheet(boolean withKey) {
        Lesson of = lesson.get();
        return solved.get().map(both -> {
            List<Worksheet.Item> items = of.questions().stream()
                    .map(q -> new Worksheet.Item(
                            q.text(),
                            truth(q, both).words() + " (" + Quantities.words(both.before(), q.quantity(), units)
                                    + " before, " + Quantities.words(both.after(), q.quantity(), units) + " after)"))
                    .toList();
            return new Worksheet(
                    of,
                    both,
                    items,
                    Quantities.filled(of.explanation(), both.before(), both.after(), units),
                    withKey,
                    units.shown().get());
        });
    }
}
