package slabfield.figure;

/** Scales that plans are drawn to. */
public enum PlanScale {
    ONE_TO_50("1:50", 50),
    ONE_TO_100("1:100", 100),
    QUARTER_INCH("1/4 in = 1 ft", 48),
    EIGHTH_INCH("1/8 in = 1 ft", 96);

    private static final double POINTS_PER_METRE = 72 / 0.0254;

    private final String words;
    private final double reduction;

    PlanScale(String words, double reduction) {
        this.words = words;
        this.reduction = reduction;
    }

    public String words() {
        return words;
    }

    /** Length on paper of a metre of the house [points]. */
    public double pointsPerMetre() {
        return POINTS_PER_METRE / reduction;
    }
}
