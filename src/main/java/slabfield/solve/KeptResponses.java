package slabfield.solve;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * Answers of a linear system that is changed at a few nodes, again and again, for the price of adding a few kept vectors. With
 * G = A^-1 the answer x of {@code (A + E C E') x = b + E f}, where E picks the changed nodes, is
 *
 * <pre>
 *   x = G b + G E y,   (I + C E'G E) y = f - C E'G b
 * </pre>
 *
 * (Woodbury 1950). Columns of G are taken from the factor of A once and kept; a suction point that moves by a cell changes the
 * nodes around it, and needs the columns of these.
 *
 * <p>No house is solved with this, only the benchmark is: fans and openings bend, and so does the tie of a pit in coarse stone, so that
 * A changes with the answer at many nodes. It shows what a drag costs where nothing bends.
 *
 * <p>Not safe for use by several threads at once.
 */
public final class KeptResponses {
    /** Columns made at one go, where many are wanted and where few are. */
    private static final int MANY = 32;

    private static final int FEW = 8;

    private final PanelCholesky factor;
    private final int size;
    private final double[] open;
    private final Map<Integer, double[]> columns = new HashMap<>();
    private final UnitLoads many;
    private final UnitLoads few;

    /**
     * @param factor of A, not factored anew while this is in use
     * @param load b
     */
    public KeptResponses(PanelCholesky factor, double[] load) {
        this.factor = factor;
        size = load.length;
        open = new double[size];
        factor.solve(load, open);
        many = new UnitLoads(factor, MANY);
        few = new UnitLoads(factor, FEW);
    }

    /**
     * What is changed.
     *
     * @param nodes different ones
     * @param matrix C, what is added to A's entries of these nodes, by row
     * @param load f, what is added to b there
     */
    public record Change(int[] nodes, double[][] matrix, double[] load) {}

    /** Makes the columns of nodes that are not at hand yet, as for places that a point may soon move to. */
    public void keep(int[] nodes) {
        int[] missing = UnitLoads.inOrder(
                factor,
                Arrays.stream(nodes)
                        .filter(k -> !columns.containsKey(k))
                        .distinct()
                        .toArray());
        UnitLoads loads = missing.length > FEW ? many : few;
        int batch = missing.length > FEW ? MANY : FEW;
        for (int from = 0; from < missing.length; from += batch) {
            int to = Math.min(missing.length, from + batch);
            loads.solve(missing, from, to);
            double[][] made = new double[to - from][size];
            for (int i = 0; i < size; i++) {
                double[] answers = loads.at(i);
                for (int k = 0; k < made.length; k++) {
                    made[k][i] = answers[k];
                }
            }
            for (int k = 0; k < made.length; k++) {
                columns.put(missing[from + k], made[k]);
            }
        }
    }

    /** Number of columns at hand. */
    public int kept() {
        return columns.size();
    }

    /**
     * The answer with a change.
     *
     * @param x receives it, length as b
     */
    public void solve(Change change, double[] x) {
        keep(change.nodes);
        System.arraycopy(open, 0, x, 0, size);
        add(change.nodes, flows(change), x);
    }

    /**
     * What one more unit of a change's load adds to the answer, for changes of strength alone: x is linear in f.
     *
     * @param change whose load is the unit
     * @param x receives it, length as b
     */
    public void unit(Change change, double[] x) {
        keep(change.nodes);
        Arrays.fill(x, 0);
        add(change.nodes, solve(system(change), change.load.clone()), x);
    }

    /** y. */
    private double[] flows(Change change) {
        int m = change.nodes.length;
        double[] right = change.load.clone();
        for (int a = 0; a < m; a++) {
            for (int b = 0; b < m; b++) {
                right[a] -= change.matrix[a][b] * open[change.nodes[b]];
            }
        }
        return solve(system(change), right);
    }

    /** I + C E'G E. */
    private double[][] system(Change change) {
        int m = change.nodes.length;
        double[][] out = new double[m][m];
        for (int b = 0; b < m; b++) {
            double[] column = columns.get(change.nodes[b]);
            for (int k = 0; k < m; k++) {
                double g = column[change.nodes[k]];
                for (int a = 0; a < m; a++) {
                    out[a][b] += change.matrix[a][k] * g;
                }
            }
            out[b][b] += 1;
        }
        return out;
    }

    /** Gauss's method with row exchanges; both arguments are used up. */
    private static double[] solve(double[][] a, double[] b) {
        int m = b.length;
        for (int k = 0; k < m; k++) {
            int best = k;
            for (int i = k + 1; i < m; i++) {
                if (Math.abs(a[i][k]) > Math.abs(a[best][k])) {
                    best = i;
                }
            }
            double[] row = a[best];
            double right = b[best];
            a[best] = a[k];
            b[best] = b[k];
            a[k] = row;
            b[k] = right;
            for (int i = k + 1; i < m; i++) {
                double part = a[i][k] / row[k];
                for (int j = k; j < m; j++) {
                    a[i][j] -= part * row[j];
                }
                b[i] -= part * right;
            }
        }
        for (int k = m - 1; k >= 0; k--) {
            for (int j = k + 1; j < m; j++) {
                b[k] -= a[k][j] * b[j];
            }
            b[k] /= a[k][k];
        }
        return b;
    }

    private void add(int[] nodes, double[] weight, double[] x) {
        double[] none = open;
        for (int k = 0; k < nodes.length; k += 4) {
            int left = nodes.length - k;
            add(
                    x,
                    columns.get(nodes[k]),
                    left > 1 ? columns.get(nodes[k + 1]) : none,
                    left > 2 ? columns.get(nodes[k + 2]) : none,
                    left > 3 ? columns.get(nodes[k + 3]) : none,
                    weight[k],
                    left > 1 ? weight[k + 1] : 0,
                    left > 2 ? weight[k + 2] : 0,
                    left > 3 ? weight[k + 3] : 0);
        }
    }

    private static void add(
            double[] x, double[] a, double[] b, double[] c, double[] d, double wa, double wb, double wc, double wd) {
        for (int i = 0; i < x.length; i++) {
            x[i] += wa * a[i] + wb * b[i] + (wc * c[i] + wd * d[i]);
        }
    }
}
