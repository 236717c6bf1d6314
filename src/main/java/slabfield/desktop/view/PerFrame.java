package slabfield.desktop.view;

import javafx.animation.AnimationTimer;

/** Does the latest of many things at the beginning of the next frame, and forgets those before: a mouse can move ten times between two frames. */
final class PerFrame {
    private Runnable latest;

    private final AnimationTimer timer = new AnimationTimer() {
        @Override
        public void handle(long now) {
            if (latest == null) stop();
            flush();
        }
    };

    /** Does something with the next frame, in place of what waits. */
    void next(Runnable work) {
        if (latest == null) timer.start();
        latest = work;
    }

    /** Does what waits at once. */
    void flush() {
        Runnable work = latest;
        latest = null;
        if (work != null) work.run();
    }
}
