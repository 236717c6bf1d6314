package slabfield.fit;

/** Why a house cannot be fitted to its readings, in the user's words, with what to do. */
public final class NotFitted extends Exception {
    private static final long serialVersionUID = 1L;

    NotFitted(String reason) {
        super(reason);
    }
}
