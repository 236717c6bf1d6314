package slabfield.network;

/**
 * Air flow from cell to cell and through native soil.
 *
 * <p>Darcy: flow = conductance * pressure difference. Darcy-Forchheimer, -grad p = (mu/k) v + beta rho |v| v, uses the
 * magnitude of the whole velocity: each cell is cut into four {@link Quadrants}, each bounded by one of its faces along x and
 * one along y, and the gradient in a quadrant is made of the differences across these two. The sum of the quadrants' convex
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

    /** Made at the first use, when all links are what they will be. */
    private Quadrants quadrants;

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
        if (inertial) quadrants().addOutflow(p, rest, out);
    }

    /** Adds the curvature at p. */
    void addCurvature(double[] p, double[] rest, Curvature to) {
        for (int c = 0; c < soil.length; c++) {
            if (soil[c] > 0) to.diagonal(c, soil[c]);
            if (inertial) continue;
            if (east[c] > 0) to.link(c, c + 1, east[c]);
            if (north[c] > 0) to.link(c, c + columns, north[c]);
        }
        if (inertial) quadrants().addCurvature(p, rest, to);
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
        if (inertial) {
            quadrants().addFaceFlows(p, rest, columns, toEast, toNorth);
            return;
        }
        for (int c = 0; c < soil.length; c++) {
            if (east[c] > 0) toEast[c] = east[c] * (p[c] - p[c + 1] + (rest[c] - rest[c + 1]));
            if (north[c] > 0) toNorth[c] = north[c] * (p[c] - p[c + columns] + (rest[c] - rest[c + columns]));
        }
    }

    Quadrants quadrants() {
        if (quadrants == null) quadrants = new Quadrants(this);
        return quadrants;
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
        double[] sum = {0, 0};
        Quadrants.of(this, c, (cell, a, b, ca, cb, sa, sb) -> {
            double ua = ca > 0 ? 2 * sa / width * (p[c] - p[a]) : 0;
            double ub = cb > 0 ? 2 * sb / height * (p[c] - p[b]) : 0;
            double g = Math.sqrt(ua * ua + ub * ub);
            sum[0] += mobility[c] * Quadrants.ratio(inertia[c], g) * g;
            sum[1]++;
        });
        return sum[1] == 0 ? 0 : sum[0] / sum[1];
    }
}
