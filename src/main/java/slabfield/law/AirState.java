package slabfield.law;

import java.util.OptionalDouble;

/**
 * What the flow laws need to know of the air.
 *
 * @param viscosity above 0 [Pa s]
 * @param density above 0 [kg/m3]
 * @see "AirPropertiesTest"
 */
public record AirState(double viscosity, double density) {
    /** Air of 20 C and 101325 Pa, rounded as is the custom. */
    public static final AirState STANDARD = new AirState(1.81e-5, 1.204);

    /** 20 C [K]. */
    private static final double ROOM_TEMPERATURE = 293.15;

    public AirState {
        Require.positive("viscosity", viscosity);
        Require.positive("density", density);
    }

    /**
     * Air of a temperature, under the standard atmosphere's pressure at an altitude.
     *
     * @param temperature above 0 [K]
     * @param altitude above the sea, -5000 to 11000 [m]
     */
    public static AirState of(double temperature, double altitude) {
        double pressure = AirProperties.pressureAtAltitude(altitude);
        return new AirState(AirProperties.viscosity(temperature), AirProperties.density(pressure, temperature));
    }

    /** Air of which temperature [K], altitude [m] or both may be unknown: 20 C, sea level; where both are, {@link #STANDARD}. */
    public static AirState of(OptionalDouble temperature, OptionalDouble altitude) {
        return temperature.isEmpty() && altitude.isEmpty()
                ? STANDARD
                : of(temperature.orElse(ROOM_TEMPERATURE), altitude.orElse(0));
    }
}
