package slabfield.law;

/**
 * Viscous and inertial loss one after the other: {@code dp = a q + b q |q|}.
 *
 * <p>Solved for the flow without cancellation: {@code q = 2 dp / (a + sqrt(a^2 + 4 b |dp|))}. Where a is 0 the law is
 * a bare square root, and goes over into a line below {@link Orifice#LINEAR_BELOW} as an orifice does.
 *
 * @param linear a, not below 0 [Pa s/m3]
 * @param quadratic b, not below 0, and not 0 together with a [Pa s2/m6]
 * @see "QuadraticResistanceTest, FlowLawContractTest"
 */
public record QuadraticResistance(double linear, double quadratic) implements FlowLaw {
    /** Part of a velocity head lost at the two mouths of a straight crack (Baker, Sharples and Ward 1987) [-]. */
    private static final double STRAIGHT_CRACK_LOSS = 1.5;

    public QuadraticResistance {
        Require.notNegative("linear resistance", linear);
        Require.notNegative("quadratic resistance", quadratic);
        if (linear == 0 && quadratic == 0)
            throw new IllegalArgumentException("linear and quadratic resistance must not both be 0");
    }

    /**
     * A crack or joint through a slab: {@code dp = 12 mu z q/(w^3 L) + rho C q^2/(2 w^2 L^2)}, C = 1.5 + bends.
     *
     * <p>The first term is flow between parallel plates, the second the loss at mouths and bends. For smooth, even
     * cracks much narrower than they are deep; after Baker, Sharples and Ward, Building and Environment 22 (1987).
     *
     * @param width w, gap between the faces, above 0 [m]
     * @param depth z, way of the air through the slab, above 0 [m]
     * @param length L, along the slab, above 0 [m]
     * @param bends sharp turns on the way through, not below 0
     * @param viscosity mu of the air [Pa s]
     * @param density rho of the air [kg/m3]
     */
    public static QuadraticResistance crack(
            double width, double depth, double length, int bends, double viscosity, double density) {
        Require.positive("crack width", width);
        Require.positive("crack depth", depth);
        Require.positive("crack length", length);
        Require.notNegative("bends", bends);
        Require.positive("viscosity", viscosity);
        Require.positive("density", density);
        double area = width * length;
        double loss = STRAIGHT_CRACK_LOSS + bends;
        return new QuadraticResistance(
                12 * viscosity * depth / (width * width * area), density * loss / (2 * area * area));
    }

    /**
     * This law with a linear resistance R in series: a + R.
     *
     * @param seriesResistance R, not below 0 [Pa s/m3]
     */
    public QuadraticResistance behind(double seriesResistance) {
        return new QuadraticResistance(linear + Require.notNegative("series resistance", seriesResistance), quadratic);
    }

    @Override
    public double flow(double difference) {
        if (isBelowRoot(difference)) return difference * slope(difference);
        return 2 * difference / (linear + rootOfDiscriminant(difference));
    }

    @Override
    public double slope(double difference) {
        if (isBelowRoot(difference)) return 1 / Math.sqrt(quadratic * Orifice.LINEAR_BELOW);
        return 1 / rootOfDiscriminant(difference);
    }

    private boolean isBelowRoot(double difference) {
        return linear == 0 && Math.abs(difference) < Orifice.LINEAR_BELOW;
    }

    private double rootOfDiscriminant(double difference) {
        return Math.sqrt(linear * linear + 4 * quadratic * Math.abs(difference));
    }
}
