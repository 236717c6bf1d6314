package slabfield.solve;

import java.util.Arrays;
import java.util.OptionalInt;

/**
 * Sparse Cholesky factor P A P' = L L' of a symmetric positive-definite {@link SymmetricMatrix} by dense panels (multifrontal
 * method; Duff and Reid 1983, ACM Trans. Math. Softw. 9; Liu 1992, SIAM Rev. 34), for systems that are solved for many
 * right-hand sides. The analysis of the pattern is done once and kept while only values change.
 *
 * <p>Every column of a panel is an array of its own and all are read at one index, which is what compiled loops need to use
 * vector instructions. Not safe for use by several threads at once while factoring; {@link Sweep}s are.
 */
public final class PanelCholesky {
    /** A pivot below this share of its diagonal entry is rounding noise, so the matrix is singular to working precision. */
    private static final double NOISE = 16 * Math.ulp(1.0);

    private final SymmetricMatrix matrix;
    final PanelPattern pattern;
    /** Columns of L by their number; element r belongs to row r of its panel. */
    final double[][] columns;
    /** Reciprocals of L's diagonal. */
    final double[] inverse;

    /** For each matrix slot above the diagonal: its column of L, and its element there. */
    private final int[] slotColumn;

    private final int[] slotElement;
    private double[][] stack = new double[0][];
    private final int[] heap;
    private final Sweep sweep;
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
        heap = new int[pattern.rows.length];
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
        sweep = new Sweep(this);
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
        int bad = eliminate();
        factored = bad < 0;
        return factored ? OptionalInt.empty() : OptionalInt.of(pattern.node[bad]);
    }

    /** Column at which it fails, or -1. */
    private int eliminate() {
        int top = 0;
        int waiting = 0;
        for (int p = 0; p < pattern.rows.length; p++) {
            int[] rows = pattern.rows[p];
            int wide = pattern.begin[p + 1] - pattern.begin[p];
            int tall = rows.length;
            double[][] front = new double[tall][];
            System.arraycopy(columns, pattern.begin[p], front, 0, wide);
            claim(top + tall - wide);
            for (int j = wide; j < tall; j++) {
                front[j] = stack[top + j - wide];
                Arrays.fill(front[j], j, tall, 0);
            }
            int base = top;
            while (waiting > 0 && pattern.parent[heap[waiting - 1]] == p) {
                int child = heap[--waiting];
                base -= pattern.rows[child].length - (pattern.begin[child + 1] - pattern.begin[child]);
                add(child, base, rows, front);
            }
            int bad = partial(front, wide, tall, pattern.begin[p]);
            if (bad >= 0) {
                return bad;
            }
            if (tall > wide) {
                lower(top, base, tall - wide);
                top = base + tall - wide;
                heap[waiting++] = p;
            } else {
                top = base;
            }
        }
        return -1;
    }

    /** Sees to it that the stack has that many columns. */
    private void claim(int height) {
        int old = stack.length;
        if (height > old) {
            stack = Arrays.copyOf(stack, Math.max(height, 2 * old));
            for (int k = old; k < stack.length; k++) {
                stack[k] = new double[pattern.tallest];
            }
        }
    }

    /** Brings stack columns from .. from + count - 1 down to begin at {@code to}; those there go up in exchange. */
    private void lower(int from, int to, int count) {
        if (from == to) {
            return;
        }
        for (int k = 0; k < count; k++) {
            double[] column = stack[from + k];
            stack[from + k] = stack[to + k];
            stack[to + k] = column;
        }
    }

    /** Adds what a child left on the stack to its parent's front. */
    private void add(int child, int base, int[] rows, double[][] front) {
        int[] own = pattern.rows[child];
        int wide = pattern.begin[child + 1] - pattern.begin[child];
        int[] to = new int[own.length];
        int r = 0;
        for (int k = wide; k < own.length; k++) {
            while (rows[r] != own[k]) {
                r++;
            }
            to[k] = r;
        }
        for (int j = wide; j < own.length; j++) {
            double[] from = stack[base + j - wide];
            double[] target = front[to[j]];
            for (int k = j; k < own.length; k++) {
                target[to[k]] += from[k];
            }
        }
    }

    /** Eliminates the first columns of a front; returns the column of L at which that fails, or -1. */
    private int partial(double[][] front, int wide, int tall, int first) {
        double[] none = new double[tall];
        for (int k = 0; k < wide; k += 4) {
            int end = Math.min(wide, k + 4);
            for (int c = k; c < end; c++) {
                double[] column = front[c];
                double given = matrix.values()[pattern.node[first + c]];
                for (int p = k; p < c; p++) {
                    subtract(column, front[p], front[p][c], c, tall);
                }
                double pivot = column[c];
                if (!(pivot > NOISE * given)) {
                    return first + c;
                }
                double scale = 1 / Math.sqrt(pivot);
                inverse[first + c] = scale;
                for (int i = c; i < tall; i++) {
                    column[i] *= scale;
                }
            }
            double[] a = front[k];
            double[] b = k + 1 < end ? front[k + 1] : none;
            double[] c = k + 2 < end ? front[k + 2] : none;
            double[] d = k + 3 < end ? front[k + 3] : none;
            for (int j = end; j < tall; j++) {
                subtract(front[j], a, b, c, d, a[j], b[j], c[j], d[j], j, tall);
            }
        }
        return -1;
    }

    private static void subtract(double[] to, double[] from, double factor, int begin, int end) {
        for (int i = begin; i < end; i++) {
            to[i] -= factor * from[i];
        }
    }

    private static void subtract(
            double[] to,
            double[] a,
            double[] b,
            double[] c,
            double[] d,
            double fa,
            double fb,
            double fc,
            double fd,
            int begin,
            int end) {
        for (int i = begin; i < end; i++) {
            to[i] -= fa * a[i] + fb * b[i] + (fc * c[i] + fd * d[i]);
        }
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
    public Sweep sweep() {
        return new Sweep(this);
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

    /** Substitution with a factor that does not change meanwhile; each has work arrays of its own. */
    public static final class Sweep {
        private final PanelCholesky factor;
        private final double[] work;
        private final double[] part;
        private final double[] none;

        Sweep(PanelCholesky factor) {
            this.factor = factor;
            work = new double[factor.pattern.size];
            part = new double[factor.pattern.tallest];
            none = new double[factor.pattern.tallest];
        }

        /** As {@link PanelCholesky#solve}. */
        public void solve(double[] rhs, double[] x) {
            factor.needFactor();
            PanelPattern p = factor.pattern;
            for (int k = 0; k < work.length; k++) {
                work[k] = rhs[p.node[k]];
            }
            for (int panel = 0; panel < p.rows.length; panel++) {
                forward(panel);
            }
            for (int panel = p.rows.length - 1; panel >= 0; panel--) {
                backward(panel);
            }
            for (int k = 0; k < work.length; k++) {
                x[p.node[k]] = work[k];
            }
        }

        private void forward(int panel) {
            PanelPattern p = factor.pattern;
            int first = p.begin[panel];
            int wide = p.begin[panel + 1] - first;
            int[] rows = p.rows[panel];
            Arrays.fill(part, wide, rows.length, 0);
            System.arraycopy(work, first, part, 0, wide);
            for (int k = 0; k < wide; k += 4) {
                int end = Math.min(wide, k + 4);
                for (int c = k; c < end; c++) {
                    double v = part[c] * factor.inverse[first + c];
                    part[c] = v;
                    double[] column = factor.columns[first + c];
                    for (int r = c + 1; r < end; r++) {
                        part[r] -= v * column[r];
                    }
                }
                double[] a = factor.columns[first + k];
                double[] b = k + 1 < end ? factor.columns[first + k + 1] : none;
                double[] c = k + 2 < end ? factor.columns[first + k + 2] : none;
                double[] d = k + 3 < end ? factor.columns[first + k + 3] : none;
                subtract(
                        part,
                        a,
                        b,
                        c,
                        d,
                        part[k],
                        k + 1 < end ? part[k + 1] : 0,
                        k + 2 < end ? part[k + 2] : 0,
                        k + 3 < end ? part[k + 3] : 0,
                        end,
                        rows.length);
            }
            System.arraycopy(part, 0, work, first, wide);
            for (int r = wide; r < rows.length; r++) {
                work[rows[r]] += part[r];
            }
        }

        private void backward(int panel) {
            PanelPattern p = factor.pattern;
            int first = p.begin[panel];
            int wide = p.begin[panel + 1] - first;
            int[] rows = p.rows[panel];
            System.arraycopy(work, first, part, 0, wide);
            for (int r = wide; r < rows.length; r++) {
                part[r] = work[rows[r]];
            }
            int k = wide;
            while (k > 0) {
                int from = Math.max(0, k - 4);
                if (k - from == 4) {
                    four(first + from, k, rows.length, from);
                } else {
                    for (int c = from; c < k; c++) {
                        double[] column = factor.columns[first + c];
                        double sum = 0;
                        for (int r = k; r < rows.length; r++) {
                            sum += column[r] * part[r];
                        }
                        part[c] -= sum;
                    }
                }
                for (int c = k - 1; c >= from; c--) {
                    double[] column = factor.columns[first + c];
                    double sum = part[c];
                    for (int r = c + 1; r < k; r++) {
                        sum -= column[r] * part[r];
                    }
                    part[c] = sum * factor.inverse[first + c];
                }
                k = from;
            }
            System.arraycopy(part, 0, work, first, wide);
        }

        private void four(int column, int begin, int end, int to) {
            double[] a = factor.columns[column];
            double[] b = factor.columns[column + 1];
            double[] c = factor.columns[column + 2];
            double[] d = factor.columns[column + 3];
            double sa = 0;
            double sb = 0;
            double sc = 0;
            double sd = 0;
            for (int r = begin; r < end; r++) {
                double v = part[r];
                sa += a[r] * v;
                sb += b[r] * v;
                sc += c[r] * v;
                sd += d[r] * v;
            }
            part[to] -= sa;
            part[to + 1] -= sb;
            part[to + 2] -= sc;
            part[to + 3] -= sd;
        }
    }
}
