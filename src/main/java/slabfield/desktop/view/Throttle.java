package slabfield.desktop.view;

import javafx.animation.PauseTransition;
import javafx.util.Duration;

/** Does something again and again, but never sooner than some time after it was done last; the last wish is never lost. */
final class Throttle {
    private final PauseTransition pause;
    private final Runnable work;
    private boolean resting;
    private boolean asked;

    Throttle(Duration least, Runnable work) {
        this.pause = new PauseTransition(least);
        this.work = work;
        pause.setOnFinished(e -> {
            resting = false;
            if (asked) now();
        });
    }

    /** Does it now, or when the time has come. */
    void ask() {
        asked = true;
        if (!resting) now();
    }

    /** Does it without waiting. */
    void now() {
        asked = false;
        resting = true;
        work.run();
        pause.playFromStart();
    }
}
