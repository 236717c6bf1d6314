package slabfield.siting;

import java.util.Arrays;
import java.util.Random;

/**
 * How much a reading would tell about whether the weakest place meets the target, by plausible houses.
 *
 * <p>Each house in turn is taken for the true one: its reading is drawn, with the meter's error, the other houses are
 * weighed by how well they agree with it, weight = exp(-(read - predicted)^2 / (2 s^2)), and say with what probability the
 * target is met. The doubt left is the mean of -log2 of the probability that they give to what is true in that house: an
 * estimate from above of the conditional entropy of pass or fail, since a house never speaks for itself. The scatter left is
 * the root mean square error of the weighted mean of the weakest vacuum. s is the meter's error, widened by Silverman's
 * (1986) rule for the number of houses (from memory), because few houses stand for many.
 */
final class PassOrFail {
    private static final int DRAWS = 4;
    private static final long SEED = 20240229;
    /** Probability that no verdict of few houses leaves to surprise. */
    private static final double SURPRISE = 0.5;

    private final double[] weakest;
    private final boolean[] meets;
    /** Logarithms of the weights after the readings taken so far: [true house and draw][other house]. */
    private final double[][] log;

    /**
     * Nothing is read yet.
     *
     * @param weakest vacuum at the weakest place of each house, at least three [Pa]
     * @param target vacuum wanted [Pa]
     */
    PassOrFail(double[] weakest, double target) {
        this.weakest = weakest.clone();
        meets = new boolean[weakest.length];
        for (int i = 0; i < meets.length; i++) meets[i] = weakest[i] >= target;
        log = new double[weakest.length * DRAWS][weakest.length];
    }

    /**
     * What is left in doubt.
     *
     * @param bits expected information lacking about pass or fail, 0 to about 1
     * @param scatter expected error of the weakest vacuum [Pa]
     */
    record Left(double bits, double scatter) {}

    /** Part of the houses that meet the target. */
    double meeting() {
        int sum = 0;
        for (boolean m : meets) if (m) sum++;
        return (double) sum / meets.length;
    }

    /** With the readings taken so far. */
    Left now() {
        return judge(log);
    }

    /**
     * With one reading more.
     *
     * @param predicted pressure at the place in each house [Pa]
     * @param noise standard error of the reading, above 0 [Pa]
     */
    Left after(double[] predicted, double noise) {
        return judge(weighed(predicted, noise));
    }

    /** Takes a reading for granted: whatever it will be, it will be known. */
    void take(double[] predicted, double noise) {
        double[][] more = weighed(predicted, noise);
        for (int k = 0; k < log.length; k++) System.arraycopy(more[k], 0, log[k], 0, log[k].length);
    }

    private double[][] weighed(double[] predicted, double noise) {
        Random random = new Random(SEED);
        double s = Math.hypot(noise, bandwidth(predicted));
        double[][] out = new double[log.length][];
        for (int k = 0; k < out.length; k++) {
            double read = predicted[k / DRAWS] + noise * random.nextGaussian();
            out[k] = log[k].clone();
            for (int i = 0; i < out[k].length; i++) {
                double off = (read - predicted[i]) / s;
                out[k][i] -= off * off / 2;
            }
        }
        return out;
    }

    private static double bandwidth(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int n = sorted.length;
        double quartiles = (sorted[(3 * n) / 4] - sorted[n / 4]) / 1.34;
        double mean = Arrays.stream(values).average().orElse(0);
        double spread = Math.sqrt(
                Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum() / Math.max(1, n - 1));
        return 0.9 * Math.min(spread, quartiles) * Math.pow(n, -0.2);
    }

    private Left judge(double[][] weights) {
        double bits = 0, square = 0;
        for (int k = 0; k < weights.length; k++) {
            int truth = k / DRAWS;
            double top = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < weights[k].length; i++) if (i != truth) top = Math.max(top, weights[k][i]);
            double sum = 0, alike = 0, mean = 0, squares = 0;
            for (int i = 0; i < weights[k].length; i++) {
                if (i == truth) continue;
                double w = Math.exp(weights[k][i] - top);
                sum += w;
                squares += w * w;
                mean += w * weakest[i];
                if (meets[i] == meets[truth]) alike += w;
            }
            double count = sum * sum / squares;
            bits -= Math.log((alike / sum * count + SURPRISE) / (count + 2 * SURPRISE)) / Math.log(2);
            square += (mean / sum - weakest[truth]) * (mean / sum - weakest[truth]);
        }
        return new Left(bits / weights.length, Math.sqrt(square / weights.length));
    }
}
