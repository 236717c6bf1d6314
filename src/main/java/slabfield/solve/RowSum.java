package slabfield.solve;

import java.util.Arrays;

/**
 * A scalar product of two single-precision fields, summed element by element over the rows first: compiled loops do
 * that with vector instructions, and a single running sum without.
 */
final class RowSum {
    private final float[] sums;

    RowSum(int length) {
        sums = new float[length];
    }

    void clear() {
        Arrays.fill(sums, 0);
    }

    /** Adds a row's products of elements from .. to - 1. */
    void add(float[] v, float[] w, int from, int to) {
        float[] s = sums;
        for (int k = from; k < to; k++) {
            s[k] += v[k] * w[k];
        }
    }

    double take() {
        double sum = 0;
        for (float s : sums) {
            sum += s;
        }
        return sum;
    }
}
