package slabfield.desktop.viewmodel;

/** Colours of the window. Those of the map never change, so that a picture means the same everywhere. */
public enum Theme {
    LIGHT("Light"),
    DARK("Dark"),
    CONTRAST("High contrast");

    private final String words;

    Theme(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
