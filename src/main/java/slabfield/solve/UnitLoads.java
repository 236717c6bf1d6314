package slabfield.solve;

import java.util.Arrays;

/**
 * Columns of A^-1, a batch of them at a time, with a {@link PanelCholesky} factor: the answers to loads of one at single
 * nodes. The loops run over the batch, whose columns lie beside each other. Forward substitution touches only panels
 * that a load reaches, which are few where the batch's nodes come soon after each other in the order of elimination
 * (Gilbert and Liu 1993, SIAM J. Matrix Anal. Appl. 14).
 */
public final class UnitLoads {
    private final PanelCholesky factor;
    private final PanelPattern pattern;
    private final int batch;
    /** Answers by column of L; element b is that to the batch's load b. */
    private final double[][] x;
    /** Whether forward substitution reached a panel. */
    private final boolean[] reached;

    /**
     * @param factor in use as long as this is; it must not be factored anew meanwhile
     * @param batch most loads at a time
     */
    public UnitLoads(PanelCholesky factor, int batch) {
        this.factor = factor;
        this.batch = batch;
        pattern = factor.pattern;
        x = new double[pattern.size][batch];
        reached = new boolean[pattern.rows.length];
    }

    /** The nodes in the order in which they are eliminated, which makes for batches of neighbours. */
    public static int[] inOrder(PanelCholesky factor, int[] nodes) {
        int[] places =
                Arrays.stream(nodes).map(k -> factor.pattern.place[k]).sorted().toArray();
        return Arrays.stream(places).map(k -> factor.pattern.node[k]).toArray();
    }

    /**
     * Solves for loads at nodes[from] .. nodes[to - 1].
     *
     * @param nodes at most as many as the batch holds
     */
    public void solve(int[] nodes, int from, int to) {
        factor.needFactor();
        if (to - from > batch) {
            throw new IllegalArgumentException("a batch holds " + batch + " loads, not " + (to - from));
        }
        Arrays.fill(reached, false);
        for (int k = from; k < to; k++) {
            for (int p = pattern.panelOf[pattern.place[nodes[k]]]; p >= 0 && !reached[p]; p = pattern.parent[p]) {
                reached[p] = true;
                for (int c = pattern.begin[p]; c < pattern.begin[p + 1]; c++) {
                    Arrays.fill(x[c], 0);
                }
            }
        }
        for (int k = from; k < to; k++) {
            x[pattern.place[nodes[k]]][k - from] = 1;
        }
        for (int p = 0; p < reached.length; p++) {
            if (reached[p]) {
                forward(p);
            }
        }
        for (int p = reached.length - 1; p >= 0; p--) {
            backward(p);
        }
    }

    /** Answers at a node: element b is that to the batch's load b. Valid until the next solve; not to be changed. */
    public double[] at(int node) {
        return x[pattern.place[node]];
    }

    private void forward(int panel) {
        int first = pattern.begin[panel];
        int wide = pattern.begin[panel + 1] - first;
        int[] rows = pattern.rows[panel];
        for (int k = 0; k < wide; k += 4) {
            int end = Math.min(wide, k + 4);
            for (int c = k; c < end; c++) {
                scale(x[first + c], factor.inverse[first + c]);
                for (int r = c + 1; r < end; r++) {
                    subtract(x[first + r], x[first + c], factor.columns[first + c][r]);
                }
            }
            int b = Math.min(k + 1, end - 1);
            int c = Math.min(k + 2, end - 1);
            int d = Math.min(k + 3, end - 1);
            for (int r = end; r < rows.length; r++) {
                subtract(
                        x[rows[r]],
                        x[first + k],
                        x[first + b],
                        x[first + c],
                        x[first + d],
                        factor.columns[first + k][r],
                        b > k ? factor.columns[first + b][r] : 0,
                        c > b ? factor.columns[first + c][r] : 0,
                        d > c ? factor.columns[first + d][r] : 0);
            }
        }
    }

    private void backward(int panel) {
        int first = pattern.begin[panel];
        int wide = pattern.begin[panel + 1] - first;
        int[] rows = pattern.rows[panel];
        for (int k = wide - 1; k >= 0; k--) {
            double[] to = x[first + k];
            double[] column = factor.columns[first + k];
            if (!reached[panel]) {
                Arrays.fill(to, 0);
            }
            int r = k + 1;
            for (; r + 3 < rows.length; r += 4) {
                subtract(
                        to,
                        x[rows[r]],
                        x[rows[r + 1]],
                        x[rows[r + 2]],
                        x[rows[r + 3]],
                        column[r],
                        column[r + 1],
                        column[r + 2],
                        column[r + 3]);
            }
            for (; r < rows.length; r++) {
                subtract(to, x[rows[r]], column[r]);
            }
            scale(to, factor.inverse[first + k]);
        }
    }

    private static void scale(double[] x, double factor) {
        for (int b = 0; b < x.length; b++) {
            x[b] *= factor;
        }
    }

    private static void subtract(double[] to, double[] from, double factor) {
        for (int b = 0; b < to.length; b++) {
            to[b] -= factor * from[b];
        }
    }

    private static void subtract(
            double[] to, double[] a, double[] b, double[] c, double[] d, double fa, double fb, double fc, double fd) {
        for (int k = 0; k < to.length; k++) {
            to[k] -= fa * a[k] + fb * b[k] + (fc * c[k] + fd * d[k]);
        }
    }
}
