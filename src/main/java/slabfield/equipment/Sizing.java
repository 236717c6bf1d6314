package slabfield.equipment;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.FanOffer;
import slabfield.model.House;
import slabfield.model.Riser;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;
import slabfield.model.Source.FanCurve;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.model.SuctionPoint;

/**
 * All that is asked of pipe and fan for one house.
 *
 * @param scenario as drawn
 * @param inventedOnly true where the user gave no fan and none is drawn, so that invented classes are ranked
 * @param ranking of the fans
 * @param chosen fan that all that follows is worked out with; empty where none could be solved
 * @param pipes as drawn and by nominal size, with the chosen fan
 * @param missing keys of the scenario without which there is no worst day
 * @param worstDay what presses on the worst day
 * @param heldDownTo coldest day on which the target is held
 * @param season the vacuum by the climate's bins
 * @param cost of a year
 * @param costSealed of a year once everything open is sealed
 * @param limits of the house's depressurization
 * @param scaled readings of communication tests for the chosen fan, by stage
 * @param withoutPipe suction points whose pipe is not given and has no loss here
 */
public record Sizing(
        Scenario scenario,
        boolean inventedOnly,
        FanRanking ranking,
        Optional<FanRanking.Ranked> chosen,
        List<PipeComparison> pipes,
        List<String> missing,
        Optional<HousePressure> worstDay,
        Optional<WorstDay.HeldDownTo> heldDownTo,
        List<WorstDay.SeasonPoint> season,
        Optional<YearlyCost> cost,
        Optional<YearlyCost> costSealed,
        List<HousePressure.AgainstLimit> limits,
        List<ScaledStage> scaled,
        List<String> withoutPipe) {

    /** Readings of one communication test, scaled. */
    public record ScaledStage(String stage, List<TestScaling> holes) {}

    /** Name of the fan that the scenario itself draws. */
    public static final String DRAWN = "as drawn";

    /**
     * Works everything out.
     *
     * @param wanted name of the fan to go on with; empty for the best
     * @param progress asked once per solve
     */
    public static Sizing of(Scenario scenario, Optional<String> wanted, Progress progress) {
        List<FanOffer> offers = offers(scenario);
        FanRanking ranking = FanRanking.of(scenario, offers, progress);
        Optional<FanRanking.Ranked> chosen = ranking.fans().stream()
                .filter(r ->
                        wanted.isEmpty() || wanted.get().equals(r.fan().offer().id()))
                .findFirst();
        boolean invented = offers.equals(FanClasses.INVENTED);
        List<String> missing = HousePressure.missing(scenario.house());
        List<String> bare = FanPlacement.withoutPipe(scenario);
        if (chosen.isEmpty())
            return new Sizing(
                    scenario,
                    invented,
                    ranking,
                    chosen,
                    List.of(),
                    missing,
                    Optional.empty(),
                    Optional.empty(),
                    List.of(),
                    Optional.empty(),
                    Optional.empty(),
                    List.of(),
                    List.of(),
                    bare);
        Result.Solved solved = chosen.get().solved();
        Scenario fitted = solved.scenario();
        double roomAir = solved.flows().fromRoom();
        boolean cold = missing.isEmpty();
        return new Sizing(
                scenario,
                invented,
                ranking,
                chosen,
                PipeComparison.of(fitted, progress),
                missing,
                cold ? Optional.of(designDay(fitted, roomAir)) : Optional.empty(),
                cold ? Optional.of(WorstDay.heldDownTo(fitted, scenario.target().vacuum(), roomAir)) : Optional.empty(),
                WorstDay.season(fitted, progress),
                Optional.of(YearlyCost.of(fitted, chosen.get().watts(), roomAir)),
                sealed(chosen.get()),
                HousePressure.againstLimits(scenario.house(), roomAir),
                scaled(scenario, fitted),
                bare);
    }

    /** The user's fans and the one drawn; invented classes where there is neither. */
    public static List<FanOffer> offers(Scenario scenario) {
        List<FanOffer> offers = new ArrayList<>(scenario.equipment().fans());
        drawn(scenario).ifPresent(offers::add);
        return offers.isEmpty() ? FanClasses.INVENTED : offers;
    }

    /** The fan drawn, where there is one and the same in all places; its curve is taken to hold in the air of the place. */
    private static Optional<FanOffer> drawn(Scenario scenario) {
        if (!FanPlacement.complete(scenario) || scenario.suctionPoints().isEmpty()) return Optional.empty();
        List<FanCurve> curves = scenario.suctionPoints().stream()
                .map(s -> curve(scenario, s))
                .distinct()
                .toList();
        if (curves.size() != 1) return Optional.empty();
        return Optional.of(new FanOffer(
                DRAWN,
                curves.get(0),
                List.of(),
                Solves.air(scenario).density(),
                OptionalDouble.empty(),
                FanOffer.Arrangement.SINGLE,
                false));
    }

    private static FanCurve curve(Scenario scenario, SuctionPoint point) {
        if (point.source() instanceof Source.Fan fan) return fan.curve();
        String riser = ((Source.Branch) point.source()).riser();
        return scenario.equipment().riser(riser).map(Riser::curve).orElseThrow();
    }

    private static HousePressure designDay(Scenario fitted, double roomAir) {
        House.DesignDay day = fitted.house().designDay().orElseThrow();
        return HousePressure.onWorstDay(fitted, day.outdoorTemperature(), roomAir);
    }

    private static Optional<YearlyCost> sealed(FanRanking.Ranked chosen) {
        Scenario tight = chosen.solved().scenario().withAllClosed(Seal.of(SealState.SEALED));
        return Solves.one(tight).map(s -> {
            double watts = FanPlacement.flows(s).values().stream()
                    .mapToDouble(q -> chosen.fan().power(q).orElse(Double.NaN))
                    .sum();
            OptionalDouble power = Double.isNaN(watts) ? OptionalDouble.empty() : OptionalDouble.of(watts);
            return YearlyCost.of(tight, power, s.flows().fromRoom());
        });
    }

    private static List<ScaledStage> scaled(Scenario drawn, Scenario fitted) {
        List<ScaledStage> out = new ArrayList<>();
        for (Stage stage : drawn.stages()) {
            if (stage.kind() != StageKind.COMMUNICATION_TEST || stage.holes().isEmpty()) continue;
            List<TestScaling> holes = TestScaling.of(drawn, stage, fitted);
            if (!holes.isEmpty()) out.add(new ScaledStage(stage.id(), holes));
        }
        return out;
    }
}
