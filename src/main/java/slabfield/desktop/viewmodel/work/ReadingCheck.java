package slabfield.desktop.viewmodel.work;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.work.ReadingEntry.Slot;
import slabfield.desktop.viewmodel.work.ReadingEntry.What;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.quantity.Unit;
import slabfield.readings.Finding;
import slabfield.readings.ReadingChecks;

/** Asks back where a reading as it is typed looks like a slip. It changes and forbids nothing. */
final class ReadingCheck {
    /** A small number with so many decimals is how a meter in inches of water shows a vacuum. */
    private static final int WATER_DECIMALS = 3;

    private static final double WATER_LIKE = 0.2;
    /** More than any fan for the job makes [Pa]. */
    private static final double TOO_DEEP = 6000;

    /** What lies below the room while the suction is on. */
    static final Set<What> VACUUMS = EnumSet.of(What.ON, What.RISER, What.PIT);

    /** More readings than that nobody takes the mean of. */
    private static final double MANY = 100_000;

    private final Workbench bench;

    ReadingCheck(Workbench bench) {
        this.bench = bench;
    }

    /** Why a number cannot be written down at all, in words; empty where it can. */
    Optional<String> impossible(Slot slot, Stage stage, double typed) {
        if (slot.what() == What.COUNT && (typed < 1 || typed > MANY || typed != Math.rint(typed)))
            return Optional.of("The number of readings is a whole number from 1 up.");
        boolean about = slot.what() == What.SPREAD || slot.what() == What.WAITED;
        if (about && typed < 0) return Optional.of("The " + slot.what().words() + " cannot be below 0.");
        if ((about || slot.what() == What.COUNT) && !StageChange.isRead(stage, slot))
            return Optional.of("Type first what was read at " + slot.id() + ".");
        return Optional.empty();
    }

    /**
     * What is odd about a number; empty where nothing is.
     *
     * @param stage as it would be with the number
     * @param typed in the unit
     * @param decimals typed behind the decimal mark
     * @param shown unit of the number; empty for a mere number
     */
    String of(Slot slot, Stage stage, double typed, int decimals, Optional<Unit> shown) {
        if (slot.what() == What.FLOW) return typed < 0 ? "A flow drawn from the slab counts above 0." : "";
        if (slot.what() == What.COUNT || slot.what() == What.WAITED) return "";
        Unit unit = shown.orElseThrow();
        double si = unit.toSi(typed);
        if (unit == Unit.PASCAL && typed != 0 && Math.abs(typed) < WATER_LIKE && decimals >= WATER_DECIMALS)
            return "This looks like inches of water: " + bench.units().bothPressures(Unit.INCH_OF_WATER.toSi(typed))
                    + ". The unit is Pa now.";
        if (Math.abs(si) > TOO_DEEP)
            return "This is " + bench.units().bothPressures(si)
                    + ", deeper than a fan for this job goes. Is the unit right?";
        if (!VACUUMS.contains(slot.what())) return "";
        if (si > 0)
            return "Above 0: the soil would push into the room with the suction on. Is the sign right, are the hoses in their ports?";
        return slot.what() == What.ON ? found(slot, stage) : "";
    }

    /** What the checks of a stage find at the hole, held against the prediction where that is of the house as at the stage. */
    private String found(Slot slot, Stage stage) {
        Scenario scenario = bench.document().scenario().get();
        Optional<Result.Solved> solved =
                stage.asDrawn() ? bench.solving().picture().get().current() : Optional.empty();
        List<Stage> stages = new ArrayList<>(scenario.stages());
        stages.replaceAll(s -> s.id().equals(stage.id()) ? stage : s);
        return ReadingChecks.of(scenario.withStages(stages), stage, solved).stream()
                .filter(f -> f.where().equals(slot.id()))
                .map(Finding::sentence)
                .findFirst()
                .orElse("");
    }
}
