package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Saving on a disk that is full, that can only be read, or that belongs to somebody else. Small disks are made in a
 * mount namespace of the test's own; where the system does not allow that, the test is skipped and says so.
 */
class DiskTroubleTest {
    private static final String DISK = "mount -t tmpfs -o size=%s tmpfs $D || { echo NO DISK; exit; }; ";

    @TempDir
    private Path folder;

    /** Lines that a shell script in a new mount namespace prints. */
    private List<String> ran(String script) throws IOException, InterruptedException {
        Process process = start(script);
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assumeTrue(!said.contains("NO DISK"), "this system lets the test mount no small disk");
        return said.lines().toList();
    }

    private Process start(String script) throws IOException, InterruptedException {
        try {
            Process probe = new ProcessBuilder("unshare", "--map-root-user", "--mount", "true").start();
            assumeTrue(
                    probe.waitFor(20, TimeUnit.SECONDS) && probe.exitValue() == 0,
                    "this system allows no mount namespace");
        } catch (IOException noSuchProgram) {
            assumeTrue(false, "there is no unshare on this system");
        }
        ProcessBuilder builder = new ProcessBuilder("unshare", "--map-root-user", "--mount", "sh", "-c", script)
                .redirectErrorStream(true);
        builder.environment().put("D", folder.toString());
        builder.environment()
                .put(
                        "SAVE",
                        String.join(
                                " ",
                                Path.of(System.getProperty("java.home"), "bin", "java")
                                        .toString(),
                                "-Xmx64m",
                                "-cp",
                                System.getProperty("java.class.path"),
                                SaveLoop.class.getName()));
        return builder.start();
    }

    @Test
    void onAFullDiskTheOldFileStaysWholeAndTheReasonIsSaid() throws IOException, InterruptedException {
        List<String> lines = ran(
                DISK.formatted("600k") + "$SAVE $D/house.json 1 60; ls -A $D; cp $D/house.json " + "$D/../" + kept());
        long saved = lines.stream().filter(l -> l.matches("\\d+")).count();
        List<String> refused = lines.stream().filter(l -> l.startsWith("! ")).toList();
        assertThat(saved).as("saves that fitted").isPositive();
        assertThat(refused)
                .as("saves that did not fit")
                .isNotEmpty()
                .allMatch(l -> l.endsWith("house.json: the disk is full; free some room or save to another place."));
        int last = lines.stream()
                .filter(l -> l.matches("\\d+"))
                .mapToInt(Integer::parseInt)
                .max()
                .orElseThrow();
        assertThat(SaveLoop.version(folder.resolveSibling(kept()))).contains(last);
        assertThat(lines).as("parts left behind").noneMatch(l -> l.endsWith(".part"));
    }

    /** The disk is gone with its namespace; the file that stood on it is looked at afterwards. */
    private String kept() {
        return folder.getFileName() + ".kept";
    }

    @Test
    void onADiskThatCanOnlyBeReadTheReasonIsSaid() throws IOException, InterruptedException {
        List<String> lines =
                ran(DISK.formatted("4m") + "$SAVE $D/house.json 1 1; mount -o remount,ro $D || { echo NO DISK; exit; };"
                        + " $SAVE $D/house.json 2 1; $SAVE $D/other.json 3 1; cp $D/house.json $D/../" + kept());
        assertThat(lines.get(0)).isEqualTo("1");
        assertThat(lines.subList(1, 3))
                .allMatch(l -> l.endsWith(".json: the disk can only be read; save to another place."));
        assertThat(SaveLoop.version(folder.resolveSibling(kept()))).contains(1);
    }

    @Test
    void inAFolderOfSomebodyElseTheReasonIsSaid() throws IOException, InterruptedException {
        List<String> lines = ran(DISK.formatted("4m") + "$SAVE $D/house.json 1 1; chmod 555 $D;"
                + " setpriv --bounding-set=-all --inh-caps=-all $SAVE $D/house.json 2 1; cp $D/house.json $D/../"
                + kept());
        assumeTrue(
                lines.size() == 2 && lines.get(1).startsWith("! "),
                "the rights of the test's user cannot be dropped here: " + lines);
        assertThat(lines.get(1)).endsWith("house.json: you may not write there; choose another folder.");
        assertThat(SaveLoop.version(folder.resolveSibling(kept()))).contains(1);
    }
}
