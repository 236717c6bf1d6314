package slabfield.solve;

import java.util.Arrays;
import java.util.OptionalInt;
import org.ejml.data.DMatrixSparseCSC;
import org.ejml.sparse.csc.decomposition.chol.CholeskyUpLooking_DSCC;
import org.ejml.sparse.csc.misc.TriangularSolver_DSCC;

/**
 * Direct solve of A x = b for a symmetric positive-definite {@link SymmetricMatrix}, by sparse Cholesky factors
 * P A P' = L L' in a given order. The analysis of the pattern is done once and kept while only values change.
 *
 * <p>Not safe for use by several threads at once.
 */
public final class CholeskySolver {
    /** A pivot below this share of its diagonal entry is rounding noise, so the matrix is singular to working precision. */
    private static final double NOISE = 16 * Math.ulp(1.0);

    private final SymmetricMatrix matrix;
    private final int[] order;
    private final DMatrixSparseCSC upper;
    /** Slot in the matrix of each entry of {@code upper}. */
    private final int[] slot;

    private final CholeskyUpLooking_DSCC decomposition = new CholeskyUpLooking_DSCC();
    private final double[] work;
    private boolean factored;

    /**
     * @param matrix whose pattern is analysed; its values are read at each {@link #factor()}
     * @param order every node once, in the order of elimination, such as {@link NestedDissection#order} gives
     */
    public CholeskySolver(SymmetricMatrix matrix, int[] order) {
        this.matrix = matrix;
        this.order = order.clone();
        int n = matrix.size();
        upper = new DMatrixSparseCSC(n, n, matrix.entries());
        slot = new int[matrix.entries()];
        work = new double[n];
        layOut(placeOf(order, n));
        decomposition.setStructureLocked(true);
    }

    private static int[] placeOf(int[] order, int n) {
        int[] place = new int[n];
        Arrays.fill(place, -1);
        for (int k = 0; k < order.length; k++) {
            if (order.length != n || order[k] < 0 || order[k] >= n || place[order[k]] >= 0) {
                throw new IllegalArgumentException("an order must name each of the " + n + " nodes once");
            }
            place[order[k]] = k;
        }
        return place;
    }

    /** Columns of the permuted upper triangle, the diagonal first in each. */
    private void layOut(int[] place) {
        int n = matrix.size();
        int[] next = upper.col_idx;
        for (int i = 0; i < n; i++) {
            next[place[i] + 1]++;
            for (int k = matrix.first(i); k < matrix.first(i + 1); k++) {
                next[Math.max(place[i], place[matrix.column(k)]) + 1]++;
            }
        }
        for (int i = 0; i < n; i++) {
            next[i + 1] += next[i];
        }
        next = Arrays.copyOf(upper.col_idx, n);
        for (int i = 0; i < n; i++) {
            put(next[place[i]]++, place[i], i);
        }
        for (int i = 0; i < n; i++) {
            for (int k = matrix.first(i); k < matrix.first(i + 1); k++) {
                int a = place[i];
                int b = place[matrix.column(k)];
                put(next[Math.max(a, b)]++, Math.min(a, b), n + k);
            }
        }
        upper.nz_length = matrix.entries();
    }

    private void put(int at, int row, int from) {
        upper.nz_rows[at] = row;
        slot[at] = from;
    }

    /**
     * Factors the matrix as its values now stand.
     *
     * @return empty when done; else a node at which the matrix proves not positive definite (it hangs free, or a value
     *     there is wrong), and nothing can be solved
     */
    public OptionalInt factor() {
        double[] values = matrix.values();
        for (int k = 0; k < slot.length; k++) {
            upper.nz_values[k] = values[slot[k]];
        }
        int bad = decomposition.decompose(upper) ? firstPoorPivot() : firstMissingPivot();
        factored = bad < 0;
        return factored ? OptionalInt.empty() : OptionalInt.of(order[bad]);
    }

    private int firstPoorPivot() {
        DMatrixSparseCSC factor = decomposition.getL();
        for (int k = 0; k < order.length; k++) {
            double pivot = factor.nz_values[factor.col_idx[k]];
            if (!(pivot * pivot > NOISE * upper.nz_values[upper.col_idx[k]])) {
                return k;
            }
        }
        return -1;
    }

    /** The decomposition's workspace holds where each column's next entry goes: the first without any has failed. */
    private int firstMissingPivot() {
        int k = 0;
        while (decomposition.getGw().data[k] != decomposition.getL().col_idx[k]) {
            k++;
        }
        return k;
    }

    /**
     * Solves with the factors at hand.
     *
     * @param rhs b, length n, not modified unless it is x
     * @param x overwritten with the answer; may be the same array
     */
    public void solve(double[] rhs, double[] x) {
        substitute(rhs);
        for (int k = 0; k < order.length; k++) {
            x[order[k]] = work[k];
        }
    }

    /** Leaves A^-1 rhs in {@code work}, in the order of elimination. */
    private void substitute(double[] rhs) {
        if (!factored) {
            throw new IllegalStateException("the matrix has not been factored");
        }
        for (int k = 0; k < order.length; k++) {
            work[k] = rhs[order[k]];
        }
        TriangularSolver_DSCC.solveL(decomposition.getL(), work);
        TriangularSolver_DSCC.solveTranL(decomposition.getL(), work);
    }

    /**
     * One step of iterative refinement with the matrix's present values: x += A^-1 (b - A x). With values that have
     * moved a little since {@link #factor()} it is a step of a converging iteration.
     *
     * @param residual length n, overwritten with b - A x from before the step
     * @return |b - A x| / |b| before the step, in the Euclidean norm; 0 for b = 0 = A x
     */
    public double refine(double[] rhs, double[] x, double[] residual) {
        matrix.multiply(x, residual);
        double missed = 0;
        double scale = 0;
        for (int i = 0; i < residual.length; i++) {
            residual[i] = rhs[i] - residual[i];
            missed += residual[i] * residual[i];
            scale += rhs[i] * rhs[i];
        }
        substitute(residual);
        for (int k = 0; k < order.length; k++) {
            x[order[k]] += work[k];
        }
        return missed == 0 ? 0 : Math.sqrt(missed / scale);
    }

    /** Entries of L, the diagonal included; known once factored. */
    public int fill() {
        return decomposition.getL().nz_length;
    }
}
