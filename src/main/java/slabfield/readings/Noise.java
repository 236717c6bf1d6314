package slabfield.readings;

import slabfield.model.Stage;

/**
 * Standard error of a pressure as read: display and unrest together, {@code s^2 = step^2/12 + spread^2/n}. A value off a
 * display lies anywhere within half a step (variance step^2/12); n independent readings leave spread/sqrt n in their mean.
 */
public final class Noise {
    /** Unrest of a reading of 30 to 60 s where none was noted; an assumption [Pa]. */
    public static final double ASSUMED_SPREAD = 0.5;

    /** Smallest step of an ordinary electronic meter [Pa]. */
    public static final double ASSUMED_STEP = 0.1;

    /** Standard error of a riser's or pit's pressure that the meter itself adds, as a share of it; an assumption. */
    public static final double ASSUMED_GAIN = 0.01;

    /** Part of a riser's suction that air entering the pipe may use up, so that the pit's is not as strong; an assumption. */
    public static final double ASSUMED_ENTRY = 0.05;

    private Noise() {}

    /** Of one value at a hole, fan on or fan off [Pa]. */
    public static double of(Stage.HoleReading reading) {
        return error(
                reading.meterStep().orElse(ASSUMED_STEP),
                reading.spread().orElse(ASSUMED_SPREAD),
                reading.count().orElse(1));
    }

    /** Of one value at a hole by an ordinary meter, where nothing is noted yet [Pa]. */
    public static double ofOrdinaryReading() {
        return error(ASSUMED_STEP, ASSUMED_SPREAD, 1);
    }

    /** Of the difference between fan on and fan off [Pa]. */
    public static double ofChange(Stage.HoleReading reading) {
        return Math.sqrt(2) * of(reading);
    }

    /** Of {@link Stage.SystemReading#suction()} as a reading of the pit's pressure; 0 where none was read [Pa]. */
    public static double ofSuction(Stage.SystemReading reading) {
        if (reading.suction().isEmpty()) return 0;
        double size = Math.abs(reading.suction().getAsDouble());
        double read =
                error(reading.meterStep().orElse(ASSUMED_STEP), reading.spread().orElse(ASSUMED_SPREAD), 1);
        double entry = reading.pit().isPresent() ? 0 : ASSUMED_ENTRY * size;
        return Math.sqrt(read * read + ASSUMED_GAIN * size * ASSUMED_GAIN * size + entry * entry);
    }

    private static double error(double step, double spread, int count) {
        return Math.sqrt(step * step / 12 + spread * spread / count);
    }
}
