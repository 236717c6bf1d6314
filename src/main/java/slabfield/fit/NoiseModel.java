package slabfield.fit;

/**
 * How far readings and model may lie apart for reasons that no unknown explains, as standard deviations. What a reading
 * itself does not say is assumed.
 *
 * @param meterStep smallest step of a display, where none is noted [Pa]
 * @param unrest of a pressure that is read once, where no spread is noted [Pa]
 * @param flowShare of a measured flow, as a part of it
 * @param riserShare of a pressure in a riser or pit, as a part of it
 * @param modelShare of the model itself, as a part of what is read: fill is never even, leaks are never as drawn
 */
public record NoiseModel(double meterStep, double unrest, double flowShare, double riserShare, double modelShare) {
    /** Common practice; a pitot's flow in a short pipe is seldom better than a tenth. */
    public static final NoiseModel USUAL = new NoiseModel(0.1, 0.5, 0.1, 0.03, 0.1);

    /** Part of the model's variance at one place that is the same in every stage; an assumption. */
    static final double SHARED = 0.5;

    public NoiseModel {
        for (double v : new double[] {meterStep, unrest, flowShare, riserShare, modelShare})
            if (!(v >= 0)) throw new IllegalArgumentException("no part of the noise is below 0");
    }

    /** The same with another share of the model itself. */
    public NoiseModel withModelShare(double other) {
        return new NoiseModel(meterStep, unrest, flowShare, riserShare, other);
    }
}
