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

    /** The same at which places where little flows are settled, too, after a step that set out from {@link #NEAR} or less. */
    public static final double SETTLED = 1e-13;

    /** A longer step leaves rounding errors of its own size. */
    private static final double NEAR = 1e-2;

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
     * Improves a guess until the residual is below {@link NonlinearSystem#settled}, or below {@link #TOLERANCE} and one more step has been
     * taken, which settles the places where little flows.
     *
     * @param system to solve
     * @param x guess, replaced by the answer, length {@code system.size()}
     * @param rest what rounding leaves out of it, replaced likewise, same length
     * @param watch asked after each step
     */
    public static Outcome solve(NonlinearSystem system, double[] x, double[] rest, Watch watch) {
        int n = system.size();
        double[] r = new double[n], d = new double[n], rTrial = new double[n];
        double[] trial = new double[n], restTrial = new double[n];
        system.residual(x, rest, r);
        double relative = eased(system, x, rest, r);
        boolean polished = false, near = false;
        for (int k = 0; k < LIMIT; k++) {
            if (watch.stopAfter(k, relative)) return new Outcome(Ending.CANCELLED, k, relative);
            if (near && relative <= system.settled() || polished && relative <= TOLERANCE)
                return new Outcome(Ending.CONVERGED, k, relative);
            polished = relative <= TOLERANCE;
            near = relative <= NEAR;
            if (!system.step(x, rest, r, d)) return new Outcome(Ending.SINGULAR, k, relative);
            double slope = dot(r, d);
            if (!(slope < 0)) {
                Ending end = relative <= TOLERANCE ? Ending.CONVERGED : Ending.STALLED;
                return new Outcome(end, k, relative);
            }
            double t = shorten(system, x, rest, d, slope, trial, restTrial, rTrial);
            if (t == 0) {
                Ending end = relative <= TOLERANCE ? Ending.CONVERGED : Ending.STALLED;
                return new Outcome(end, k, relative);
            }
            double next = relative(system, trial, restTrial, rTrial);
            if (polished && !(next <= relative)) return new Outcome(Ending.CONVERGED, k, relative);
            System.arraycopy(trial, 0, x, 0, n);
            System.arraycopy(restTrial, 0, rest, 0, n);
            System.arraycopy(rTrial, 0, r, 0, n);
            relative = eased(system, x, rest, r);
        }
        return new Outcome(relative <= TOLERANCE ? Ending.CONVERGED : Ending.ITERATION_LIMIT, LIMIT, relative);
    }

    /** Length of the step taken, with the place and its residual in the last two arrays; 0 where none helps. */
    private static double shorten(
            NonlinearSystem system,
            double[] x,
            double[] rest,
            double[] d,
            double slope0,
            double[] trial,
            double[] restTrial,
            double[] rTrial) {
        double low = 0, slopeLow = slope0, high = Double.NaN, slopeHigh = Double.NaN, t = 1;
        for (int k = 0; k < SHORTENINGS; k++) {
            advance(x, rest, d, t, trial, restTrial);
            system.residual(trial, restTrial, rTrial);
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
        if (low == 0) return 0;
        advance(x, rest, d, low, trial, restTrial);
        system.residual(trial, restTrial, rTrial);
        return low;
    }

    /** (x + rest) + t d, split again into what a double holds and what rounding leaves out (Knuth's two-sum). */
    private static void advance(double[] x, double[] rest, double[] d, double t, double[] to, double[] restTo) {
        for (int i = 0; i < x.length; i++) {
            double add = rest[i] + t * d[i], sum = x[i] + add, back = sum - x[i];
            to[i] = sum;
            restTo[i] = (x[i] - (sum - back)) + (add - back);
        }
    }

    /** Lets the system ease the place; returns the relative residual at which that ends. */
    private static double eased(NonlinearSystem system, double[] x, double[] rest, double[] r) {
        double relative = relative(system, x, rest, r);
        if (!system.ease(x, rest, r, relative)) return relative;
        system.residual(x, rest, r);
        return relative(system, x, rest, r);
    }

    private static double relative(NonlinearSystem system, double[] x, double[] rest, double[] r) {
        double sum = 0;
        for (double v : r) sum += Math.abs(v);
        double scale = system.scale(x, rest);
        return sum == 0 ? 0 : sum / scale;
    }

    private static double dot(double[] a, double[] b) {
        double s = 0;
        for (int i = 0; i < a.length; i++) s += a[i] * b[i];
        return s;
    }
}
