package slabfield.desktop.viewmodel.work;

import java.util.Optional;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.work.ReadingEntry.Slot;
import slabfield.desktop.viewmodel.work.ReadingEntry.What;
import slabfield.field.Result;
import slabfield.model.Stage;
import slabfield.quantity.Unit;

/** Asks back where a reading as it is typed looks like a slip of unit or sign. It changes and forbids nothing. */
final class ReadingCheck {
    /** A small number with so many decimals is how a meter in inches of water shows a vacuum. */
    private static final int WATER_DECIMALS = 3;

    private static final double WATER_LIKE = 0.2;
    /** More than any fan for the job makes [Pa]. */
    private static final double TOO_DEEP = 6000;

    private final Workbench bench;

    ReadingCheck(Workbench bench) {
        this.bench = bench;
    }

    /**
     * What is odd about a number; empty where nothing is.
     *
     * @param read what is written down for the hole already
     * @param typed in the unit
     * @param decimals typed behind the decimal mark
     */
    String of(Slot slot, Optional<Stage.HoleReading> read, double typed, int decimals, Unit unit) {
        if (slot.what() == What.FLOW) return typed < 0 ? "A flow drawn from the slab counts above 0." : "";
        double si = unit.toSi(typed);
        if (unit == Unit.PASCAL && typed != 0 && Math.abs(typed) < WATER_LIKE && decimals >= WATER_DECIMALS)
            return "This looks like inches of water: " + bench.units().bothPressures(Unit.INCH_OF_WATER.toSi(typed)) + ". The unit is Pa now.";
        if (Math.abs(si) > TOO_DEEP) return "This is " + bench.units().bothPressures(si) + ", deeper than a fan for this job goes. Is the unit right?";
        if (slot.what() == What.OFF) return "";
        if (si > 0) return "Above 0: the soil would push into the room with the suction on. Is the sign right, are the hoses in their ports?";
        if (slot.what() == What.ON) return strongerThanSuction(si).orElseGet(() -> nearZero(read, si, decimals, unit));
        return "";
    }

    private Optional<String> strongerThanSuction(double si) {
        double deepest = bench.solving().picture().get().current().stream()
                .flatMap(s -> s.suctions().stream()).mapToDouble(Result.Suction::pressure).min().orElse(Double.NEGATIVE_INFINITY);
        return si < deepest
                ? Optional.of("More vacuum than is predicted at any suction point (" + bench.units().pressure(deepest) + "). Is the unit right, was the meter zeroed?")
                : Optional.empty();
    }

    /** A difference below the last digit that the meter shows cannot be told from none. */
    private String nearZero(Optional<Stage.HoleReading> read, double si, int decimals, Unit unit) {
        double digit = unit.toSi(Math.pow(10, -decimals));
        double off = read.map(r -> r.fanOff().orElse(0)).orElse(0.0);
        if (read.filter(r -> r.fanOff().isPresent()).isEmpty() || Math.abs(si - off) > 2 * digit) return "";
        return "On and off differ by no more than two steps of the meter: not to be told from nothing. Read for a minute and take the mean.";
    }
}
