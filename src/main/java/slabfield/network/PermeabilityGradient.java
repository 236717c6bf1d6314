package slabfield.network;

/**
 * How the flows of a Darcy-Forchheimer layer change with the permeability of each cell. A {@link Quadrants quadrant}'s flows
 * depend on its own cell's fill and on that of the two cells it is linked with; they are differenced by central steps,
 * whose error is far below that of the solve.
 */
final class PermeabilityGradient {
    private static final double STEP = 1e-4;

    private final LayerFlow flow;
    private final Quadrants.Shape shape = new Quadrants.Shape();

    PermeabilityGradient(LayerFlow flow) {
        this.flow = flow;
    }

    void add(double[] p, double[] rest, double[] weight, double[] to) {
        Quadrants.each(flow, (c, a, b, ca, cb, sa, sb) -> {
            double da = ca > 0 ? p[c] - p[a] + (rest[c] - rest[a]) : 0;
            double db = cb > 0 ? p[c] - p[b] + (rest[c] - rest[b]) : 0;
            double wa = ca > 0 ? weight[c] - weight[a] : 0, wb = cb > 0 ? weight[c] - weight[b] : 0;
            if (wa == 0 && wb == 0) return;
            to[c] += slope(c, da, db, ca, cb, sa, sb, wa, wb, 1, 0, 0);
            if (ca > 0) to[a] += slope(c, da, db, ca, cb, sa, sb, wa, wb, 0, 1, 0);
            if (cb > 0) to[b] += slope(c, da, db, ca, cb, sa, sb, wa, wb, 0, 0, 1);
        });
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
            double own1 = Math.exp(side * STEP * own),
                    a1 = Math.exp(side * STEP * alongX),
                    b1 = Math.exp(side * STEP * alongY);
            double nearA = ca > 0 ? sa / ca / own1 : 0, farA = ca > 0 ? (1 - sa) / ca / a1 : 0;
            double nearB = cb > 0 ? sb / cb / own1 : 0, farB = cb > 0 ? (1 - sb) / cb / b1 : 0;
            shape.set(
                    flow.width,
                    flow.height,
                    flow.mobility[c] * own1,
                    ca > 0 ? 1 / (nearA + farA) : 0,
                    cb > 0 ? 1 / (nearB + farB) : 0,
                    ca > 0 ? nearA / (nearA + farA) : 0,
                    cb > 0 ? nearB / (nearB + farB) : 0);
            double ua = shape.fx * da, ub = shape.fy * db;
            double r = Quadrants.ratio(flow.inertia[c] * own1 * own1, Math.sqrt(ua * ua + ub * ub));
            sum += side * shape.weight * r * (wa * shape.fx * ua + wb * shape.fy * ub);
        }
        return sum / (2 * STEP);
    }
}
