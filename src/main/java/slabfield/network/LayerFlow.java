package slabfield.network;

/**
 * Air flow from cell to cell and through native soil.
 *
 * <p>Darcy: flow = conductance * pressure difference. Darcy-Forchheimer, -grad p = (mu/k) v + beta rho |v| v, uses the
 * magnitude of the whole velocity: each cell is cut into four quadrants, each bounded by one of its faces along x and one
 * along y, and the gradient in a quadrant is made of the differences across these two. The sum of the quadrants' convex
 * dissipation potentials is the layer's potential, so its curvature is symmetric; it couples a cell with its diagonal
 * neighbours too. Where two fills meet, the difference between two cell middles is split as in linear flow.
 *
 * <p>All arrays have one entry a cell, row-major. Links exist only where their conductance is above 0.
 */
final class LayerFlow {
    final int columns;
    final int rows;
    /** Linear conductance to the cell at the right, and to the one above [m3/(s Pa)]. */
    final double[] east;

    final double[] north;
    /** Share of that link's linear resistance that lies in this cell. */
    final double[] eastShare;

    final double[] northShare;
    /** Leakance to outdoors times open area [m3/(s Pa)]. */
    final double[] soil;
    /** c m, with c = beta rho k / mu [s/m] and m = k / mu [m2/(s Pa)]; 0 for Darcy alone. */
    final double[] inertia;
    /** k / mu [m2/(s Pa)]. */
    final double[] mobility;

    final double width;
    final double height;
    /** True where any cell has an inertial part. */
    boolean inertial;

    LayerFlow(int columns, int rows, double width, double height) {
        this.columns = columns;
        this.rows = rows;
        this.width = width;
        this.height = height;
        int n = columns * rows;
        east = new double[n];
        north = new double[n];
        eastShare = new double[n];
        northShare = new double[n];
        soil = new double[n];
        inertia = new double[n];
        mobility = new double[n];
    }

    /** A copy whose links and leakance can be changed; what describes the fill is shared. */
    LayerFlow(LayerFlow other) {
        columns = other.columns;
        rows = other.rows;
        width = other.width;
        height = other.height;
        east = other.east.clone();
        north = other.north.clone();
        eastShare = other.eastShare;
        northShare = other.northShare;
        soil = other.soil.clone();
        inertia = other.inertia;
        mobility = other.mobility;
        inertial = other.inertial;
    }

    /** Receives the curvature of the potential. */
    interface Curvature {
        /** Adds h to the second derivative along (e_a - e_b). */
        void link(int a, int b, double h);

        /** Adds h times the mixed derivative of the links c-a and c-b, both differences taken from c outward. */
        void cross(int c, int a, int b, double h);

        void diagonal(int a, double h);
    }

    /**
     * Adds the flow out of each cell.
     *
     * @param p pressure of each cell, length {@code columns * rows}
     * @param rest what p leaves out by rounding, so that differences of nearly equal pressures keep their digits
     * @param outdoors pressure beyond the soil [Pa]
     * @param out receives the sums, same length
     */
    void addOutflow(double[] p, double[] rest, double outdoors, double[] out) {
        for (int j = 0; j < rows; j++)
            for (int i = 0; i < columns; i++) {
                int c = j * columns + i;
                if (soil[c] > 0) out[c] += soil[c] * (p[c] - outdoors + rest[c]);
                if (inertial) continue;
                if (east[c] > 0) {
                    double q = east[c] * (p[c] - p[c + 1] + (rest[c] - rest[c + 1]));
                    out[c] += q;
                    out[c + 1] -= q;
                }
                if (north[c] > 0) {
                    double q = north[c] * (p[c] - p[c + columns] + (rest[c] - rest[c + columns]));
                    out[c] += q;
                    out[c + columns] -= q;
                }
            }
        if (inertial) quadrants(p, rest, out, null);
    }

    /** Adds the curvature at p. */
    void addCurvature(double[] p, double[] rest, Curvature to) {
        for (int c = 0; c < soil.length; c++) {
            if (soil[c] > 0) to.diagonal(c, soil[c]);
            if (inertial) continue;
            if (east[c] > 0) to.link(c, c + 1, east[c]);
            if (north[c] > 0) to.link(c, c + columns, north[c]);
        }
        if (inertial) quadrants(p, rest, null, to);
    }

    private void quadrants(double[] p, double[] rest, double[] out, Curvature to) {
        for (int c = 0; c < soil.length; c++) for (int q = 0; q < 4; q++) quadrant(c, q, p, rest, out, to);
    }

    /** One quadrant of a cell: right or left as q is even or odd, the upper ones before the lower. */
    private void quadrant(int c, int q, double[] p, double[] rest, double[] out, Curvature to) {
        boolean right = (q & 1) == 0, up = (q & 2) == 0;
        int a = right ? c + 1 : c - 1, b = up ? c + columns : c - columns;
        double ca = right ? east[c] : c % columns > 0 ? east[c - 1] : 0;
        double cb = up ? north[c] : c >= columns ? north[b] : 0;
        if (ca == 0 && cb == 0) return;
        double sa = right ? eastShare[c] : c % columns > 0 ? 1 - eastShare[c - 1] : 0;
        double sb = up ? northShare[c] : c >= columns ? 1 - northShare[b] : 0;
        double da = ca > 0 ? p[c] - p[a] + (rest[c] - rest[a]) : 0;
        double db = cb > 0 ? p[c] - p[b] + (rest[c] - rest[b]) : 0;
        quadrant(da, db, out, to, c, a, b, ca, cb, sa, sb);
    }

