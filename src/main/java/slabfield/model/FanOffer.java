package slabfield.model;

import java.util.List;
import java.util.OptionalDouble;

/**
 * A fan to choose from.
 *
 * @param id what the user calls it
 * @param curve pressure rise against flow of one fan
 * @param watts electrical power at each point of the curve; empty where it is not known [W]
 * @param density of the air for which the curve holds [kg/m3]
 * @param steadyFrom least flow at which it runs steadily, if known [m3/s]
 * @param arrangement whether one is built in or two of it
 * @param invented true where no real fan stands behind it
 */
public record FanOffer(
        String id,
        Source.FanCurve curve,
        List<Double> watts,
        double density,
        OptionalDouble steadyFrom,
        Arrangement arrangement,
        boolean invented) {
    /** Standard air of 20 C at sea level [kg/m3]. */
    public static final double STANDARD_DENSITY = 1.204;

    /** How many are built in, and how. */
    public enum Arrangement {
        SINGLE("single"),
        TWO_IN_PARALLEL("two in parallel"),
        TWO_IN_SERIES("two in series");

        private final String words;

        Arrangement(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public FanOffer {
        Check.name("id", id);
        Check.present("curve", curve);
        watts = Check.list("power", watts);
        watts.forEach(w -> Check.notNegative("power", w));
        if (!watts.isEmpty() && watts.size() != curve.flows().size())
            throw new ImpossibleValue("power", "needs one value for each point of the curve");
        Check.positive("density", density);
        Check.present("steadyFrom", steadyFrom).ifPresent(q -> Check.notNegative("steadyFrom", q));
        Check.present("arrangement", arrangement);
    }
}
