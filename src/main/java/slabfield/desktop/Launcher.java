package slabfield.desktop;

import java.util.List;

/** Opens the window. */
public final class Launcher {
    private static final int NO_WINDOW = 3;

    private Launcher() {}

    /**
     * Opens the window and returns when it is closed.
     *
     * @param args none is known yet
     * @return the code to end with
     */
    public static int open(List<String> args) {
        System.err.println("The window is not in this build. \"slabfield --help\" shows what the command line does.");
        return NO_WINDOW;
    }
}
