package slabfield.field;

/** How a long computation is watched and stopped; asked once per iteration. */
public interface Progress {
    /** Never stops, shows nothing. */
    Progress NONE = new Progress() {};

    default boolean isCancelled() {
        return false;
    }

    /**
     * A step is done.
     *
     * @param done steps so far
     * @param total steps in all, or 0 where it is not known
     * @param residual of the current step, NaN where it has none
     */
    default void step(int done, int total, double residual) {}

    /** Passes on a wish to stop, but no steps: for a part whose steps are not those of the whole. */
    default Progress stopOnly() {
        Progress whole = this;
        return new Progress() {
            @Override
            public boolean isCancelled() {
                return whole.isCancelled();
            }
        };
    }
}
