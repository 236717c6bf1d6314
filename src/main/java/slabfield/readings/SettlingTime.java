package slabfield.readings;

import slabfield.law.AirProperties;
import slabfield.law.AirState;
import slabfield.model.Fill;
import slabfield.model.FillWord;
import slabfield.model.Scenario;

/**
 * How long the layer takes to settle after the suction is switched. Air stored in the pores follows the pressure as heat
 * follows temperature, with the diffusivity {@code D = k P / (n mu)} (k permeability [m2], P absolute pressure [Pa], n
 * air-filled porosity, mu viscosity [Pa s]; Johnson et al. 1990 and Bear 1979 use the same storage term), so that the time
 * is {@code t = L^2/D = n L^2 mu / (k P)}. At that time the far end of a strip of length L without leaks has made 89 % of
 * its change (Carslaw and Jaeger 1959, section 3.4); leaks make it quicker.
 */
public final class SettlingTime {
    private SettlingTime() {}

    /**
     * Part of the layer's volume that holds air; assumptions.
     *
     * <p>Clean stone: the porosity for which its permeability is taken. Sand and finer: less than the porosity, since some
     * pores hold water.
     */
    public static double airFilledPorosity(FillWord word) {
        return switch (word) {
            case CLEAN_STONE -> 0.4;
            case VOID -> 1;
            case MIXED, SAND, MEASURED -> 0.3;
            case SILT_OR_CLAY -> 0.2;
        };
    }

    /**
     * Time for a place to settle [s].
     *
     * @param distance L from the suction, not below 0 [m]
     * @param air that moves
     * @param pressure P of the air, absolute, above 0 [Pa]
     */
    public static double of(Fill fill, double distance, AirState air, double pressure) {
        return airFilledPorosity(fill.word())
                * distance
                * distance
                * air.viscosity()
                / (fill.permeability() * pressure);
    }

    /** Time for a place to settle in the air of a scenario [s]. */
    public static double of(Scenario scenario, Fill fill, double distance) {
        AirState air = AirState.of(scenario.air().temperature(), scenario.air().altitude());
        double pressure =
                AirProperties.pressureAtAltitude(scenario.air().altitude().orElse(0));
        return of(fill, distance, air, pressure);
    }
}
