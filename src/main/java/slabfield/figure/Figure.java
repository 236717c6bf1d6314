package slabfield.figure;

/** A drawing that finds its own height for a width, and is drawn alike on every canvas. */
public interface Figure {
    /** A short name of it. */
    String title();

    /** What it shows, in a sentence or two, for those who cannot see it. */
    String description();

    /**
     * Height at which nothing is wasted [points].
     *
     * @param measure any canvas; nothing is drawn on it
     * @param width of the page [points]
     */
    double height(Canvas measure, double width);

    /** Draws it over the whole canvas. */
    void draw(Canvas canvas);
}
