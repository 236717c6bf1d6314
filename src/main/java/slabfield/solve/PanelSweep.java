package slabfield.solve;

import java.util.Arrays;

/**
 * Substitution with a {@link PanelCholesky} factor that does not change meanwhile; each has work arrays of its own. Subtrees are
 * gone through at the same time where that pays. What they add to the rows above them is summed in an order that does not
 * depend on that.
 */
public final class PanelSweep {
    /** Entries of L from which on two threads are faster. */
    private static final long WORTH_SHARING = 150_000;

    private final PanelCholesky factor;
    private final double[] work;
    private final boolean large;
    /** For each part: one panel's values, and what its panels add to the shared columns above them. */
    private final double[][] parts;

    private final double[][] upward;
    private final double[] none;

    PanelSweep(PanelCholesky factor) {
        this.factor = factor;
        work = new double[factor.pattern.size];
        parts = new double[factor.division.parts][factor.pattern.tallest];
        upward = new double[parts.length][factor.division.sharedColumns];
        none = new double[factor.pattern.tallest];
        large = factor.fill() >= WORTH_SHARING;
    }

    /** As {@link PanelCholesky#solve}. */
    public void solve(double[] rhs, double[] x) {
        factor.needFactor();
        PanelPattern p = factor.pattern;
        for (int k = 0; k < work.length; k++) {
            work[k] = rhs[p.node[k]];
        }
        PanelPart top = factor.division.top;
        boolean together = large && top.first != null && SideBySide.helps();
        forward(top, together);
        backward(top, together);
        for (int k = 0; k < work.length; k++) {
            x[p.node[k]] = work[k];
        }
    }

    private void forward(PanelPart part, boolean together) {
        double[] up = upward[part.number];
        if (part.first == null) {
            Arrays.fill(up, 0);
        } else {
            SideBySide.both(together, () -> forward(part.first, together), () -> forward(part.second, together));
            double[] a = upward[part.first.number];
            double[] b = upward[part.second.number];
            for (int k = 0; k < up.length; k++) {
                up[k] = a[k] + b[k];
            }
            takeUp(part, up);
        }
        for (int panel : part.panels) {
            forward(panel, parts[part.number], up);
        }
    }

    /** Adds what came from below to the part's own columns. */
    private void takeUp(PanelPart part, double[] up) {
        PanelPattern p = factor.pattern;
        for (int panel : part.panels) {
            for (int c = p.begin[panel]; c < p.begin[panel + 1]; c++) {
                work[c] += up[factor.division.shared[c]];
            }
        }
    }

    private void backward(PanelPart part, boolean together) {
        for (int k = part.panels.length - 1; k >= 0; k--) {
            backward(part.panels[k], parts[part.number]);
        }
        if (part.first != null) {
            SideBySide.both(together, () -> backward(part.first, together), () -> backward(part.second, together));
        }
    }

    private void forward(int panel, double[] part, double[] up) {
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
            PanelElimination.subtract(
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
        int inside = factor.division.inside[panel];
        for (int r = wide; r < inside; r++) {
            work[rows[r]] += part[r];
        }
        for (int r = inside; r < rows.length; r++) {
            up[factor.division.shared[rows[r]]] += part[r];
        }
    }

    private void backward(int panel, double[] part) {
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
                four(part, first + from, k, rows.length, from);
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

    private void four(double[] part, int column, int begin, int end, int to) {
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
