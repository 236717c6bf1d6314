package slabfield.fit;

import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Least squares by Levenberg and Marquardt with the damping rule of Nielsen (1999, from memory), for unknowns that all have
 * a normal prior of mean m and variance one: the least of (|r(x)|^2 + |x - m|^2) / 2. A place without a value counts as
 * infinitely bad, so that the step is shortened. It may be stopped by its model's exception.
 */
final class LevenbergMarquardt<E> {
    /** Longest step of one unknown, in standard deviations of its prior. */
    private static final double LONGEST = 2;

    private static final double FIRST_DAMPING = 1e-2;
    private static final double MOST_DAMPING = 1e12;

    /** Residuals and their derivatives. */
    interface Model<E> {
        /** Value at a place, or empty where there is none; near is a value from which the search may start. */
        Optional<E> value(double[] at, Optional<E> near);

        double[] residuals(E value);

        /** Derivative of each residual with respect to each unknown. */
        double[][] slopes(E value);

        /** Seen after each step that was kept. */
        default void step(int iteration, double cost) {}
    }

    /**
     * Where the search ended.
     *
     * @param at place
     * @param value there
     * @param slopes derivatives of the residuals there
     * @param curvature slopes^T slopes + 1, the inverse of the posterior's covariance in Laplace's approximation
     * @param cost (|r|^2 + |x - m|^2) / 2
     * @param iterations steps tried
     * @param converged true where the last step was below the tolerance
     */
    record Outcome<E>(
            double[] at,
            E value,
            double[][] slopes,
            double[][] curvature,
            double cost,
            int iterations,
            boolean converged) {}

    private final Model<E> model;
    private final double[] mean;
    private final boolean[] held;
    private final double tolerance;
    private final int limit;

    /**
     * @param mean of the priors
     * @param held unknowns that stay where they start
     * @param tolerance length of a step, in standard deviations of the posterior, below which the search ends
     * @param limit most steps
     */
    LevenbergMarquardt(Model<E> model, double[] mean, boolean[] held, double tolerance, int limit) {
        this.model = model;
        this.mean = mean;
        this.held = held;
        this.tolerance = tolerance;
        this.limit = limit;
    }

    /** Searches; empty where the start itself has no value. */
    Optional<Outcome<E>> search(double[] start, Optional<E> near) {
        Optional<E> first = model.value(start, near);
        if (first.isEmpty()) return Optional.empty();
        double[] x = start.clone();
        E value = first.get();
        double[] r = model.residuals(value);
        double[][] slopes = model.slopes(value), a = curvature(slopes);
        double cost = cost(r, x), damping = FIRST_DAMPING, growth = 2;
        for (int k = 1; k <= limit; k++) {
            double[] gradient = gradient(slopes, r, x);
            double[] step = step(a, gradient, damping);
            boolean small = length(a, step) < tolerance;
            double[] to = x.clone();
            for (int j = 0; j < x.length; j++) to[j] += step[j];
            Optional<E> there = model.value(to, Optional.of(value));
            double[] rThere = there.map(model::residuals).orElse(r);
            double next = there.isPresent() ? cost(rThere, to) : Double.POSITIVE_INFINITY;
            double hoped = hoped(a, gradient, step);
            double ratio = hoped > 0 ? (cost - next) / hoped : 0;
            if (there.isPresent() && (next < cost || small && next <= cost * (1 + 1e-9))) {
                x = to;
                value = there.get();
                r = rThere;
                cost = next;
                model.step(k, cost);
                slopes = model.slopes(value);
                a = curvature(slopes);
                if (small) return Optional.of(new Outcome<>(x, value, slopes, a, cost, k, true));
                damping *= Math.max(1.0 / 3, 1 - Math.pow(2 * ratio - 1, 3));
                growth = 2;
            } else {
                if (small) return Optional.of(new Outcome<>(x, value, slopes, a, cost, k, true));
                damping *= growth;
                growth *= 2;
                if (damping > MOST_DAMPING) return Optional.of(new Outcome<>(x, value, slopes, a, cost, k, false));
            }
        }
        return Optional.of(new Outcome<>(x, value, slopes, a, cost, limit, false));
    }

    private double cost(double[] r, double[] x) {
        double sum = 0;
        for (double v : r) sum += v * v;
        for (int j = 0; j < x.length; j++) sum += (x[j] - mean[j]) * (x[j] - mean[j]);
        return sum / 2;
    }

    private static double[][] curvature(double[][] slopes) {
        int p = slopes[0].length;
        double[][] a = new double[p][p];
        for (int j = 0; j < p; j++) {
            for (int k = 0; k <= j; k++) {
                double sum = j == k ? 1 : 0;
                for (double[] row : slopes) sum += row[j] * row[k];
                a[j][k] = a[k][j] = sum;
            }
        }
        return a;
    }

    private double[] gradient(double[][] slopes, double[] r, double[] x) {
        double[] g = new double[x.length];
        for (int j = 0; j < g.length; j++) {
            if (held[j]) continue;
            g[j] = x[j] - mean[j];
            for (int i = 0; i < r.length; i++) g[j] += slopes[i][j] * r[i];
        }
        return g;
    }

    private double[] step(double[][] a, double[] gradient, double damping) {
        RealMatrix m = new Array2DRowRealMatrix(a);
        for (int j = 0; j < gradient.length; j++) {
            if (held[j])
                for (int k = 0; k < gradient.length; k++) {
                    m.setEntry(j, k, 0);
                    m.setEntry(k, j, 0);
                }
            m.setEntry(j, j, held[j] ? 1 : a[j][j] * (1 + damping));
        }
        double[] step = new CholeskyDecomposition(m, 1e-8, 1e-300)
                .getSolver()
                .solve(new ArrayRealVector(gradient))
                .mapMultiply(-1)
                .toArray();
        double longest = Arrays.stream(step).map(Math::abs).max().orElse(0);
        if (longest > LONGEST) for (int j = 0; j < step.length; j++) step[j] *= LONGEST / longest;
        return step;
    }

    /** Fall of the cost that the parabola at the last place promises. */
    private static double hoped(double[][] a, double[] gradient, double[] step) {
        double sum = 0;
        for (int j = 0; j < step.length; j++) sum -= gradient[j] * step[j];
        double length = length(a, step);
        return sum - length * length / 2;
    }

    /** Length of a step in standard deviations of the posterior. */
    private static double length(double[][] a, double[] step) {
        double sum = 0;
        for (int j = 0; j < step.length; j++) for (int k = 0; k < step.length; k++) sum += step[j] * a[j][k] * step[k];
        return Math.sqrt(sum);
    }
}
