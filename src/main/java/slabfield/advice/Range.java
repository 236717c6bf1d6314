package slabfield.advice;

import java.util.Arrays;

/**
 * A number as an ensemble of plausible houses has it: nine times of ten it lies between low and high.
 *
 * <p>Of n equally plausible values the one at rank i (from 1) stands for the fraction i/(n+1) (Weibull 1939): a further,
 * equally plausible value, such as the truth, lies below it with just that probability. Between ranks the values are
 * joined by straight lines; below 1/(n+1) and above n/(n+1) the least and the largest value hold, so that 19 values give
 * the full 90 % and fewer give less.
 *
 * @param low 5 % lie below
 * @param middle half lie below
 * @param high 5 % lie above
 */
public record Range(double low, double middle, double high) {
    /** Part of the houses that lies between low and high. */
    public static final double HELD = 0.9;

    /** Least number of values for which the range holds the part that it claims. */
    public static final int FEWEST = 19;

    /**
     * Takes the range of values.
     *
     * @param values at least one; NaN, from a house that was not solved, is left out; not changed
     */
    public static Range of(double[] values) {
        double[] sorted =
                Arrays.stream(values).filter(v -> !Double.isNaN(v)).sorted().toArray();
        if (sorted.length == 0) return new Range(Double.NaN, Double.NaN, Double.NaN);
        return new Range(at(sorted, (1 - HELD) / 2), at(sorted, 0.5), at(sorted, (1 + HELD) / 2));
    }

    private static double at(double[] sorted, double part) {
        double rank = part * (sorted.length + 1) - 1;
        int below = (int) Math.floor(rank);
        if (below < 0) return sorted[0];
        if (below >= sorted.length - 1) return sorted[sorted.length - 1];
        return sorted[below] + (rank - below) * (sorted[below + 1] - sorted[below]);
    }

    /** True where a value lies between low and high. */
    public boolean holds(double value) {
        return value >= low && value <= high;
    }
}
