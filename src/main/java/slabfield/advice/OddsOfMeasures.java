package slabfield.advice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import slabfield.field.Result;
import slabfield.fit.ModelError;
import slabfield.model.Scenario;

/**
 * Measures tried in every plausible house, on a coarse grid. What a member has there is brought to the scenario's own grid
 * by the ratio of the best house's answers on both, or by their difference where a ratio means nothing.
 */
final class OddsOfMeasures {
    /** Least cell of the coarse grid [m]. */
    private static final double COARSE = 0.2;

    private final Houses houses;
    private final List<List<Optional<State>>> table;

    /** What is kept of a solve. */
    private record State(double strongest, double weakest, double exhaust, double fromRoom) {
        static State of(Result.Solved s) {
            return new State(
                    s.strongest(),
                    s.coverage().weakest(),
                    s.flows().exhaust(),
                    s.flows().fromRoom());
        }

        State with(ModelError e) {
            return new State(strongest, e.pressure(weakest, strongest), e.flow(exhaust), e.flow(fromRoom));
        }
    }

    private OddsOfMeasures(Houses houses, List<List<Optional<State>>> table) {
        this.houses = houses;
        this.table = table;
    }

    /** Number of solves for so many measures. */
    static int solves(Houses houses, int measures) {
        return (houses.members().size() + 1) * (measures + 1);
    }

    /** The suggestions with their odds; without them where the search was cancelled. */
    static List<Suggestion> of(Houses houses, List<Suggestion> suggestions, Trials trials) {
        Houses coarse = houses.withCellSize(Math.max(COARSE, houses.best().cellSize()));
        List<Measure> measures = suggestions.stream().map(Suggestion::measure).toList();
        List<Scenario> all = new ArrayList<>();
        List<Houses.Member> members = new ArrayList<>(List.of(new Houses.Member(coarse.best(), ModelError.NONE)));
        members.addAll(coarse.members());
        for (Houses.Member m : members) {
            all.add(m.house());
            for (Measure measure : measures) all.add(measure.apply(m.house()));
        }
        List<Optional<State>> solved = trials.solve(all, State::of);
        if (trials.isCancelled()) return suggestions;
        int width = measures.size() + 1;
        List<List<Optional<State>>> table = IntStream.range(0, members.size())
                .mapToObj(m -> solved.subList(m * width, (m + 1) * width).stream()
                        .map(s -> s.map(state -> state.with(members.get(m).error())))
                        .toList())
                .toList();
        OddsOfMeasures odds = new OddsOfMeasures(houses, table);
        return IntStream.range(0, measures.size())
                .mapToObj(k -> odds.odds(k, suggestions.get(k))
                        .map(suggestions.get(k)::with)
                        .orElse(suggestions.get(k)))
                .toList();
    }

    private Optional<Suggestion.Odds> odds(int measure, Suggestion s) {
        List<List<Optional<State>>> rows = table.subList(1, table.size()).stream()
                .filter(r -> r.get(0).isPresent() && r.get(measure + 1).isPresent())
                .toList();
        List<Optional<State>> best = table.get(0);
        if (rows.isEmpty() || best.get(0).isEmpty() || best.get(measure + 1).isEmpty()) return Optional.empty();
        State before = best.get(0).get(), after = best.get(measure + 1).get();
        double[] weakestBefore =
                column(rows, 0, State::weakest, before.weakest(), s.before().weakest());
        double[] weakestAfter = column(
                rows, measure + 1, State::weakest, after.weakest(), s.after().weakest());
        double[] roomBefore = column(
                rows, 0, State::fromRoom, before.fromRoom(), s.flowsBefore().fromRoom());
        double[] roomAfter = column(
                rows,
                measure + 1,
                State::fromRoom,
                after.fromRoom(),
                s.flowsAfter().fromRoom());
        double[] exhaust = column(
                rows,
                measure + 1,
                State::exhaust,
                after.exhaust(),
                s.flowsAfter().exhaust());
        return Optional.of(new Suggestion.Odds(
                Range.of(weakestBefore),
                Range.of(weakestAfter),
                Range.of(difference(weakestAfter, weakestBefore)),
                Range.of(exhaust),
                Range.of(difference(roomBefore, roomAfter)),
                meeting(weakestBefore, s.before().target()),
                meeting(weakestAfter, s.after().target()),
                rows.size(),
                houses.basis()));
    }

    private static double[] column(
            List<List<Optional<State>>> rows, int at, ToDoubleFunction<State> what, double coarse, double fine) {
        boolean byRatio = coarse > 0 && fine > 0;
        return rows.stream()
                .mapToDouble(r -> what.applyAsDouble(r.get(at).orElseThrow()))
                .map(v -> byRatio ? v * (fine / coarse) : v + (fine - coarse))
                .toArray();
    }

    private static double[] difference(double[] a, double[] b) {
        return IntStream.range(0, a.length).mapToDouble(i -> a[i] - b[i]).toArray();
    }

    private static double meeting(double[] weakest, double target) {
        long meet = Arrays.stream(weakest).filter(w -> w >= target).count();
        return (double) meet / weakest.length;
    }
}
