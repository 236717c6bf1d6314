package slabfield.network;

/** Modified Bessel functions by their integrals (Abramowitz and Stegun 1964, 9.6.19 and 9.6.24), for reference values. */
final class Bessel {
    private Bessel() {}

    static double k(int order, double x) {
        double step = 1.0 / 256, sum = 0.5 * Math.exp(-x);
        for (int i = 1; ; i++) {
            double t = i * step, term = Math.exp(-x * Math.cosh(t)) * Math.cosh(order * t);
            sum += term;
            if (term < 1e-18 * sum) return sum * step;
        }
    }

    static double i(int order, double x) {
        int n = 400;
        double sum = 0;
        for (int j = 0; j < n; j++) {
            double t = Math.PI * (j + 0.5) / n;
            sum += Math.exp(x * Math.cos(t)) * Math.cos(order * t);
        }
        return sum / n;
    }
}
