package slabfield.desktop.viewmodel.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Units;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver.Extent;

/**
 * A house in which something is not as drawn. The learner gets readings, as a meter would show them, beside the prediction
 * of the drawing, names the cause, and then sees the house as it is. A score is kept.
 */
public final class Practice {
    /** By which the score is kept. */
    public static final String SCORE = "practice";

    /** Standard deviation of a pressure reading [Pa], and of a flow as a part of it; common of a calm day and a good meter. */
    private static final double SCATTER = 0.3;

    private static final double FLOW_SCATTER = 0.03;
    private static final double METER = 0.1;

    /** What was expected and what was read at one place, in words. */
    public record Reading(String place, String expected, String read) {}

    /**
     * A case to solve.
     *
     * @param cause hidden until it is answered
     * @param given answer; empty before
     */
    public record Case(
            Cause cause, Result.Solved drawn, Result.Solved real, List<Reading> readings, Optional<Cause> given) {
        public boolean isRight() {
            return given.filter(g -> g == cause).isPresent();
        }
    }

    private final Scenario house;
    private final Units units;
    private final ScoreBook scores;
    private final Solving.Solver solver;
    private final TaskRunner runner;
    private final RandomGenerator lot;
    private final ReadOnlyObjectWrapper<Optional<Case>> now = new ReadOnlyObjectWrapper<>(Optional.empty());

    /** @param lot decides what is hidden, and how the meter scatters */
    public Practice(
            Scenario house,
            Units units,
            ScoreBook scores,
            Solving.Solver solver,
            TaskRunner runner,
            RandomGenerator lot) {
        this.house = house;
        this.units = units;
        this.scores = scores;
        this.solver = solver;
        this.runner = runner;
        this.lot = lot;
    }

    /** The case at hand; empty before the first, and while the next is being made. */
    public ReadOnlyObjectProperty<Optional<Case>> now() {
        return now.getReadOnlyProperty();
    }

    public ScoreBook.Score score() {
        return scores.of(SCORE);
    }

    /** Hides another cause. */
    public void next() {
        now.set(Optional.empty());
        Cause cause = Cause.values()[lot.nextInt(Cause.values().length)];
        Scenario real = cause.hidden(lot).apply(house);
        runner.run(
                progress -> List.of(
                        solver.solve(house, Extent.FAN_ON_ONLY, progress),
                        solver.solve(real, Extent.FAN_ON_ONLY, progress)),
                new TaskRunner.Outcome<>() {
                    @Override
                    public void done(List<Result> both) {
                        if (both.get(0) instanceof Result.Solved a && both.get(1) instanceof Result.Solved b)
                            now.set(Optional.of(new Case(cause, a, b, readings(a, b), Optional.empty())));
                    }

                    @Override
                    public void failed(Throwable reason) {
                        now.set(Optional.empty());
                    }
                });
    }

    private List<Reading> readings(Result.Solved drawn, Result.Solved real) {
        List<Reading> out = new ArrayList<>();
        for (Result.Hole hole : drawn.holes()) {
            double read = real.hole(hole.id()).orElseThrow().fanOn().orElse(0) + SCATTER * lot.nextGaussian();
            out.add(new Reading(
                    hole.id(),
                    units.pressure(hole.fanOn().orElse(0)),
                    units.pressure(METER * Math.rint(read / METER))));
        }
        for (Result.Suction s : drawn.suctions()) {
            Result.Suction other = real.suction(s.id()).orElseThrow();
            out.add(new Reading(
                    s.id() + ", in the pit",
                    units.pressure(s.pressure()),
                    units.pressure(Math.rint(other.pressure() + SCATTER * lot.nextGaussian()))));
            out.add(new Reading(
                    s.id() + ", flow",
                    units.flow(s.flow()),
                    units.flow(other.flow() * (1 + FLOW_SCATTER * lot.nextGaussian()))));
        }
        return List.copyOf(out);
    }

    /** The learner names a cause; only the first answer to a case counts. */
    public void answer(Cause given) {
        Optional<Case> open = now.get().filter(c -> c.given().isEmpty());
        if (open.isEmpty()) return;
        Case c = open.get();
        Case answered = new Case(c.cause(), c.drawn(), c.real(), c.readings(), Optional.of(given));
        scores.keep(SCORE, score().plus(answered.isRight() ? 1 : 0, 1));
        now.set(Optional.of(answered));
    }

    /** How it was to be seen, with the numbers solved; empty before the answer. */
    public String explanation() {
        return now.get()
                .filter(c -> c.given().isPresent())
                .map(c -> "It was: " + c.cause().words() + ". " + c.cause().sign() + " Here the flow went from "
                        + units.flow(c.drawn().flows().exhaust()) + " as drawn to "
                        + units.flow(c.real().flows().exhaust()) + ", the weakest place from "
                        + units.pressure(-c.drawn().coverage().weakest()) + " to "
                        + units.pressure(-c.real().coverage().weakest()) + ".")
                .orElse("");
    }
}
