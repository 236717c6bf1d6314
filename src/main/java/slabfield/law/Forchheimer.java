package slabfield.law;

/**
 * Flow through coarse stone: {@code -grad p = (mu/k) v + beta rho |v| v} (Forchheimer 1901).
 *
 * <p>Symbols: v Darcy velocity, a vector [m/s]; k permeability [m2]; beta inertial coefficient, 0 for Darcy's law
 * [1/m]; mu viscosity [Pa s]; rho density [kg/m3]. |v| is the size of the whole vector, not a component of it. With
 * m = k/mu and c = beta rho k/mu the law is {@code v = -m s grad p}, where s, the mobility ratio, depends on |grad p|
 * alone.
 *
 * @see "ForchheimerTest"
 */
public final class Forchheimer {
    private Forchheimer() {}

    /**
     * Share of Darcy's velocity that is left with inertia: {@code s = 2/(1 + sqrt(1 + 4 c m |grad p|))}.
     *
     * @param gradient |grad p|, not below 0 [Pa/m]
     * @param permeability k [m2]
     * @param inertial beta [1/m]
     * @param viscosity mu [Pa s]
     * @param density rho [kg/m3]
     * @return above 0, at most 1 [-]
     */
    public static double mobilityRatio(
            double gradient, double permeability, double inertial, double viscosity, double density) {
        return 2 / (1 + Math.sqrt(1 + 4 * inertia(permeability, inertial, viscosity, density) * gradient));
    }

    /**
     * d s / d |grad p| = {@code -4 c m/(w (1 + w)^2)}, w = sqrt(1 + 4 c m |grad p|); the arguments are those of
     * {@link #mobilityRatio}.
     *
     * @return 0 or below [m/Pa]
     */
    public static double mobilityRatioSlope(
            double gradient, double permeability, double inertial, double viscosity, double density) {
        double cm = inertia(permeability, inertial, viscosity, density);
        double root = Math.sqrt(1 + 4 * cm * gradient);
        return -4 * cm / (root * (1 + root) * (1 + root));
    }

    /**
     * Permeability of a bed of equal spheres: {@code k = e^3 d^2/(150 (1 - e)^2)} (Ergun 1952).
     *
     * <p>Aggregate with fines lies well below it.
     *
     * @param diameter d of the grains, above 0 [m]
     * @param porosity e, 0 to 1 [-]
     * @return k [m2]
     */
    public static double ergunPermeability(double diameter, double porosity) {
        double solid = solidShare(diameter, porosity);
        return porosity * porosity * porosity * diameter * diameter / (150 * solid * solid);
    }

    /**
     * Inertial coefficient of a bed of equal spheres: {@code beta = 1.75 (1 - e)/(e^3 d)} (Ergun 1952); the arguments
     * are those of {@link #ergunPermeability}.
     *
     * @return beta [1/m]
     */
    public static double ergunInertial(double diameter, double porosity) {
        return 1.75 * solidShare(diameter, porosity) / (porosity * porosity * porosity * diameter);
    }

    /**
     * Inertial coefficient where only the permeability is known: {@code beta = 0.55/sqrt(k)} (Ward 1964).
     *
     * @param permeability k, above 0 [m2]
     * @return beta [1/m]
     */
    public static double wardInertial(double permeability) {
        return 0.55 / Math.sqrt(Require.positive("permeability", permeability));
    }

    /**
     * Drop between two radii around a well in a layer that lets nothing through above or below:
     * {@code dp = mu q/(2 pi k h) ln(r2/r1) + beta rho q^2/(4 pi^2 h^2) (1/r1 - 1/r2)}, the law integrated with
     * v = q/(2 pi r h).
     *
     * @param flow q towards the well, not below 0 [m3/s]
     * @param inner r1, above 0 [m]
     * @param outer r2, at least r1 [m]
     * @param thickness h of the layer, above 0 [m]
     * @param permeability k [m2]
     * @param inertial beta [1/m]
     * @param viscosity mu [Pa s]
     * @param density rho [kg/m3]
     * @return pressure at r2 minus pressure at r1 [Pa]
     */
    public static double radialPressureDrop(
            double flow,
            double inner,
            double outer,
            double thickness,
            double permeability,
            double inertial,
            double viscosity,
            double density) {
        double perRadian = flow / (2 * Math.PI * thickness);
        return viscosity / permeability * perRadian * Math.log(outer / inner)
                + inertial * density * perRadian * perRadian * (1 / inner - 1 / outer);
    }

    /** c m [m/Pa]. */
    private static double inertia(double permeability, double inertial, double viscosity, double density) {
        double mobility = permeability / viscosity;
        return inertial * density * mobility * mobility;
    }

    private static double solidShare(double diameter, double porosity) {
        Require.positive("grain diameter", diameter);
        if (!(porosity > 0 && porosity < 1))
            throw new IllegalArgumentException("porosity must lie between 0 and 1, but is " + porosity);
        return 1 - porosity;
    }
}
