package slabfield.solve;

/** Loops over rows, each small enough for vector instructions; elements first .. end - 1. */
final class Loops {
    /** What a sum of conductances is at least where it is divided by: far below any that is meant. */
    static final double TINY = 0x1p-1000;

    private Loops() {}

    /** out = 1 / x where x is above 0, else 0. */
    static void invert(double[] out, double[] x, int first, int end) {
        for (int k = first; k < end; k++) {
            out[k] = Math.min(1, Math.max(0, x[k]) * 0x1p1000) / Math.max(x[k], TINY);
        }
    }

    /** out = 1 where x is above 0, else 0. */
    static void positive(double[] out, double[] x, int first, int end) {
        for (int k = first; k < end; k++) {
            out[k] = Math.min(1, Math.max(0, x[k]) * 0x1p1000);
        }
    }

    static void round(float[] out, double[] x, int first, int end) {
        round(out, 0, x, first, end);
    }

    /** out[at + k] = x[k]. */
    static void round(float[] out, int at, double[] x, int first, int end) {
        for (int k = first; k < end; k++) {
            out[at + k] = (float) x[k];
        }
    }

    static void widen(double[] out, float[] x, int first, int end) {
        for (int k = first; k < end; k++) {
            out[k] = x[k];
        }
    }

    static void add(double[] sum, double[] x, int first, int end) {
        for (int k = first; k < end; k++) {
            sum[k] += x[k];
        }
    }

    /** out = x y. */
    static void product(double[] out, double[] x, double[] y, int first, int end) {
        for (int k = first; k < end; k++) {
            out[k] = x[k] * y[k];
        }
    }

    /** sum += x y. */
    static void addProduct(double[] sum, double[] x, double[] y, int first, int end) {
        for (int k = first; k < end; k++) {
            sum[k] += x[k] * y[k];
        }
    }

    /** sum += x (y + z). */
    static void addProduct(double[] sum, double[] x, double[] y, double[] z, int first, int end) {
        for (int k = first; k < end; k++) {
            sum[k] += x[k] * (y[k] + z[k]);
        }
    }

    /** out = x + y + z. */
    static void sum(double[] out, double[] x, double[] y, double[] z, int first, int end) {
        for (int k = first; k < end; k++) {
            out[k] = x[k] + y[k] + z[k];
        }
    }

    /** out = x - y - z. */
    static void difference(double[] out, double[] x, double[] y, double[] z, int first, int end) {
        for (int k = first; k < end; k++) {
            out[k] = x[k] - y[k] - z[k];
        }
    }

    /** out = the larger of x and y + z. */
    static void larger(double[] out, double[] x, double[] y, double[] z, int first, int end) {
        for (int k = first; k < end; k++) {
            out[k] = Math.max(x[k], y[k] + z[k]);
        }
    }

    /** Sum of x y over n elements from i and j on, in four sums, as one would wait for each of its additions. */
    static double dot(double[] x, int i, double[] y, int j, int n) {
        double s = 0;
        double t = 0;
        double u = 0;
        double v = 0;
        int k = 0;
        for (; k + 3 < n; k += 4) {
            s += x[i + k] * y[j + k];
            t += x[i + k + 1] * y[j + k + 1];
            u += x[i + k + 2] * y[j + k + 2];
            v += x[i + k + 3] * y[j + k + 3];
        }
        for (; k < n; k++) {
            s += x[i + k] * y[j + k];
        }
        return s + t + (u + v);
    }

    /** out[k] = x[k - 1]. */
    static double[] before(double[] out, double[] x, int first, int end) {
        System.arraycopy(x, first - 1, out, first, end - first);
        return out;
    }

    /** out[k] = x[k + 1]. */
    static double[] after(double[] out, double[] x, int first, int end) {
        System.arraycopy(x, first + 1, out, first, end - first);
        return out;
    }
}
