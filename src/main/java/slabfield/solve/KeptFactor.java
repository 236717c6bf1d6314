package slabfield.solve;

/**
 * Solves a sequence of systems whose matrices differ little, as in Newton's method: a Cholesky factor of an earlier matrix
 * preconditions conjugate gradients (Hestenes and Stiefel 1952) on the present one, and is made anew only when that takes
 * too many steps.
 */
public final class KeptFactor {
    /** Steps that cost about as much as a new factor. */
    private static final int MOST_STEPS = 10;

    private final SymmetricMatrix matrix;
    private final RoomyFactor factor;
    private final double[] r;
    private final double[] z;
    private final double[] d;
    private final double[] q;
    private boolean made;

    /**
     * @param matrix whose values change between solves and whose pattern does not
     * @param factor that has taken up the matrix, and takes up no other while this is in use; if it still holds the factor of
     *     a like one before, that is tried first
     */
    public KeptFactor(SymmetricMatrix matrix, RoomyFactor factor) {
        this.matrix = matrix;
        this.factor = factor;
        made = factor.isFactored();
        int n = matrix.size();
        r = new double[n];
        z = new double[n];
        d = new double[n];
        q = new double[n];
    }

    /**
     * Solves matrix * x = rhs for the matrix's present values.
     *
     * @param rhs right-hand side, not modified
     * @param x receives the answer
     * @param tolerance relative residual, in the Euclidean norm, that is good enough for a solve with an earlier factor; with
     *     a new one the answer is refined once
     * @return false where the matrix is not positive definite
     */
    public boolean solve(double[] rhs, double[] x, double tolerance) {
        if (made && iterate(rhs, x, tolerance)) return true;
        made = factor.factor().isEmpty();
        if (!made) return false;
        factor.solve(rhs, x);
        matrix.multiply(x, q);
        for (int i = 0; i < q.length; i++) r[i] = rhs[i] - q[i];
        factor.solve(r, z);
        for (int i = 0; i < z.length; i++) x[i] += z[i];
        return true;
    }

    private boolean iterate(double[] rhs, double[] x, double tolerance) {
        int n = x.length;
        java.util.Arrays.fill(x, 0);
        System.arraycopy(rhs, 0, r, 0, n);
        double goal = tolerance * tolerance * dot(rhs, rhs), before = Math.sqrt(dot(rhs, rhs));
        if (goal == 0) return true;
        factor.solve(r, z);
        System.arraycopy(z, 0, d, 0, n);
        double rz = dot(r, z);
        for (int k = 0; k < MOST_STEPS; k++) {
            matrix.multiply(d, q);
            double curvature = dot(d, q);
            if (!(curvature > 0) || !(rz > 0)) return false;
            double a = rz / curvature;
            for (int i = 0; i < n; i++) {
                x[i] += a * d[i];
                r[i] -= a * q[i];
            }
            double now = dot(r, r);
            if (now <= goal) return true;
            // Not worth going on where the steps left cannot bring it down far enough at the pace so far.
            double pace = Math.pow(Math.sqrt(now) / before, 1.0 / (k + 1));
            if (!(Math.sqrt(now) * Math.pow(pace, MOST_STEPS - k - 1) <= Math.sqrt(goal))) return false;
            factor.solve(r, z);
            double next = dot(r, z), b = next / rz;
            rz = next;
            for (int i = 0; i < n; i++) d[i] = z[i] + b * d[i];
        }
        return false;
    }

    private static double dot(double[] a, double[] b) {
        double s = 0;
        for (int i = 0; i < a.length; i++) s += a[i] * b[i];
        return s;
    }
}
