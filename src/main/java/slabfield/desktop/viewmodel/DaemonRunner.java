package slabfield.desktop.viewmodel;

import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicBoolean;
import slabfield.field.Progress;

/** Does the work on one thread that does not keep the program alive. */
public final class DaemonRunner implements TaskRunner {
    private final ExecutorService thread;
    private final Executor screen;

    /**
     * @param name of the thread
     * @param screen runs what it is given on the thread of the screen
     */
    public DaemonRunner(String name, Executor screen) {
        this.screen = screen;
        this.thread = Executors.newSingleThreadExecutor(work -> {
            Thread worker = new Thread(work, name);
            worker.setDaemon(true);
            return worker;
        });
    }

    @Override
    public <T> Task run(Work<T> work, Outcome<T> outcome) {
        AtomicBoolean cancelled = new AtomicBoolean();
        thread.execute(() -> {
            if (!cancelled.get()) perform(work, outcome, cancelled);
        });
        return () -> cancelled.set(true);
    }

    private <T> void perform(Work<T> work, Outcome<T> outcome, AtomicBoolean cancelled) {
        Progress progress = new Progress() {
            @Override
            public boolean isCancelled() {
                return cancelled.get();
            }

            @Override
            public void step(int done, int total, double residual) {
                screen.execute(() -> outcome.step(done, total));
            }
        };
        try {
            T value = work.run(progress);
            screen.execute(() -> outcome.done(value));
        } catch (Exception | StackOverflowError | OutOfMemoryError reason) {
            screen.execute(() -> outcome.failed(reason));
        }
    }
}
