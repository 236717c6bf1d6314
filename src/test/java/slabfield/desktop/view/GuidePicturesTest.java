package slabfield.desktop.view;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.control.ToggleButton;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import slabfield.desktop.viewmodel.Edit;
import slabfield.desktop.viewmodel.Theme;
import slabfield.desktop.viewmodel.guide.Guide.Mode;
import slabfield.desktop.viewmodel.lesson.Cause;
import slabfield.desktop.viewmodel.lesson.Change;
import slabfield.desktop.viewmodel.see.Sight.Flow;
import slabfield.desktop.viewmodel.see.Sight.Show;
import slabfield.figure.Profile;
import slabfield.io.ExampleScenarios;
import slabfield.model.Point;
import slabfield.model.Seal;
import slabfield.model.SealState;

/** Makes the pictures of layers, comparison, readings and lessons again; only where {@code slabfield.pictures} asks for it. */
@EnabledIfSystemProperty(named = "slabfield.pictures", matches = "true")
class GuidePicturesTest {
    private static final Path FOLDER = Path.of("docs", "images", "guide");

    /** Long enough for all pictures of a view to be painted, one after the other [ms]. */
    private static final long PAINTED = 2500;

    private Stand stand;
    private String end;

    @Test
    void everyViewAtBothSizesLightAndDark() {
        Stand.needsScreen();
        for (int[] size : new int[][] {{1280, 800}, {1920, 1080}})
            for (Theme theme : List.of(Theme.LIGHT, Theme.DARK)) {
                end = "-" + size[0] + "-" + theme.name().toLowerCase(Locale.ROOT) + ".png";
                stand = Stand.open(
                        ExampleScenarios.all().stream()
                                .filter(e -> e.file().equals("stone-footing.json"))
                                .findFirst()
                                .orElseThrow()
                                .scenario(),
                        size[0],
                        size[1]);
                Stand.run(() -> stand.bench.theme().set(theme));
                stand.settle();
                stand.awaitMap();
                layers();
                comparison();
                readings();
                lessons();
                stand.close();
            }
    }

    private void layers() {
        Stand.run(() -> stand.guide.sight().show().set(Show.ORIGIN));
        Stand.run(() -> stand.guide.sight().flow().set(Flow.PATHS));
        stand.await(
                "the air is followed", () -> stand.guide.sight().paths().get().isPresent());
        Stand.pause(2 * PAINTED);
        shot("layer-origin");
        Stand.run(() -> {
            stand.guide.sight().show().set(Show.PRESSURE);
            stand.guide.sight().flow().set(Flow.ARROWS);
            stand.guide.sight().doubts().set(true);
            stand.guide.sight().pin(new Point(9, 2));
            stand.guide.sight().cut().set(Optional.of(new Profile(new Point(1, 6), new Point(13, 3))));
        });
        shot("layer-arrows");
        Stand.run(() -> {
            stand.guide.sight().flow().set(Flow.NONE);
            stand.guide.sight().doubts().set(false);
            stand.guide.sight().show().set(Show.MEASURED);
        });
        shot("layer-measured");
        Stand.run(() -> stand.guide.sight().show().set(Show.PRESSURE));
    }

    private void comparison() {
        Stand.run(() -> {
            stand.guide.variants().branch("joint sealed");
            stand.bench.document().edit(Edit.of("seal", s -> s.withSeal("perimeter joint", Seal.of(SealState.SEALED))));
            stand.guide.mode().set(Mode.COMPARE);
        });
        stand.await("both are solved", () -> stand.guide.options().pair().get().isPresent());
        shot("compare");
        Stand.run(() -> stand.guide.options().mode().set(slabfield.desktop.viewmodel.compare.Options.Mode.CHANGE));
        shot("compare-change");
    }

    private void readings() {
        Stand.run(() -> {
            stand.guide.mode().set(Mode.READINGS);
            stand.guide.entry().go(6);
            for (char c : "0.020".toCharArray()) stand.guide.entry().type(c);
        });
        shot("readings");
    }

    private void lessons() {
        Stand.run(() -> stand.guide.mode().set(Mode.LEARN));
        stand.await(
                "the houses are solved",
                () -> stand.guide.course().solved().get().isPresent());
        shot("lesson-predict");
        Stand.run(() -> {
            stand.guide
                    .course()
                    .lesson()
                    .get()
                    .questions()
                    .forEach(q -> stand.guide.course().answer(q, Change.MUCH_MORE));
            stand.guide.course().reveal();
            stand.bench.look().presentation().set(true);
        });
        shot("lesson-revealed-large");
        Stand.run(() -> stand.bench.look().presentation().set(false));
        Stand.run(() -> stand.guide.practice().next());
        stand.await("a case is made", () -> stand.guide.practice().now().get().isPresent());
        Stand.run(() -> stand.stage().getScene().getRoot().lookupAll(".contents-entry").stream()
                .map(ToggleButton.class::cast)
                .filter(b -> b.getText().startsWith("Practice"))
                .forEach(ToggleButton::fire));
        Stand.run(() -> stand.guide.practice().answer(Cause.LEAK));
        shot("practice");
    }

    private void shot(String name) {
        stand.settle();
        Stand.pause(PAINTED);
        stand.pulses(10);
        stand.save(FOLDER.resolve(name + end), Optional.empty());
    }
}
