package slabfield.desktop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.control.TabPane;
import javafx.scene.control.TableRow;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import slabfield.desktop.drawing.Item;
import slabfield.desktop.drawing.Kind;
import slabfield.desktop.viewmodel.Theme;
import slabfield.desktop.viewmodel.Tool;
import slabfield.io.ExampleScenarios;
import slabfield.model.Point;
import slabfield.model.Scenario;

/** Makes the pictures of the window in docs/images again; runs only where {@code slabfield.pictures} asks for it. */
@EnabledIfSystemProperty(named = "slabfield.pictures", matches = "true")
class PicturesTest {
    private static final Path FOLDER = Path.of("docs", "images", "window");
    private static final long MOST_BYTES = 5_000_000;
    private static final double COARSE = 0.25;

    /** How long work may take [s], and the picture of a measure [ms]. */
    private static final long LONG = 240, PREVIEW = 2500;

    private static Scenario example(String file) {
        return ExampleScenarios.all().stream()
                .filter(e -> e.file().equals(file))
                .findFirst()
                .orElseThrow()
                .scenario();
    }

    @Test
    void everyViewAtBothSizesLightAndDark() throws IOException {
        Stand.needsScreen();
        for (int[] size : new int[][] {{1280, 800}, {1920, 1080}})
            for (Theme theme : Theme.values()) {
                if (theme == Theme.CONTRAST && size[0] > 1280) continue;
                views(size[0], size[1], theme);
            }
        try (Stream<Path> files = Files.list(FOLDER)) {
            long bytes = files.mapToLong(f -> f.toFile().length()).sum();
            assertThat(bytes).as("size of all pictures").isBetween(100_000L, MOST_BYTES);
        }
    }

    private static void views(int width, int height, Theme theme) {
        String end = "-" + width + "-" + theme.name().toLowerCase(java.util.Locale.ROOT) + ".png";
        boolean few = theme == Theme.CONTRAST;
        try (Stand stand = Stand.open(example("stone-footing.json"), width, height)) {
            Stand.run(() -> stand.bench.theme().set(theme));
            stand.settle();
            stand.awaitMap();
            Stand.run(() -> stand.bench
                    .drawing()
                    .selection()
                    .set(java.util.List.of(Item.of(
                            Kind.SLAB,
                            stand.bench
                                    .document()
                                    .scenario()
                                    .get()
                                    .slabs()
                                    .get(0)
                                    .id()))));
            shot(stand, "drawing" + end);
            if (few) return;
            TabPane tabs = stand.node(".tab-pane", TabPane.class);
            for (int i = 0; i < tabs.getTabs().size(); i++) {
                int tab = i;
                Stand.run(() -> {
                    stand.bench.drawing().selection().clear();
                    tabs.getSelectionModel().select(tab);
                });
                String name = tabs.getTabs()
                        .get(i)
                        .getText()
                        .replaceAll(" \\(.*", "")
                        .toLowerCase(java.util.Locale.ROOT)
                        .replace(' ', '-');
                shot(stand, "tab-" + name + end, Optional.of(tabs));
            }
            Stand.run(() -> stand.bench.drawing().tool().set(Tool.BARRIER));
            Point a = new Point(3, 1), b = new Point(3, 4.1);
            stand.click(a.x(), a.y());
            stand.moveTo(b);
            shot(stand, "sketch" + end);
            Stand.run(stand.bench.drawing()::escape);
            Stand.run(stand.bench.drawing()::escape);
            Stand.run(stand.view()::welcome);
            shot(stand, "welcome" + end);
        }
        found(width, height, theme, end);
    }

    /** What is found by long work, on wide cells, and the map alone. */
    private static void found(int width, int height, Theme theme, String end) {
        try (Stand stand = Stand.open(example("stone-footing.json").withCellSize(COARSE), width, height)) {
            Stand.run(() -> stand.bench.theme().set(theme));
            stand.settle();
            stand.awaitMap();
            stand.shortcut(KeyCode.L);
            stand.await(
                    "measures are tried",
                    () -> !stand.bench.advising().suggestions().isEmpty(),
                    LONG);
            stand.pulses(6);
            stand.hover(stand.shown(".table-row-cell", TableRow.class).get(1));
            stand.await(
                    "the map shows it",
                    () -> stand.guide.previews().shown().get().isPresent(),
                    LONG);
            Stand.pause(PREVIEW);
            shot(stand, "measures" + end);
            Stand.run(() -> stand.guide.previews().point(Optional.empty()));
            stand.shortcut(KeyCode.M);
            stand.await(
                    "the system is sized", () -> !stand.bench.sizing().parts().isEmpty(), LONG);
            shot(stand, "system" + end);
            stand.key(KeyCode.F9);
            shot(stand, "map-alone" + end);
        }
    }

    private static void shot(Stand stand, String name) {
        shot(stand, name, Optional.empty());
    }

    private static void shot(Stand stand, String name, Optional<Node> part) {
        stand.settle();
        stand.pulses(12);
        stand.save(FOLDER.resolve(name), part);
    }
}
