package slabfield.readings;

import java.util.OptionalDouble;
import slabfield.model.Stage;

/**
 * How far a reading may lie from the prediction before the difference means something: twice the root of the summed
 * squares of meter, unrest and model.
 *
 * @param modelShare standard error of the prediction as a share of itself; an assumption, since fill and leaks are never
 *     known well
 */
public record Band(double modelShare) {
    /** Used until readings have been fitted. */
    public static final Band USUAL = new Band(0.2);

    /** Unrest of a reading of 30 to 60 s where none was noted; an assumption [Pa]. */
    public static final double ASSUMED_SPREAD = 0.5;

    /** Smallest step of an ordinary electronic meter [Pa]. */
    public static final double ASSUMED_STEP = 0.1;

    public Band {
        if (!(modelShare >= 0)) throw new IllegalArgumentException("modelShare must not be below 0");
    }

    /**
     * Half-width for one reading [Pa].
     *
     * @param predicted at that hole; empty counts as 0
     */
    public double halfWidth(Stage.HoleReading reading, OptionalDouble predicted) {
        double step = reading.meterStep().orElse(ASSUMED_STEP), spread = reading.spread().orElse(ASSUMED_SPREAD);
        double model = modelShare * Math.abs(predicted.orElse(0));
        return 2 * Math.sqrt(step * step / 12 + spread * spread + model * model);
    }
}
