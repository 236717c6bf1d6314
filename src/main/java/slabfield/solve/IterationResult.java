package slabfield.solve;

/**
 * How an iterative solve ended.
 *
 * @param ending why it stopped
 * @param iterations applications of the preconditioner
 * @param residual |b - A x| / |b| of the answer, recomputed from x, in the Euclidean norm
 */
public record IterationResult(Ending ending, int iterations, double residual) {
    public enum Ending {
        CONVERGED,
        ITERATION_LIMIT,
        CANCELLED,
        /** No further progress: rounding, or a matrix that is not positive definite. */
        STALLED
    }

    public boolean hasConverged() {
        return ending == Ending.CONVERGED;
    }
}
