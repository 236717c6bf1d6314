package slabfield.advice;

import slabfield.field.Result;

/**
 * A measure with the house before and after it, both solved on the same grid.
 *
 * @param measure what is done
 * @param before coverage before
 * @param after coverage after
 * @param flowsBefore flows before
 * @param flowsAfter flows after
 */
public record Suggestion(
        Measure measure,
        Result.Coverage before,
        Result.Coverage after,
        Result.Flows flowsBefore,
        Result.Flows flowsAfter) {
    /** Smallest gain at the weakest place that a meter could show [Pa]. */
    public static final double NOTICEABLE = 0.1;

    /** Vacuum gained at the weakest place [Pa]. */
    public double gain() {
        return after.weakest() - before.weakest();
    }

    /** Room air no longer drawn; below 0 where more is drawn [m3/s]. */
    public double roomAirSaved() {
        return flowsBefore.fromRoom() - flowsAfter.fromRoom();
    }

    /** True where neither the weakest place nor the area that meets the target changes noticeably. */
    public boolean doesNothing() {
        return Math.abs(gain()) < NOTICEABLE && Math.abs(after.meeting() - before.meeting()) < 0.005;
    }
}
