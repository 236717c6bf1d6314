package slabfield.solve;

/** Sees an iteration go by, and may stop it. Asked once per iteration, on the thread that called the solver. */
public interface Watch {
    /** Sees nothing and stops nothing. */
    Watch NONE = (iteration, residual) -> true;

    /**
     * @param iteration done so far
     * @param residual |b - A x| / |b| at this point, in the Euclidean norm
     * @return whether to go on
     */
    boolean step(int iteration, double residual);
}
