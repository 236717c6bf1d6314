package slabfield.solve;

import java.util.Arrays;
import slabfield.solve.SymmetricMatrix.Neighbours;

/**
 * Where the Cholesky factor of a {@link SymmetricMatrix} has entries, as panels: runs of columns that have the same rows
 * below them, so that all work is on dense columns (supernodes; Ashcraft and Grimes 1989, ACM Trans. Math. Softw. 15). Small
 * panels are merged with the one that follows where that adds few zeros.
 *
 * <p>Columns are numbered by their place in the order of elimination, which is the given order brought into a postorder
 * of the elimination tree (Liu 1990, SIAM J. Matrix Anal. Appl. 11).
 */
final class PanelPattern {
    /** A panel this narrow is merged if {@link #LOOSE} allows it, a wider one if {@link #TIGHT} does. */
    private static final int NARROW = 8;

    private static final double LOOSE = 0.5;
    private static final double TIGHT = 0.12;

    final int size;
    /** Node of each column, and column of each node. */
    final int[] node;

    final int[] place;
    /** First column of each panel; one more at the end. */
    final int[] begin;
    /** Columns that the rows of each panel belong to, rising; the panel's own come first. */
    final int[][] rows;
    /** Panel that takes what is left of each panel's rows, or -1. */
    final int[] parent;
    /** Panel of each column. */
    final int[] panelOf;
    /** Largest number of rows of a panel. */
    final int tallest;

    PanelPattern(SymmetricMatrix matrix, int[] order) {
        size = matrix.size();
        Neighbours graph = matrix.neighbours();
        int[] at = placeOf(order, size);
        node = postorder(order, tree(graph, order, at));
        place = placeOf(node, size);
        int[] above = tree(graph, node, place);
        int[][] below = new int[size][];
        int[] counts = structures(graph, above, below);
        int[] first = panels(above, counts);
        int count = first.length - 1;
        begin = first;
        rows = new int[count][];
        panelOf = new int[size];
        int most = 0;
        for (int p = 0; p < count; p++) {
            rows[p] = rowsOf(first[p], first[p + 1], below[first[p + 1] - 1]);
            most = Math.max(most, rows[p].length);
            Arrays.fill(panelOf, first[p], first[p + 1], p);
        }
        tallest = most;
        parent = new int[count];
        for (int p = 0; p < count; p++) {
            int wide = first[p + 1] - first[p];
            parent[p] = rows[p].length > wide ? panelOf[rows[p][wide]] : -1;
        }
    }

    /** Panels that leave rows to each panel, rising. */
    int[][] children() {
        int[] counts = new int[parent.length];
        for (int p : parent) {
            if (p >= 0) {
                counts[p]++;
            }
        }
        int[][] out = new int[parent.length][];
        for (int p = 0; p < out.length; p++) {
            out[p] = new int[counts[p]];
        }
        for (int p = out.length - 1; p >= 0; p--) {
            if (parent[p] >= 0) {
                out[parent[p]][--counts[parent[p]]] = p;
            }
        }
        return out;
    }

