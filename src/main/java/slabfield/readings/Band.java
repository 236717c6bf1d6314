package slabfield.readings;

import java.util.OptionalDouble;
import slabfield.model.Stage;

/**
 * How far a reading may lie from the prediction before the difference means something: twice the root of the summed
 * squares of noise and model.
 *
 * @param modelShare standard error of the prediction as a share of itself; an assumption, since fill and leaks are never
 *     known well
 */
public record Band(double modelShare) {
    /** Used until readings have been fitted. */
    public static final Band USUAL = new Band(0.2);

    public Band {
        if (!(modelShare >= 0)) throw new IllegalArgumentException("modelShare must not be below 0");
    }

    /**
     * Half-width for the pressure at a hole with the fan on [Pa].
     *
     * @param predicted at that hole; empty counts as 0
     */
    public double halfWidth(Stage.HoleReading reading, OptionalDouble predicted) {
        return halfWidth(Noise.of(reading), predicted.orElse(0));
    }

    /**
     * Half-width for any reading, in the unit of both.
     *
     * @param noise standard error of the reading
     */
    public double halfWidth(double noise, double predicted) {
        return 2 * Math.hypot(noise, modelShare * predicted);
    }
}
