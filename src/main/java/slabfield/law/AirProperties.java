package slabfield.law;

/**
 * Properties of dry air.
 *
 * @see "AirPropertiesTest"
 */
public final class AirProperties {
    /** Pressure of the standard atmosphere at sea level [Pa]. */
    public static final double SEA_LEVEL_PRESSURE = 101325;

    /** Specific gas constant of dry air [J/(kg K)]. */
    static final double GAS_CONSTANT = 287.055;

    private static final double EARTH_RADIUS = 6_356_766;
    private static final double SEA_LEVEL_TEMPERATURE = 288.15;
    private static final double LAPSE_RATE = 0.0065;
    /** g M/(R* L) with the standard's g = 9.80665, M = 0.0289644 kg/mol, R* = 8.31432 J/(mol K) [-]. */
    private static final double PRESSURE_EXPONENT = 9.80665 * 0.0289644 / (8.31432 * LAPSE_RATE);

    private AirProperties() {}

    /**
     * Density of an ideal gas: {@code rho = P/(287.055 T)}.
     *
     * @param pressure P, absolute, above 0 [Pa]
     * @param temperature T, above 0 [K]
     * @return rho [kg/m3]
     */
    public static double density(double pressure, double temperature) {
        return Require.positive("air pressure", pressure)
                / (GAS_CONSTANT * Require.positive("temperature", temperature));
    }

    /**
     * Viscosity after Sutherland: {@code mu = 1.458e-6 T^1.5/(T + 110.4)} (US Standard Atmosphere 1976). It does not
     * depend on the pressure.
     *
     * @param temperature T, above 0 [K]
     * @return mu [Pa s]
     */
    public static double viscosity(double temperature) {
        Require.positive("temperature", temperature);
        return 1.458e-6 * temperature * Math.sqrt(temperature) / (temperature + 110.4);
    }

    /**
     * Pressure of the US Standard Atmosphere 1976: {@code P = 101325 (1 - 0.0065 H/288.15)^5.2559}, H = r z/(r + z).
     *
     * @param altitude z, geometric, -5000 to 11000 [m]
     * @return P, absolute [Pa]
     */
    public static double pressureAtAltitude(double altitude) {
        Require.within("altitude", -5000, 11000, altitude);
        double geopotential = EARTH_RADIUS * altitude / (EARTH_RADIUS + altitude);
        return SEA_LEVEL_PRESSURE * Math.pow(1 - LAPSE_RATE * geopotential / SEA_LEVEL_TEMPERATURE, PRESSURE_EXPONENT);
    }
}
