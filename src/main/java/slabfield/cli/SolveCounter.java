package slabfield.cli;

import java.io.PrintWriter;
import slabfield.field.Progress;

/** Counts solves on one line, from several threads. */
record SolveCounter(PrintWriter err) implements Progress {
    /** Counts where somebody watches, else not. */
    static Progress where(boolean watched, PrintWriter err) {
        return watched ? new SolveCounter(err) : Progress.NONE;
    }

    /** Ends the line of a counter. */
    static void end(Progress counter) {
        if (counter instanceof SolveCounter shown) {
            shown.err.print("\n");
            shown.err.flush();
        }
    }

    @Override
    public void step(int done, int total, double residual) {
        synchronized (err) {
            err.print("\rtried " + done + (total > 0 ? " of " + total : ""));
            err.flush();
        }
    }
}
