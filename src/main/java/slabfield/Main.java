package slabfield;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import slabfield.cli.CommandLineFace;
import slabfield.desktop.Launcher;

/** Entry point: without arguments, or with a scenario file alone, the window; else the command line. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        System.exit(isForTheWindow(args) ? Launcher.open(List.of(args)) : onCommandLine(args));
    }

    /** No word at all, or one file alone, as file managers start a program. */
    private static boolean isForTheWindow(String[] args) {
        return args.length == 0
                || args.length == 1 && args[0].endsWith(".json") && Files.isRegularFile(Path.of(args[0]));
    }

    /** Pictures are drawn without a display, whether there is one or not. */
    private static int onCommandLine(String[] args) {
        System.setProperty("java.awt.headless", "true");
        return CommandLineFace.run(args);
    }
}
