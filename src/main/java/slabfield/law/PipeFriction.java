package slabfield.law;

/**
 * Pressure loss of a suction pipe: {@code dp = (f (L + 30 D n)/D + K) rho V^2/2}, odd in the flow.
 *
 * <p>f is Darcy's friction factor: 64/Re up to Re 2300 (Hagen and Poiseuille), Colebrook's (1939) from Re 4000 on, a
 * straight line in f between. A bend of 90 degrees counts as 30 diameters of pipe (handbook value; sources differ by
 * some 30 %, bends of long radius have half).
 *
 * <p>Symbols: D inside diameter [m], L straight length [m], n number of bends, K sum of loss coefficients of fittings
 * [-], V mean velocity [m/s], rho density [kg/m3], mu viscosity [Pa s], Re = rho V D/mu.
 *
 * @see "PipeFrictionTest"
 */
public final class PipeFriction {
    private static final double LAMINAR_UP_TO = 2300;
    private static final double TURBULENT_FROM = 4000;
    private static final double DIAMETERS_PER_BEND = 30;
    private static final double TWO_OVER_LN10 = 2 / Math.log(10);
    private static final double RELATIVE_STEP = 1e-14;
    private static final int MOST_STEPS = 50;

    private PipeFriction() {}

    /**
     * Darcy's friction factor over all regimes, continuous in Re.
     *
     * @param reynolds Re, above 0 [-]
     * @param relativeRoughness height of the roughness over the diameter, 0 to 0.5 [-]
     * @return f [-]
     */
    public static double frictionFactor(double reynolds, double relativeRoughness) {
        Require.positive("Reynolds number", reynolds);
        if (reynolds <= LAMINAR_UP_TO) return 64 / reynolds;
        if (reynolds >= TURBULENT_FROM) return colebrook(reynolds, relativeRoughness);
        return 64 / LAMINAR_UP_TO + transitionSlope(relativeRoughness) * (reynolds - LAMINAR_UP_TO);
    }

    /**
     * Friction factor of turbulent flow, {@code 1/sqrt f = -2 log10(e/3.7 + 2.51/(Re sqrt f))} (Colebrook 1939), to
     * rounding.
     *
     * @param reynolds Re, at least 2300 [-]
     * @param relativeRoughness e, 0 to 0.5; measured up to 0.05 [-]
     * @return f [-]
     */
    public static double colebrook(double reynolds, double relativeRoughness) {
        double x = inverseRoot(reynolds, relativeRoughness);
        return 1 / (x * x);
    }

    /**
     * Loss along the pipe.
     *
     * @param flow q, of either sign [m3/s]
     * @param diameter D, above 0 [m]
     * @param length L, not below 0 [m]
     * @param ells n, not below 0
     * @param fittings K, not below 0 [-]
     * @param roughness height of the wall's roughness, at most half the diameter [m]
     * @param viscosity mu, above 0 [Pa s]
     * @param density rho, above 0 [kg/m3]
     * @return pressure at the inlet minus pressure at the outlet, of the sign of the flow [Pa]
     */
    public static double pressureLoss(
            double flow,
            double diameter,
            double length,
            int ells,
            double fittings,
            double roughness,
            double viscosity,
            double density) {
        double area = Math.PI / 4 * diameter * diameter;
        double velocity = Math.abs(flow) / area;
        double reynolds = density * velocity * diameter / viscosity;
        double diameters = length / diameter + DIAMETERS_PER_BEND * ells;
        double head = density * velocity * velocity / 2;
        double friction = reynolds <= LAMINAR_UP_TO
                ? 32 * viscosity * velocity / diameter
                : frictionFactor(reynolds, roughness / diameter) * head;
        return Math.copySign(diameters * friction + fittings * head, flow);
    }

    /**
     * Exact d loss / d flow; the arguments are those of {@link #pressureLoss}.
     *
     * @return above 0 where there is any friction; with fittings alone 0 at no flow [Pa s/m3]
     */
    public static double pressureLossSlope(
            double flow,
            double diameter,
            double length,
            int ells,
            double fittings,
            double roughness,
            double viscosity,
            double density) {
        double area = Math.PI / 4 * diameter * diameter;
        double velocity = Math.abs(flow) / area;
        double reynolds = density * velocity * diameter / viscosity;
        double diameters = length / diameter + DIAMETERS_PER_BEND * ells;
        double momentum = density * velocity;
        double friction = 32 * viscosity / diameter;
        if (reynolds > LAMINAR_UP_TO) {
            double e = roughness / diameter;
            friction = momentum * (frictionFactor(reynolds, e) + reynolds / 2 * frictionFactorSlope(reynolds, e));
        }
        return (diameters * friction + fittings * momentum) / area;
    }

    /** df/dRe above the laminar range; Colebrook's gives Re/f df/dRe above -2, so the loss always rises with flow. */
    private static double frictionFactorSlope(double reynolds, double relativeRoughness) {
        if (reynolds < TURBULENT_FROM) return transitionSlope(relativeRoughness);
        double x = inverseRoot(reynolds, relativeRoughness);
        double inner = relativeRoughness / 3.7 + 2.51 * x / reynolds;
        double share = TWO_OVER_LN10 * 2.51 / (reynolds * inner);
        double slopeOfX = x / reynolds * share / (1 + share);
        return -2 * slopeOfX / (x * x * x);
    }

    private static double transitionSlope(double relativeRoughness) {
        return (colebrook(TURBULENT_FROM, relativeRoughness) - 64 / LAMINAR_UP_TO) / (TURBULENT_FROM - LAMINAR_UP_TO);
    }

    /**
     * x = 1/sqrt f: the root of {@code x + 2 log10(e/3.7 + 2.51 x/Re)}, which rises and bends downwards, so that
     * Newton's steps close in on it from below after the first.
     */
    private static double inverseRoot(double reynolds, double relativeRoughness) {
        if (!(reynolds >= LAMINAR_UP_TO))
            throw new IllegalArgumentException("Colebrook's formula needs Re of at least 2300, but Re is " + reynolds);
        Require.within("relative roughness", 0, 0.5, relativeRoughness);
        double x = -1.8 * Math.log10(Math.pow(relativeRoughness / 3.7, 1.11) + 6.9 / reynolds);
        for (int i = 0; i < MOST_STEPS; i++) {
            double inner = relativeRoughness / 3.7 + 2.51 * x / reynolds;
            double step = -(x + TWO_OVER_LN10 * Math.log(inner)) / (1 + TWO_OVER_LN10 * 2.51 / (reynolds * inner));
            x += step;
            if (Math.abs(step) <= RELATIVE_STEP * x) break;
        }
        return x;
    }
}
