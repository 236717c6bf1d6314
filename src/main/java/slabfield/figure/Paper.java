package slabfield.figure;

/** Sheets of paper, laid on their long side. */
public enum Paper {
    A4("A4", 297, 210),
    A3("A3", 420, 297),
    LETTER("letter", 279.4, 215.9);

    /** Points in a millimetre. */
    public static final double MILLIMETRE = 72 / 25.4;

    private final String words;
    private final double wide;
    private final double high;

    Paper(String words, double wide, double high) {
        this.words = words;
        this.wide = wide;
        this.high = high;
    }

    public String words() {
        return words;
    }

    /** Long side [points]. */
    public double width() {
        return wide * MILLIMETRE;
    }

    /** Short side [points]. */
    public double height() {
        return high * MILLIMETRE;
    }
}
