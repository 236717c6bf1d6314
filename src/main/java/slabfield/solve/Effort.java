package slabfield.solve;

/**
 * How much work one application of the multigrid preconditioner is.
 *
 * <p>{@link #STEADY} is a V-cycle with one smoothing before and one after the correction, a linear map. {@link #PLAIN} also solves the
 * first level with few points better, by two steps of conjugate gradients, which costs next to nothing: a coarse level with few points in
 * each room may tie together what a finer one keeps apart. {@link #THOROUGH} smooths twice, and solves the two finest coarse levels
 * by some steps as well (a K-cycle: Notay and Vassilevski 2008, Numer. Linear Algebra Appl. 15).
 */
enum Effort {
    STEADY(1, 1, 1, 1),
    PLAIN(1, 1, 1, 2),
    THOROUGH(2, 3, 2, 2);

    /** Smoothings before, and after, the correction on each level. */
    final int sweeps;

    private final int first;
    private final int second;
    private final int small;

    Effort(int sweeps, int first, int second, int small) {
        this.sweeps = sweeps;
        this.first = first;
        this.second = second;
        this.small = small;
    }

    /**
     * Steps of conjugate gradients on level k of the coarse ones; 1 is a cycle alone.
     *
     * @param isSmall whether it is the first with few points
     */
    int steps(int k, boolean isSmall) {
        return Math.max(k == 0 ? first : k == 1 ? second : 1, isSmall ? small : 1);
    }

    /** The most steps there may be on a level. */
    static int most(int k, boolean isSmall) {
        return THOROUGH.steps(k, isSmall);
    }
}
