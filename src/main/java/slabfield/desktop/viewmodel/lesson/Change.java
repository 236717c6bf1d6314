package slabfield.desktop.viewmodel.lesson;

/** How much a quantity grows or shrinks, as one can say it beforehand. */
public enum Change {
    GONE("falls to a tenth or less", 0, 0.1),
    MUCH_LESS("falls to between a tenth and a half", 0.1, 0.5),
    LESS("falls, but by less than half", 0.5, 0.95),
    SAME("stays the same within 5 %", 0.95, 1.05),
    MORE("rises, to at most double", 1.05, 2),
    MUCH_MORE("more than doubles", 2, Double.POSITIVE_INFINITY);

    private final String words;
    private final double from;
    private final double below;

    Change(String words, double from, double below) {
        this.words = words;
        this.from = from;
        this.below = below;
    }

    public String words() {
        return words;
    }

    /** The change from one size to another; sizes below 0 count as 0. */
    public static Change of(double before, double after) {
        double ratio = before > 0 ? Math.max(0, after) / before : after > 0 ? Double.POSITIVE_INFINITY : 1;
        for (Change c : values()) if (ratio >= c.from && ratio < c.below) return c;
        return MUCH_MORE;
    }

    /** Whether both fall, both rise, or both stay. */
    public boolean sameDirection(Change other) {
        return direction() == other.direction();
    }

    private int direction() {
        return Integer.compare(ordinal(), SAME.ordinal());
    }
}
