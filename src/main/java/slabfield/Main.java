package slabfield;

import java.util.List;
import slabfield.cli.CommandLineFace;
import slabfield.desktop.Launcher;

/** Entry point: with arguments the command line, without them the window. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {
        System.exit(args.length == 0 ? Launcher.open(List.of()) : onCommandLine(args));
    }

    /** Pictures are drawn without a display, whether there is one or not. */
    private static int onCommandLine(String[] args) {
        System.setProperty("java.awt.headless", "true");
        return CommandLineFace.run(args);
    }
}
