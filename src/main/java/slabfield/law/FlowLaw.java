package slabfield.law;

/**
 * How much air goes through something for a pressure difference across it. Every law is odd or at least rising, so its
 * slope is a conductance above zero; nothing else about it matters to the solver.
 */
public interface FlowLaw {
    /**
     * Volume flow.
     *
     * @param difference pressure at the near end minus pressure at the far end [Pa]
     * @return flow from the near end to the far end [m3/s]
     */
    double flow(double difference);

    /**
     * d flow / d difference.
     *
     * @param difference as for {@link #flow} [Pa]
     * @return above 0 [m3/(s Pa)]
     */
    double slope(double difference);
}
