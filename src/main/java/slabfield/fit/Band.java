package slabfield.fit;

import java.util.Arrays;

/**
 * Equally likely values of one number.
 *
 * @param sorted from the least to the largest, at least one
 */
public record Band(double[] sorted) {
    static Band of(double[] values) {
        double[] s = values.clone();
        Arrays.sort(s);
        return new Band(s);
    }

    /**
     * Value below which a further, equally likely value lies with a probability: of n values the one at rank i, from 1, stands
     * for i/(n + 1) (Weibull 1939, from memory), straight between neighbours. Beyond 1/(n + 1) and n/(n + 1) it is the least
     * and the largest.
     *
     * @param part the probability, 0 to 1
     */
    public double quantile(double part) {
        double place = part * (sorted.length + 1) - 1;
        int i = (int) Math.floor(place);
        if (i < 0) return sorted[0];
        if (i >= sorted.length - 1) return sorted[sorted.length - 1];
        return sorted[i] + (place - i) * (sorted[i + 1] - sorted[i]);
    }

    public double median() {
        return quantile(0.5);
    }

    /** Range that holds a further value with a probability, as much left out below as above. */
    public Interval interval(double part) {
        return new Interval(quantile((1 - part) / 2), quantile((1 + part) / 2));
    }

    /** Part of them that is at least as large as a value. */
    public double chanceOf(double least) {
        return (double) Arrays.stream(sorted).filter(v -> v >= least).count() / sorted.length;
    }

    public double mean() {
        return Arrays.stream(sorted).average().orElseThrow();
    }

    public double deviation() {
        double mean = mean(), sum = 0;
        for (double v : sorted) sum += (v - mean) * (v - mean);
        return Math.sqrt(sum / Math.max(1, sorted.length - 1));
    }
}
