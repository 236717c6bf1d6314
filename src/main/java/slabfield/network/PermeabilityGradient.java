package slabfield.network;

/**
 * How the flows of a Darcy-Forchheimer layer change with the permeability of each cell. A quadrant's flows depend on its
 * own cell's fill and on that of the two cells it is linked with; they are differenced by central steps, whose error is
 * far below that of the solve.
 */
final class PermeabilityGradient {
    private static final double STEP = 1e-4;

    private final LayerFlow flow;
    private final double[] q = new double[2];

    PermeabilityGradient(LayerFlow flow) {
        this.flow = flow;
    }

    void add(double[] p, double[] rest, double[] weight, double[] to) {
        int columns = flow.columns;
        for (int c = 0; c < flow.soil.length; c++) {
            int i = c % columns, j = c / columns;
            for (int k = 0; k < 4; k++) {
                boolean right = (k & 1) == 0, up = (k & 2) == 0;
                int a = right ? c + 1 : c - 1, b = up ? c + columns : c - columns;
                double ca = right ? flow.east[c] : i > 0 ? flow.east[c - 1] : 0;
                double cb = up ? flow.north[c] : j > 0 ? flow.north[b] : 0;
                if (ca == 0 && cb == 0) continue;
                double sa = right ? flow.eastShare[c] : i > 0 ? 1 - flow.eastShare[c - 1] : 0;
                double sb = up ? flow.northShare[c] : j > 0 ? 1 - flow.northShare[b] : 0;
                double da = ca > 0 ? p[c] - p[a] + (rest[c] - rest[a]) : 0;
                double db = cb > 0 ? p[c] - p[b] + (rest[c] - rest[b]) : 0;
                double wa = ca > 0 ? weight[c] - weight[a] : 0, wb = cb > 0 ? weight[c] - weight[b] : 0;
                if (wa == 0 && wb == 0) continue;
                to[c] += slope(c, da, db, ca, cb, sa, sb, wa, wb, 1, 0, 0);
                if (ca > 0) to[a] += slope(c, da, db, ca, cb, sa, sb, wa, wb, 0, 1, 0);
                if (cb > 0) to[b] += slope(c, da, db, ca, cb, sa, sb, wa, wb, 0, 0, 1);
            }
        }
    }

    private double slope(
            int c,
            double da,
            double db,
            double ca,
            double cb,
            double sa,
            double sb,
            double wa,
            double wb,
            int own,
            int alongX,
            int alongY) {
        double sum = 0;
        for (int side = -1; side <= 1; side += 2) {
            double own1 = Math.exp(side * STEP * own), a1 = Math.exp(side * STEP * alongX), b1 = Math.exp(side * STEP * alongY);
            double nearA = ca > 0 ? sa / ca / own1 : 0, farA = ca > 0 ? (1 - sa) / ca / a1 : 0;
            double nearB = cb > 0 ? sb / cb / own1 : 0, farB = cb > 0 ? (1 - sb) / cb / b1 : 0;
            flows(
                    flow.mobility[c] * own1,
                    flow.inertia[c] * own1 * own1,
                    da,
                    db,
                    ca > 0 ? 1 / (nearA + farA) : 0,
                    cb > 0 ? 1 / (nearB + farB) : 0,
                    ca > 0 ? nearA / (nearA + farA) : 0,
                    cb > 0 ? nearB / (nearB + farB) : 0);
            sum += side * (wa * q[0] + wb * q[1]);
        }
        return sum / (2 * STEP);
    }

    /** Flows of a quadrant along x and along y, into {@link #q}; the same law as in {@link LayerFlow}. */
    private void flows(double m, double inertia, double da, double db, double ca, double cb, double sa, double sb) {
        double areaA = ca > 0 ? flow.width * flow.width * ca / (8 * sa * m) : 0;
        double areaB = cb > 0 ? flow.height * flow.height * cb / (8 * sb * m) : 0;
        double area = Math.max(areaA, areaB);
        double fa = ca > 0 ? 2 * sa / flow.width * Math.sqrt(areaA / area) : 0;
        double fb = cb > 0 ? 2 * sb / flow.height * Math.sqrt(areaB / area) : 0;
        double ua = fa * da, ub = fb * db, g = Math.sqrt(ua * ua + ub * ub);
        double ratio = 2 / (1 + Math.sqrt(1 + 4 * inertia * g));
        q[0] = area * m * ratio * ua * fa;
        q[1] = area * m * ratio * ub * fb;
    }
}
