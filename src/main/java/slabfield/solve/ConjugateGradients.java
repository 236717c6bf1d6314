package slabfield.solve;

import slabfield.solve.IterationResult.Ending;

/** Preconditioned conjugate gradients (Hestenes and Stiefel 1952; Saad 2003, algorithm 9.1). */
public final class ConjugateGradients {
    private final LinearOperator operator;
    private final Preconditioner preconditioner;
    private final double[] r;
    private final double[] z;
    private final double[] d;
    private final double[] q;

    public ConjugateGradients(LinearOperator operator, Preconditioner preconditioner) {
        this.operator = operator;
        this.preconditioner = preconditioner;
        int n = operator.size();
        r = new double[n];
        z = new double[n];
        d = new double[n];
        q = new double[n];
    }

    /**
     * Solves A x = b from x = 0.
     *
     * @param b right-hand side, not modified
     * @param x receives the answer
     * @param tolerance wanted |b - A x| / |b|, Euclidean; judged by the running residual
     * @param limit on the number of iterations
     */
    public IterationResult solve(double[] b, double[] x, double tolerance, int limit) {
        java.util.Arrays.fill(x, 0);
        System.arraycopy(b, 0, r, 0, r.length);
        double norm = Math.sqrt(dot(b, b)), now = norm, rz = 0;
        if (norm == 0) return new IterationResult(Ending.CONVERGED, 0, 0);
        for (int k = 0; k < limit; k++) {
            preconditioner.apply(r, z);
            double next = dot(r, z);
            if (!(next > 0)) return new IterationResult(Ending.STALLED, k, now / norm);
            double again = k == 0 ? 0 : next / rz;
            rz = next;
            for (int i = 0; i < d.length; i++) d[i] = z[i] + again * d[i];
            operator.apply(d, q);
            double curvature = dot(d, q);
            if (!(curvature > 0)) return new IterationResult(Ending.STALLED, k, now / norm);
            double a = rz / curvature;
            for (int i = 0; i < d.length; i++) {
                x[i] += a * d[i];
                r[i] -= a * q[i];
            }
            now = Math.sqrt(dot(r, r));
            if (now <= tolerance * norm) return new IterationResult(Ending.CONVERGED, k + 1, now / norm);
        }
        return new IterationResult(Ending.ITERATION_LIMIT, limit, now / norm);
    }

    private static double dot(double[] a, double[] b) {
        double s = 0;
        for (int i = 0; i < a.length; i++) s += a[i] * b[i];
        return s;
    }
}
