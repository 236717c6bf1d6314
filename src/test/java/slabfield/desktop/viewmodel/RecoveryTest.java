package slabfield.desktop.viewmodel;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import slabfield.io.RecoveryFolder;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.TestHole;

class RecoveryTest {
    @TempDir
    Path folder;

    private Recovery recovery() {
        return new Recovery(new RecoveryFolder(folder.resolve("recovery")), new InLineRunner(), 0);
    }

    private static void addHole(Workbench bench, double x) {
        bench.document().edit(Edit.of("draw", s -> s.withTestHoles(List.of(new TestHole("far", new Point(x, 1), "")))));
    }

    private List<Path> kept() throws IOException {
        if (!Files.isDirectory(folder.resolve("recovery"))) return List.of();
        try (Stream<Path> files = Files.walk(folder.resolve("recovery"))) {
            return files.filter(f -> f.toString().endsWith(".json")).toList();
        }
    }

    @Test
    void whatIsNotSavedIsKeptUntilItIsSaved() throws IOException {
        Workbench bench = Bench.workbench(Bench.house());
        bench.keepIn(recovery());
        assertThat(kept()).isEmpty();
        addHole(bench, 1);
        assertThat(kept()).hasSize(1);
        assertThat(Files.readString(kept().get(0))).contains("far");
        assertThat(bench.save(folder.resolve("house.json"))).isTrue();
        assertThat(kept()).noneMatch(f -> {
            try {
                return Files.readString(f).contains("far");
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        });
    }

    @Test
    void aSecondWindowIsNotTakenForACrash() {
        Workbench first = Bench.workbench(Bench.house());
        first.keepIn(recovery());
        addHole(first, 1);
        assertThat(recovery().leftovers()).isEmpty();
    }

    @Test
    void anUnfinishedDrawingComesBackAsAChangeThatIsNotSaved() {
        Workbench lost = Bench.workbench(Bench.house());
        lost.solving().start();
        addHole(lost, 99);
        assertThat(lost.solving().problems().get()).isNotEmpty();
        Scenario unfinished = lost.document().scenario().get();
        Workbench bench = Bench.workbench(Bench.house());
        bench.restore(new Recovery.Left(
                java.util.Optional.empty(),
                java.time.Instant.EPOCH,
                new RecoveryFolder.Leftover(
                        folder.resolve("left.json"),
                        java.util.Optional.empty(),
                        java.time.Instant.EPOCH,
                        slabfield.io.ScenarioWriter.toJson(unfinished))));
        assertThat(bench.document().scenario().get().testHoles()).isEqualTo(unfinished.testHoles());
        assertThat(bench.document().dirty().get()).isTrue();
    }

    @Test
    void aDrawingWithAMistakeIsSavedAndOpenedAgain() {
        Workbench bench = Bench.workbench(Bench.house());
        addHole(bench, 99);
        Path file = folder.resolve("unfinished.json");
        assertThat(bench.save(file)).isTrue();
        Workbench later = Bench.workbench(Bench.house());
        later.open(file);
        assertThat(later.trouble().get()).isEmpty();
        assertThat(later.solving().problems().get())
                .singleElement()
                .satisfies(p -> assertThat(p.message()).contains("far"));
    }

    @Test
    void thePictureGoesWithTheScenario() throws IOException {
        Path picture = folder.resolve("scan.png");
        ImageIO.write(new BufferedImage(240, 100, BufferedImage.TYPE_INT_RGB), "png", picture.toFile());
        Workbench bench = Bench.workbench(Bench.house());
        bench.pictures().choose(picture);
        assertThat(bench.document().scenario().get().plan().underlay())
                .get()
                .satisfies(u -> assertThat(u.pixel()).isEqualTo(0.05));
        Path house = Files.createDirectory(folder.resolve("job")).resolve("house.json");
        bench.save(house);
        assertThat(house.resolveSibling("scan.png")).hasSameBinaryContentAs(picture);
        bench.pictures().choose(folder.resolve("house.txt"));
        assertThat(bench.trouble().get())
                .get()
                .satisfies(t -> assertThat(t.text()).contains("no picture"));
    }

    @Test
    void largeTargetsAreKeptFromRunToRunAndLeaveTheTypeAsItIs() {
        Bench.Kept memory = new Bench.Kept();
        Workbench bench = Bench.workbench(Bench.house(), memory);
        double type = bench.look().style().get().fontScale();
        assertThat(2 * bench.look().reach(false)).isLessThan(MapLook.TARGET);
        assertThat(2 * bench.look().reach(true)).isEqualTo(MapLook.TARGET);
        bench.look().largeTargets().set(true);
        Workbench again = Bench.workbench(Bench.house(), memory);
        assertThat(again.look().largeTargets().get()).isTrue();
        assertThat(2 * again.look().reach(false)).isEqualTo(MapLook.TARGET);
        assertThat(again.look().style().get().fontScale()).isEqualTo(type);
        again.look().largeTargets().set(false);
        assertThat(Bench.workbench(Bench.house(), memory).look().largeTargets().get())
                .isFalse();
    }

    @Test
    void theThemeIsKeptFromRunToRun() {
        Bench.Kept memory = new Bench.Kept();
        Workbench bench = Bench.workbench(Bench.house(), memory);
        bench.theme().set(Theme.DARK);
        assertThat(Bench.workbench(Bench.house(), memory).theme().get()).isEqualTo(Theme.DARK);
    }
}
