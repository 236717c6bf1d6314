package slabfield.solve;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReferenceArray;
import java.util.concurrent.locks.LockSupport;

/**
 * A small team of threads that runs one task together, step by step. Whoever waits spins briefly and then sleeps, so
 * that steps of microseconds cost little and a busy machine is not held up. The caller of {@link #run} is worker 0.
 */
public final class Workers implements AutoCloseable {
    /** One caller's work; {@code worker} counts from 0. */
    public interface Task {
        void run(int worker);
    }

    private static final int SPINS = 2000;

    private final int count;
    private final AtomicInteger arrived = new AtomicInteger();
    private final AtomicReferenceArray<Thread> asleep;
    private volatile int generation;
    private volatile boolean closed;
    private volatile Throwable failure;
    private Task task;

    /** @param count number of threads, the caller's included, at least 1 */
    public Workers(int count) {
        if (count < 1) {
            throw new IllegalArgumentException("a team needs at least 1 worker, not " + count);
        }
        this.count = count;
        asleep = new AtomicReferenceArray<>(count);
        for (int w = 1; w < count; w++) {
            int me = w;
            var thread = new Thread(() -> serve(me), "solver-" + w);
            thread.setDaemon(true);
            thread.start();
        }
    }

    public int count() {
        return count;
    }

    /** Has every worker do the task and returns when all are done. */
    public void run(Task work) {
        if (closed) {
            throw new IllegalStateException("the team has been dismissed");
        }
        task = work;
        await(0);
        attempt(0);
        await(0);
        Throwable thrown = failure;
        if (thrown != null) {
            failure = null;
            throw new IllegalStateException("a worker failed", thrown);
        }
    }

    private void serve(int me) {
        await(me);
        while (!closed) {
            attempt(me);
            await(me);
            await(me);
        }
    }

    private void attempt(int me) {
        try {
            task.run(me);
        } catch (RuntimeException | Error thrown) {
            failure = thrown;
            if (count > 1) {
                // The others would wait for ever at the next step, so the team cannot be used again.
                closed = true;
                generation++;
                wake();
            }
        }
    }

    /** Waits until every worker has come here. */
    void await(int me) {
        if (count == 1 || failure != null) {
            return;
        }
        int seen = generation;
        if (arrived.incrementAndGet() == count) {
            arrived.set(0);
            generation = seen + 1;
            wake();
            return;
        }
        for (int spin = 0; spin < SPINS && generation == seen; spin++) {
            Thread.onSpinWait();
        }
        while (generation == seen) {
            asleep.set(me, Thread.currentThread());
            if (generation == seen) {
                LockSupport.park(this);
            }
            asleep.set(me, null);
        }
    }

    private void wake() {
        for (int w = 0; w < count; w++) {
            Thread thread = asleep.get(w);
            if (thread != null) {
                LockSupport.unpark(thread);
            }
        }
    }

    /** Dismisses the team. */
    @Override
    public void close() {
        if (!closed) {
            closed = true;
            await(0);
        }
    }
}
