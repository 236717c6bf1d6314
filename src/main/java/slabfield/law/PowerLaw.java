package slabfield.law;

/**
 * A leak between viscous and inertial, with a linear resistance R in series: {@code q = C d^n}, d = dp - R q.
 *
 * <p>Below d = {@link Orifice#LINEAR_BELOW} the power gives way to the line through zero that meets it there. The usual
 * law of airtightness tests; n is near 0.65 for crack-like leaks (common practice).
 *
 * @param coefficient C, above 0 [m3/(s Pa^n)]
 * @param exponent n, 0.5 (inertial) to 1 (viscous) [-]
 * @param series R, not below 0 [Pa s/m3]
 * @see "PowerLawTest, FlowLawContractTest"
 */
public record PowerLaw(double coefficient, double exponent, double series) implements FlowLaw {
    private static final double RELATIVE_STEP = 1e-15;
    private static final int MOST_STEPS = 100;

    public PowerLaw {
        Require.positive("leakage coefficient", coefficient);
        Require.within("leakage exponent", 0.5, 1, exponent);
        Require.notNegative("series resistance", series);
    }

    /**
     * This law with a further linear resistance in series.
     *
     * @param seriesResistance added to R, not below 0 [Pa s/m3]
     */
    public PowerLaw behind(double seriesResistance) {
        return new PowerLaw(coefficient, exponent, series + Require.notNegative("series resistance", seriesResistance));
    }

    @Override
    public double flow(double difference) {
        return Math.copySign(ownFlow(ownDrop(Math.abs(difference))), difference);
    }

    @Override
    public double slope(double difference) {
        return 1 / (series + 1 / ownSlope(ownDrop(Math.abs(difference))));
    }

    /**
     * The part d of a drop that falls across the leak itself: the root of {@code d + R q(d) - drop}.
     *
     * <p>That function rises and bends downwards, so Newton's steps from d = 0 only ever go up and never past the root:
     * no step has to be guarded, and the first that no longer goes up is the end.
     */
    private double ownDrop(double drop) {
        if (series == 0) return drop;
        double own = 0;
        for (int i = 0; i < MOST_STEPS; i++) {
            double step = (drop - own - series * ownFlow(own)) / (1 + series * ownSlope(own));
            if (step <= RELATIVE_STEP * own) break;
            own += step;
        }
        return own;
    }

    private double ownFlow(double own) {
        return own < Orifice.LINEAR_BELOW ? own * ownSlope(own) : coefficient * Math.pow(own, exponent);
    }

    private double ownSlope(double own) {
        return own < Orifice.LINEAR_BELOW
                ? coefficient * Math.pow(Orifice.LINEAR_BELOW, exponent - 1)
                : exponent * coefficient * Math.pow(own, exponent - 1);
    }
}
