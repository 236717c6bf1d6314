package slabfield.field;

/**
 * How a solve ended, and the figures by which it was judged.
 *
 * @param ending what happened
 * @param iterations Newton steps taken
 * @param residual sum of all nodes' mass imbalance, computed afresh, over the flow through the network
 * @param massBalance flow in minus flow out over all boundaries, over the flow through the network
 */
public record Convergence(Ending ending, int iterations, double residual, double massBalance) {
    /** What ended a solve. */
    public enum Ending {
        /** Residual and mass balance are below tolerance. */
        CONVERGED,
        /** No step made the residual smaller. */
        STALLED,
        /** The allowed number of steps was used up. */
        ITERATION_LIMIT,
        /** Somebody asked it to stop. */
        CANCELLED,
        /** There is no single answer: a part that draws has no way to any boundary. */
        SINGULAR
    }

    public boolean converged() {
        return ending == Ending.CONVERGED;
    }
}
