package slabfield.equipment;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import slabfield.model.FanOffer;
import slabfield.model.Scenario;
import slabfield.model.Source.FanCurve;

/**
 * A fan, or two of it, in the air of the place: its curve there and its power.
 *
 * @param offer as the user gives it
 * @param curve pressure rise against flow of the whole
 * @param densityRatio density of the air moved over that for which the given curve holds
 */
public record InstalledFan(FanOffer offer, FanCurve curve, double densityRatio) {
    /** Part of the curve's last flow from which a fan counts as running at the end of its curve. */
    static final double END_OF_CURVE = 0.9;

    /**
     * Installs a fan.
     *
     * @param density of the air that it moves, above 0 [kg/m3]
     */
    public static InstalledFan of(FanOffer offer, double density) {
        FanCurve one = FanCurves.atDensity(offer.curve(), offer.density(), density);
        FanCurve all = switch (offer.arrangement()) {
            case SINGLE -> one;
            case TWO_IN_PARALLEL -> FanCurves.parallel(one, one);
            case TWO_IN_SERIES -> FanCurves.series(one, one);
        };
        return new InstalledFan(offer, all, density / offer.density());
    }

    /** Installs a fan in a house, in the air there. */
    public static InstalledFan in(Scenario house, FanOffer offer) {
        return of(offer, Solves.air(house).density());
    }

    /**
     * Electrical power, on straight lines between the given points, held beyond them, in proportion to the density.
     *
     * @param flow through the whole [m3/s]
     * @return empty where the user gave no power [W]
     */
    public OptionalDouble power(double flow) {
        List<Double> watts = offer.watts();
        if (watts.isEmpty()) return OptionalDouble.empty();
        boolean parallel = offer.arrangement() == FanOffer.Arrangement.TWO_IN_PARALLEL;
        double each = parallel ? flow / 2 : flow;
        int number = offer.arrangement() == FanOffer.Arrangement.SINGLE ? 1 : 2;
        return OptionalDouble.of(number * densityRatio * between(offer.curve().flows(), watts, each));
    }

    private static double between(List<Double> flows, List<Double> watts, double flow) {
        int last = flows.size() - 1;
        if (flow <= flows.get(0)) return watts.get(0);
        if (flow >= flows.get(last)) return watts.get(last);
        int i = 0;
        while (flow > flows.get(i + 1)) i++;
        double part = (flow - flows.get(i)) / (flows.get(i + 1) - flows.get(i));
        return watts.get(i) + part * (watts.get(i + 1) - watts.get(i));
    }

    /** What is doubtful about running at a flow, in plain sentences without numbers. */
    public List<String> warnings(double flow) {
        List<String> out = new ArrayList<>();
        List<Double> flows = curve.flows();
        double last = flows.get(flows.size() - 1);
        if (flow > last) out.add("It runs beyond the last point of its curve; nothing is known of it there.");
        else if (flow > END_OF_CURVE * last)
            out.add("It runs at the end of its curve: it has no vacuum to spare where more air comes.");
        if (flow < flows.get(0)) out.add("It runs left of the first point of its curve; nothing is known of it there.");
        boolean parallel = offer.arrangement() == FanOffer.Arrangement.TWO_IN_PARALLEL;
        double each = parallel ? flow / 2 : flow;
        if (offer.steadyFrom().isPresent() && each < offer.steadyFrom().getAsDouble())
            out.add("It runs below the flow from which it is steady: it may stall.");
        return out;
    }
}
