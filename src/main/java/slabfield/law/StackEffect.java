package slabfield.law;

/**
 * Pressure difference between two columns of air of different temperature.
 *
 * @see "StackEffectTest"
 */
public final class StackEffect {
    private static final double GRAVITY = 9.80665;

    private StackEffect() {}

    /**
     * Weight of the outdoor column less that of the indoor column: {@code dp = P g/R (1/To - 1/Ti) h}, which is
     * {@code 3461.6 (1/To - 1/Ti) h} at sea level. Hydrostatics of an ideal gas of the same pressure on both sides.
     *
     * @param indoor Ti, above 0 [K]
     * @param outdoor To, above 0 [K]
     * @param height h, from the floor up to the neutral level [m]
     * @param airPressure P, absolute; {@link AirProperties#SEA_LEVEL_PRESSURE} where nothing better is known [Pa]
     * @return outdoor minus indoor pressure at the floor, above 0 where it is warmer inside [Pa]
     */
    public static double pressureDifference(double indoor, double outdoor, double height, double airPressure) {
        return GRAVITY
                * height
                * (AirProperties.density(airPressure, outdoor) - AirProperties.density(airPressure, indoor));
    }
}
