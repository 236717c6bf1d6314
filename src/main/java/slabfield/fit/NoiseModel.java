package slabfield.fit;

/**
 * How far readings and model may lie apart for reasons that no unknown explains. The error of the readings themselves is
 * that of {@link slabfield.readings.Noise} and {@link slabfield.readings.MeasuredFlow}.
 *
 * @param modelShare standard deviation of the model itself, as a part of what is read: fill is never even, leaks are never as
 *     drawn; not below 0
 */
public record NoiseModel(double modelShare) {
    /** An assumption: no set of real houses was at hand to measure it. */
    public static final NoiseModel USUAL = new NoiseModel(0.1);

    /** Part of the model's variance at one place that is the same in every stage; an assumption. */
    static final double SHARED = 0.5;

    public NoiseModel {
        if (!(modelShare >= 0)) throw new IllegalArgumentException("the model's share must not be below 0");
    }
}
