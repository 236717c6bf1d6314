package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import slabfield.quality.Measured;

/**
 * A process that saves is killed at a random moment, over and over, while others keep the processors and the disk busy.
 * What is tried is a killed program; that a power cut loses nothing either rests on the order of the calls to the disk.
 * {@code -Dslabfield.kills=1000} makes the run long.
 */
class SavesSurviveKillTest {
    private static final int KILLS = Integer.getInteger("slabfield.kills", 15);
    /** Enough saves to be going on with until the kill. */
    private static final int SAVES = 1_000_000;

    private static final int LONGEST_LIFE = 60;

    @TempDir
    private Path folder;

    private final Random random = new Random(20);
    private int saves;
    private int fellIntoASave;

    @Test
    void theOldOrTheNewFileIsThereWhole() throws IOException, InterruptedException {
        AtomicBoolean stop = new AtomicBoolean();
        List<Thread> load = List.of(new Thread(() -> busy(stop)), new Thread(() -> writing(stop)));
        load.forEach(Thread::start);
        try {
            int next = 1;
            for (int kill = 0; kill < KILLS; kill++) next = killOnce(next);
        } finally {
            stop.set(true);
            for (Thread each : load) each.join();
        }
        Measured.write(
                "kills",
                List.of(String.format(
                        Locale.ROOT,
                        "%,d kills through %,d saves under load; %,d of them fell into a save. Every time the old or the new file was there, whole.",
                        KILLS,
                        saves,
                        fellIntoASave)));
        assertThat(saves).as("saves done under the kills").isGreaterThan(KILLS);
        assertThat(fellIntoASave).as("kills that left a part of a new file").isPositive();
    }

    /** Kills one process; returns the number of the version after the one that is now in place. */
    private int killOnce(int first) throws IOException, InterruptedException {
        Path file = folder.resolve("house.json"), said = folder.resolve("said");
        Process saver = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx64m",
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        SaveLoop.class.getName(),
                        file.toString(),
                        String.valueOf(first),
                        String.valueOf(SAVES))
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        while (Files.size(said) == 0 && saver.isAlive()) Thread.sleep(1);
        Thread.sleep(random.nextInt(LONGEST_LIFE));
        saver.destroyForcibly();
        assertThat(saver.waitFor(20, TimeUnit.SECONDS)).isTrue();
        List<String> lines = Files.readAllLines(said);
        assertThat(lines).as("what the process said").isNotEmpty().allMatch(line -> line.matches("\\d+"));
        int done = Integer.parseInt(lines.get(lines.size() - 1));
        saves += done - first + 1;
        int there = SaveLoop.version(file).orElseThrow(() -> new AssertionError("the file is not whole"));
        assertThat(there).as("version after a kill").isBetween(done, done + 1);
        checkVersions(file, there);
        countAndClearParts();
        return there + 1;
    }

    private static void checkVersions(Path file, int current) throws IOException {
        List<Integer> kept = new ArrayList<>();
        for (Path version : SafeFile.versions(file))
            kept.add(SaveLoop.version(version).orElseThrow(() -> new AssertionError(version + " is not whole")));
        assertThat(kept)
                .as("earlier versions")
                .isSortedAccordingTo((a, b) -> b - a)
                .allMatch(v -> v <= current);
    }

    private void countAndClearParts() throws IOException {
        List<Path> parts;
        try (var files = Files.list(folder)) {
            parts = files.filter(f -> f.toString().endsWith(".part")).toList();
        }
        if (!parts.isEmpty()) fellIntoASave++;
        for (Path part : parts) Files.delete(part);
    }

    private static void busy(AtomicBoolean stop) {
        Random random = new Random(1);
        while (!stop.get()) random.nextDouble();
    }

    private void writing(AtomicBoolean stop) {
        byte[] block = new byte[1 << 20];
        try {
            while (!stop.get()) {
                Files.write(folder.resolve("load"), block);
                Thread.sleep(200);
            }
        } catch (IOException | InterruptedException e) {
            throw new AssertionError(e);
        }
    }
}
