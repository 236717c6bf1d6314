package slabfield.desktop.viewmodel;

import slabfield.field.Progress;

/** Runs long work away from the screen and reports on the thread of the screen. */
public interface TaskRunner {
    /** What is to be done. */
    interface Work<T> {
        T run(Progress progress) throws Exception;
    }

    /** What becomes of it; called on the thread of the screen. */
    interface Outcome<T> {
        void done(T value);

        void failed(Throwable reason);

        /** A part is done, out of a total. */
        default void step(int done, int total) {}
    }

    /** Work that has been handed over. */
    interface Task {
        /** Asks it to stop soon. Its outcome may still be reported: who cares compares revisions. */
        void cancel();
    }

    /** Hands work over. Tasks of one runner run one after the other; one cancelled before its turn is left out. */
    <T> Task run(Work<T> work, Outcome<T> outcome);
}
