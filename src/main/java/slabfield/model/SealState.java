package slabfield.model;

/** How far an opening is closed. The fractions are assumptions used unless the user gives one. */
public enum SealState {
    OPEN("open", 0),
    LOOSE("loose", 0.5),
    COVERED("covered", 0.9),
    SEALED("sealed", 0.98);

    private final String word;
    private final double fraction;

    SealState(String word, double fraction) {
        this.word = word;
        this.fraction = fraction;
    }

    public String word() {
        return word;
    }

    /** Part of the open area (for a joint: of its length) taken away, unless the user gives another. */
    public double assumedFraction() {
        return fraction;
    }
}
