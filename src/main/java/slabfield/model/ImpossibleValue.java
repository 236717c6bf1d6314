package slabfield.model;

/**
 * A value that nothing drawn can have, such as a thickness of zero. The message completes the sentence
 * "(part) (message)", for instance "thickness must be above 0", so that a reader of files can put the user's own text
 * and the place in the file before it.
 */
public final class ImpossibleValue extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;
    private final String part;
    private final String reason;

    public ImpossibleValue(String part, String reason) {
        super(part + " " + reason);
        this.part = part;
        this.reason = reason;
    }

    /** The record component that is wrong, spelled as in a scenario file. */
    public String part() {
        return part;
    }

    /** What would be right, without the name of the part. */
    public String reason() {
        return reason;
    }
}
