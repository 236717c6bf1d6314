package slabfield.solve;

import java.util.ArrayDeque;
import java.util.Arrays;

/**
 * The elimination of a {@link PanelCholesky}: panel by panel, children before parents, subtrees at the same time where that pays.
 * What a panel leaves to its parent waits in columns that its part lends; they are kept from one factor to the next.
 */
final class PanelElimination {
    /** A pivot below this share of its diagonal entry is rounding noise, so the matrix is singular to working precision. */
    private static final double NOISE = 16 * Math.ulp(1.0);

    private final PanelPattern pattern;
    private final PanelPart.Division division;
    private final int[][] children;
    private final double[][] columns;
    private final double[] inverse;
    /** Diagonal of the matrix, by node. */
    private final double[] diagonal;
    /** What each panel has left, and which part lent the columns. */
    private final double[][][] left;

    private final int[] lender;
    private final Lender[] lenders;

    PanelElimination(PanelCholesky factor, double[] diagonal) {
        pattern = factor.pattern;
        division = factor.division;
        children = pattern.children();
        columns = factor.columns;
        inverse = factor.inverse;
        this.diagonal = diagonal;
        left = new double[pattern.rows.length][][];
        lender = new int[left.length];
        lenders = new Lender[division.parts];
        for (int k = 0; k < lenders.length; k++) {
            lenders[k] = new Lender(pattern.tallest);
        }
    }

    /** First column at which it fails, or -1. */
    int run() {
        int bad = run(division.top, division.parts > 1 && SideBySide.helps());
        for (int p = 0; p < left.length; p++) {
            giveBack(p);
        }
        return bad;
    }

    private int run(PanelPart part, boolean together) {
        if (part.first != null) {
            int[] bad = new int[2];
            SideBySide.both(
                    together, () -> bad[0] = run(part.first, together), () -> bad[1] = run(part.second, together));
            if (bad[0] >= 0 || bad[1] >= 0) {
                return bad[0] < 0 ? bad[1] : bad[1] < 0 ? bad[0] : Math.min(bad[0], bad[1]);
            }
        }
        for (int p : part.panels) {
            int bad = eliminate(p, part.number);
            if (bad >= 0) {
                return bad;
            }
        }
        return -1;
    }

    private int eliminate(int p, int part) {
        int[] rows = pattern.rows[p];
        int wide = pattern.begin[p + 1] - pattern.begin[p];
        int tall = rows.length;
        double[][] front = new double[tall][];
        System.arraycopy(columns, pattern.begin[p], front, 0, wide);
        for (int j = wide; j < tall; j++) {
            front[j] = lenders[part].lend();
            Arrays.fill(front[j], j, tall, 0);
        }
        for (int k = children[p].length - 1; k >= 0; k--) {
            add(children[p][k], rows, front);
            giveBack(children[p][k]);
        }
        lender[p] = part;
        left[p] = Arrays.copyOfRange(front, wide, tall);
        return partial(front, wide, tall, pattern.begin[p]);
    }

    /** The lender of a child's columns has no more to do when the parent's turn comes. */
    private void giveBack(int panel) {
        if (left[panel] != null) {
            lenders[lender[panel]].takeBack(left[panel]);
            left[panel] = null;
        }
    }

    /** Adds what a child left to its parent's front. */
    private void add(int child, int[] rows, double[][] front) {
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
            double[] from = left[child][j - wide];
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
                double given = diagonal[pattern.node[first + c]];
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

    static void subtract(
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

    /** Columns of the tallest front's length. */
    private static final class Lender {
        private final int length;
        private final ArrayDeque<double[]> free = new ArrayDeque<>();

        Lender(int length) {
            this.length = length;
        }

        double[] lend() {
            double[] column = free.poll();
            return column == null ? new double[length] : column;
        }

        void takeBack(double[][] lent) {
            for (double[] column : lent) {
                free.push(column);
            }
        }
    }
}
