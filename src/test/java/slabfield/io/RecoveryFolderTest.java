package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import slabfield.model.Scenario;

/** A crash and a second window are told apart, and nothing that was kept is lost. */
class RecoveryFolderTest {
    private static final Scenario HOUSE = ExampleScenarios.all().get(0).scenario();

    @TempDir
    private Path folder;

    private Path file;
    private RecoveryFolder ours;

    @BeforeEach
    void begin() throws IOException {
        file = Files.writeString(folder.resolve("house.json"), "{}");
        ours = new RecoveryFolder(folder.resolve("recovery"));
    }

    /** The folder as a process sees it that has ended since: its number may belong to another by now. */
    private RecoveryFolder ofEndedProcess() {
        Owner self = Owner.thisProcess();
        return new RecoveryFolder(
                folder.resolve("recovery"),
                new Owner(self.process(), self.started().map(t -> t.minusSeconds(60))));
    }

    @Test
    void aWindowThatStillRunsLeavesNothing() throws IOException {
        ours.window().unsaved(Optional.of(file), HOUSE);
        assertThat(ours.leftovers()).isEmpty();
    }

    @Test
    void aCrashLeavesItsWorkWhole() throws IOException, ScenarioProblems {
        Instant before = Instant.now();
        ofEndedProcess().window().unsaved(Optional.of(file), HOUSE);
        List<RecoveryFolder.Leftover> left = ours.leftovers();
        assertThat(left).hasSize(1);
        assertThat(left.get(0).scenario()).isEqualTo(HOUSE);
        assertThat(left.get(0).file()).contains(file.toAbsolutePath());
        assertThat(left.get(0).time()).isBetween(before.minusMillis(1), Instant.now());
        ours.discard(left.get(0));
        assertThat(ours.leftovers()).isEmpty();
    }

    @Test
    void theLatestCrashComesFirst() throws IOException, InterruptedException {
        ofEndedProcess().window().unsaved(Optional.empty(), HOUSE);
        Thread.sleep(5);
        ofEndedProcess().window().unsaved(Optional.of(file), HOUSE);
        assertThat(ours.leftovers())
                .extracting(RecoveryFolder.Leftover::file)
                .containsExactly(Optional.of(file.toAbsolutePath()), Optional.empty());
    }

    @Test
    void whatWasSavedOrClosedIsNoLoss() throws IOException {
        RecoveryFolder.Window saved = ofEndedProcess().window(),
                closed = ofEndedProcess().window();
        saved.unsaved(Optional.of(file), HOUSE);
        saved.saved(Optional.of(file));
        closed.unsaved(Optional.of(file), HOUSE);
        closed.close();
        assertThat(ours.leftovers()).isEmpty();
        ours.window();
        assertThat(folder.resolve("recovery")).isEmptyDirectory();
    }

    @Test
    void aSecondWindowOnTheSameFileIsSeen() throws IOException {
        RecoveryFolder.Window first = ours.window(), second = ours.window();
        first.saved(Optional.of(file));
        Path link = Files.createSymbolicLink(folder.resolve("link.json"), file);
        assertThat(second.isOpenElsewhere(link)).isTrue();
        assertThat(first.isOpenElsewhere(file))
                .as("a window does not stand in its own way")
                .isFalse();
        first.close();
        assertThat(second.isOpenElsewhere(file)).isFalse();
        ofEndedProcess().window().saved(Optional.of(file));
        assertThat(second.isOpenElsewhere(file)).as("after a crash").isFalse();
    }

    @Test
    void otherFilesAndBrokenOnesAreLeftAlone() throws IOException {
        Path recovery = Files.createDirectories(folder.resolve("recovery"));
        for (String text : List.of(
                "",
                "{",
                "[]",
                "{\"slabfieldRecovery\": 1, \"process\": 1, \"started\": \"noon\"}",
                "{\"slabfieldRecovery\": 1, \"process\": 999999999, \"file\": \"\\u0000\", \"scenario\": \"x\"}"))
            Files.writeString(recovery.resolve(text.length() + ".recovery.json"), text);
        Files.writeString(recovery.resolve("letter.txt"), "dear");
        assertThat(ours.leftovers()).isEmpty();
        ours.window();
        assertThat(recovery.resolve("letter.txt")).exists();
    }

    @Test
    void keepingAHouseTakesMuchLessThanTheTwoSecondsThatMayBeLost() throws IOException {
        RecoveryFolder.Window window = ours.window();
        window.unsaved(Optional.of(file), HOUSE);
        Instant start = Instant.now();
        for (int k = 0; k < 10; k++) window.unsaved(Optional.of(file), HOUSE);
        assertThat(Duration.between(start, Instant.now()).dividedBy(10)).isLessThan(Duration.ofMillis(500));
    }
}
