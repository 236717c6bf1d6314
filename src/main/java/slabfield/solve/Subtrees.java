package slabfield.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Parts of a plane that a {@link PanelCholesky} factor eliminates before what surrounds them: subtrees of its panels. With no load in
 * a part, its values are sums of those on its rim, {@code x_i = sum_r w(i, r) x_r}. From the sums {@code s_i} of all weights and a bound
 * {@code n_i} of those below 0, both of which one substitution gives, follows what values on the rim from lo to hi leave possible within:
 *
 * <pre>
 *   s_i lo - n_i (hi - lo)  &lt;=  x_i  &lt;=  s_i hi + n_i (hi - lo)
 * </pre>
 *
 * <p>Where no coupling is above 0, no weight is below 0.
 */
public final class Subtrees {
    /** Columns of a part, at least and at most; smaller ones are worked out as quickly as bounded. */
    private static final int LEAST = 20;

    private static final int MOST = 800;
    /** A part within another is worth a look of its own when it has at most this share of the other's columns. */
    private static final double SMALLER = 0.7;
    /** What rounding may add to a bound, as part of it; far more than it does. */
    private static final double ROUNDING = 1e-9;

    private final PanelPattern pattern;
    /** By panel: its part, or -1; first panel of its subtree. */
    private final int[] part;

    private final int[] low;
    private final int[] root;
    /** By part, over the nodes that count: least and largest sum of weights, and bound of those below 0. */
    private final double[] leastSum;

    private final double[] mostSum;
    private final double[] negative;

    /**
     * @param factor whose values are read now
     * @param counts by node: whether its values are asked for
     */
    public Subtrees(PanelCholesky factor, boolean[] counts) {
        factor.needFactor();
        pattern = factor.pattern;
        int panels = pattern.rows.length;
        low = new int[panels];
        part = new int[panels];
        root = choose();
        leastSum = new double[root.length];
        mostSum = new double[root.length];
        negative = new double[root.length];
        double[] sum = new double[pattern.size];
        double[] below = new double[pattern.size];
        Arrays.fill(sum, 1);
        for (int k = 0; k < root.length; k++) {
            weigh(factor, k, counts, sum, below);
        }
    }

    private int[] choose() {
        int panels = low.length;
        for (int p = 0; p < panels; p++) {
            low[p] = p;
        }
        for (int p = 0; p < panels; p++) {
            if (pattern.parent[p] >= 0) {
                low[pattern.parent[p]] = Math.min(low[pattern.parent[p]], low[p]);
            }
        }
        int[] most = new int[panels];
        List<Integer> roots = new ArrayList<>();
        for (int p = panels - 1; p >= 0; p--) {
            int columns = pattern.begin[p + 1] - first(p);
            most[p] = pattern.parent[p] < 0 ? MOST : most[pattern.parent[p]];
            part[p] = columns >= LEAST && columns <= most[p] ? roots.size() : -1;
            if (part[p] >= 0) {
                roots.add(p);
                most[p] = (int) (SMALLER * columns);
            }
        }
        return roots.stream().mapToInt(p -> p).toArray();
    }

    private int first(int panel) {
        return pattern.begin[low[panel]];
    }

    /** Substitutes ones on the rim; sum and below hold 1 and 0 outside and are left so. */
    private void weigh(PanelCholesky factor, int k, boolean[] counts, double[] sum, double[] below) {
        int end = pattern.begin[root[k] + 1];
        int begin = first(root[k]);
        leastSum[k] = Double.POSITIVE_INFINITY;
        mostSum[k] = Double.NEGATIVE_INFINITY;
        for (int c = end - 1; c >= begin; c--) {
            weigh(factor, c, sum, below);
            if (counts[pattern.node[c]]) {
                leastSum[k] = Math.min(leastSum[k], sum[c]);
                mostSum[k] = Math.max(mostSum[k], sum[c]);
                negative[k] = Math.max(negative[k], below[c]);
            }
        }
        Arrays.fill(sum, begin, end, 1);
        Arrays.fill(below, begin, end, 0);
    }

    private void weigh(PanelCholesky factor, int c, double[] sum, double[] below) {
        int panel = pattern.panelOf[c];
        int[] rows = pattern.rows[panel];
        double[] column = factor.columns[c];
        double all = 0;
        double under = 0;
        for (int r = c - pattern.begin[panel] + 1; r < rows.length; r++) {
            double weight = -column[r] * factor.inverse[c];
            all += weight * sum[rows[r]];
            under += Math.abs(weight) * below[rows[r]] + Math.max(0, -weight) * sum[rows[r]];
        }
        sum[c] = all;
        below[c] = under;
    }

    /** How many there are, those within others included. */
    public int count() {
        return root.length;
    }

    /** Nodes of a part. */
    public int[] nodes(int k) {
        return Arrays.copyOfRange(pattern.node, first(root[k]), pattern.begin[root[k] + 1]);
    }

    /** Part that a panel is the last of, or -1. */
    int at(int panel) {
        return part[panel];
    }

    /** First panel of a panel's subtree. */
    int firstPanel(int panel) {
        return low[panel];
    }

    /**
     * Bounds of a part's values for each of a batch of answers.
     *
     * @param low receives the lower bounds; holds the least values on the rim
     * @param high likewise the upper ones
     */
    void bound(int k, double[] low, double[] high) {
        for (int b = 0; b < low.length; b++) {
            double lo = low[b];
            double hi = high[b];
            double apart = negative[k] * (hi - lo);
            double rounding = ROUNDING * (Math.abs(lo) + Math.abs(hi));
            low[b] = Math.min(leastSum[k] * lo, mostSum[k] * lo) - apart - rounding;
            high[b] = Math.max(leastSum[k] * hi, mostSum[k] * hi) + apart + rounding;
        }
    }
}
