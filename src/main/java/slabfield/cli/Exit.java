package slabfield.cli;

/** How a run of the command line ended, as scripts see it. */
public enum Exit {
    FINE(0),
    /** A wrong option, or a scenario file that cannot be used. */
    WRONG_INPUT(2),
    /** The window has no display to open on. */
    NO_DISPLAY(3),
    /** A solve did not converge. */
    NOT_CONVERGED(4),
    /** A file cannot be written, or is there already. */
    CANNOT_WRITE(5),
    /** A gate of the job record blocks what was asked. */
    BLOCKED(6),
    /** A validation case is not green. */
    CASE_FAILED(7),
    /** A fault of the program. */
    OUR_FAULT(70);

    private final int code;

    Exit(int code) {
        this.code = code;
    }

    public int code() {
        return code;
    }
}
