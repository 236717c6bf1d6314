package slabfield.law;

/**
 * A fan behind a suction pipe, as a law between the pit and the discharge:
 * {@code p_pit + rise(q) - loss(q) = p_discharge}, so {@code p_pit - p_discharge = loss(q) - rise(q)}.
 *
 * <p>The right side rises strictly with q, so each difference has one flow. With no difference the fan still draws.
 * The rise is a straight line between the given points, with the last slope beyond them and the first slope before
 * them, down to flows that the pit pressure drives backwards. The loss is {@link PipeFriction#pressureLoss}.
 *
 * @see "FanAndPipeTest, FlowLawContractTest"
 */
public final class FanAndPipe implements FlowLaw {
    private static final double RELATIVE_STEP = 1e-13;
    /** Residual, in parts of the pressures it is the sum of, that is rounding alone. */
    private static final double ROUNDING = 4e-16;

    private static final int MOST_STEPS = 200;

    private final double[] flows;
    private final double[] rises;
    private final double diameter;
    private final double length;
    private final int ells;
    private final double fittings;
    private final double roughness;
    private final double viscosity;
    private final double density;

    /**
     * A fan and its pipe. A pipe without length, bends and fittings has no loss.
     *
     * @param flows of the fan curve, rising, at least two [m3/s]
     * @param rises pressure rise at each of the flows, falling [Pa]
     * @param diameter inside diameter of the pipe, above 0 [m]
     * @param length straight length, not below 0 [m]
     * @param ells number of bends of 90 degrees
     * @param fittings sum of loss coefficients on the velocity head, not below 0 [-]
     * @param roughness height of the wall's roughness, at most half the diameter [m]
     * @param viscosity of the air, above 0 [Pa s]
     * @param density of the air, above 0 [kg/m3]
     */
    public FanAndPipe(
            double[] flows,
            double[] rises,
            double diameter,
            double length,
            int ells,
            double fittings,
            double roughness,
            double viscosity,
            double density) {
        this.flows = flows.clone();
        this.rises = rises.clone();
        requireFalling(this.flows, this.rises);
        this.diameter = Require.positive("pipe diameter", diameter);
        this.length = Require.notNegative("pipe length", length);
        this.ells = (int) Require.notNegative("ells", ells);
        this.fittings = Require.notNegative("fittings", fittings);
        this.roughness = Require.within("pipe roughness", 0, diameter / 2, roughness);
        this.viscosity = Require.positive("viscosity", viscosity);
        this.density = Require.positive("density", density);
    }

    private static void requireFalling(double[] flows, double[] rises) {
        if (flows.length < 2 || flows.length != rises.length)
            throw new IllegalArgumentException("a fan curve needs at least two flows and a pressure rise for each");
        for (int i = 1; i < flows.length; i++)
            if (!(flows[i] > flows[i - 1] && rises[i] < rises[i - 1]))
                throw new IllegalArgumentException(
                        "a fan curve must lose pressure as its flow grows, but does not at point " + (i + 1));
    }

    /**
     * Pressure rise of the fan.
     *
     * @param flow of either sign [m3/s]
     * @return [Pa]
     */
    public double riseAt(double flow) {
        int i = segment(flow);
        return rises[i] + riseSlope(i) * (flow - flows[i]);
    }

    /**
     * Pressure loss of the pipe, odd in the flow.
     *
     * @param flow of either sign [m3/s]
     * @return [Pa]
     */
    public double lossAt(double flow) {
        return PipeFriction.pressureLoss(flow, diameter, length, ells, fittings, roughness, viscosity, density);
    }

    /**
     * Flow from the pit to the discharge, to about 1e-12 of itself.
     *
     * @param difference pressure in the pit minus pressure at the discharge [Pa]
     * @return above 0 out of the pit [m3/s]
     */
    @Override
    public double flow(double difference) {
        double lossless = losslessFlow(difference);
        double low = Math.min(0, lossless);
        double high = Math.max(0, lossless);
        double flow = lossless;
        for (int i = 0; i < MOST_STEPS; i++) {
            double loss = lossAt(flow);
            double rise = riseAt(flow);
            double residual = loss - rise - difference;
            if (Math.abs(residual) <= ROUNDING * (Math.abs(loss) + Math.abs(rise) + Math.abs(difference))) break;
            if (residual > 0) high = flow;
            else low = flow;
            double next = flow - residual / resistance(flow);
            if (!(next > low && next < high)) next = (low + high) / 2;
            double step = Math.abs(next - flow);
            flow = next;
            if (step <= RELATIVE_STEP * Math.abs(flow)) break;
        }
        return flow;
    }

    @Override
    public double slope(double difference) {
        return 1 / resistance(flow(difference));
    }

    /** Flow without the pipe's loss; the flow with it lies between this and 0, since the loss is odd. */
    private double losslessFlow(double difference) {
        int i = 0;
        while (i < rises.length - 2 && rises[i + 1] >= -difference) i++;
        return flows[i] - (difference + rises[i]) / riseSlope(i);
    }

    /** d (loss - rise) / d flow. */
    private double resistance(double flow) {
        double lossSlope =
                PipeFriction.pressureLossSlope(flow, diameter, length, ells, fittings, roughness, viscosity, density);
        return lossSlope - riseSlope(segment(flow));
    }

    private int segment(double flow) {
        int i = 0;
        while (i < flows.length - 2 && flow >= flows[i + 1]) i++;
        return i;
    }

    private double riseSlope(int i) {
        return (rises[i + 1] - rises[i]) / (flows[i + 1] - flows[i]);
    }
}
