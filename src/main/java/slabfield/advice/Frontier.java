package slabfield.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Plans of which none is beaten: no other plan has at least as much vacuum at the weakest place, no more room air in its
 * exhaust, no more power, and is better in one of them. Numbers are compared as rounded to what matters: 0.1 Pa,
 * 0.1 L/s, 1 W; among equals that with fewer measures counts.
 *
 * @param best by rising vacuum at the weakest place
 * @param dominated all others that were tried, in the order in which they were tried
 * @param byPower true where the power of every plan is known and counts
 */
public record Frontier(List<CombinedPlan> best, List<CombinedPlan> dominated, boolean byPower) {
    private static final double VACUUM = 0.1;
    private static final double AIR = 1e-4;
    private static final double POWER = 1;

    /** What a plan is judged by, the smaller the better. */
    private record Cost(double lacking, double roomAir, double watts, int measures) {
        boolean beats(Cost other) {
            boolean notWorse = lacking <= other.lacking && roomAir <= other.roomAir && watts <= other.watts;
            boolean equal = lacking == other.lacking && roomAir == other.roomAir && watts == other.watts;
            return notWorse && (!equal || measures < other.measures);
        }
    }

    /** Sorts plans; of plans that cost the same the first is kept. */
    public static Frontier of(List<CombinedPlan> plans) {
        boolean byPower =
                !plans.isEmpty() && plans.stream().allMatch(p -> p.watts().isPresent());
        List<Cost> costs = plans.stream().map(p -> cost(p, byPower)).toList();
        List<CombinedPlan> best = new ArrayList<>(), dominated = new ArrayList<>();
        Set<Cost> seen = new HashSet<>();
        for (int i = 0; i < costs.size(); i++) {
            Cost mine = costs.get(i);
            boolean beaten = costs.stream().anyMatch(c -> c.beats(mine)) || !seen.add(mine);
            (beaten ? dominated : best).add(plans.get(i));
        }
        best.sort(Comparator.comparingDouble(p -> p.coverage().weakest()));
        return new Frontier(List.copyOf(best), List.copyOf(dominated), byPower);
    }

    private static Cost cost(CombinedPlan p, boolean byPower) {
        return new Cost(
                -Math.rint(p.coverage().weakest() / VACUUM),
                Math.rint(p.flows().fromRoom() / AIR),
                byPower ? Math.rint(p.watts().getAsDouble() / POWER) : 0,
                p.measures().size());
    }
}
