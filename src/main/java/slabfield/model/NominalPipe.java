package slabfield.model;

/**
 * Pipe of schedule 40 by its nominal size, with the true inside diameter. The diameters are handbook values from memory:
 * look at the pipe's own print before relying on the last digit.
 */
public enum NominalPipe {
    TWO_INCH("2 in", 2.067),
    THREE_INCH("3 in", 3.068),
    FOUR_INCH("4 in", 4.026),
    SIX_INCH("6 in", 6.065);

    private static final double INCH = 0.0254;

    private final String word;
    private final double insideInches;

    NominalPipe(String word, double insideInches) {
        this.word = word;
        this.insideInches = insideInches;
    }

    public String word() {
        return word;
    }

    /** True inside diameter [m]. */
    public double insideDiameter() {
        return insideInches * INCH;
    }
}
