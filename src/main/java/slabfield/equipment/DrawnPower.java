package slabfield.equipment;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import slabfield.field.Result;
import slabfield.model.FanOffer;
import slabfield.model.Riser;
import slabfield.model.Scenario;
import slabfield.model.Source;

/** Power of the fans that a house is drawn with, where its list of fans holds them. */
public final class DrawnPower {
    private DrawnPower() {}

    /**
     * Power of all fans together at the flows solved: those of {@link InstalledFan#power} of the listed fan that has the
     * drawn curve, as given or in the air of the place.
     *
     * @return empty where nothing or something other than a fan draws, or a drawn fan is not listed with its power [W]
     * @see "DrawnPowerTest"
     */
    public static OptionalDouble of(Result.Solved solved) {
        Scenario scenario = solved.scenario();
        Map<String, Double> flows = FanPlacement.flows(solved);
        double density = Solves.air(scenario).density(), sum = 0;
        for (Map.Entry<String, Double> place : flows.entrySet()) {
            List<Source.FanCurve> curve = curve(scenario, place.getKey());
            if (curve.isEmpty()) return OptionalDouble.empty();
            OptionalDouble watts = power(scenario, curve.get(0), density, place.getValue());
            if (watts.isEmpty()) return watts;
            sum += watts.getAsDouble();
        }
        return flows.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(sum);
    }

    private static List<Source.FanCurve> curve(Scenario scenario, String place) {
        Stream<Source.FanCurve> own = scenario.suctionPoint(place).stream()
                .flatMap(s -> s.source() instanceof Source.Fan f ? Stream.of(f.curve()) : Stream.empty());
        return Stream.concat(own, scenario.equipment().riser(place).stream().map(Riser::curve))
                .toList();
    }

    private static OptionalDouble power(Scenario scenario, Source.FanCurve drawn, double density, double flow) {
        for (FanOffer offer : scenario.equipment().fans()) {
            InstalledFan fan = InstalledFan.of(offer, density);
            if (offer.curve().equals(drawn) || fan.curve().equals(drawn)) return fan.power(flow);
        }
        return OptionalDouble.empty();
    }
}
