package slabfield.fuzz;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import slabfield.io.ScenarioProblems;

/**
 * Feeds one target, and counts. An input that takes longer than {@link #HANG} of processor time, or ends in anything else
 * than an answer or a refusal, is a fault and is kept in a file.
 */
final class Feeding {
    /** Processor time for one input, at most [ns]. */
    static final long HANG = 2_000_000_000L;

    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final int MOST_FAULTS = 20;

    /**
     * What came of it.
     *
     * @param slowest processor time of the slowest input [ns]
     */
    record Count(Target target, int inputs, int taken, long slowest, List<String> faults) {}

    private final Target target;
    private final Path scratch;
    private final Path faultsFolder;
    private final List<String> faults = new ArrayList<>();
    private volatile long begun = -1;
    private volatile byte[] current = new byte[0];
    private int taken;
    private int fed;
    private long slowest;

    Feeding(Target target, Path scratch, Path faultsFolder) {
        this.target = target;
        this.scratch = scratch;
        this.faultsFolder = faultsFolder;
    }

    /** Feeds damaged inputs, the same ones for the same seed. */
    Count feed(long seed, int inputs) throws IOException, InterruptedException {
        Mutator mutator = new Mutator(seed, target.samples(), target.dictionary());
        Thread worker = new Thread(
                () -> {
                    for (int k = 0; k < inputs && faults.size() < MOST_FAULTS; k++) one(mutator.next());
                },
                "fuzz " + target);
        worker.setDaemon(true);
        worker.start();
        while (worker.isAlive()) {
            worker.join(100);
            long since = begun, now = THREADS.getThreadCpuTime(worker.getId());
            if (since >= 0 && now - since > HANG && begun == since) {
                StringBuilder where = new StringBuilder("no answer within " + HANG / 1_000_000_000 + " s");
                for (StackTraceElement at : worker.getStackTrace())
                    where.append("\n    ").append(at);
                keep(current, where.toString());
                return new Count(target, fed, taken, HANG, faults);
            }
        }
        return new Count(target, fed, taken, slowest, faults);
    }

    private void one(byte[] input) {
        current = input;
        begun = THREADS.getCurrentThreadCpuTime();
        try {
            if (target.accepts(input, scratch)) taken++;
        } catch (ScenarioProblems refused) {
            if (refused.getMessage().isBlank()) keep(input, "refused without a word");
        } catch (Throwable fault) {
            StackTraceElement[] stack = fault.getStackTrace();
            keep(input, fault + (stack.length > 0 ? " at " + stack[0] : ""));
        }
        slowest = Math.max(slowest, THREADS.getCurrentThreadCpuTime() - begun);
        begun = -1;
        fed++;
    }

    private void keep(byte[] input, String what) {
        String file = target.name().toLowerCase(java.util.Locale.ROOT) + "-" + faults.size();
        faults.add(target.words() + ": " + what + " (input in " + file + ")");
        try {
            Files.createDirectories(faultsFolder);
            Files.write(faultsFolder.resolve(file), input);
        } catch (IOException e) {
            faults.add("the input could not be kept: " + e.getMessage());
        }
    }
}
