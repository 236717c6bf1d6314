package slabfield.equipment;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import slabfield.field.Result;
import slabfield.model.FanOffer;
import slabfield.model.Riser;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.Source.FanCurve;
import slabfield.model.Source.Pipe;
import slabfield.model.SuctionPoint;

/** Where a system's fans sit: one behind each suction point with a pipe of its own, one on each riser in use. */
public final class FanPlacement {
    /** A curve that no fan has. */
    private static final FanCurve NO_FAN = new FanCurve(List.of(0.0, 1.0), List.of(0.0, -1.0));

    private FanPlacement() {}

    /**
     * The house with one fan in every place. Suction points held at a pressure or drawing a fixed flow get the fan behind
     * the planned pipe.
     */
    public static Scenario with(Scenario scenario, FanCurve curve) {
        List<Pipe> planned = scenario.equipment().plannedRun();
        List<SuctionPoint> points = scenario.suctionPoints().stream()
                .map(s -> s.source() instanceof Source.Branch ? s : s.drawnBy(fan(s.source(), curve, planned)))
                .toList();
        List<Riser> risers = scenario.equipment().risers().stream()
                .map(r -> new Riser(r.id(), curve, r.run(), r.discharge()))
                .toList();
        return scenario.withSuctionPoints(points)
                .withEquipment(scenario.equipment().withRisers(risers));
    }

    private static Source fan(Source source, FanCurve curve, List<Pipe> planned) {
        return source instanceof Source.Fan fan
                ? new Source.Fan(curve, fan.run(), fan.discharge())
                : new Source.Fan(curve, planned, 0);
    }

    /** The house with each stretch of pipe changed. */
    public static Scenario withPipes(Scenario scenario, UnaryOperator<Pipe> change) {
        List<SuctionPoint> points = scenario.suctionPoints().stream()
                .map(s -> s.drawnBy(changed(s.source(), change)))
                .toList();
        List<Riser> risers = scenario.equipment().risers().stream()
                .map(r -> new Riser(r.id(), r.curve(), changed(r.run(), change), r.discharge()))
                .toList();
        return scenario.withSuctionPoints(points)
                .withEquipment(scenario.equipment().withRisers(risers));
    }

    private static Source changed(Source source, UnaryOperator<Pipe> change) {
        if (source instanceof Source.Fan fan)
            return new Source.Fan(fan.curve(), changed(fan.run(), change), fan.discharge());
        if (source instanceof Source.Branch b) return new Source.Branch(b.riser(), changed(b.run(), change));
        return source;
    }

    private static List<Pipe> changed(List<Pipe> run, UnaryOperator<Pipe> change) {
        return run.stream().map(change).toList();
    }

    /** The house with the pressure at every discharge raised [Pa]. */
    static Scenario withDischarge(Scenario scenario, double raised) {
        List<SuctionPoint> points = scenario.suctionPoints().stream()
                .map(s -> s.source() instanceof Source.Fan f
                        ? s.drawnBy(new Source.Fan(f.curve(), f.run(), f.discharge() + raised))
                        : s)
                .toList();
        List<Riser> risers = scenario.equipment().risers().stream()
                .map(r -> new Riser(r.id(), r.curve(), r.run(), r.discharge() + raised))
                .toList();
        return scenario.withSuctionPoints(points)
                .withEquipment(scenario.equipment().withRisers(risers));
    }

    /** True where every suction point is drawn by a fan or joins a riser. */
    public static boolean complete(Scenario scenario) {
        return scenario.suctionPoints().stream()
                .allMatch(s -> s.source() instanceof Source.Fan || s.source() instanceof Source.Branch);
    }

    /** Suction points that would get a fan without any pipe, whose loss would be left out. */
    public static List<String> withoutPipe(Scenario scenario) {
        boolean planned = !scenario.equipment().plannedRun().isEmpty();
        List<String> out = new ArrayList<>();
        for (SuctionPoint s : scenario.suctionPoints()) {
            boolean fan = s.source() instanceof Source.Fan f && !f.run().isEmpty();
            if (!fan && !(s.source() instanceof Source.Branch) && (s.source() instanceof Source.Fan || !planned))
                out.add(s.id());
        }
        return out;
    }

    /**
     * Electrical power of all fans together, where each place has the curve of one of the fans to choose from [W].
     *
     * @param offers to find the fans among
     */
    public static OptionalDouble watts(Result.Solved solved, List<FanOffer> offers) {
        double sum = 0;
        List<InstalledFan> known =
                offers.stream().map(o -> InstalledFan.in(solved.scenario(), o)).toList();
        for (Map.Entry<String, Double> place : flows(solved).entrySet()) {
            FanCurve curve = curve(solved.scenario(), place.getKey());
            sum += known.stream()
                    .filter(f -> f.curve().equals(curve))
                    .findFirst()
                    .map(f -> f.power(place.getValue()).orElse(Double.NaN))
                    .orElse(Double.NaN);
        }
        return Double.isNaN(sum) ? OptionalDouble.empty() : OptionalDouble.of(sum);
    }

    /** Curve of the fan in a place; none where a pressure or a flow is given. */
    private static FanCurve curve(Scenario scenario, String place) {
        Optional<SuctionPoint> point = scenario.suctionPoint(place);
        if (point.isPresent()) return point.get().source() instanceof Source.Fan fan ? fan.curve() : NO_FAN;
        return scenario.equipment().riser(place).map(Riser::curve).orElse(NO_FAN);
    }

    /** Flow through the fan in each place, by the name of the suction point or riser [m3/s]. */
    public static Map<String, Double> flows(Result.Solved solved) {
        Map<String, Double> out = new LinkedHashMap<>();
        for (SuctionPoint s : solved.scenario().suctionPoints()) {
            double flow = solved.suction(s.id()).orElseThrow().flow();
            String place = s.source() instanceof Source.Branch b ? b.riser() : s.id();
            out.merge(place, flow, Double::sum);
        }
        return out;
    }
}
