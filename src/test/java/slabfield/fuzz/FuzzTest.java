package slabfield.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import slabfield.quality.Measured;

/**
 * Damaged input is answered or refused in words: nothing else is thrown, nothing hangs.
 * {@code mvn -P fuzz test} feeds a million, with 512 MiB of memory.
 */
class FuzzTest {
    private static final int INPUTS = Integer.getInteger("slabfield.fuzz.inputs", 20_000);
    private static final long SEED = Long.getLong("slabfield.fuzz.seed", 9);

    @TempDir
    private Path scratch;

    @Test
    void everyInputIsAnsweredOrRefused() throws IOException, InterruptedException {
        List<Feeding.Count> counts = new ArrayList<>();
        for (Target target : Target.values())
            counts.add(
                    new Feeding(target, scratch, Path.of("target", "fuzz")).feed(SEED, INPUTS / 100 * target.share()));
        Measured.write("fuzz", table(counts));
        assertThat(counts)
                .allSatisfy(c -> assertThat(c.faults())
                        .as("faults with %s", c.target().words())
                        .isEmpty());
        assertThat(counts)
                .allSatisfy(c -> assertThat(c.taken())
                        .as("%s that were taken for good", c.target().words())
                        .isBetween(1, c.inputs() - 1));
        assertThat(counts.stream().mapToInt(Feeding.Count::inputs).sum()).isEqualTo(INPUTS);
    }

    private static List<String> table(List<Feeding.Count> counts) {
        List<String> lines = new ArrayList<>(List.of(
                "| input | fed | taken for good | refused in words | faults | slowest, processor time |",
                "| --- | --- | --- | --- | --- | --- |"));
        for (Feeding.Count c : counts)
            lines.add(String.format(
                    Locale.ROOT,
                    "| %s | %,d | %,d | %,d | %d | %.0f ms |",
                    c.target().words(),
                    c.inputs(),
                    c.taken(),
                    c.inputs() - c.taken(),
                    c.faults().size(),
                    c.slowest() / 1e6));
        lines.add("");
        lines.add(String.format(
                Locale.ROOT,
                "In all %,d inputs, seed %d, %d faults. Heap: at most %d MiB allowed, %d MiB used at the peak.",
                counts.stream().mapToInt(Feeding.Count::inputs).sum(),
                SEED,
                counts.stream().mapToInt(c -> c.faults().size()).sum(),
                Runtime.getRuntime().maxMemory() >> 20,
                peakHeap() >> 20));
        return lines;
    }

    private static long peakHeap() {
        return ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(p -> p.getType() == MemoryType.HEAP)
                .map(MemoryPoolMXBean::getPeakUsage)
                .mapToLong(u -> u.getUsed())
                .sum();
    }
}
