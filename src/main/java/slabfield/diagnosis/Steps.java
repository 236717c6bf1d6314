package slabfield.diagnosis;

import java.util.concurrent.CancellationException;
import slabfield.field.Progress;

/** How far a diagnosis is: one count over looks and fits, a fit counting as many looks. Told from several threads. */
final class Steps {
    /** Looks that take about as long as one fit. */
    private static final int FIT = 10;

    private final Progress progress;
    private final int total;
    private final int fits;
    private int done;
    private int begun;

    /**
     * Nothing is done yet.
     *
     * @param looks number of explanations to look at without a fit
     * @param fits number of fits, the house as drawn among them
     */
    Steps(Progress progress, int looks, int fits) {
        this.progress = progress;
        this.fits = fits;
        total = looks + FIT * fits;
    }

    void looked() {
        told(1);
    }

    void fitted() {
        told(FIT);
    }

    /**
     * A fit begins; a watch is told which of how many.
     *
     * @throws CancellationException where somebody asked to stop
     */
    synchronized void fitting(Explanation e) {
        check();
        begun++;
        if (progress instanceof Diagnoser.Watch watch) watch.fitting(begun, fits, e);
    }

    private synchronized void told(int more) {
        done += more;
        progress.step(done, total, Double.NaN);
    }

    /** @throws CancellationException where somebody asked to stop */
    void check() {
        if (progress.isCancelled()) throw new CancellationException();
    }

    /** Passes on a wish to stop, but no steps. */
    Progress stopOnly() {
        return progress.stopOnly();
    }
}
