package slabfield.law;

/**
 * A sharp-edged hole, with a linear resistance in series: {@code dp = R q + b q |q|}, b = rho/(2 Cd^2 A^2).
 *
 * <p>The slope of a square root has no bound at zero, so the hole's own drop goes over into the line
 * {@code sqrt(b d0) q} where it is below d0 = {@link #LINEAR_BELOW}. The flow stays continuous and rising; its slope
 * halves there when R is 0.
 *
 * <p>Source: Bernoulli's equation with a discharge coefficient, 0.60 to 0.65 for sharp edges (common practice).
 *
 * @param quadratic b, above 0 [Pa s2/m6]
 * @param series R, not below 0 [Pa s/m3]
 * @see "OrificeTest, FlowLawContractTest"
 */
public record Orifice(double quadratic, double series) implements FlowLaw {
    /** Own drop below which a square-root law is a line [Pa]. */
    public static final double LINEAR_BELOW = 1e-3;

    public Orifice {
        Require.positive("quadratic resistance", quadratic);
        Require.notNegative("series resistance", series);
    }

    /**
     * A hole with nothing in series: {@code q = Cd A sqrt(2 dp/rho)}.
     *
     * @param area A, above 0 [m2]
     * @param dischargeCoefficient Cd, above 0, 0.61 where nothing better is known [-]
     * @param density rho of the air [kg/m3]
     */
    public static Orifice of(double area, double dischargeCoefficient, double density) {
        double effective = Require.positive("opening area", area)
                * Require.positive("discharge coefficient", dischargeCoefficient);
        return new Orifice(Require.positive("density", density) / (2 * effective * effective), 0);
    }

    /**
     * This law with a further linear resistance in series.
     *
     * @param seriesResistance added to R, not below 0 [Pa s/m3]
     */
    public Orifice behind(double seriesResistance) {
        return new Orifice(quadratic, series + Require.notNegative("series resistance", seriesResistance));
    }

    @Override
    public double flow(double difference) {
        if (isLine(difference)) return difference / lineResistance();
        return 2 * difference / (series + rootOfDiscriminant(difference));
    }

    @Override
    public double slope(double difference) {
        return isLine(difference) ? 1 / lineResistance() : 1 / rootOfDiscriminant(difference);
    }

    private boolean isLine(double difference) {
        return Math.abs(difference) < LINEAR_BELOW + series * Math.sqrt(LINEAR_BELOW / quadratic);
    }

    private double lineResistance() {
        return series + Math.sqrt(quadratic * LINEAR_BELOW);
    }

    private double rootOfDiscriminant(double difference) {
        return Math.sqrt(series * series + 4 * quadratic * Math.abs(difference));
    }
}
