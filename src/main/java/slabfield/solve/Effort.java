package slabfield.solve;

/**
 * How much work one application of the multigrid preconditioner is.
 *
 * <p>{@link #PLAIN} is a V-cycle with one smoothing before and one after the correction. {@link #THOROUGH} smooths twice,
 * and solves the two finest coarse levels by some steps of conjugate gradients each (a K-cycle: Notay and
 * Vassilevski 2008, Numer. Linear Algebra Appl. 15): where barriers leave passages too narrow for the coarse levels to
 * see, a coarse level ties together what the finer one keeps apart, and few steps there undo that.
 */
enum Effort {
    PLAIN(1, 1, 1),
    THOROUGH(2, 3, 2);

    /** Smoothings before, and after, the correction on each level. */
    final int sweeps;

    private final int first;
    private final int second;

    Effort(int sweeps, int first, int second) {
        this.sweeps = sweeps;
        this.first = first;
        this.second = second;
    }

    /** Steps of conjugate gradients on level k of the coarse ones; 1 is a cycle alone. */
    int steps(int k) {
        return k == 0 ? first : k == 1 ? second : 1;
    }
}
