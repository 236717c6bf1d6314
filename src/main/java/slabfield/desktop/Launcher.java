package slabfield.desktop;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.Application;

/** Opens the window, after a look whether there is a screen to open it on. */
public final class Launcher {
    /** Exit code where there is no screen. */
    public static final int NO_SCREEN = 3;

    private static final String ADVICE =
            "Slabfield found no screen for its window. Start it where there is one, or use the"
                    + " command line: \"slabfield --help\" lists what it can do.";

    private Launcher() {}

    /**
     * Opens the window and stays until it is closed.
     *
     * @param args a scenario file to open, or none
     * @return exit code: 0, or {@link #NO_SCREEN}
     */
    public static int open(List<String> args) {
        if (!hasScreen(System.getProperty("os.name"), System.getenv())) return refused();
        System.setProperty("java.awt.headless", "true");
        Window.begin(args.isEmpty());
        Logger toolkit = Logger.getLogger("javafx");
        toolkit.setLevel(Level.SEVERE);
        try {
            Application.launch(Window.class, args.toArray(String[]::new));
            return 0;
        } catch (UnsupportedOperationException noScreen) {
            return refused();
        }
    }

    /** False on a system of the Linux kind whose environment names no display. */
    static boolean hasScreen(String system, Map<String, String> environment) {
        String name = system.toLowerCase(Locale.ROOT);
        if (name.contains("win") || name.contains("mac")) return true;
        return isSet(environment.get("DISPLAY")) || isSet(environment.get("WAYLAND_DISPLAY"));
    }

    private static boolean isSet(String value) {
        return value != null && !value.isBlank();
    }

    private static int refused() {
        System.err.println(ADVICE);
        return NO_SCREEN;
    }
}
