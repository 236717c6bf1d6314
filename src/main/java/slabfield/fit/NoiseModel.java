package slabfield.fit;

/**
 * How far readings and model may lie apart for reasons that no unknown explains. The error of the readings themselves is
 * that of {@link slabfield.readings.Noise} and {@link slabfield.readings.MeasuredFlow}.
 *
 * @param modelShare standard deviation of the model itself for pressures, as a part of what is read: fill is never even, leaks
 *     are never as drawn; not below 0
 * @param flowShare the same for flows, which sum over the whole slab and whose leaks are unknowns themselves; not below 0
 */
public record NoiseModel(double modelShare, double flowShare) {
    /**
     * The share of pressures is an assumption: no set of real houses was at hand to measure it. That of flows belongs to it: it
     * is what readings of made houses have beyond their meters, whose fill is so uneven that pressures differ by that share.
     */
    public static final NoiseModel USUAL = new NoiseModel(0.1, 0.03);

    /** Readings held against the model as if it were exact. */
    public static final NoiseModel METER_ONLY = new NoiseModel(0, 0);

    /**
     * Part of the model's variance at one place that is the same in every stage. Uneven fill stays as uneven when something is
     * sealed. Between the two answers that made houses give (validation/studies/shared-error.md).
     */
    static final double SHARED = 0.9;

    /**
     * Distance over which the model's error at two holes goes together, fallen to 1/e [m]: a patch of other fill is under both, or
     * between both and the pit. It is what made houses show (validation/studies/shared-error.md).
     */
    static final double REACH = 2;

    private static final double FURTHEST = 3;

    public NoiseModel {
        if (!(modelShare >= 0) || !(flowShare >= 0))
            throw new IllegalArgumentException("the model's shares must not be below 0");
    }

    /**
     * What the truth may be of a model's number.
     *
     * @param share one of the model's shares
     * @param normal a draw from the standard normal distribution, of which no more than three deviations count
     */
    public static double factor(double share, double normal) {
        return 1 + share * Math.max(-FURTHEST, Math.min(FURTHEST, normal));
    }

    /** The model's share of a reading's standard deviation. */
    public double share(Observation.What what) {
        return what == Observation.What.FLOW ? flowShare : modelShare;
    }
}
