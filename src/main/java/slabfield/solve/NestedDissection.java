package slabfield.solve;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicInteger;
import slabfield.solve.SymmetricMatrix.Neighbours;

/**
 * Order of elimination that keeps the Cholesky factor sparse: the plan is cut in two at the middle of its longer side,
 * the nodes that alone join the halves are put last, and each half is treated likewise.
 *
 * <p>On an n-node plane grid the factor then has O(n log n) entries and costs O(n^1.5) (George 1973, "Nested
 * dissection of a regular finite element mesh", SIAM J. Numer. Anal. 10).
 */
public final class NestedDissection {
    /** Parts this small are ordered by {@link MinimumDegree}. */
    private static final int LEAF = 100;
    /** Parts larger than that are worth a second thread. */
    private static final int TOGETHER = 4000;
    /** A node joined to more nodes than this across a cut goes into the separator before the cut's sides are compared. */
    private static final int HUB = 6;

    private final Neighbours graph;
    private final double[] x;
    private final double[] y;
    /** Nodes, those of one part together; in the end the order itself. */
    private final int[] node;

    private final int[] scratch;
    private final double[] key;
    /** The part a node is in while its part is cut: 2 * stamp for the low half, 2 * stamp + 1 for the high one. */
    private final int[] side;

    private final AtomicInteger stamps = new AtomicInteger();

    private NestedDissection(Neighbours graph, double[] x, double[] y) {
        this.graph = graph;
        this.x = x;
        this.y = y;
        int n = x.length;
        node = new int[n];
        for (int i = 0; i < n; i++) {
            node[i] = i;
        }
        scratch = new int[n];
        key = new double[n];
        side = new int[n];
    }

    /**
     * @param pattern which nodes are coupled
     * @param x first coordinate of each node, any unit; couplings should mostly be short
     * @param y second coordinate of each node
     * @return the nodes in the order in which to eliminate them
     */
    public static int[] order(SymmetricMatrix pattern, double[] x, double[] y) {
        int n = pattern.size();
        if (x.length != n || y.length != n) {
            throw new IllegalArgumentException(
                    n + " nodes need as many coordinates, not " + x.length + " and " + y.length);
        }
        var dissection = new NestedDissection(pattern.neighbours(), x, y);
        dissection.dissect(0, n, new MinimumDegree(dissection.graph, n));
        return dissection.node;
    }

    /** Halves that are large are dissected at the same time: each has nodes, stamps and leaves of its own, so the order is the same. */
    private void dissect(int begin, int end, MinimumDegree leaves) {
        if (end - begin <= LEAF) {
            leaves.order(node, begin, end);
            return;
        }
        int middle = cut(begin, end, longerSide(begin, end));
        int[] sizes = separate(begin, middle, end);
        int second = begin + sizes[0];
        boolean together = end - begin > TOGETHER && SideBySide.helps();
        MinimumDegree others = together ? new MinimumDegree(graph, x.length) : leaves;
        SideBySide.both(
                together, () -> dissect(begin, second, leaves), () -> dissect(second, second + sizes[1], others));
    }

    private double[] longerSide(int begin, int end) {
        double left = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double bottom = left;
        double top = right;
        for (int k = begin; k < end; k++) {
            left = Math.min(left, x[node[k]]);
            right = Math.max(right, x[node[k]]);
            bottom = Math.min(bottom, y[node[k]]);
            top = Math.max(top, y[node[k]]);
        }
        return right - left >= top - bottom ? x : y;
    }

    /** Moves the nodes below the median to the front; where all are alike, halves them as they stand. */
    private int cut(int begin, int end, double[] coordinate) {
        for (int k = begin; k < end; k++) {
            key[k] = coordinate[node[k]];
        }
        Arrays.sort(key, begin, end);
        double median = key[begin + (end - begin) / 2];
        if (median == key[begin]) {
            int k = begin;
            while (k < end && key[k] == median) {
                k++;
            }
            if (k == end) {
                return begin + (end - begin) / 2;
            }
            median = key[k];
        }
        int middle = begin;
        for (int k = begin; k < end; k++) {
            if (coordinate[node[k]] < median) {
                int moved = node[k];
                node[k] = node[middle];
                node[middle++] = moved;
            }
        }
        return middle;
    }

    /** Puts the separator at the end of the range; returns how many are left in the low and the high half. */
    private int[] separate(int begin, int middle, int end) {
        int low = 2 * stamps.incrementAndGet();
        for (int k = begin; k < end; k++) {
            side[node[k]] = k < middle ? low : low + 1;
        }
        for (int k = begin; k < end; k++) {
            if (crossings(node[k]) > HUB) {
                side[node[k]] = 0;
            }
        }
        int lowBorder = 0;
        int highBorder = 0;
        for (int k = begin; k < end; k++) {
            if (crossings(node[k]) > 0) {
                if (side[node[k]] == low) {
                    lowBorder++;
                } else {
                    highBorder++;
                }
            }
        }
        int border = lowBorder <= highBorder ? low : low + 1;
        for (int k = begin; k < end; k++) {
            if (side[node[k]] == border && crossings(node[k]) > 0) {
                side[node[k]] = 0;
            }
        }
        return gather(begin, end, low);
    }

    /** Number of neighbours in the other half; 0 for a node of the separator. */
    private int crossings(int i) {
        int other = side[i] ^ 1;
        int count = 0;
        for (int k = graph.from()[i]; other != 1 && k < graph.from()[i + 1]; k++) {
            if (side[graph.node()[k]] == other) {
                count++;
            }
        }
        return count;
    }

    private int[] gather(int begin, int end, int low) {
        int[] sizes = new int[2];
        int[] wanted = {low, low + 1, 0};
        int to = begin;
        for (int part = 0; part < 3; part++) {
            int from = to;
            for (int k = begin; k < end; k++) {
                if (side[node[k]] == wanted[part]) {
                    scratch[to++] = node[k];
                }
            }
            if (part < 2) {
                sizes[part] = to - from;
            }
        }
        System.arraycopy(scratch, begin, node, begin, end - begin);
        return sizes;
    }
}
