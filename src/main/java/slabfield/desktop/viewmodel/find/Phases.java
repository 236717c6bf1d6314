package slabfield.desktop.viewmodel.find;

import java.util.concurrent.atomic.AtomicInteger;
import slabfield.field.Progress;

/** One count over the parts of a long work, each of which counts from the start or does not know its end. */
final class Phases {
    private static final int TOTAL = 1000;
    /** Steps after which a part of unknown length is taken to be half done. */
    private static final double HALF = 8;

    private Phases() {}

    /**
     * What a part is to tell of its steps.
     *
     * @param from part of the whole that is done before it, 0 to 1
     * @param to part of the whole that is done after it
     */
    static Progress part(Progress whole, double from, double to) {
        AtomicInteger last = new AtomicInteger();
        return new Progress() {
            @Override
            public boolean isCancelled() {
                return whole.isCancelled();
            }

            @Override
            public void step(int done, int total, double residual) {
                double part = total > 0 ? Math.min(1, (double) done / total) : done / (done + HALF);
                int now = (int) Math.round(TOTAL * (from + part * (to - from)));
                if (last.getAndAccumulate(now, Math::max) < now) whole.step(now, TOTAL, residual);
            }
        };
    }
}
