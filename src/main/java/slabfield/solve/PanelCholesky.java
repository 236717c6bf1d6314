package slabfield.solve;

import java.util.Arrays;
import java.util.OptionalInt;

/**
 * Sparse Cholesky factor P A P' = L L' of a symmetric positive-definite {@link SymmetricMatrix} by dense panels (multifrontal
 * method; Duff and Reid 1983, ACM Trans. Math. Softw. 9; Liu 1992, SIAM Rev. 34), for systems that are solved for many
 * right-hand sides. The analysis of the pattern is done once and kept while only values change.
 *
 * <p>Every column of a panel is an array of its own and all are read at one index, which is what compiled loops need to use
 * vector instructions. Not safe for use by several threads at once while factoring; {@link PanelSweep}s are. What
 * it computes is the same to the last bit whether subtrees are gone through at the same time or not.
 */
public final class PanelCholesky {
    private final SymmetricMatrix matrix;
    final PanelPattern pattern;
    /** Columns of L by their number; element r belongs to row r of its panel. */
    final double[][] columns;
    /** Reciprocals of L's diagonal. */
    final double[] inverse;

    /** For each matrix slot above the diagonal: its column of L, and its element there. */
    private final int[] slotColumn;

    private final int[] slotElement;
    final PanelPart.Division division;
    private final PanelElimination elimination;
    private final PanelSweep sweep;
    private boolean factored;

    /**
     * @param matrix whose pattern is analysed; its values are read at each {@link #factor()}
     * @param order every node once, in the order of elimination, such as {@link NestedDissection#order} gives
     */
    public PanelCholesky(SymmetricMatrix matrix, int[] order) {
        this.matrix = matrix;
        pattern = new PanelPattern(matrix, order);
        int n = pattern.size;
        columns = new double[n][];
        inverse = new double[n];
        for (int j = 0; j < n; j++) {
            columns[j] = new double[pattern.rows[pattern.panelOf[j]].length];
        }
        division = new PanelPart.Division(pattern);
        slotColumn = new int[matrix.entries() - n];
        slotElement = new int[slotColumn.length];
        for (int i = 0; i < n; i++) {
            for (int k = matrix.first(i); k < matrix.first(i + 1); k++) {
                int a = pattern.place[i];
                int b = pattern.place[matrix.column(k)];
                slotColumn[k] = Math.min(a, b);
                slotElement[k] = Arrays.binarySearch(pattern.rows[pattern.panelOf[slotColumn[k]]], Math.max(a, b));
            }
        }
        elimination = new PanelElimination(this, matrix.values());
        sweep = new PanelSweep(this);
    }

    /**
     * Factors the matrix as its values now stand.
     *
     * @return empty when done; else a node at which the matrix proves not positive definite (it hangs free, or a value
     *     there is wrong), and nothing can be solved
     */
    public OptionalInt factor() {
        int n = pattern.size;
        double[] values = matrix.values();
        for (double[] column : columns) {
            Arrays.fill(column, 0);
        }
        for (int j = 0; j < n; j++) {
            columns[j][j - pattern.begin[pattern.panelOf[j]]] = values[pattern.node[j]];
        }
        for (int k = 0; k < slotColumn.length; k++) {
            columns[slotColumn[k]][slotElement[k]] += values[n + k];
        }
        int bad = elimination.run();
        factored = bad < 0;
        return factored ? OptionalInt.empty() : OptionalInt.of(pattern.node[bad]);
    }

    /**
     * Solves with the factor at hand.
     *
     * @param rhs b, length n, not modified unless it is x
     * @param x overwritten with the answer; may be the same array
     */
    public void solve(double[] rhs, double[] x) {
        sweep.solve(rhs, x);
    }

    /** A means to solve with this factor in another thread at the same time. */
    public PanelSweep sweep() {
        return new PanelSweep(this);
    }

    void needFactor() {
        if (!factored) {
            throw new IllegalStateException("the matrix has not been factored");
        }
    }

    /** Entries of L, the zeros in its panels included. */
    public long fill() {
        long sum = 0;
        for (int p = 0; p < pattern.rows.length; p++) {
            long wide = (long) pattern.begin[p + 1] - pattern.begin[p];
            sum += wide * pattern.rows[p].length - wide * (wide - 1) / 2;
        }
        return sum;
    }
}