    static int[] placeOf(int[] order, int n) {
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

    /** Parent of each column in the elimination tree, or -1. */
    private static int[] tree(Neighbours graph, int[] node, int[] place) {
        int n = node.length;
        int[] parent = new int[n];
        int[] root = new int[n];
        for (int j = 0; j < n; j++) {
            parent[j] = -1;
            root[j] = -1;
            for (int k = graph.from()[node[j]]; k < graph.from()[node[j] + 1]; k++) {
                int i = place[graph.node()[k]];
                while (i < j && i >= 0) {
                    int next = root[i];
                    root[i] = j;
                    if (next < 0) {
                        parent[i] = j;
                    }
                    i = next >= 0 && next < j ? next : j;
                }
            }
        }
        return parent;
    }

    private static int[] postorder(int[] order, int[] parent) {
        int n = order.length;
        int[] firstChild = new int[n];
        int[] nextChild = new int[n];
        Arrays.fill(firstChild, -1);
        for (int j = n - 1; j >= 0; j--) {
            if (parent[j] >= 0) {
                nextChild[j] = firstChild[parent[j]];
                firstChild[parent[j]] = j;
            }
        }
        int[] out = new int[n];
        int done = 0;
        int[] stack = new int[n];
        for (int root = 0; root < n; root++) {
            if (parent[root] >= 0) {
                continue;
            }
            int top = 0;
            stack[0] = root;
            while (top >= 0) {
                int j = stack[top];
                int child = firstChild[j];
                if (child >= 0) {
                    firstChild[j] = nextChild[child];
                    stack[++top] = child;
                } else {
                    out[done++] = order[j];
                    top--;
                }
            }
        }
        return out;
    }

    /** Rows below each column's diagonal, rising; returns how many each has. */
    private int[] structures(Neighbours graph, int[] above, int[][] below) {
        int[] counts = new int[size];
        int[] mark = new int[size];
        int[] found = new int[size];
        int[] lastChild = new int[size];
        int[] nextChild = new int[size];
        Arrays.fill(mark, -1);
        Arrays.fill(lastChild, -1);
        for (int j = 0; j < size; j++) {
            int count = 0;
            for (int k = graph.from()[node[j]]; k < graph.from()[node[j] + 1]; k++) {
                int i = place[graph.node()[k]];
                if (i > j && mark[i] != j) {
                    mark[i] = j;
                    found[count++] = i;
                }
            }
            for (int c = lastChild[j]; c >= 0; c = nextChild[c]) {
                for (int i : below[c]) {
                    if (i > j && mark[i] != j) {
                        mark[i] = j;
                        found[count++] = i;
                    }
                }
            }
            below[j] = Arrays.copyOf(found, count);
            Arrays.sort(below[j]);
            counts[j] = count;
            if (above[j] >= 0) {
                nextChild[j] = lastChild[above[j]];
                lastChild[above[j]] = j;
            }
        }
        return counts;
    }

    /** First columns of the panels, with merging; where panels merge, the rows of their last column stand for all. */
    private int[] panels(int[] above, int[] counts) {
        int[] first = new int[size + 1];
        long[] zeros = new long[size + 1];
        int count = 0;
        for (int j = 0; j < size; j++) {
            boolean goesOn = count > 0 && above[j - 1] == j && counts[j - 1] == counts[j] + 1;
            if (!goesOn) {
                first[count] = j;
                zeros[count++] = 0;
            }
            boolean last = j + 1 == size || above[j] != j + 1 || counts[j] != counts[j + 1] + 1;
            while (last
                    && count > 1
                    && above[first[count - 1] - 1] == first[count - 1]
                    && worthMerging(first, zeros, count, j + 1, counts)) {
                count--;
            }
        }
        first[count] = size;
        return Arrays.copyOf(first, count + 1);
    }

    /** Whether the last two panels, the last ending before {@code end}, should be one; notes the zeros that it would hold. */
    private static boolean worthMerging(int[] first, long[] zeros, int count, int end, int[] counts) {
        int a = first[count - 2];
        int b = first[count - 1];
        int wide = end - a;
        int under = counts[end - 1];
        long missing = zeros[count - 2] + zeros[count - 1] + (long) (b - a) * (end - b + under - counts[b - 1]);
        double all = (double) wide * (wide + 1) / 2 + (double) wide * under;
        if (missing > (b - a <= NARROW ? LOOSE : TIGHT) * all) {
            return false;
        }
        zeros[count - 2] = missing;
        return true;
    }

    private static int[] rowsOf(int from, int to, int[] under) {
        int[] out = new int[to - from + under.length];
        for (int k = from; k < to; k++) {
            out[k - from] = k;
        }
        System.arraycopy(under, 0, out, to - from, under.length);
        return out;
    }
}
