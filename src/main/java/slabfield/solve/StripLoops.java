package slabfield.solve;

/**
 * Loops over the first n elements of strips in single precision. Each reads all arrays at one index and has few of them, so that the
 * compiled loop uses vectors.
 */
final class StripLoops {
    private StripLoops() {}

    /** y = a b. */
    static void product(float[] y, float[] a, float[] b, int n) {
        for (int k = 0; k < n; k++) {
            y[k] = a[k] * b[k];
        }
    }

    /** y += a b. */
    static void addProduct(float[] y, float[] a, float[] b, int n) {
        for (int k = 0; k < n; k++) {
            y[k] += a[k] * b[k];
        }
    }

    /** y = a b + c d. */
    static void products(float[] y, float[] a, float[] b, float[] c, float[] d, int n) {
        for (int k = 0; k < n; k++) {
            y[k] = a[k] * b[k] + c[k] * d[k];
        }
    }

    /** y += a b + c d. */
    static void addProducts(float[] y, float[] a, float[] b, float[] c, float[] d, int n) {
        for (int k = 0; k < n; k++) {
            y[k] += a[k] * b[k] + c[k] * d[k];
        }
    }

    /** y += a. */
    static void add(float[] y, float[] a, int n) {
        for (int k = 0; k < n; k++) {
            y[k] += a[k];
        }
    }

    /** y += factor a. */
    static void addTimes(float[] y, float factor, float[] a, int n) {
        for (int k = 0; k < n; k++) {
            y[k] += factor * a[k];
        }
    }

    /** x = inverse (y + b): the values that balance the points. */
    static void balance(float[] x, float[] inverse, float[] y, float[] b, int n) {
        for (int k = 0; k < n; k++) {
            x[k] = inverse[k] * (y[k] + b[k]);
        }
    }

    /** y += b - diagonal x: turns the neighbours' sum into the residual. */
    static void remaining(float[] y, float[] b, float[] diagonal, float[] x, int n) {
        for (int k = 0; k < n; k++) {
            y[k] += b[k] - diagonal[k] * x[k];
        }
    }

    /** y = diagonal p - y + rest p: turns the neighbours' sum into the product with the operator. */
    static void applied(float[] y, float[] diagonal, float[] rest, float[] p, int n) {
        for (int k = 0; k < n; k++) {
            y[k] = diagonal[k] * p[k] - y[k] + rest[k] * p[k];
        }
    }

    /** to[k + 1] = from[k]. */
    static void onward(float[] from, float[] to, int n) {
        to[0] = 0;
        System.arraycopy(from, 0, to, 1, n - 1);
    }

    /** to[k] = from[k + 1]. */
    static void back(float[] from, float[] to, int n) {
        System.arraycopy(from, 1, to, 0, n);
    }
}
