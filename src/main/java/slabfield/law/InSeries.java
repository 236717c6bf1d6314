package slabfield.law;

/**
 * Two laws one behind the other: the same flow through both, their pressure differences add. Used where the layer's part
 * has a quadratic term that the opening's own law cannot take up in closed form.
 *
 * @param near law of the first part
 * @param far law of the second part; both zero at zero difference and rising
 */
public record InSeries(FlowLaw near, FlowLaw far) implements FlowLaw {
    private static final int MOST_STEPS = 200;
    private static final double RELATIVE_STEP = 1e-15;

    /** Difference across the far part when both together have the given one. */
    private double farDifference(double difference) {
        if (difference == 0) return 0;
        double low = Math.min(0, difference), high = Math.max(0, difference), x = difference / 2;
        for (int k = 0; k < MOST_STEPS; k++) {
            double excess = far.flow(x) - near.flow(difference - x);
            if (excess == 0) return x;
            if (excess > 0) high = x;
            else low = x;
            double next = x - excess / (far.slope(x) + near.slope(difference - x));
            if (!(next > low && next < high)) next = 0.5 * (low + high);
            if (Math.abs(next - x) <= RELATIVE_STEP * Math.abs(x) || high - low <= Double.MIN_NORMAL) return next;
            x = next;
        }
        return x;
    }

    @Override
    public double flow(double difference) {
        double x = farDifference(difference);
        // the smaller of the two differences keeps its digits
        return Math.abs(x) <= Math.abs(difference - x) ? far.flow(x) : near.flow(difference - x);
    }

    @Override
    public double slope(double difference) {
        double x = farDifference(difference);
        return 1 / (1 / far.slope(x) + 1 / near.slope(difference - x));
    }
}
