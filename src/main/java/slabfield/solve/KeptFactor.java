package slabfield.solve;

/**
 * Solves a sequence of systems whose matrices differ little, as in Newton's method: a Cholesky factor of an earlier matrix
 * preconditions conjugate gradients (Hestenes and Stiefel 1952) on the present one, and is made anew only when that takes
 * too many steps.
 */
public final class KeptFactor {
    /** A new factor costs about as much as so many steps. */
    private static final double A_FACTOR = 9;

    private static final int MOST_STEPS = 15;
    /** Part of the residual that a step leaves with a factor of a matrix that has hardly changed since. */
    private static final double FRESH_PACE = 0.05;

    /** Part of the tolerance above which the answer by a new factor is refined. */
    private static final double GOOD = 1e-3;

    private final SymmetricMatrix matrix;
    private final RoomyFactor factor;
    private final double[] r;
    private final double[] z;
    private final double[] d;
    private final double[] q;
    private boolean made;
    private int factors;
    /** What a step left of the residual in the last solve with this factor; 0 where there was none. */
    private double pace;
    /** Steps made with the matrix's present values. */
    private int spent;

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
     * @param tolerance relative residual, in the Euclidean norm, that is good enough; the answer by a new factor is refined
     *     once if it is not far better
     * @param toGo relative residual that this solve and like ones to come are to reach together, which decides whether a new
     *     factor pays; the tolerance itself where this one stands alone
     * @return false where the matrix is not positive definite
     */
    public boolean solve(double[] rhs, double[] x, double tolerance, double toGo) {
        if (made && spent < A_FACTOR && !(steps(toGo, pace) > worth(toGo)) && iterate(rhs, x, tolerance, toGo))
            return true;
        made = factor.factor().isEmpty();
        factors++;
        pace = 0;
        spent = 0;
        if (!made) return false;
        factor.solve(rhs, x);
        matrix.multiply(x, q);
        for (int i = 0; i < q.length; i++) r[i] = rhs[i] - q[i];
        if (Math.sqrt(dot(r, r)) <= GOOD * tolerance * Math.sqrt(dot(rhs, rhs))) return true;
        factor.solve(r, z);
        for (int i = 0; i < z.length; i++) x[i] += z[i];
        return true;
    }

    /** How many factors have been made. */
    int factors() {
        return factors;
    }

    /** Tells that the matrix's values have changed. */
    public void changed() {
        spent = 0;
    }

    /** Steps that bring the residual down to a part of itself when each leaves {@code pace} of it. */
    private static double steps(double part, double pace) {
        return pace < 1 ? Math.log(part) / Math.log(pace) : Double.POSITIVE_INFINITY;
    }

    /** Steps from which on a new factor, whose own steps come on top, is cheaper. */
    private static double worth(double toGo) {
        return A_FACTOR + steps(toGo, FRESH_PACE);
    }

    private boolean iterate(double[] rhs, double[] x, double tolerance, double toGo) {
        int n = x.length;
        java.util.Arrays.fill(x, 0);
        System.arraycopy(rhs, 0, r, 0, n);
        double square = dot(rhs, rhs), goal = tolerance * tolerance * square;
        if (goal == 0) return true;
        factor.solve(r, z);
        System.arraycopy(z, 0, d, 0, n);
        double rz = dot(r, z);
        for (int k = 1; k <= MOST_STEPS; k++) {
            matrix.multiply(d, q);
            double curvature = dot(d, q);
            if (!(curvature > 0) || !(rz > 0)) return false;
            double a = rz / curvature;
            for (int i = 0; i < n; i++) {
                x[i] += a * d[i];
                r[i] -= a * q[i];
            }
            double left = dot(r, r) / square;
            pace = Math.pow(left, 0.5 / k);
            spent++;
            if (left * square <= goal) return true;
            // One step says nothing: what an earlier solve has left is what the factor is worst at.
            if (k > 1 && !(steps(toGo, pace) <= worth(toGo))) return false;
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
