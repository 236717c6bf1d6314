package slabfield.equipment;

import java.util.ArrayList;
import java.util.List;
import slabfield.law.AirProperties;
import slabfield.law.StackEffect;
import slabfield.model.House;
import slabfield.model.House.BlowerDoor;
import slabfield.model.Scenario;

/**
 * What presses on the house from outside: cold, wind, and fans that blow out. Each is the pressure outdoors less that
 * indoors at the basement floor.
 *
 * <p>The parts add up to more than they would together in a real house, whose leaks they share; that errs towards the
 * worst. A number below a limit is a calculation and no test of any appliance.
 *
 * @param stack of warm air indoors [Pa]
 * @param wind [Pa]
 * @param exhaust of the fans [Pa]
 * @see "HousePressureTest"
 */
public record HousePressure(double stack, double wind, double exhaust) {
    /** All together [Pa]. */
    public double total() {
        return stack + wind + exhaust;
    }

    /**
     * Pressure by which fans put a house below outdoors: {@code dp = dp0 (Q/Q0)^(1/n)}, the law of its blower-door test
     * turned round.
     *
     * @param flow Q blown out, not below 0 [m3/s]
     * @return [Pa]
     */
    public static double depressurization(BlowerDoor door, double flow) {
        return door.pressure() * Math.pow(flow / door.flow(), 1 / door.exponent());
    }

    /**
     * Leakage that a house must have for fans to stay within a limit: {@code Q0 = Q (dp0/dp)^n}.
     *
     * @param exponent n
     * @param flow Q blown out [m3/s]
     * @param limit dp, above 0 [Pa]
     * @return Q0 at 50 Pa [m3/s]
     */
    public static double leakageFor(double exponent, double flow, double limit) {
        return flow * Math.pow(BlowerDoor.USUAL_PRESSURE / limit, exponent);
    }

    /**
     * Pressure of wind: {@code Cw rho v^2/2}.
     *
     * @param coefficient Cw [-]
     * @param density rho of the air outdoors [kg/m3]
     * @param speed v [m/s]
     * @return [Pa]
     */
    public static double wind(double coefficient, double density, double speed) {
        return coefficient * density * speed * speed / 2;
    }

    /** What the worst day needs and the scenario does not say, in the keys of a scenario file. */
    public static List<String> missing(House house) {
        List<String> out = new ArrayList<>();
        if (house.designDay().isEmpty()) out.add("house.designDay");
        if (house.neutralLevel().isEmpty()) out.add("house.neutralLevel");
        if (!house.exhausts().isEmpty() && house.blowerDoor().isEmpty()) out.add("house.blowerDoor");
        return out;
    }

    /**
     * The worst day at another temperature: its wind, and all exhausts with the system's own draw from the room.
     *
     * @param scenario that {@link #missing} misses nothing in
     * @param outdoorTemperature [K]
     * @param roomAir that the system draws from the room [m3/s]
     */
    public static HousePressure onWorstDay(Scenario scenario, double outdoorTemperature, double roomAir) {
        House house = scenario.house();
        House.DesignDay day = house.designDay().orElseThrow();
        double barometer =
                AirProperties.pressureAtAltitude(scenario.air().altitude().orElse(0));
        double density = AirProperties.density(barometer, outdoorTemperature);
        return new HousePressure(
                stack(scenario, outdoorTemperature),
                wind(day.windCoefficient(), density, day.windSpeed()),
                house.blowerDoor()
                        .map(door -> depressurization(door, blownOut(house, roomAir)))
                        .orElse(0.0));
    }

    /** Stack alone; the scenario says the neutral level [Pa]. */
    static double stack(Scenario scenario, double outdoorTemperature) {
        double barometer =
                AirProperties.pressureAtAltitude(scenario.air().altitude().orElse(0));
        return StackEffect.pressureDifference(
                scenario.house().indoorTemperature(), outdoorTemperature,
                scenario.house().neutralLevel().orElseThrow(), barometer);
    }

    /** All exhausts together with the air that the system draws from the room [m3/s]. */
    static double blownOut(House house, double roomAir) {
        return house.exhausts().stream().mapToDouble(House.Exhaust::flow).sum() + Math.max(0, roomAir);
    }

    /**
     * A limit of the user's against the depressurization by fans alone.
     *
     * @param limit the user's, with its source
     * @param withoutSystem all exhausts [Pa]
     * @param withSystem all exhausts and the system's own draw from the room [Pa]
     */
    public record AgainstLimit(House.Limit limit, double withoutSystem, double withSystem) {
        public boolean exceeded() {
            return withSystem > limit.pressure();
        }
    }

    /**
     * Depressurization by fans against each limit; none without a blower-door result.
     *
     * @param roomAir that the system draws from the room [m3/s]
     */
    public static List<AgainstLimit> againstLimits(House house, double roomAir) {
        if (house.blowerDoor().isEmpty()) return List.of();
        BlowerDoor door = house.blowerDoor().get();
        double without = depressurization(door, blownOut(house, 0));
        double with = depressurization(door, blownOut(house, roomAir));
        return house.limits().stream()
                .map(l -> new AgainstLimit(l, without, with))
                .toList();
    }
}
