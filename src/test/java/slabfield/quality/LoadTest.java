package slabfield.quality;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Heavy jobs keep within stated memory. {@code -Dslabfield.load=long} takes the heaviest; without it each is small.
 */
class LoadTest {
    private static final boolean LONG = "long".equals(System.getProperty("slabfield.load"));
    /** What the reader of scenarios reckons with, without and with an inertial part of the fill [byte]. */
    private static final int BYTES_PER_CELL = 600;

    private static final int BYTES_PER_INERTIAL_CELL = 1050;
    private static final int MEGABYTES_IN_ANY_CASE = 16;

    private static final List<String> TABLE = List.of(
            "| job | heap allowed | used at the peak | time | processor time |", "| --- | --- | --- | --- | --- |");

    private static String run(int megabytes, String job, long size) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx" + megabytes + "m",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        LoadRun.class.getName(),
                        job,
                        String.valueOf(size))
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        assertThat(process.waitFor())
                .as("%s %d in %d MiB: %s", job, size, megabytes, said)
                .isZero();
        return said;
    }

    /** Of the heap, what one survivor space takes is not there to be used. */
    private static final double USABLE = 0.96;

    private static String hall(String job, long side, int bytes) throws IOException, InterruptedException {
        return run(
                (int) Math.ceil((side * side * bytes / (double) (1 << 20) + MEGABYTES_IN_ANY_CASE) / USABLE) + 1,
                job,
                side);
    }

    /** The reader takes as many cells as fit, and no more: the heap here is just what it reckons with. */
    @Test
    void everyJobKeepsWithinItsMemory() throws IOException, InterruptedException {
        List<String> table = new ArrayList<>(TABLE);
        table.add(hall("stone-hall", LONG ? 1850 : 250, BYTES_PER_INERTIAL_CELL));
        table.add(hall("hall", Long.getLong("slabfield.hall", LONG ? 2400 : 330), BYTES_PER_CELL));
        table.add(run(512, "objects", LONG ? 2001 : 300));
        table.add(run(256, "row", LONG ? 500 : 20));
        if (LONG) Measured.write("load", table);
        assertThat(table).hasSize(6).allMatch(line -> line.startsWith("| "));
    }
}
