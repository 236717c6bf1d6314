package slabfield.equipment;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.FanOffer;
import slabfield.model.Scenario;

/**
 * Fans tried one by one in the whole network, as drawn and on the worst day, and put in order: first those that hold the
 * target, by least power (by least exhaust where no power is known), then the others, by what they lack.
 *
 * @param fans best first
 * @param unsolved fans whose solve did not converge
 * @see "FanRankingTest"
 */
public record FanRanking(List<Ranked> fans, List<String> unsolved) {
    /**
     * One fan.
     *
     * @param fan as it runs in the air of the place
     * @param solved the house as drawn, with this fan in every place
     * @param drawn what is held as drawn
     * @param worstDay what is held on the worst day; empty where the scenario does not say what that is
     * @param flows through the fan in each place, by suction point or riser [m3/s]
     * @param watts power of all places together as drawn; empty where not known [W]
     * @param margin vacuum held, on the worst day where it is known, less the target [Pa]
     * @param warnings in plain sentences
     */
    public record Ranked(
            InstalledFan fan,
            Result.Solved solved,
            Held drawn,
            Optional<Held> worstDay,
            Map<String, Double> flows,
            OptionalDouble watts,
            double margin,
            List<String> warnings) {
        /** True where the target is held, on the worst day where it is known. */
        public boolean meets() {
            return margin >= 0 && solved.scenario().target().vacuum() <= drawn.vacuum();
        }

        /** Energy of a year of 365 days [J]. */
        public OptionalDouble yearlyEnergy() {
            return watts.isPresent()
                    ? OptionalDouble.of(watts.getAsDouble() * YearlyCost.YEAR)
                    : OptionalDouble.empty();
        }
    }

    private static final Comparator<Ranked> ORDER = Comparator.comparing((Ranked r) -> !r.meets())
            .thenComparingDouble(r -> r.meets() ? r.watts().orElse(Double.MAX_VALUE) : -r.margin())
            .thenComparingDouble(r -> r.solved().flows().exhaust());

    /**
     * Ranks fans.
     *
     * @param scenario as drawn; whatever draws there is replaced, its pipes stay
     * @param offers fans to try
     * @param progress asked once per solve
     */
    public static FanRanking of(Scenario scenario, List<FanOffer> offers, Progress progress) {
        double density = Solves.air(scenario).density();
        List<InstalledFan> fans =
                offers.stream().map(o -> InstalledFan.of(o, density)).toList();
        List<Scenario> houses =
                fans.stream().map(f -> FanPlacement.with(scenario, f.curve())).toList();
        List<Optional<Result.Solved>> drawn = Solves.all(houses, progress);
        List<Optional<Result.Solved>> worst = worstDays(houses, drawn, progress);
        List<Ranked> ranked = new ArrayList<>();
        List<String> unsolved = new ArrayList<>();
        for (int i = 0; i < fans.size(); i++) {
            boolean needsWorst = HousePressure.missing(scenario.house()).isEmpty();
            if (drawn.get(i).isEmpty() || needsWorst && worst.get(i).isEmpty())
                unsolved.add(offers.get(i).id());
            else ranked.add(ranked(fans.get(i), drawn.get(i).get(), worst.get(i).map(Held::of)));
        }
        ranked.sort(ORDER);
        return new FanRanking(List.copyOf(ranked), List.copyOf(unsolved));
    }

    private static List<Optional<Result.Solved>> worstDays(
            List<Scenario> houses, List<Optional<Result.Solved>> drawn, Progress progress) {
        List<Scenario> under = new ArrayList<>();
        List<Integer> of = new ArrayList<>();
        for (int i = 0; i < houses.size(); i++) {
            if (drawn.get(i).isEmpty()
                    || !HousePressure.missing(houses.get(i).house()).isEmpty()) continue;
            double roomAir = drawn.get(i).get().flows().fromRoom();
            double temperature = houses.get(i).house().designDay().orElseThrow().outdoorTemperature();
            under.add(WorstDay.under(
                    houses.get(i),
                    HousePressure.onWorstDay(houses.get(i), temperature, roomAir)
                            .total()));
            of.add(i);
        }
        List<Optional<Result.Solved>> out = new ArrayList<>();
        houses.forEach(h -> out.add(Optional.empty()));
        List<Optional<Result.Solved>> solved = Solves.all(under, progress);
        for (int k = 0; k < of.size(); k++) out.set(of.get(k), solved.get(k));
        return out;
    }

    private static Ranked ranked(InstalledFan fan, Result.Solved solved, Optional<Held> worstDay) {
        Map<String, Double> flows = FanPlacement.flows(solved);
        List<String> warnings = new ArrayList<>();
        double watts = 0;
        for (double flow : flows.values()) {
            watts += fan.power(flow).orElse(Double.NaN);
            fan.warnings(flow).stream().filter(w -> !warnings.contains(w)).forEach(warnings::add);
        }
        Held drawn = Held.of(solved);
        double margin =
                worstDay.orElse(drawn).vacuum() - solved.scenario().target().vacuum();
        return new Ranked(
                fan,
                solved,
                drawn,
                worstDay,
                flows,
                Double.isNaN(watts) ? OptionalDouble.empty() : OptionalDouble.of(watts),
                margin,
                List.copyOf(warnings));
    }
}
