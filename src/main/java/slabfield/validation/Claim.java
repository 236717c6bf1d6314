package slabfield.validation;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.OptionalDouble;

/**
 * One number of ours that is held against one of the source's.
 *
 * @param name unique in its case
 * @param unit in which both are shown
 * @param unitSize one such unit in SI
 * @param value how our number is had
 * @param low least value that agrees, in the unit
 * @param high largest value that agrees, in the unit
 * @param reference the source's number where it gives one and not a range, in the unit
 * @param tolerance as the case states it
 * @param why the tolerance is what it is, in one line
 * @param x place on the axis of a figure, where the numbers form a curve
 */
public record Claim(
        String name,
        String unit,
        double unitSize,
        JsonNode value,
        double low,
        double high,
        OptionalDouble reference,
        String tolerance,
        String why,
        OptionalDouble x) {

    /** Whether a value in the unit agrees with the source. */
    boolean agrees(double ours) {
        return ours >= low && ours <= high;
    }

    /**
     * How far a value is from the source's, in parts of the tolerance: within 1 it agrees. In a source's range it is 0
     * anywhere inside, and outside 1 and the distance in parts of the bound that it broke.
     */
    double partOfTolerance(double ours) {
        if (reference.isPresent()) return (ours - reference.getAsDouble()) / (high - reference.getAsDouble());
        if (agrees(ours)) return 0;
        return ours < low ? -1 - (low - ours) / Math.abs(low) : 1 + (ours - high) / Math.abs(high);
    }
}
