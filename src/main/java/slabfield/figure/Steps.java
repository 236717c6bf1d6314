package slabfield.figure;

import java.util.ArrayList;
import java.util.List;

/** Round numbers of the 1-2-5 series. */
final class Steps {
    private static final double[] SERIES = {1, 2, 5};
    private static final double[] ENDS = {1, 1.5, 2, 3, 4, 5, 6, 8};

    private Steps() {}

    /** The least number of the series at or above a value above 0. */
    static double atLeast(double value) {
        return atLeast(value, SERIES);
    }

    /** A round end for a scale at or above a value above 0, closer to it than the series would be. */
    static double end(double value) {
        return atLeast(value, ENDS);
    }

    private static double atLeast(double value, double[] series) {
        double decade = Math.pow(10, Math.floor(Math.log10(value)));
        for (double s : series) if (s * decade >= value * (1 - 1e-9)) return s * decade;
        return 10 * decade;
    }

    /** The largest number of the series at or below a value above 0. */
    static double atMost(double value) {
        double decade = Math.pow(10, Math.floor(Math.log10(value * (1 + 1e-9))));
        for (int i = SERIES.length - 1; i > 0; i--)
            if (SERIES[i] * decade <= value * (1 + 1e-9)) return SERIES[i] * decade;
        return decade;
    }

    /** All numbers of the series between two values above 0, rising. */
    static List<Double> between(double low, double high) {
        List<Double> found = new ArrayList<>();
        for (int power = (int) Math.floor(Math.log10(low)); power <= Math.floor(Math.log10(high)); power++)
            for (double s : SERIES) {
                double v = Double.parseDouble((int) s + "e" + power);
                if (v >= low * (1 - 1e-9) && v <= high * (1 + 1e-9)) found.add(v);
            }
        return found;
    }

    /** Multiples of one step between two values, rising. */
    static List<Double> multiples(double step, double low, double high) {
        List<Double> found = new ArrayList<>();
        for (long k = (long) Math.ceil(low / step - 1e-9); k * step <= high + 1e-9 * step; k++) found.add(k * step);
        return found;
    }

    /** How round a number is: 0 for 1, 10, 100 and so on, 1 for 5, 2 for 2, 3 for others. */
    static int roughness(double value) {
        double mantissa = value / Math.pow(10, Math.floor(Math.log10(value) + 1e-9));
        return near(mantissa, 1) ? 0 : near(mantissa, 5) ? 1 : near(mantissa, 2) ? 2 : 3;
    }

    private static boolean near(double a, double b) {
        return Math.abs(a - b) < 1e-6 * b;
    }
}