    /**
     * Flow across each face.
     *
     * @param p pressure of each cell
     * @param rest what p leaves out by rounding
     * @param toEast receives the flow to the cell at the right, one entry a cell [m3/s]
     * @param toNorth receives the flow to the cell above [m3/s]
     */
    void faceFlows(double[] p, double[] rest, double[] toEast, double[] toNorth) {
        double[] out = new double[soil.length];
        for (int c = 0; c < soil.length; c++) {
            if (!inertial) {
                if (east[c] > 0) toEast[c] = east[c] * (p[c] - p[c + 1] + (rest[c] - rest[c + 1]));
                if (north[c] > 0) toNorth[c] = north[c] * (p[c] - p[c + columns] + (rest[c] - rest[c + columns]));
                continue;
            }
            for (int q = 0; q < 4; q++) {
                int a = (q & 1) == 0 ? c + 1 : c - 1, b = (q & 2) == 0 ? c + columns : c - columns;
                quadrant(c, q, p, rest, out, null);
                if (inside(a)) {
                    if (a > c) toEast[c] -= out[a];
                    else toEast[a] += out[a];
                    out[a] = 0;
                }
                if (inside(b)) {
                    if (b > c) toNorth[c] -= out[b];
                    else toNorth[b] += out[b];
                    out[b] = 0;
                }
            }
            out[c] = 0;
        }
    }

    private boolean inside(int cell) {
        return cell >= 0 && cell < soil.length;
    }

    /**
     * One quadrant of cell c, with pressure differences da and db to a along x and to b along y, over links of conductance
     * ca and cb of whose resistance the shares sa and sb lie in c.
     */
    private void quadrant(
            double da,
            double db,
            double[] out,
            Curvature to,
            int c,
            int a,
            int b,
            double ca,
            double cb,
            double sa,
            double sb) {
        double m = mobility[c];
        double areaA = ca > 0 ? width * width * ca / (8 * sa * m) : 0;
        double areaB = cb > 0 ? height * height * cb / (8 * sb * m) : 0;
        double area = Math.max(areaA, areaB);
        double fa = ca > 0 ? 2 * sa / width * Math.sqrt(areaA / area) : 0;
        double fb = cb > 0 ? 2 * sb / height * Math.sqrt(areaB / area) : 0;
        double ua = fa * da, ub = fb * db;
        double g = Math.sqrt(ua * ua + ub * ub);
        double root = Math.sqrt(1 + 4 * inertia[c] * g);
        double ratio = 2 / (1 + root);
        if (out != null) {
            double qa = area * m * ratio * ua * fa, qb = area * m * ratio * ub * fb;
            out[c] += qa + qb;
            if (ca > 0) out[a] -= qa;
            if (cb > 0) out[b] -= qb;
        }
        if (to != null) {
            // d ratio / d g over g, written so that it stays finite at g = 0
            double bend = g > 0 ? -4 * inertia[c] / (root * (1 + root) * (1 + root)) / g : 0;
            double haa = area * m * (ratio + bend * ua * ua) * fa * fa;
            double hbb = area * m * (ratio + bend * ub * ub) * fb * fb;
            if (ca > 0) to.link(c, a, haa);
            if (cb > 0) to.link(c, b, hbb);
            if (ca > 0 && cb > 0) {
                double hab = area * m * bend * ua * ub * fa * fb;
                if (hab != 0) to.cross(c, a, b, hab);
            }
        }
    }

    /**
     * Adds the derivative of the sum of weight times outflow with respect to the logarithm of each cell's permeability,
     * at fixed pressures and inertial coefficients.
     *
     * @param weight of each cell, at least as long as p
     */
    void addPermeabilityGradient(double[] p, double[] rest, double[] weight, double[] to) {
        if (inertial) {
            new PermeabilityGradient(this).add(p, rest, weight, to);
            return;
        }
        for (int c = 0; c < soil.length; c++) {
            if (east[c] > 0) share(c, c + 1, east[c], eastShare[c], p, rest, weight, to);
            if (north[c] > 0) share(c, c + columns, north[c], northShare[c], p, rest, weight, to);
        }
    }

    private static void share(
            int a, int b, double link, double near, double[] p, double[] rest, double[] weight, double[] to) {
        double w = (weight[a] - weight[b]) * link * (p[a] - p[b] + (rest[a] - rest[b]));
        to[a] += w * near;
        to[b] += w * (1 - near);
    }

    /**
     * Speed of the air in a cell, averaged over its faces.
     *
     * @param p pressure of each cell
     * @return superficial velocity [m/s]
     */
    double speed(double[] p, int c) {
        double sum = 0;
        int parts = 0;
        int i = c % columns, j = c / columns;
        for (int q = 0; q < 4; q++) {
            boolean right = (q & 1) == 0, up = (q & 2) == 0;
            int a = right ? c + 1 : c - 1, b = up ? c + columns : c - columns;
            double ca = right ? east[c] : i > 0 ? east[c - 1] : 0;
            double cb = up ? north[c] : j > 0 ? north[b] : 0;
            if (ca == 0 && cb == 0) continue;
            double sa = right ? eastShare[c] : i > 0 ? 1 - eastShare[c - 1] : 0;
            double sb = up ? northShare[c] : j > 0 ? 1 - northShare[b] : 0;
            double ua = ca > 0 ? 2 * sa / width * (p[c] - p[a]) : 0;
            double ub = cb > 0 ? 2 * sb / height * (p[c] - p[b]) : 0;
            double g = Math.sqrt(ua * ua + ub * ub);
            sum += mobility[c] * 2 / (1 + Math.sqrt(1 + 4 * inertia[c] * g)) * g;
            parts++;
        }
        return parts == 0 ? 0 : sum / parts;
    }
}
