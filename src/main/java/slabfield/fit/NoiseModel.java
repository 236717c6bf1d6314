package slabfield.fit;

/**
 * How far readings and model may lie apart for reasons that no unknown explains. The error of the readings themselves is
 * that of {@link slabfield.readings.Noise} and {@link slabfield.readings.MeasuredFlow}.
 *
 * <p>A pressure that has fallen from the strongest suction p0 to p has the standard deviation
 *
 * <p>s (ln(p0/p))^0.7 p
 *
 * <p>Fill that is not even acts on the fall of the suction on its way and not on the suction itself: beside the pit there is
 * nothing yet to be wrong, and the further the suction fell, the more patches it met.
 *
 * @param fallShare s, the deviation of a pressure that has fallen to 1/e of the suction, as a part of it; not below 0
 * @param flowShare standard deviation of the model for flows, as a part of them, which sum over the whole slab and whose leaks
 *     are unknowns themselves; not below 0
 * @param leastFall logarithm of a fall below which the error of a pressure gets no smaller, above 0
 */
public record NoiseModel(double fallShare, double flowShare, double leastFall) {
    /**
     * Assumptions: no set of real houses was at hand to measure them. They are what made houses show that have patches of other fill
     * (validation/studies/model-error.md); of flows between what half of those houses and what all of them do.
     */
    public static final NoiseModel USUAL = new NoiseModel(0.085, 0.05);

    /** Readings held against the model as if it were exact. */
    public static final NoiseModel METER_ONLY = new NoiseModel(0, 0);

    /**
     * Power of the fall, between 1/2 of patches that have nothing in common and 1 of fill that is other everywhere; it is what made
     * houses show (validation/studies/model-error.md).
     */
    static final double POWER = 0.7;

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

    /** Fall below which the model's error gets no smaller: a patch of other fill may lie beside the pit too. */
    static final double LEAST_FALL = 0.25;
    /** Fall beyond which nothing is left of any suction that a fan can make. */
    private static final double MOST_FALL = 15;

    public NoiseModel {
        if (!(fallShare >= 0) || !(flowShare >= 0) || !(leastFall > 0))
            throw new IllegalArgumentException("the model's shares must not be below 0, and the least fall above it");
    }

    /** With the usual least fall. */
    public NoiseModel(double fallShare, double flowShare) {
        this(fallShare, flowShare, LEAST_FALL);
    }

    /**
     * The model's part of the standard deviation of a pressure at a hole, as a part of the pressure.
     *
     * @param pressure relative to the room [Pa]
     * @param strongest vacuum at a suction point [Pa]; where there is none, the fall counts as 1
     */
    public double shareAt(double pressure, double strongest) {
        if (!(strongest > 0)) return fallShare;
        double fall = pressure == 0 ? Double.POSITIVE_INFINITY : Math.log(strongest / Math.abs(pressure));
        return fallShare * Math.pow(Math.max(leastFall, Math.min(MOST_FALL, fall)), POWER);
    }

    /** The model's share of the standard deviation of what is no pressure at a hole that a fan makes. */
    public double share(Observation.What what) {
        return what == Observation.What.FLOW ? flowShare : fallShare;
    }
}
