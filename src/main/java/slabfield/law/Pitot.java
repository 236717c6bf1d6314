package slabfield.law;

/**
 * Velocity and flow from the velocity pressure of a pitot tube, {@code V = sqrt(2 dp/rho)} (Bernoulli).
 *
 * @see "PitotTest"
 */
public final class Pitot {
    private Pitot() {}

    /**
     * Velocity where the tube stands.
     *
     * @param velocityPressure dp, total minus static pressure, not below 0 [Pa]
     * @param density rho, above 0 [kg/m3]
     * @return V [m/s]
     */
    public static double velocity(double velocityPressure, double density) {
        return Math.sqrt(
                2 * Require.notNegative("velocity pressure", velocityPressure) / Require.positive("density", density));
    }

    /**
     * Flow of a duct, {@code q = V A}. True where dp stands for the mean velocity: on the axis of a long straight pipe
     * the velocity is above the mean, and of several places the velocities are to be averaged, not the pressures.
     *
     * @param velocityPressure dp, not below 0 [Pa]
     * @param area A, cross-section of the duct, above 0 [m2]
     * @param density rho, above 0 [kg/m3]
     * @return q [m3/s]
     */
    public static double flow(double velocityPressure, double area, double density) {
        return velocity(velocityPressure, density) * Require.positive("duct area", area);
    }
}
