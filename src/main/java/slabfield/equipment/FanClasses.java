package slabfield.equipment;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import slabfield.model.FanOffer;
import slabfield.model.Source.FanCurve;

/**
 * Fans for a first idea, where the user has given none. <b>All are invented</b>: no real fan stands behind any of them.
 * Each has the curve {@code p = p0 (1 - (Q/Q0)^2)} at eleven points and a power that does not change with the flow.
 */
public final class FanClasses {
    private static final int STEPS = 10;

    /** From the weakest to the strongest. */
    public static final List<FanOffer> INVENTED = List.of(
            invented("low class (invented)", 200, 0.07, 20),
            invented("middle class (invented)", 400, 0.085, 55),
            invented("strong class (invented)", 750, 0.1, 110),
            invented("high-suction class (invented)", 4500, 0.025, 250));

    /** A wet/dry vacuum for a communication test. Put a valve into its pipe to throttle it. */
    public static final FanOffer TEST_VACUUM = invented("test vacuum (invented)", 18000, 0.045, 1100);

    private FanClasses() {}

    private static FanOffer invented(String name, double shutOff, double freeFlow, double watts) {
        List<Double> flows = new ArrayList<>(), rises = new ArrayList<>(), power = new ArrayList<>();
        for (int i = 0; i <= STEPS; i++) {
            double part = (double) i / STEPS;
            flows.add(part * freeFlow);
            rises.add(shutOff * (1 - part * part));
            power.add(watts);
        }
        return new FanOffer(
                name,
                new FanCurve(flows, rises),
                power,
                FanOffer.STANDARD_DENSITY,
                OptionalDouble.empty(),
                FanOffer.Arrangement.SINGLE,
                true);
    }
}
