package slabfield.solve;

import slabfield.solve.IterationResult.Ending;

/**
 * Preconditioned conjugate gradients for a symmetric positive-definite operator (Hestenes and Stiefel 1952, J. Res. Nat. Bur.
 * Stand. 49), with the Polak-Ribiere form of the direction, which forgives a preconditioner that rounds or varies a
 * little (Golub and Ye 1999, SIAM J. Sci. Comput. 21). Holds its work arrays, so that solving again allocates nothing.
 */
public final class ConjugateGradients {
    private final LinearOperator operator;
    private final Preconditioner preconditioner;
    private final double[] r;
    private final double[] z;
    private final double[] p;
    private final double[] ap;
    /** Length of the last step along p. */
    private double lastLength;

    public ConjugateGradients(LinearOperator operator, Preconditioner preconditioner) {
        this.operator = operator;
        this.preconditioner = preconditioner;
        int n = operator.size();
        r = new double[n];
        z = new double[n];
        p = new double[n];
        ap = new double[n];
    }

    /**
     * Solves A x = b.
     *
     * @param b right-hand side, not modified
     * @param x start, and then the answer
     * @param tolerance wanted |b - A x| / |b|, in the Euclidean norm
     * @param limit on the number of iterations
     */
    public IterationResult solve(double[] b, double[] x, double tolerance, int limit, Watch watch) {
        double norm = Math.sqrt(dot(b, b));
        double last = Double.POSITIVE_INFINITY;
        int done = 0;
        boolean goOn = true;
        while (true) {
            operator.apply(x, r);
            for (int k = 0; k < r.length; k++) {
                r[k] = b[k] - r[k];
            }
            double now = Math.sqrt(dot(r, r));
            Ending ending = ending(now, tolerance * norm, last, goOn, done >= limit);
            if (ending != null) {
                return new IterationResult(ending, done, norm > 0 ? now / norm : now);
            }
            last = now;
            double rz = 0;
            do {
                rz = direct(rz);
                operator.apply(p, ap);
                double curvature = dot(p, ap);
                done++;
                if (!(curvature > 0)) {
                    break;
                }
                double length = rz / curvature;
                for (int k = 0; k < r.length; k++) {
                    x[k] += length * p[k];
                    r[k] -= length * ap[k];
                }
                lastLength = length;
                now = Math.sqrt(dot(r, r));
                goOn = watch.step(done, now / norm);
            } while (goOn && done < limit && now > 0.99 * tolerance * norm);
        }
    }

    /** How a solve ends at this true residual, or null where it goes on. */
    static Ending ending(double residual, double wanted, double last, boolean goOn, boolean atLimit) {
        if (residual <= wanted) {
            return Ending.CONVERGED;
        }
        if (!goOn) {
            return Ending.CANCELLED;
        }
        if (atLimit) {
            return Ending.ITERATION_LIMIT;
        }
        return residual < 0.5 * last ? null : Ending.STALLED;
    }

    /** Next direction, given the last r'z (0: start anew); returns r'z. The last r is r + length ap. */
    private double direct(double before) {
        preconditioner.apply(r, z);
        double rz = dot(r, z);
        double factor = before == 0 ? 0 : -lastLength * dot(z, ap) / before;
        for (int k = 0; k < p.length; k++) {
            p[k] = z[k] + factor * p[k];
        }
        return rz;
    }

    private static double dot(double[] a, double[] b) {
        double s = 0;
        double t = 0;
        int k = 0;
        for (; k + 1 < a.length; k += 2) {
            s += a[k] * b[k];
            t += a[k + 1] * b[k + 1];
        }
        return k < a.length ? s + t + a[k] * b[k] : s + t;
    }
}
