package slabfield.desktop.drawing;

/** A sheet of the drawing that can be shown and locked by itself, the lowest first. */
public enum Layer {
    UNDERLAY("Picture to trace"),
    SLABS("Slabs"),
    FILL("Fill zones"),
    DRAINS("Drain tile"),
    BARRIERS("Barriers"),
    WALLS("Block walls"),
    LEAKS("Openings"),
    NO_DRILL("No-drill areas"),
    HOLES("Test holes"),
    SUCTION("Suction points");

    private final String words;

    Layer(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
