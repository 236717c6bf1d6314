package slabfield.advice;

import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.field.Result;

/**
 * A measure with the house before and after it, both solved on the same grid.
 *
 * @param measure what is done
 * @param before coverage before
 * @param after coverage after
 * @param flowsBefore flows before
 * @param flowsAfter flows after
 * @param wattsBefore power of the fans before; empty where it is not known [W]
 * @param wattsAfter power of the fans after [W]
 * @param odds what plausible houses say; empty where none were asked, so that the numbers stand without a band
 */
public record Suggestion(
        Measure measure,
        Result.Coverage before,
        Result.Coverage after,
        Result.Flows flowsBefore,
        Result.Flows flowsAfter,
        OptionalDouble wattsBefore,
        OptionalDouble wattsAfter,
        Optional<Odds> odds) {
    /** Smallest gain at the weakest place that a meter could show [Pa]. */
    public static final double NOTICEABLE = 0.1;

    /** Smallest change of the area that meets the target, as part of the slab, that is worth a word. */
    private static final double AREA = 0.005;

    /** A measure without power and without a band. */
    public Suggestion(
            Measure measure,
            Result.Coverage before,
            Result.Coverage after,
            Result.Flows flowsBefore,
            Result.Flows flowsAfter) {
        this(
                measure,
                before,
                after,
                flowsBefore,
                flowsAfter,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
    }

    Suggestion with(Odds other) {
        return new Suggestion(
                measure, before, after, flowsBefore, flowsAfter, wattsBefore, wattsAfter, Optional.of(other));
    }

    /** Vacuum gained at the weakest place [Pa]. */
    public double gain() {
        return after.weakest() - before.weakest();
    }

    /** Room air no longer drawn; below 0 where more is drawn [m3/s]. */
    public double roomAirSaved() {
        return flowsBefore.fromRoom() - flowsAfter.fromRoom();
    }

    /** Power no longer taken; below 0 where more is taken; empty where it is not known [W]. */
    public OptionalDouble wattsSaved() {
        return wattsBefore.isPresent() && wattsAfter.isPresent()
                ? OptionalDouble.of(wattsBefore.getAsDouble() - wattsAfter.getAsDouble())
                : OptionalDouble.empty();
    }

    /** True where neither the weakest place nor the area that meets the target changes noticeably. */
    public boolean doesNothing() {
        return Math.abs(gain()) < NOTICEABLE && Math.abs(after.meeting() - before.meeting()) < AREA;
    }

    /**
     * The change in numbers of plausible houses.
     *
     * @param weakestBefore vacuum at the weakest place before [Pa]
     * @param weakestAfter the same after [Pa]
     * @param gain difference of the two, house by house [Pa]
     * @param exhaust drawn after [m3/s]
     * @param roomAirSaved as {@link Suggestion#roomAirSaved} [m3/s]
     * @param meetsBefore part of the houses whose weakest place meets the target before
     * @param meetsAfter the same after
     * @param houses number of houses that were solved before and after
     * @param basis what makes them plausible
     */
    public record Odds(
            Range weakestBefore,
            Range weakestAfter,
            Range gain,
            Range exhaust,
            Range roomAirSaved,
            double meetsBefore,
            double meetsAfter,
            int houses,
            Houses.Basis basis) {}
}
