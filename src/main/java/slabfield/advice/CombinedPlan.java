package slabfield.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import slabfield.field.Result;
import slabfield.model.Scenario;

/**
 * Several measures done together, and the house with them.
 *
 * @param measures in the order in which they are done; empty for the house as drawn
 * @param house with all of them
 * @param coverage of that house
 * @param flows in that house
 * @param watts power of its fans; empty where it is not known [W]
 */
public record CombinedPlan(
        List<Measure> measures, Scenario house, Result.Coverage coverage, Result.Flows flows, OptionalDouble watts) {
    public CombinedPlan {
        measures = List.copyOf(measures);
    }

    static CombinedPlan of(List<Measure> measures, Result.Solved solved) {
        return new CombinedPlan(measures, solved.scenario(), solved.coverage(), solved.flows(), Advisor.watts(solved));
    }

    /** What to do, for a person. */
    public String words() {
        if (measures.isEmpty()) return "as drawn";
        return measures.stream().map(Measure::words).collect(Collectors.joining(", then "));
    }

    /** True where the weakest place meets the target. */
    public boolean meets() {
        return coverage.weakest() >= coverage.target();
    }

    /** All measures, done to another house in their order: one edit. */
    public Scenario apply(Scenario before) {
        return applied(before, measures);
    }

    static Scenario applied(Scenario before, List<Measure> measures) {
        Scenario house = before;
        for (Measure m : measures) house = m.apply(house);
        return house;
    }

    /** The measures with one more, without those that it makes pointless. */
    List<Measure> and(Measure more) {
        List<Measure> out = new ArrayList<>();
        for (Measure m : measures) if (!replaces(more, m)) out.add(m);
        out.add(more);
        return out;
    }

    private static boolean replaces(Measure more, Measure before) {
        if (more instanceof Measure.SealAll) return before.kind() == Measure.Kind.SEAL;
        if (more instanceof Measure.SealGroup group)
            return before instanceof Measure.SealOpening o && group.ids().contains(o.opening())
                    || before instanceof Measure.SealTops t && group.ids().contains(t.wall());
        if (more instanceof Measure.ChangeFan) return before instanceof Measure.ChangeFan;
        if (more instanceof Measure.ChangePipe) return before instanceof Measure.ChangePipe;
        if (more instanceof Measure.MoveSuction m)
            return before instanceof Measure.MoveSuction b && b.id().equals(m.id());
        if (more instanceof Measure.TeeIntoTile t)
            return before instanceof Measure.EnlargePit p && p.id().equals(t.id())
                    || before instanceof Measure.MoveSuction m && m.id().equals(t.id())
                    || before instanceof Measure.TeeIntoTile b && b.id().equals(t.id());
        return false;
    }
}
