package slabfield.solve;

/**
 * Newton's method for a convex potential with a safeguarded step. The potential itself is never needed: along a step its
 * slope is the inner product of residual and step, which for a convex potential only rises; a step that overshoots shows
 * a positive slope at its end and is shortened by the regula falsi until the slope is small (strong Wolfe condition on the
 * slope alone; Nocedal and Wright 2006, ch. 3).
 */
public final class Newton {
    /** Sum of absolute residuals over scale at which the answer counts as found. */
    public static final double TOLERANCE = 1e-10;

    private static final int LIMIT = 200;
    private static final int SHORTENINGS = 40;
    private static final double SLOPE_KEPT = 0.5;

    private Newton() {}

    /** How it ended. */
    public enum Ending {
        CONVERGED,
        STALLED,
        ITERATION_LIMIT,
        CANCELLED,
        SINGULAR
    }

    /**
     * How it ended, with the last figures.
     *
     * @param iterations steps taken
     * @param residual sum of absolute residuals over scale, computed afresh at the answer
     */
    public record Outcome(Ending ending, int iterations, double residual) {}

    /** Asked once per iteration. */
    @FunctionalInterface
    public interface Watch {
        /** @return true to stop */
        boolean stopAfter(int iteration, double residual);
    }

    /**
     * Improves a guess until the residual is below {@link #TOLERANCE}, and then takes one more step, which settles the
     * places where little flows.
     *
     * @param system to solve
     * @param x guess, replaced by the answer, length {@code system.size()}
     * @param watch asked after each step
     */
    public static Outcome solve(NonlinearSystem system, double[] x, Watch watch) {
        int n = system.size();
        double[] r = new double[n], d = new double[n], trial = new double[n], rTrial = new double[n];
        system.residual(x, r);
        double relative = relative(system, x, r);
        boolean polished = false;
        for (int k = 0; k < LIMIT; k++) {
            if (watch.stopAfter(k, relative)) return new Outcome(Ending.CANCELLED, k, relative);
            if (relative <= TOLERANCE && polished) return new Outcome(Ending.CONVERGED, k, relative);
            polished = relative <= TOLERANCE;
            if (!system.step(x, r, d)) return new Outcome(Ending.SINGULAR, k, relative);
            double slope = dot(r, d);
            if (!(slope < 0)) {
                Ending end = relative <= TOLERANCE ? Ending.CONVERGED : Ending.STALLED;
                return new Outcome(end, k, relative);
            }
            double t = shorten(system, x, d, slope, trial, rTrial);
            if (t == 0) {
                Ending end = relative <= TOLERANCE ? Ending.CONVERGED : Ending.STALLED;
                return new Outcome(end, k, relative);
            }
            double next = relative(system, trial, rTrial);
            if (polished && !(next <= relative)) return new Outcome(Ending.CONVERGED, k, relative);
            System.arraycopy(trial, 0, x, 0, n);
            System.arraycopy(rTrial, 0, r, 0, n);
            relative = next;
        }
        return new Outcome(relative <= TOLERANCE ? Ending.CONVERGED : Ending.ITERATION_LIMIT, LIMIT, relative);
    }

    /** Length of the step taken, with the place and its residual in the last two arrays; 0 where none helps. */
    private static double shorten(
            NonlinearSystem system, double[] x, double[] d, double slope0, double[] trial, double[] rTrial) {
        double low = 0, slopeLow = slope0, high = Double.NaN, slopeHigh = Double.NaN, t = 1;
        for (int k = 0; k < SHORTENINGS; k++) {
            for (int i = 0; i < x.length; i++) trial[i] = x[i] + t * d[i];
            system.residual(trial, rTrial);
            double slope = dot(rTrial, d);
            if (Double.isFinite(slope) && slope <= SLOPE_KEPT * Math.abs(slope0)) {
                if (slope >= -SLOPE_KEPT * Math.abs(slope0) || t == 1) return t;
                low = t;
                slopeLow = slope;
            } else {
                high = t;
                slopeHigh = slope;
            }
            double next = Double.isFinite(slopeHigh) ? low - slopeLow * (high - low) / (slopeHigh - slopeLow) : low;
            double margin = 0.1 * (high - low);
            t = Math.max(low + margin, Math.min(high - margin, next));
            if (high - low < 1e-14) break;
        }
        return low > 0 ? restore(system, x, d, low, trial, rTrial) : 0;
    }

    private static double restore(
            NonlinearSystem system, double[] x, double[] d, double t, double[] trial, double[] rTrial) {
        for (int i = 0; i < x.length; i++) trial[i] = x[i] + t * d[i];
        system.residual(trial, rTrial);
        return t;
    }

    private static double relative(NonlinearSystem system, double[] x, double[] r) {
        double sum = 0;
        for (double v : r) sum += Math.abs(v);
        double scale = system.scale(x);
        return sum == 0 ? 0 : sum / scale;
    }

    private static double dot(double[] a, double[] b) {
        double s = 0;
        for (int i = 0; i < a.length; i++) s += a[i] * b[i];
        return s;
    }
}
