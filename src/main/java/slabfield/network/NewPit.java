package slabfield.network;

import java.util.List;
import slabfield.law.AirState;
import slabfield.law.FanAndPipe;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;

/**
 * What draws at a suction point that does not yet exist, and how its pit meets the cell that it lies in: through
 * {@code ln(r0 / r) / (2 pi T)} between the cell's equivalent radius r0 and the pit's radius r (Peaceman 1978; see
 * {@link DiscTie}), and in coarse stone through {@code beta rho / (2 pi h)^2 (1 / r)} times the flow squared, the inertial loss of
 * the radial flow to the pit.
 */
final class NewPit {
    private static final int MOST_STEPS = 100;
    private static final double SETTLED = 1e-12;
    /** Least part of a cell's response that is left as resistance. */
    private static final double LEAST_TIE = 0.01;

    private final LayerGrid layer;
    private final double radius;
    private final Source source;
    private final List<FanAndPipe> line;
    private final double equivalent;

    /**
     * @throws IllegalArgumentException for a branch of a riser, whose fan draws at other points too
     */
    NewPit(LayerGrid layer, SuctionPoint.Pit pit, Source source, AirState air) {
        if (source instanceof Source.Branch)
            throw new IllegalArgumentException(
                    "a branch of a riser cannot be tried place by place; take a pressure or a fan of its own");
        this.layer = layer;
        this.source = source;
        radius = pit.radius();
        line = source instanceof Source.Fan fan ? Devices.line(fan.run(), fan.curve(), air) : List.of();
        double a = layer.grid.width() / layer.grid.height();
        // Peaceman 1983, eq. 16: e^-gamma / 4 of the cell's diagonal, whatever its shape.
        equivalent = Math.exp(-0.5772156649015329) / 4 * Math.hypot(a, 1) * layer.grid.height();
    }

    /**
     * Flow drawn from a cell [m3/s].
     *
     * @param cell in whose middle the pit lies
     * @param open pressure there while nothing is drawn [Pa]
     * @param response fall of that pressure per flow drawn [Pa s/m3]
     */
    double flow(int cell, double open, double response) {
        if (source instanceof Source.Flow f) return f.flow();
        double linear = linear(cell, response), quadratic = quadratic(cell);
        if (source instanceof Source.Pressure p) {
            double fall = open - p.pressure();
            return 2 * fall / (linear + Math.sqrt(linear * linear + 4 * quadratic * Math.abs(fall)));
        }
        return behindFan(open - ((Source.Fan) source).discharge(), linear, quadratic);
    }

    /** Flow at which pit pressure + rise - loss is the discharge's pressure, by the regula falsi with halved ends (Illinois). */
    private double behindFan(double open, double linear, double quadratic) {
        double low = -1, high = 1;
        while (excess(open, linear, quadratic, low) < 0) low *= 2;
        while (excess(open, linear, quadratic, high) > 0) high *= 2;
        double atLow = excess(open, linear, quadratic, low), atHigh = excess(open, linear, quadratic, high);
        for (int k = 0; k < MOST_STEPS && high - low > SETTLED * (Math.abs(low) + Math.abs(high)); k++) {
            double q = (low * atHigh - high * atLow) / (atHigh - atLow), at = excess(open, linear, quadratic, q);
            if (at == 0) return q;
            if (at > 0) {
                low = q;
                atLow = at;
                atHigh /= 2;
            } else {
                high = q;
                atHigh = at;
                atLow /= 2;
            }
        }
        return (low + high) / 2;
    }

    /** Pressure in the pit while it draws a flow; arguments as for {@link #flow} [Pa]. */
    double pressure(int cell, double open, double response, double flow) {
        if (source instanceof Source.Pressure p) return p.pressure();
        return open - flow * (linear(cell, response) + quadratic(cell) * Math.abs(flow));
    }

    /** The tie of a pit wider than its cell is below 0: part of the cell's own resistance is not there. */
    private double linear(int cell, double response) {
        return Math.max(
                LEAST_TIE * response,
                response + Math.log(equivalent / radius) / (2 * Math.PI * layer.transmissivity[cell]));
    }

    private double quadratic(int cell) {
        return layer.drag[cell] / Math.pow(2 * Math.PI * layer.thickness[cell], 2) / radius;
    }

    private double excess(double open, double linear, double quadratic, double q) {
        double sum = open - q * (linear + quadratic * Math.abs(q));
        for (FanAndPipe part : line) sum += part.riseAt(q) - part.lossAt(q);
        return sum;
    }
}
