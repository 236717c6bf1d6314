package slabfield.desktop.viewmodel.work;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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

    private final Workbench bench;

    ReadingCheck(Workbench bench) {
        this.bench = bench;
    }

    /**
     * What is odd about a number; empty where nothing is.
     *
     * @param stage as it would be with the number
     * @param typed in the unit
     * @param decimals typed behind the decimal mark
     */
    String of(Slot slot, Stage stage, double typed, int decimals, Unit unit) {
        if (slot.what() == What.FLOW) return typed < 0 ? "A flow drawn from the slab counts above 0." : "";
        double si = unit.toSi(typed);
        if (unit == Unit.PASCAL && typed != 0 && Math.abs(typed) < WATER_LIKE && decimals >= WATER_DECIMALS)
            return "This looks like inches of water: " + bench.units().bothPressures(Unit.INCH_OF_WATER.toSi(typed)) + ". The unit is Pa now.";
        if (Math.abs(si) > TOO_DEEP) return "This is " + bench.units().bothPressures(si) + ", deeper than a fan for this job goes. Is the unit right?";
        if (slot.what() == What.OFF) return "";
        if (si > 0) return "Above 0: the soil would push into the room with the suction on. Is the sign right, are the hoses in their ports?";
        return slot.what() == What.ON ? found(slot, stage) : "";
    }

    /** What the checks of a stage find at the hole, held against the prediction where that is of the house as at the stage. */
    private String found(Slot slot, Stage stage) {
        Scenario scenario = bench.document().scenario().get();
        Optional<Result.Solved> solved = stage.asDrawn() ? bench.solving().picture().get().current() : Optional.empty();
        List<Stage> stages = new ArrayList<>(scenario.stages());
        stages.replaceAll(s -> s.id().equals(stage.id()) ? stage : s);
        return ReadingChecks.of(scenario.withStages(stages), stage, solved).stream()
                .filter(f -> f.where().equals(slot.id())).map(Finding::sentence).findFirst().orElse("");
    }
}
