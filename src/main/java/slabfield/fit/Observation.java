package slabfield.fit;

/**
 * One number that was read and that the model must explain.
 *
 * @param stage id of the stage
 * @param what kind of number
 * @param place id of the test hole or suction point
 * @param measured in SI: pressures relative to the room, below 0 for suction [Pa], flows out of the pit [m3/s]
 * @param meter standard deviation of meter and unrest, above 0
 * @param model standard deviation of the model itself there, not below 0
 * @param upperBound true where the meter saw nothing: the true number lies below the measured one, by how much nobody knows
 */
public record Observation(
        String stage, What what, String place, double measured, double meter, double model, boolean upperBound) {
    /** What is read. */
    public enum What {
        FAN_ON("fan on"),
        FAN_OFF("fan off"),
        /** Fan on minus fan off: what the fan itself does, free of stack and wind as far as these stay the same. */
        DIFFERENCE("fan on minus fan off"),
        FLOW("flow"),
        RISER("pressure in riser or pit");

        private final String words;

        What(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public Observation {
        if (!Double.isFinite(measured)) throw new IllegalArgumentException("a reading is a finite number");
        if (!(meter > 0)) throw new IllegalArgumentException("no meter is without error");
        if (!(model >= 0)) throw new IllegalArgumentException("the model's error is not below 0");
    }

    /** Meter and model together. */
    public double deviation() {
        return Math.hypot(meter, model);
    }

    public boolean isPressureAtHole() {
        return what == What.FAN_ON || what == What.FAN_OFF || what == What.DIFFERENCE;
    }
}
