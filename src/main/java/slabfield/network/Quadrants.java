package slabfield.network;

import java.util.Arrays;

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
        Arrays.fill(cell, -1);
        Shape shape = new Shape();
        int[] count = {0};
        each(flow, (c, a, b, ca, cb, sa, sb) -> {
            shape.set(flow.width, flow.height, flow.mobility[c], ca, cb, sa, sb);
            int k = count[0]++;
            cell[k] = c;
            alongX[k] = ca > 0 ? a : c;
            alongY[k] = cb > 0 ? b : c;
            inertia[k] = flow.inertia[c];
            fx[k] = shape.fx;
            fy[k] = shape.fy;
            wx[k] = shape.weight * shape.fx;
            wy[k] = shape.weight * shape.fy;
        });
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

    /** As {@link LayerFlow#addOutflow}. */
    void addOutflow(double[] p, double[] rest, double[] out) {
        for (int k = 0; k < cell.length && cell[k] >= 0; k++) {
            int c = cell[k], a = alongX[k], b = alongY[k];
            double ux = fx[k] * (p[c] - p[a] + (rest[c] - rest[a])), uy = fy[k] * (p[c] - p[b] + (rest[c] - rest[b]));
            double r = ratio(inertia[k], Math.sqrt(ux * ux + uy * uy));
            double qa = wx[k] * r * ux, qb = wy[k] * r * uy;
            out[c] += qa + qb;
            out[a] -= qa;
            out[b] -= qb;
        }
    }

    /** Adds each quadrant's flows to those across the faces that bound it. */
    void addFaceFlows(double[] p, double[] rest, int columns, double[] toEast, double[] toNorth) {
        for (int k = 0; k < cell.length && cell[k] >= 0; k++) {
            int c = cell[k], a = alongX[k], b = alongY[k];
            double ux = fx[k] * (p[c] - p[a] + (rest[c] - rest[a])), uy = fy[k] * (p[c] - p[b] + (rest[c] - rest[b]));
            double r = ratio(inertia[k], Math.sqrt(ux * ux + uy * uy));
            double qa = wx[k] * r * ux, qb = wy[k] * r * uy;
            if (a == c + 1) toEast[c] += qa;
            else if (a == c - 1) toEast[a] -= qa;
            if (b == c + columns) toNorth[c] += qb;
            else if (b == c - columns) toNorth[b] -= qb;
        }
    }

    /** As {@link LayerFlow#addCurvature}. */
    void addCurvature(double[] p, double[] rest, LayerFlow.Curvature to) {
        for (int k = 0; k < cell.length && cell[k] >= 0; k++) {
            int c = cell[k], a = alongX[k], b = alongY[k];
            double ux = fx[k] * (p[c] - p[a] + (rest[c] - rest[a])), uy = fy[k] * (p[c] - p[b] + (rest[c] - rest[b]));
            double g = Math.sqrt(ux * ux + uy * uy), root = Math.sqrt(1 + 4 * inertia[k] * g), r = 2 / (1 + root);
            // d r / d g over g, written so that it stays finite at g = 0
            double bend = g > 0 ? -4 * inertia[k] / (root * (1 + root) * (1 + root)) / g : 0;
            if (a != c) to.link(c, a, wx[k] * fx[k] * (r + bend * ux * ux));
            if (b != c) to.link(c, b, wy[k] * fy[k] * (r + bend * uy * uy));
            double mixed = a != c && b != c ? wx[k] * fy[k] * bend * ux * uy : 0;
            if (mixed != 0) to.cross(c, a, b, mixed);
        }
    }
}
