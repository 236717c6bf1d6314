package slabfield.fit;

/**
 * What is believed of an unknown before any reading: normal in its logarithm, or in the value itself.
 *
 * @param scale in which it is normal
 * @param median as likely too small as too large, in the unknown's unit; above 0 on the logarithmic scale
 * @param spread one standard deviation: a factor above 1 on the logarithmic scale, else in the unknown's unit, above 0
 * @param source where the spread comes from, for a person
 */
public record Prior(Scale scale, double median, double spread, String source) {
    /** In what an unknown is normal. */
    public enum Scale {
        LOGARITHMIC,
        LINEAR
    }

    public static final String COMMON_PRACTICE = "common practice";

    public Prior {
        if (!Double.isFinite(median) || !Double.isFinite(spread))
            throw new IllegalArgumentException("median and spread must be finite");
        if (scale == Scale.LOGARITHMIC && !(median > 0 && spread > 1))
            throw new IllegalArgumentException("on the logarithmic scale the median is above 0 and the spread above 1");
        if (scale == Scale.LINEAR && !(spread > 0)) throw new IllegalArgumentException("the spread is above 0");
    }

    /** A factor known only by common practice. */
    public static Prior factor(double median, double spread) {
        return new Prior(Scale.LOGARITHMIC, median, spread, COMMON_PRACTICE);
    }

    /** The value that lies a number of standard deviations from the median. */
    public double value(double deviations) {
        return scale == Scale.LOGARITHMIC
                ? median * Math.exp(deviations * Math.log(spread))
                : median + deviations * spread;
    }

    /** Number of standard deviations of a value from the median; the inverse of {@link #value}. */
    public double deviations(double value) {
        return scale == Scale.LOGARITHMIC ? Math.log(value / median) / Math.log(spread) : (value - median) / spread;
    }
}
