package slabfield.law;

/**
 * Friction along a stretch of corrugated drain tile: {@code |dp| = max(a |q|, b q^2)}.
 *
 * <p>Laminar flow up to where the two terms cross, at q = a/b, and fully rough flow beyond; no transition between, so
 * the slope halves at the crossing. The momentum that joining air takes is not in it.
 *
 * @param laminar a, above 0 [Pa s/m3]
 * @param turbulent b, above 0 [Pa s2/m6]
 * @see "TileFrictionTest, FlowLawContractTest"
 */
public record TileFriction(double laminar, double turbulent) implements FlowLaw {
    private static final double GRAVITY = 9.80665;

    public TileFriction {
        Require.positive("laminar resistance", laminar);
        Require.positive("turbulent resistance", turbulent);
    }

    /**
     * A stretch of pipe: a = 128 mu L/(pi D^4) (Hagen and Poiseuille), b = f L rho/(2 D A^2) (Darcy and Weisbach).
     *
     * @param diameter D, inside, above 0 [m]
     * @param manning n after Manning, above 0, about 0.017 for corrugated pipe of 100 mm [s/m^(1/3)]
     * @param length L, above 0 [m]
     * @param viscosity mu of the air [Pa s]
     * @param density rho of the air [kg/m3]
     */
    public static TileFriction corrugated(
            double diameter, double manning, double length, double viscosity, double density) {
        double friction = darcyFrictionFactor(manning, diameter);
        Require.positive("tile length", length);
        Require.positive("viscosity", viscosity);
        Require.positive("density", density);
        double area = Math.PI / 4 * diameter * diameter;
        return new TileFriction(
                128 * viscosity * length / (Math.PI * Math.pow(diameter, 4)),
                friction * length * density / (2 * diameter * area * area));
    }

    /**
     * Darcy's friction factor of a full pipe from Manning's n: {@code f = 8 g n^2/(D/4)^(1/3) = 124.54 n^2/D^(1/3)}.
     *
     * <p>For fully rough flow, so it depends neither on the velocity nor on the fluid and holds for air as for water;
     * Manning's and Darcy's formulas set equal at the hydraulic radius D/4.
     *
     * @param manning n, above 0 [s/m^(1/3)]
     * @param diameter D, above 0 [m]
     * @return f [-]
     */
    public static double darcyFrictionFactor(double manning, double diameter) {
        Require.positive("Manning's n", manning);
        Require.positive("tile diameter", diameter);
        return 8 * GRAVITY * manning * manning / Math.cbrt(diameter / 4);
    }

    @Override
    public double flow(double difference) {
        double drop = Math.abs(difference);
        return Math.copySign(isLaminar(drop) ? drop / laminar : Math.sqrt(drop / turbulent), difference);
    }

    @Override
    public double slope(double difference) {
        double drop = Math.abs(difference);
        return isLaminar(drop) ? 1 / laminar : 0.5 / Math.sqrt(turbulent * drop);
    }

    private boolean isLaminar(double drop) {
        return drop <= laminar * laminar / turbulent;
    }
}
