package slabfield.solve;

import java.util.ArrayDeque;
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
    /** Answers by column of L; element b is that to the batch's load b. Null where there is none yet, or none any more. */
    private final double[][] x;
    /** Arrays to take for further columns, and zeros. */
    private final ArrayDeque<double[]> spare = new ArrayDeque<>();

    private final double[] none;
    /** Whether forward substitution reached a panel. */
    private final boolean[] reached;
    /** Panels not reached whose answers are at hand, each the parent of the next, and how many. */
    private final int[] open;

    private int depth;

    /**
     * @param factor in use as long as this is; it must not be factored anew meanwhile
     * @param batch most loads at a time
     */
    public UnitLoads(PanelCholesky factor, int batch) {
        this.factor = factor;
        this.batch = batch;
        pattern = factor.pattern;
        x = new double[pattern.size][];
        none = new double[batch];
        reached = new boolean[pattern.rows.length];
        open = new int[reached.length];
    }

    /** The nodes in the order in which they are eliminated, which makes for batches of neighbours. */
    public static int[] inOrder(PanelCholesky factor, int[] nodes) {
        int[] places =
                Arrays.stream(nodes).map(k -> factor.pattern.place[k]).sorted().toArray();
        return Arrays.stream(places).map(k -> factor.pattern.node[k]).toArray();
    }

    /** Is shown the answers of a batch, part by part. Arrays are good during the call, and have an element for each load. */
    public interface Visit {
        /** The answers at the loads' own nodes are there. */
        void ownKnown();

        /**
         * Whether a part may be left out. No load of the batch lies in it.
         *
         * @param least bound below which no answer in the part is
         * @param most bound above which none is
         */
        boolean skips(int part, double[] least, double[] most);

        void answers(int node, double[] values);
    }

    /**
     * Solves for loads at nodes[from] .. nodes[to - 1].
     *
     * @param nodes at most as many as the batch holds
     */
    public void solve(int[] nodes, int from, int to) {
        load(nodes, from, to);
        for (int p = reached.length - 1; p >= 0; p--) {
            backward(p);
        }
    }

    /**
     * Solves for loads at nodes[from] .. nodes[to - 1] and shows the answers at every node, but for those in parts that the visit skips.
     * Afterwards only answers at the loads' own nodes are at hand.
     *
     * @param nodes at most as many as the batch holds
     */
    public void solve(int[] nodes, int from, int to, Subtrees parts, Visit visit) {
        for (int p = 0; p < reached.length; p++) {
            giveBack(p);
        }
        load(nodes, from, to);
        for (int p = reached.length - 1; p >= 0; p--) {
            if (reached[p]) {
                backward(p);
            }
        }
        visit.ownKnown();
        double[] least = new double[batch];
        double[] most = new double[batch];
        int p = reached.length - 1;
        while (p >= 0) {
            if (!reached[p]) {
                if (parts.at(p) >= 0) {
                    rim(p, least, most);
                    parts.bound(parts.at(p), least, most);
                    if (visit.skips(parts.at(p), least, most)) {
                        p = parts.firstPanel(p) - 1;
                        continue;
                    }
                }
                closeTo(pattern.parent[p]);
                open[depth++] = p;
                backward(p);
            }
            for (int c = pattern.begin[p]; c < pattern.begin[p + 1]; c++) {
                visit.answers(pattern.node[c], x[c]);
            }
            p--;
        }
        closeTo(-1);
    }

    /** Least and largest answers on the rim of a panel's subtree. */
    private void rim(int panel, double[] least, double[] most) {
        int[] rows = pattern.rows[panel];
        int wide = pattern.begin[panel + 1] - pattern.begin[panel];
        double[] first = wide < rows.length ? x[rows[wide]] : none;
        System.arraycopy(first, 0, least, 0, batch);
        System.arraycopy(first, 0, most, 0, batch);
        for (int r = wide + 1; r < rows.length; r++) {
            lower(least, x[rows[r]]);
            raise(most, x[rows[r]]);
        }
    }

    private static void lower(double[] least, double[] x) {
        for (int b = 0; b < least.length; b++) {
            least[b] = Math.min(least[b], x[b]);
        }
    }

    private static void raise(double[] most, double[] x) {
        for (int b = 0; b < most.length; b++) {
            most[b] = Math.max(most[b], x[b]);
        }
    }

    /** Gives back the answers of open panels down to one that stays open, or to none. */
    private void closeTo(int panel) {
        while (depth > 0 && open[depth - 1] != panel) {
            giveBack(open[--depth]);
        }
    }

    private void giveBack(int panel) {
        for (int c = pattern.begin[panel]; c < pattern.begin[panel + 1]; c++) {
            if (x[c] != null) {
                spare.push(x[c]);
                x[c] = null;
            }
        }
    }

    private void clear(int panel) {
        for (int c = pattern.begin[panel]; c < pattern.begin[panel + 1]; c++) {
            if (x[c] == null) {
                x[c] = spare.isEmpty() ? new double[batch] : spare.pop();
            }
            Arrays.fill(x[c], 0);
        }
    }

    /** Lays the loads and substitutes forward. */
    private void load(int[] nodes, int from, int to) {
        factor.needFactor();
        if (to - from > batch) {
            throw new IllegalArgumentException("a batch holds " + batch + " loads, not " + (to - from));
        }
        Arrays.fill(reached, false);
        for (int k = from; k < to; k++) {
            for (int p = pattern.panelOf[pattern.place[nodes[k]]]; p >= 0 && !reached[p]; p = pattern.parent[p]) {
                reached[p] = true;
                clear(p);
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
        if (!reached[panel]) {
            clear(panel);
        }
        for (int k = wide - 1; k >= 0; k--) {
            double[] to = x[first + k];
            double[] column = factor.columns[first + k];
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
            rest(to, rows, column, r);
            scale(to, factor.inverse[first + k]);
        }
    }

    /** The last rows, fewer than four. */
    private void rest(double[] to, int[] rows, double[] column, int r) {
        int left = rows.length - r;
        if (left == 1) {
            subtract(to, x[rows[r]], column[r]);
        } else if (left > 1) {
            boolean three = left > 2;
            subtract(
                    to,
                    x[rows[r]],
                    x[rows[r + 1]],
                    three ? x[rows[r + 2]] : none,
                    none,
                    column[r],
                    column[r + 1],
                    three ? column[r + 2] : 0,
                    0);
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
