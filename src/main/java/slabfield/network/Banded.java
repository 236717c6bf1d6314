package slabfield.network;

/** Cholesky's method for a small banded symmetric matrix. */
final class Banded {
    private Banded() {}

    /**
     * Solves in place.
     *
     * @param band row i holds the lower entries (i, i - w .. i) in order, w = width of the band; overwritten
     * @param b right-hand side, replaced by the answer
     */
    static void solve(double[][] band, double[] b) {
        int n = b.length, w = band[0].length - 1;
        double[] column = new double[w + 1];
        for (int k = 0; k < n; k++) {
            double pivot = Math.sqrt(band[k][w]);
            band[k][w] = pivot;
            int last = Math.min(n - 1, k + w);
            for (int i = k + 1; i <= last; i++) {
                double[] row = band[i];
                int first = w - i + k;
                double factor = row[first] / pivot;
                row[first] = factor;
                column[i - k] = factor;
                for (int j = 1; j <= i - k; j++) row[first + j] -= factor * column[j];
            }
        }
        for (int i = 0; i < n; i++) {
            double s = b[i];
            for (int k = Math.max(0, i - w); k < i; k++) s -= band[i][w - i + k] * b[k];
            b[i] = s / band[i][w];
        }
        for (int i = n - 1; i >= 0; i--) {
            double s = b[i];
            for (int k = i + 1; k <= Math.min(n - 1, i + w); k++) s -= band[k][w - k + i] * b[k];
            b[i] = s / band[i][w];
        }
    }
}
