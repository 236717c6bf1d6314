package slabfield.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import slabfield.equipment.FanPlacement;
import slabfield.equipment.Sizing;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.FanOffer;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver;

/**
 * Tries measures one by one, each by solving the house with it, and ranks them by what they gain at the weakest place,
 * then by the area that meets the target, then by the exhaust flow that they save.
 *
 * <p>Places for a suction point are first judged by the house's linear response on a coarse grid; the best are then solved
 * in full on the scenario's own grid. What draws there is what draws at the scenario's first suction point.
 */
public final class Advisor {
    /** Usual number of plausible houses: the 5 and 95 % points are then two of them. */
    public static final int USUAL_HOUSES = 39;

    /** Measures that a search announces before it knows how many there are. */
    private static final int FIRST_GUESS = 60;

    private static final Comparator<Suggestion> ORDER = Comparator.comparingDouble(
                    (Suggestion s) -> -Math.rint(s.gain() * 1000))
            .thenComparingDouble(s -> -s.after().meeting())
            .thenComparingDouble(s -> s.flowsAfter().exhaust())
            .thenComparing(s -> s.measure().words());

    private Advisor() {}

    /**
     * All measures, best first, without bands.
     *
     * @param scenario as drawn
     * @param progress asked once per solve; a cancelled search gives what it has
     * @throws IllegalStateException where the scenario itself has no solution
     */
    public static List<Suggestion> suggest(Scenario scenario, Progress progress) {
        return suggest(scenario, new Trials(progress, FIRST_GUESS));
    }

    /**
     * All measures in the best house, best first, those that stand first with a band and the odds of meeting the target.
     *
     * @param houses plausible ones
     * @param banded how many measures, from the best, are tried in all of them
     * @param progress asked once per solve; a cancelled search gives what it has
     * @throws IllegalStateException where the best house has no solution
     */
    public static List<Suggestion> suggest(Houses houses, int banded, Progress progress) {
        Trials trials = new Trials(progress, FIRST_GUESS + OddsOfMeasures.solves(houses, banded));
        List<Suggestion> all = suggest(houses.best(), trials);
        int first = Math.min(banded, all.size());
        List<Suggestion> out = new ArrayList<>(OddsOfMeasures.of(houses, all.subList(0, first), trials));
        out.addAll(all.subList(first, all.size()));
        return List.copyOf(out);
    }

    private static List<Suggestion> suggest(Scenario scenario, Trials trials) {
        Result.Solved base = solved(scenario);
        List<Measure> measures = new Candidates(base).all(trials);
        List<Scenario> houses = measures.stream().map(m -> m.apply(scenario)).toList();
        record After(Result.Coverage coverage, Result.Flows flows, OptionalDouble watts) {}
        List<Optional<After>> after = trials.solve(houses, s -> new After(s.coverage(), s.flows(), watts(s)));
        OptionalDouble watts = watts(base);
        return IntStream.range(0, measures.size())
                .filter(k -> after.get(k).isPresent())
                .mapToObj(k -> {
                    After a = after.get(k).get();
                    return new Suggestion(
                            measures.get(k),
                            base.coverage(),
                            a.coverage(),
                            base.flows(),
                            a.flows(),
                            watts,
                            a.watts(),
                            Optional.empty());
                })
                .sorted(ORDER)
                .toList();
    }

    /**
     * A cover over each opening in turn, the one that would show most first.
     *
     * @param scenario as drawn
     * @param progress asked once per solve; a cancelled search gives what it has
     * @throws IllegalStateException where the scenario itself has no solution
     */
    public static List<TestCover> covers(Scenario scenario, Progress progress) {
        Result.Solved base = solved(scenario);
        List<Measure.CoverForTest> covers = Candidates.covers(scenario);
        Trials trials = new Trials(progress, covers.size());
        record After(List<Result.Hole> holes, double exhaust) {}
        List<Scenario> houses = covers.stream().map(c -> c.apply(scenario)).toList();
        List<Optional<After>> after =
                trials.solve(houses, s -> new After(s.holes(), s.flows().exhaust()));
        List<TestCover> out = new ArrayList<>();
        for (int k = 0; k < covers.size(); k++) {
            if (after.get(k).isEmpty()) continue;
            After a = after.get(k).get();
            List<TestCover.Change> holes = IntStream.range(0, a.holes().size())
                    .mapToObj(h -> new TestCover.Change(
                            a.holes().get(h).id(),
                            base.holes().get(h).fanOn(),
                            a.holes().get(h).fanOn()))
                    .toList();
            out.add(new TestCover(covers.get(k), holes, base.flows().exhaust(), a.exhaust()));
        }
        out.sort(Comparator.comparingDouble((TestCover c) -> -c.largestGain())
                .thenComparingDouble(c -> c.exhaustAfter() - c.exhaustBefore()));
        return List.copyOf(out);
    }

    /** Power of all fans that are among those to choose from. */
    static OptionalDouble watts(Result.Solved solved) {
        List<FanOffer> offers = Sizing.offers(solved.scenario());
        return FanPlacement.watts(solved, offers);
    }

    static Result.Solved solved(Scenario scenario) {
        Result r = SlabSolver.solve(scenario, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
        if (r instanceof Result.Solved s) return s;
        throw new IllegalStateException("the scenario as drawn has no solution to improve on");
    }
}
