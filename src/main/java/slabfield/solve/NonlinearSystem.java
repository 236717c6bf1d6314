package slabfield.solve;

/**
 * A convex potential to be made least, known by its gradient (the residual) and by steps with its curvature.
 *
 * <p>A place is given as the sum of two arrays, {@code at} and the {@code rest} that rounding leaves out of it. Where
 * very open and very tight links meet, differences of nearly equal values decide; with the rest they keep their digits.
 */
public interface NonlinearSystem {
    /** Number of unknowns. */
    int size();

    /**
     * The potential's gradient.
     *
     * @param at place, length {@code size()}, not modified
     * @param rest what rounding leaves out of it, same length, not modified
     * @param residual receives the gradient, same length
     */
    void residual(double[] at, double[] rest, double[] residual);

    /**
     * May lower the potential by means of its own before a step is taken.
     *
     * @param at place, may be replaced by one with a lower potential
     * @param rest likewise
     * @param residual gradient there, not modified
     * @param relative sum of its absolute values over scale
     * @return true where the place has changed
     */
    default boolean ease(double[] at, double[] rest, double[] residual, double relative) {
        return false;
    }

    /**
     * Solves curvature(at) * step = -residual.
     *
     * @param at place, not modified
     * @param rest likewise
     * @param residual gradient there, not modified
     * @param step receives the step
     * @return false where the curvature is not positive definite
     */
    boolean step(double[] at, double[] rest, double[] residual, double[] step);

    /**
     * The size that a residual is compared with: here the flow through the network.
     *
     * @param at place, not modified
     * @param rest likewise
     * @return above 0, or 0 where nothing flows
     */
    double scale(double[] at, double[] rest);

    /** Relative residual at which places where little flows are settled, too, at the place that {@link #scale} was asked for last; 0 for none. */
    default double settled() {
        return Newton.SETTLED;
    }
}
