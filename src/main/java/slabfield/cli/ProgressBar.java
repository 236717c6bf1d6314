package slabfield.cli;

import java.io.PrintWriter;

/** How far many tasks are, on one line that is written over; several threads may tell it. */
final class ProgressBar {
    private static final int WIDE = 30;

    private final PrintWriter err;
    private final int total;
    private final boolean shown;
    private int done;
    private int failed;

    ProgressBar(PrintWriter err, int total, boolean shown) {
        this.err = err;
        this.total = total;
        this.shown = shown;
    }

    /** One more is done. */
    synchronized void step(boolean well) {
        done++;
        if (!well) failed++;
        if (!shown) return;
        int full = WIDE * done / total;
        err.print("\r[" + "#".repeat(full) + ".".repeat(WIDE - full) + "] " + done + " of " + total
                + (failed > 0 ? ", " + failed + " not solved" : "") + (done == total ? "\n" : ""));
        err.flush();
    }
}
