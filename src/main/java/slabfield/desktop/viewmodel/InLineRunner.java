package slabfield.desktop.viewmodel;

import slabfield.field.Progress;

/** Does the work at once, on the caller's thread. */
public final class InLineRunner implements TaskRunner {
    @Override
    public <T> Task run(Work<T> work, Outcome<T> outcome) {
        Progress progress = new Progress() {
            @Override
            public void step(int done, int total, double residual) {
                outcome.step(done, total);
            }
        };
        T value;
        try {
            value = work.run(progress);
        } catch (Exception reason) {
            outcome.failed(reason);
            return () -> {};
        }
        outcome.done(value);
        return () -> {};
    }
}
