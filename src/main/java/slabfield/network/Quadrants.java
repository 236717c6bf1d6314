package slabfield.network;

import slabfield.solve.SideBySide;

/**
 * Darcy-Forchheimer flow of a {@link LayerFlow}. Each quadrant of a cell is bounded by one face along x and one along y; with
 * the pressure differences da, db across them, its gradient is {@code (fx da, fy db)} of magnitude g, and it passes
 *
 * <pre>
 *   qa = w r fx^2 da,   qb = w r fy^2 db,   r = 2 / (1 + sqrt(1 + 4 c g))
 * </pre>
 *
 * to its two neighbours, w being its area times m = k / mu, and c = beta rho m^2. Where r = 1 the four quadrants of a cell and those of
 * its neighbours together make up the links' linear conductances.
 */
final class Quadrants {
    /** Keeps the square of a gradient above 0. */
    private static final double TINY = 1e-300;
    /** Quadrants from which on their gradients are worked out by two threads. */
    private static final int WORTH_SHARING = 30_000;

    private final int[] cell;
    /** Neighbour along x, and along y; -1 for none. */
    private final int[] alongX;

    private final int[] alongY;
    private final double[] inertia;
    /** w fx and w fy, by which r times the gradient's part is a flow, and fx and fy. */
    private final double[] wx;

    private final double[] wy;
    private final double[] fx;
    private final double[] fy;

    /** Receives one quadrant: links of conductance ca to a along x and cb to b along y, of whose resistance sa and sb lie in c. */
    interface Visit {
        void quadrant(int c, int a, int b, double ca, double cb, double sa, double sb);
    }

    private final int count;
    /** Parts of the gradient in each quadrant, and what follows from its magnitude; work space. */
    private final double[] ux;

    private final double[] uy;
    private final double[] ratio;
    private final double[] bend;

    /** Takes over the links as they are. */
    Quadrants(LayerFlow flow) {
        int most = 4 * flow.east.length;
        cell = new int[most];
        alongX = new int[most];
        alongY = new int[most];
        inertia = new double[most];
        wx = new double[most];
        wy = new double[most];
        fx = new double[most];
        fy = new double[most];
        ux = new double[most];
        uy = new double[most];
        ratio = new double[most];
        bend = new double[most];
        Shape shape = new Shape();
        int[] done = {0};
        each(flow, (c, a, b, ca, cb, sa, sb) -> {
            shape.set(flow.width, flow.height, flow.mobility[c], ca, cb, sa, sb);
            int k = done[0]++;
            cell[k] = c;
            alongX[k] = ca > 0 ? a : c;
            alongY[k] = cb > 0 ? b : c;
            inertia[k] = flow.inertia[c];
            fx[k] = shape.fx;
            fy[k] = shape.fy;
            wx[k] = shape.weight * shape.fx;
            wy[k] = shape.weight * shape.fy;
        });
        count = done[0];
    }

    /** Visits all quadrants with a link. */
    static void each(LayerFlow flow, Visit visit) {
        for (int c = 0; c < flow.east.length; c++) of(flow, c, visit);
    }

    /** Visits those of one cell. */
    static void of(LayerFlow flow, int c, Visit visit) {
        int columns = flow.columns, i = c % columns, j = c / columns;
        for (int q = 0; q < 4; q++) {
            boolean right = (q & 1) == 0, up = (q & 2) == 0;
            int a = right ? c + 1 : c - 1, b = up ? c + columns : c - columns;
            double ca = right ? flow.east[c] : i > 0 ? flow.east[c - 1] : 0;
            double cb = up ? flow.north[c] : j > 0 ? flow.north[b] : 0;
            if (ca == 0 && cb == 0) continue;
            double sa = right ? flow.eastShare[c] : i > 0 ? 1 - flow.eastShare[c - 1] : 0;
            double sb = up ? flow.northShare[c] : j > 0 ? 1 - flow.northShare[b] : 0;
            visit.quadrant(c, a, b, ca, cb, sa, sb);
        }
    }

    /** What of a quadrant does not depend on the pressures. */
    static final class Shape {
        /** Parts of the pressure differences that make its gradient [1/m]. */
        double fx;

        double fy;
        /** Area times m [m4/(s Pa)]. */
        double weight;

        void set(double width, double height, double m, double ca, double cb, double sa, double sb) {
            double areaA = ca > 0 ? width * width * ca / (8 * sa * m) : 0;
            double areaB = cb > 0 ? height * height * cb / (8 * sb * m) : 0;
            double area = Math.max(areaA, areaB);
            fx = ca > 0 ? 2 * sa / width * Math.sqrt(areaA / area) : 0;
            fy = cb > 0 ? 2 * sb / height * Math.sqrt(areaB / area) : 0;
            weight = area * m;
        }
    }

    /** r at a gradient g. */
    static double ratio(double inertia, double g) {
        return 2 / (1 + Math.sqrt(1 + 4 * inertia * g));
    }

    private void gradients(double[] p, double[] rest, int from, int to) {
        for (int k = from; k < to; k++) {
            int c = cell[k], a = alongX[k], b = alongY[k];
            ux[k] = fx[k] * (p[c] - p[a] + (rest[c] - rest[a]));
            uy[k] = fy[k] * (p[c] - p[b] + (rest[c] - rest[b]));
        }
    }

