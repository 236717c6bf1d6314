package slabfield.model;

/**
 * How far an opening is closed.
 *
 * @param state in the user's word
 * @param fraction of the open area, or of a joint's length, taken away, 0 to 1
 * @param assumed true where the fraction comes from the word
 */
public record Seal(SealState state, double fraction, boolean assumed) {
    public Seal {
        Check.present("state", state);
        Check.fraction("sealedFraction", fraction);
    }

    public static Seal of(SealState state) {
        return new Seal(state, state.assumedFraction(), true);
    }

    /** Part of the opening that is left. */
    public double remaining() {
        return 1 - fraction;
    }
}
