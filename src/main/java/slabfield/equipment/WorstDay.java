package slabfield.equipment;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.House;
import slabfield.model.Scenario;

/**
 * The vacuum on the worst day and through the year. Every discharge is taken to feel the same rise of the outdoor
 * pressure as the floor; the help of warm air rising in the pipe is left out.
 *
 * @see "WorstDayTest"
 */
public final class WorstDay {
    /** No outdoor temperature below is tried: -50 C [K]. */
    public static final double COLDEST = 223.15;

    private static final double TEMPERATURE_STEP = 0.25;

    private WorstDay() {}

    /** The house under another pressure outdoors, felt at the floor and at every discharge [Pa]. */
    public static Scenario under(Scenario scenario, double outdoorPressure) {
        double raised = outdoorPressure - scenario.outdoorPressure();
        return FanPlacement.withDischarge(scenario, raised).withOutdoorPressure(outdoorPressure);
    }

    /** Down to which outdoor temperature a vacuum is held, with the worst day's wind and exhausts. */
    public sealed interface HeldDownTo {
        /** Held down to this, to a quarter of a kelvin [K]. */
        record Temperature(double temperature) implements HeldDownTo {}

        /** Held at the coldest that is tried. */
        record AnyTried() implements HeldDownTo {}

        /** Not even held when it is as warm outdoors as indoors. */
        record NotAtAll() implements HeldDownTo {}

        /** A solve did not converge. */
        record Unknown() implements HeldDownTo {}
    }

    /**
     * The coldest day on which a vacuum is held, by bisection.
     *
     * @param scenario with its fans in place, that {@link HousePressure#missing} misses nothing in
     * @param wanted vacuum at the weakest hole [Pa]
     * @param roomAir that the system draws from the room [m3/s]
     */
    public static HeldDownTo heldDownTo(Scenario scenario, double wanted, double roomAir) {
        double warm = scenario.house().indoorTemperature(), cold = COLDEST;
        Optional<Boolean> inWarm = holds(scenario, warm, wanted, roomAir);
        if (inWarm.isEmpty()) return new HeldDownTo.Unknown();
        if (!inWarm.get()) return new HeldDownTo.NotAtAll();
        Optional<Boolean> inCold = holds(scenario, cold, wanted, roomAir);
        if (inCold.isEmpty()) return new HeldDownTo.Unknown();
        if (inCold.get()) return new HeldDownTo.AnyTried();
        while (warm - cold > TEMPERATURE_STEP) {
            double middle = (warm + cold) / 2;
            Optional<Boolean> held = holds(scenario, middle, wanted, roomAir);
            if (held.isEmpty()) return new HeldDownTo.Unknown();
            if (held.get()) warm = middle;
            else cold = middle;
        }
        return new HeldDownTo.Temperature(warm);
    }

    private static Optional<Boolean> holds(Scenario scenario, double temperature, double wanted, double roomAir) {
        double outdoors =
                HousePressure.onWorstDay(scenario, temperature, roomAir).total();
        return Solves.one(under(scenario, outdoors)).map(s -> Held.of(s).meets(wanted));
    }

    /**
     * The vacuum while it is as cold outdoors as a bin says, in calm air with all exhausts off.
     *
     * @param bin of the user's climate
     * @param outdoorPressure at floor level, from the stack alone [Pa]
     * @param held at the weakest hole
     * @param exhaust of the system [m3/s]
     */
    public record SeasonPoint(House.Bin bin, double outdoorPressure, Held held, double exhaust) {}

    /** One point for each of the climate's bins that could be solved, in their order; none without a neutral level. */
    public static List<SeasonPoint> season(Scenario scenario, Progress progress) {
        if (scenario.house().neutralLevel().isEmpty()) return List.of();
        List<House.Bin> bins = scenario.house().climate().bins();
        List<Double> outdoors = bins.stream()
                .map(b -> HousePressure.stack(scenario, b.outdoorTemperature()))
                .toList();
        List<Optional<Result.Solved>> solved =
                Solves.all(outdoors.stream().map(p -> under(scenario, p)).toList(), progress);
        List<SeasonPoint> out = new ArrayList<>();
        for (int i = 0; i < bins.size(); i++) {
            House.Bin bin = bins.get(i);
            double pressure = outdoors.get(i);
            solved.get(i)
                    .ifPresent(s -> out.add(
                            new SeasonPoint(bin, pressure, Held.of(s), s.flows().exhaust())));
        }
        return out;
    }
}
