package slabfield.io;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * A process, told apart from a later one that was given the same number.
 *
 * @param process its number
 * @param started when it began; empty where the system does not say
 */
record Owner(long process, Optional<Instant> started) {
    /** Systems count a start from the machine's own, and set that right by a second now and then. */
    private static final Duration CLOCK_SETTING = Duration.ofSeconds(2);

    static Owner thisProcess() {
        ProcessHandle self = ProcessHandle.current();
        return new Owner(self.pid(), self.info().startInstant());
    }

    /** True while it runs; where one of the two starts is not known the number alone decides. */
    boolean isRunning() {
        return ProcessHandle.of(process)
                .filter(ProcessHandle::isAlive)
                .filter(this::isSame)
                .isPresent();
    }

    private boolean isSame(ProcessHandle running) {
        Optional<Instant> begun = running.info().startInstant();
        if (started.isEmpty() || begun.isEmpty()) return true;
        return Duration.between(started.get(), begun.get()).abs().compareTo(CLOCK_SETTING) <= 0;
    }
}
