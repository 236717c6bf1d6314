package slabfield.equipment;

import java.util.OptionalDouble;
import slabfield.law.AirProperties;
import slabfield.model.House;
import slabfield.model.Scenario;

/**
 * What a system uses and costs in a year of 365 days: power of the fans, and heat for the air that replaces the room air
 * drawn out. Cooling, drying and wear are left out. Money is in the user's currency and only where the user gave prices.
 *
 * <p>How much the house's ventilation grows lies between two bounds: the exhaust and the natural leakage qn add in
 * quadrature, {@code sqrt(qn^2 + q^2) - qn} (handbook rule for unbalanced exhaust, ASHRAE 2009), or all of q is added. The
 * lower bound needs qn.
 *
 * @param roomAir q drawn from the room [m3/s]
 * @param addedLeast growth in quadrature; empty where qn is not known [m3/s]
 * @param fanEnergy of a year; empty where no power is known [J]
 * @param heatLeast heat into the air for {@code addedLeast} [J]
 * @param heatMost heat into the air for all of q; empty without degree days or bins [J]
 * @param fanCost empty without a tariff
 * @param heatCostLeast empty without heating, tariff or lower bound
 * @param heatCostMost empty without heating or tariff
 * @see "YearlyCostTest"
 */
public record YearlyCost(
        double roomAir,
        OptionalDouble addedLeast,
        OptionalDouble fanEnergy,
        OptionalDouble heatLeast,
        OptionalDouble heatMost,
        OptionalDouble fanCost,
        OptionalDouble heatCostLeast,
        OptionalDouble heatCostMost) {
    /** 365 days [s]. */
    public static final double YEAR = 365 * 86400.0;

    /** Specific heat of air at constant pressure [J/(kg K)]. */
    public static final double SPECIFIC_HEAT = 1006;

    private static final double KILOWATT_HOUR = 3.6e6;

    /**
     * Growth of the ventilation in quadrature: {@code sqrt(qn^2 + q^2) - qn}.
     *
     * @param natural qn, not below 0 [m3/s]
     * @param exhaust q, not below 0 [m3/s]
     */
    public static double addedInQuadrature(double natural, double exhaust) {
        return Math.hypot(natural, exhaust) - natural;
    }

    /**
     * Heat for a year's air: {@code rho cp q H}.
     *
     * @param density rho of the air where q is measured [kg/m3]
     * @param flow q [m3/s]
     * @param heatingSum H, degree days times the seconds of a day [K s]
     * @return [J]
     */
    public static double heat(double density, double flow, double heatingSum) {
        return density * SPECIFIC_HEAT * flow * heatingSum;
    }

    /**
     * Cost of a year.
     *
     * @param watts of all fans; empty where not known [W]
     * @param roomAir that the system draws from the room [m3/s]
     */
    public static YearlyCost of(Scenario scenario, OptionalDouble watts, double roomAir) {
        House house = scenario.house();
        double drawn = Math.max(0, roomAir);
        double barometer =
                AirProperties.pressureAtAltitude(scenario.air().altitude().orElse(0));
        double density = AirProperties.density(barometer, house.indoorTemperature());
        OptionalDouble sum = house.climate().heatingSum();
        OptionalDouble least = house.naturalFlow().isPresent()
                ? OptionalDouble.of(addedInQuadrature(house.naturalFlow().getAsDouble(), drawn))
                : OptionalDouble.empty();
        OptionalDouble energy = times(watts, YEAR);
        OptionalDouble heatLeast =
                sum.isPresent() ? times(least, heat(density, 1, sum.getAsDouble())) : OptionalDouble.empty();
        OptionalDouble heatMost = times(sum, heat(density, drawn, 1));
        return new YearlyCost(
                drawn,
                least,
                energy,
                heatLeast,
                heatMost,
                house.tariff().isPresent()
                        ? times(energy, house.tariff().get().perKilowattHour() / KILOWATT_HOUR)
                        : OptionalDouble.empty(),
                heatCost(house, heatLeast),
                heatCost(house, heatMost));
    }

    private static OptionalDouble heatCost(House house, OptionalDouble heat) {
        if (house.heating().isEmpty() || house.tariff().isEmpty()) return OptionalDouble.empty();
        House.Heating h = house.heating().get();
        return times(heat, h.price() / (h.efficiency() * h.energyPerUnit()));
    }

    private static OptionalDouble times(OptionalDouble value, double factor) {
        return value.isPresent() ? OptionalDouble.of(value.getAsDouble() * factor) : value;
    }

    /** Fuel for the heat, in the units that it is sold by; empty without heating. */
    public static OptionalDouble fuel(House house, OptionalDouble heat) {
        return house.heating()
                .map(h -> times(heat, 1 / (h.efficiency() * h.energyPerUnit())))
                .orElse(OptionalDouble.empty());
    }

    /** Fans and heat together, at the lower bound; empty where either is. */
    public OptionalDouble least() {
        return sum(fanCost, heatCostLeast);
    }

    /** Fans and heat together, at the upper bound; empty where either is. */
    public OptionalDouble most() {
        return sum(fanCost, heatCostMost);
    }

    private static OptionalDouble sum(OptionalDouble a, OptionalDouble b) {
        return a.isPresent() && b.isPresent()
                ? OptionalDouble.of(a.getAsDouble() + b.getAsDouble())
                : OptionalDouble.empty();
    }
}