    private void ratios(double[] p, double[] rest) {
        SideBySide.halves(count, WORTH_SHARING, (from, to) -> ratios(p, rest, from, to));
    }

    private void bends(double[] p, double[] rest) {
        SideBySide.halves(count, WORTH_SHARING, (from, to) -> bends(p, rest, from, to));
    }

    /** Gradients and r; loops over arrays alone, which compile to vector instructions. */
    private void ratios(double[] p, double[] rest, int from, int to) {
        gradients(p, rest, from, to);
        for (int k = from; k < to; k++) {
            double g = Math.sqrt(ux[k] * ux[k] + uy[k] * uy[k]);
            ratio[k] = 2 / (1 + Math.sqrt(1 + 4 * inertia[k] * g));
        }
    }

    /** Gradients, r, and d r / d g over g. */
    private void bends(double[] p, double[] rest, int from, int to) {
        gradients(p, rest, from, to);
        for (int k = from; k < to; k++) {
            double g = Math.sqrt(ux[k] * ux[k] + uy[k] * uy[k] + TINY);
            double root = Math.sqrt(1 + 4 * inertia[k] * g), above = 1 + root;
            ratio[k] = 2 / above;
            bend[k] = -4 * inertia[k] / (root * above * above * g);
        }
    }

    /** As {@link LayerFlow#addOutflow}. */
    void addOutflow(double[] p, double[] rest, double[] out) {
        ratios(p, rest);
        for (int k = 0; k < count; k++) {
            double qa = wx[k] * ratio[k] * ux[k], qb = wy[k] * ratio[k] * uy[k];
            out[cell[k]] += qa + qb;
            out[alongX[k]] -= qa;
            out[alongY[k]] -= qb;
        }
    }

    /** Adds each quadrant's flows to those across the faces that bound it. */
    void addFaceFlows(double[] p, double[] rest, int columns, double[] toEast, double[] toNorth) {
        ratios(p, rest);
        for (int k = 0; k < count; k++) {
            int c = cell[k], a = alongX[k], b = alongY[k];
            double qa = wx[k] * ratio[k] * ux[k], qb = wy[k] * ratio[k] * uy[k];
            if (a == c + 1) toEast[c] += qa;
            else if (a == c - 1) toEast[a] -= qa;
            if (b == c + columns) toNorth[c] += qb;
            else if (b == c - columns) toNorth[b] -= qb;
        }
    }

    /** As {@link LayerFlow#addCurvature}. */
    void addCurvature(double[] p, double[] rest, LayerFlow.Curvature to) {
        bends(p, rest);
        for (int k = 0; k < count; k++) {
            int c = cell[k], a = alongX[k], b = alongY[k];
            if (a != c) to.link(c, a, wx[k] * fx[k] * (ratio[k] + bend[k] * ux[k] * ux[k]));
            if (b != c) to.link(c, b, wy[k] * fy[k] * (ratio[k] + bend[k] * uy[k] * uy[k]));
            double mixed = a != c && b != c ? wx[k] * fy[k] * bend[k] * ux[k] * uy[k] : 0;
            if (mixed != 0) to.cross(c, a, b, mixed);
        }
    }

    /** Where a matrix holds the entry of two cells, or of one with itself; -1 for cells that it does not have. */
    interface Slots {
        int of(int a, int b);
    }

    Entries entries(Slots slots) {
        return new Entries(slots);
    }

    /** The curvature as entries of one matrix. */
    final class Entries {
        /** For each quadrant the entries cc, aa, bb, ca, cb, ab; those of a missing neighbour are the cell's own. */
        private final int[] slot = new int[6 * count];

        private Entries(Slots slots) {
            for (int k = 0; k < count; k++) {
                int c = cell[k], a = alongX[k], b = alongY[k];
                int[] pairs = {c, c, a, a, b, b, c, a, c, b, a == c || b == c ? c : a, a == c || b == c ? c : b};
                for (int e = 0; e < 6; e++) slot[6 * k + e] = slots.of(pairs[2 * e], pairs[2 * e + 1]);
            }
        }

        /** Adds it at p. */
        void add(double[] p, double[] rest, double[] values) {
            bends(p, rest);
            for (int k = 0, s = 0; k < count; k++, s += 6) {
                if (slot[s] < 0) continue;
                // Where a neighbour is missing its factor fx or fy is 0, and so is all that would go to its entries.
                double xx = wx[k] * fx[k] * (ratio[k] + bend[k] * ux[k] * ux[k]);
                double yy = wy[k] * fy[k] * (ratio[k] + bend[k] * uy[k] * uy[k]);
                double xy = wx[k] * fy[k] * bend[k] * ux[k] * uy[k];
                values[slot[s]] += xx + yy + 2 * xy;
                values[slot[s + 1]] += xx;
                values[slot[s + 2]] += yy;
                values[slot[s + 3]] -= xx + xy;
                values[slot[s + 4]] -= yy + xy;
                values[slot[s + 5]] += xy;
            }
        }
    }
}
