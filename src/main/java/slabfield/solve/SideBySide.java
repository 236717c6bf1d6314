package slabfield.solve;

import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;

/**
 * Two independent pieces of work done at the same time by the caller and a thread of the common pool. What the pieces compute
 * must not depend on who does them, so that answers are the same to the last bit on any number of processors. Work that is
 * itself one of many in a pool is not split further: the others keep the processors busy.
 */
public final class SideBySide {
    private SideBySide() {}

    /** True where a second processor is there and the caller is not a thread of a pool. */
    public static boolean helps() {
        return !ForkJoinTask.inForkJoinPool()
                && Runtime.getRuntime().availableProcessors() > 1
                && ForkJoinPool.getCommonPoolParallelism() > 0;
    }

    /**
     * Does both and returns when both are done.
     *
     * @param together false to do one after the other
     */
    public static void both(boolean together, Runnable a, Runnable b) {
        if (!together) {
            a.run();
            b.run();
            return;
        }
        ForkJoinTask<?> other = ForkJoinTask.adapt(b).fork();
        try {
            a.run();
        } finally {
            other.quietlyJoin();
        }
        other.join();
    }

    /** A loop over a range in two halves. */
    public interface Stretch {
        void run(int from, int to);
    }

    /** Runs over 0 .. count - 1, in two halves at the same time where that is more than {@code least}. */
    public static void halves(int count, int least, Stretch work) {
        if (count <= least || !helps()) {
            work.run(0, count);
            return;
        }
        both(true, () -> work.run(0, count / 2), () -> work.run(count / 2, count));
    }
}
