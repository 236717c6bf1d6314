package slabfield.network;

import java.util.Arrays;
import slabfield.solve.Subtrees;
import slabfield.solve.UnitLoads;

/**
 * What a batch of places for a further pit gives: shown the columns of G cell by cell, it keeps the weakest vacuum and the area that meets the
 * target for each place. Parts of the slab in which no cell can be the weakest of any, and all cells or none meet the target, are not
 * gone through.
 */
final class Judge implements UnitLoads.Visit {
    private final Parts parts;
    private final SpotLeaks leaks;
    private final double[] at;
    private final double target;
    /** For each place of the batch: parts of the response that count, the pit's flow, and the leaks' excess. */
    private final double[] fall;

    private final double[] wide;
    private final double[] now;
    private final double[][] excess;
    /** Highest pressure so far, and area that meets the target. */
    private final double[] top;

    private final double[] met;
    private final double[] sum;
    private final double[] high;
    private final boolean[] meets;
    private int places;
    private Runnable settle;

    /** Figures of a house that all batches share. */
    static final class Parts {
        final Subtrees subtrees;
        /** By unknown: open area of a cell that counts, NaN for all else. */
        private final double[] area;
        /** By part, over its cells that count: area, and range of pressures and of leaks' responses. */
        private final double[] areas;

        private final double[] least;
        private final double[] most;
        private final double[][] leastOfLeak;
        private final double[][] mostOfLeak;

        Parts(Subtrees subtrees, double[] area, double[] at, SpotLeaks leaks) {
            this.subtrees = subtrees;
            this.area = area;
            int n = subtrees.count();
            areas = new double[n];
            least = new double[n];
            most = new double[n];
            leastOfLeak = new double[leaks.count()][n];
            mostOfLeak = new double[leaks.count()][n];
            for (int k = 0; k < n; k++) {
                int[] cells = Arrays.stream(subtrees.nodes(k))
                        .filter(u -> !Double.isNaN(area[u]))
                        .toArray();
                areas[k] = Arrays.stream(cells).mapToDouble(u -> area[u]).sum();
                range(cells, at, least, most, k);
                for (int j = 0; j < leastOfLeak.length; j++)
                    range(cells, leaks.response(j), leastOfLeak[j], mostOfLeak[j], k);
            }
        }

        private static void range(int[] cells, double[] of, double[] least, double[] most, int k) {
            least[k] = Double.POSITIVE_INFINITY;
            most[k] = Double.NEGATIVE_INFINITY;
            for (int u : cells) {
                least[k] = Math.min(least[k], of[u]);
                most[k] = Math.max(most[k], of[u]);
            }
        }
    }

    /**
     * @param at pressures of the solved house, by unknown [Pa]
     * @param target pressure that meets the target [Pa]
     * @param batch most places at a time
     */
    Judge(Parts parts, SpotLeaks leaks, double[] at, double target, int batch) {
        this.parts = parts;
        this.leaks = leaks;
        this.at = at;
        this.target = target;
        fall = new double[batch];
        wide = new double[batch];
        now = new double[batch];
        excess = new double[leaks.count()][batch];
        top = new double[batch];
        met = new double[batch];
        sum = new double[batch];
        high = new double[batch];
        meets = new boolean[batch];
    }

    /** @param settle sets each place's flow by {@link #place} once the responses at the places themselves are there */
    void begin(int count, Runnable settle) {
        places = count;
        this.settle = settle;
        for (double[] a : new double[][] {fall, wide, now, met}) Arrays.fill(a, 0);
        for (double[] e : excess) Arrays.fill(e, 0);
        Arrays.fill(top, Double.NEGATIVE_INFINITY);
    }

    void place(int b, double flow, Samples.Share share, double[] ofLeaks) {
        now[b] = flow;
        fall[b] = share.weakest();
        wide[b] = share.area();
        for (int j = 0; j < ofLeaks.length; j++) excess[j][b] = ofLeaks[j];
    }

    double flow(int b) {
        return now[b];
    }

    /** Vacuum left at the weakest place [Pa]. */
    double weakest(int b) {
        return -top[b];
    }

    /** Area that meets the target [m2]. */
    double covered(int b) {
        return met[b];
    }

    @Override
    public void ownKnown() {
        settle.run();
    }

    @Override
    public void answers(int node, double[] values) {
        double area = parts.area[node];
        if (Double.isNaN(area)) return;
        product(now, values, sum);
        for (int j = 0; j < excess.length; j++) add(sum, excess[j], leaks.response(j)[node]);
        raise(top, at[node], fall, sum);
        count(at[node], wide, sum, target, area, met);
    }

    @Override
    public boolean skips(int part, double[] least, double[] most) {
        if (parts.least[part] > parts.most[part]) return true;
        range(part, least, most);
        double p = parts.most[part], low = parts.least[part];
        for (int b = 0; b < places; b++) {
            if (!(p - fall[b] * sum[b] <= top[b])) return false;
            meets[b] = p - wide[b] * sum[b] <= target;
            if (!meets[b] && !(low - wide[b] * high[b] > target)) return false;
        }
        for (int b = 0; b < places; b++) if (meets[b]) met[b] += parts.areas[part];
        return true;
    }

    /** Least and largest fall in a part, into sum and high. */
    private void range(int part, double[] least, double[] most) {
        for (int b = 0; b < places; b++) {
            double q = now[b];
            sum[b] = q >= 0 ? q * least[b] : q * most[b];
            high[b] = q >= 0 ? q * most[b] : q * least[b];
        }
        for (int j = 0; j < excess.length; j++) {
            double lo = parts.leastOfLeak[j][part], hi = parts.mostOfLeak[j][part];
            for (int b = 0; b < places; b++) {
                double e = excess[j][b];
                sum[b] += e >= 0 ? e * lo : e * hi;
                high[b] += e >= 0 ? e * hi : e * lo;
            }
        }
    }

    private static void product(double[] a, double[] b, double[] to) {
        for (int k = 0; k < to.length; k++) to[k] = a[k] * b[k];
    }

    private static void add(double[] sum, double[] a, double factor) {
        for (int k = 0; k < sum.length; k++) sum[k] += factor * a[k];
    }

    private static void raise(double[] top, double p, double[] fall, double[] sum) {
        for (int b = 0; b < top.length; b++) top[b] = Math.max(top[b], p - fall[b] * sum[b]);
    }

    private static void count(double p, double[] wide, double[] sum, double target, double area, double[] met) {
        for (int b = 0; b < met.length; b++) if (p - wide[b] * sum[b] <= target) met[b] += area;
    }
}
