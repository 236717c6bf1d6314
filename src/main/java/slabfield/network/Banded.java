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
        for (int i = 0; i < n; i++) {
            double[] row = band[i];
            for (int j = Math.max(0, i - w); j <= i; j++) {
                double[] other = band[j];
                double s = row[w - i + j];
                for (int k = Math.max(0, i - w); k < j; k++)
                    if (j - k <= w) s -= row[w - i + k] * other[w - j + k];
                row[w - i + j] = i == j ? Math.sqrt(s) : s / other[w];
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
