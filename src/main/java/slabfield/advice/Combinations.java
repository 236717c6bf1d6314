package slabfield.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import slabfield.field.Progress;
import slabfield.model.Scenario;

/**
 * Measures put together step by step: all that can be done to the house as it then is are tried, the best is kept, and the
 * house with it is the next to be improved. So what a measure gains is what it gains after those before it. A greedy search
 * need not find the best combination of all.
 *
 * <p>Two chains are built. The strongest takes what gives the weakest place most vacuum. The thriftiest takes what saves
 * most room air among that which keeps the target, or, until it is met, takes what gives most vacuum. The search runs on a
 * coarse grid; both chains and all plans of the frontier are then solved on the scenario's own.
 *
 * @param strongest the house as drawn, then each step
 * @param thriftiest likewise
 * @param frontier of everything that was tried
 */
public record Combinations(List<CombinedPlan> strongest, List<CombinedPlan> thriftiest, Frontier frontier) {
    private static final double COARSE = 0.2;

    /** A step that gains less ends a chain: vacuum [Pa], or part of the room air. */
    private static final double LEAST_GAIN = Suggestion.NOTICEABLE;

    private static final double LEAST_SAVING = 0.01;

    private static final int PER_STEP = 150;

    /**
     * Searches.
     *
     * @param scenario as drawn
     * @param steps most measures in one plan, from 1
     * @param progress asked once per solve; a cancelled search gives what it has
     * @throws IllegalStateException where the scenario itself has no solution
     */
    public static Combinations search(Scenario scenario, int steps, Progress progress) {
        Trials trials = new Trials(progress, 2 * steps * PER_STEP);
        Scenario coarse = scenario.withCellSize(Math.max(COARSE, scenario.cellSize()));
        CombinedPlan drawn = CombinedPlan.of(List.of(), Advisor.solved(coarse));
        List<CombinedPlan> tried = new ArrayList<>(List.of(drawn));
        List<CombinedPlan> strong = chain(coarse, drawn, steps, Combinations::stronger, tried, trials);
        List<CombinedPlan> thrifty = chain(coarse, drawn, steps, Combinations::thriftier, tried, trials);
        List<CombinedPlan> again = new ArrayList<>(strong);
        again.addAll(thrifty);
        again.addAll(Frontier.of(tried).best());
        Map<List<Measure>, CombinedPlan> fine = solved(scenario, again, trials);
        return new Combinations(
                strong.stream()
                        .flatMap(p -> Optional.ofNullable(fine.get(p.measures())).stream())
                        .toList(),
                thrifty.stream()
                        .flatMap(p -> Optional.ofNullable(fine.get(p.measures())).stream())
                        .toList(),
                Frontier.of(List.copyOf(fine.values())));
    }

    /** How the next step is chosen among all that were tried. */
    private interface Choice {
        Optional<CombinedPlan> next(CombinedPlan now, List<CombinedPlan> tried);
    }

    private static List<CombinedPlan> chain(
            Scenario base, CombinedPlan drawn, int steps, Choice choice, List<CombinedPlan> tried, Trials trials) {
        List<CombinedPlan> chain = new ArrayList<>(List.of(drawn));
        for (int k = 0; k < steps && !trials.isCancelled(); k++) {
            CombinedPlan now = chain.get(chain.size() - 1);
            List<CombinedPlan> next = oneMore(base, now, trials);
            tried.addAll(next);
            Optional<CombinedPlan> chosen = choice.next(now, next);
            if (chosen.isEmpty()) break;
            chain.add(chosen.get());
        }
        return chain;
    }

    private static List<CombinedPlan> oneMore(Scenario base, CombinedPlan now, Trials trials) {
        List<List<Measure>> lists = new Candidates(Advisor.solved(now.house()))
                .all(trials).stream().map(now::and).toList();
        List<Scenario> houses =
                lists.stream().map(l -> CombinedPlan.applied(base, l)).toList();
        List<Optional<CombinedPlan>> plans = trials.solve(houses, s -> CombinedPlan.of(List.of(), s));
        return IntStream.range(0, plans.size())
                .filter(i -> plans.get(i).isPresent())
                .mapToObj(i -> named(lists.get(i), plans.get(i).get()))
                .toList();
    }

    private static CombinedPlan named(List<Measure> measures, CombinedPlan p) {
        return new CombinedPlan(measures, p.house(), p.coverage(), p.flows(), p.watts());
    }

    private static Optional<CombinedPlan> stronger(CombinedPlan now, List<CombinedPlan> tried) {
        return tried.stream()
                .max(Comparator.comparingDouble(p -> p.coverage().weakest()))
                .filter(p -> p.coverage().weakest() >= now.coverage().weakest() + LEAST_GAIN);
    }

    private static Optional<CombinedPlan> thriftier(CombinedPlan now, List<CombinedPlan> tried) {
        if (!now.meets()) return stronger(now, tried);
        return tried.stream()
                .filter(CombinedPlan::meets)
                .min(Comparator.comparingDouble(p -> p.flows().fromRoom()))
                .filter(p ->
                        p.flows().fromRoom() <= (1 - LEAST_SAVING) * now.flows().fromRoom());
    }

    /** The plans on the scenario's own grid, by their measures. */
    private static Map<List<Measure>, CombinedPlan> solved(Scenario scenario, List<CombinedPlan> plans, Trials trials) {
        List<List<Measure>> lists =
                plans.stream().map(CombinedPlan::measures).distinct().toList();
        List<Scenario> houses =
                lists.stream().map(l -> CombinedPlan.applied(scenario, l)).toList();
        List<Optional<CombinedPlan>> answers = trials.solve(houses, s -> CombinedPlan.of(List.of(), s));
        Map<List<Measure>, CombinedPlan> out = new LinkedHashMap<>();
        for (int i = 0; i < lists.size(); i++)
            if (answers.get(i).isPresent())
                out.put(lists.get(i), named(lists.get(i), answers.get(i).get()));
        return out;
    }
}
