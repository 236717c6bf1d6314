package slabfield.desktop.view;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import slabfield.desktop.viewmodel.Theme;
import slabfield.desktop.viewmodel.find.Job;
import slabfield.desktop.viewmodel.find.Page;
import slabfield.desktop.viewmodel.guide.Guide.Mode;
import slabfield.desktop.viewmodel.see.Sight.Show;
import slabfield.io.ExampleScenarios;

/**
 * Makes the pictures of what the readings tell again; only where {@code slabfield.pictures} asks for it, and of one page alone
 * where {@code slabfield.pictures.page} names it.
 */
@EnabledIfSystemProperty(named = "slabfield.pictures", matches = "true")
class FindingsPicturesTest {
    private static final Path FOLDER = Path.of("docs", "images", "findings");
    private static final String HOUSE = "stone-footing.json";

    /** Long enough for all pictures of a page to be painted, one after the other [ms]. */
    private static final long PAINTED = 1500;

    private static final double COARSE = 0.25;
    private static final String PAGE = System.getProperty("slabfield.pictures.page", "");

    private Stand stand;

    @Test
    void everyPageAtBothSizesLightAndDark() {
        Stand.needsScreen();
        stand = Stand.open(
                ExampleScenarios.all().stream()
                        .filter(e -> e.file().equals(HOUSE))
                        .findFirst()
                        .orElseThrow()
                        .scenario()
                        .withCellSize(COARSE),
                1280,
                800);
        stand.settle();
        stand.awaitMap();
        Stand.run(() -> stand.guide.mode().set(Mode.FINDINGS));
        for (Page page : asked()) for (Job job : page.jobs()) find(page, job);
        for (int[] size : new int[][] {{1280, 800}, {1920, 1080}})
            for (Theme theme : List.of(Theme.LIGHT, Theme.DARK)) {
                Stand.run(() -> {
                    stand.stage().setWidth(size[0]);
                    stand.stage().setHeight(size[1]);
                    stand.bench.theme().set(theme);
                });
                pages("-" + size[0] + "-" + theme.name().toLowerCase(Locale.ROOT) + ".png");
            }
        Stand.run(() -> {
            stand.stage().setWidth(1280);
            stand.stage().setHeight(800);
            stand.bench.theme().set(Theme.LIGHT);
        });
        if (PAGE.isEmpty() || PAGE.equals("Placement")) large();
        if (PAGE.isEmpty() || PAGE.equals("Measures")) outOfDate();
        stand.close();
    }

    private List<Page> asked() {
        return stand.guide.findings().pages().stream()
                .filter(p -> PAGE.isEmpty() || PAGE.equals(p.title()))
                .toList();
    }

    private Page page(String title) {
        return stand.guide.findings().pages().stream()
                .filter(p -> p.title().equals(title))
                .findFirst()
                .orElseThrow();
    }

    private void find(Page page, Job job) {
        Stand.run(() -> {
            stand.guide.findings().page().set(page);
            job.start().run();
        });
        long start = System.nanoTime();
        stand.await(job.words() + " is done", () -> !job.search().searching().get(), 600);
        System.out.printf(
                Locale.ROOT,
                "%-28s %6.1f s  %s%n",
                job.words(),
                (System.nanoTime() - start) / 1e9,
                Stand.fx(() -> job.search().message().get()));
    }

    private void pages(String end) {
        for (Page page : asked()) {
            Stand.run(() -> stand.guide.findings().page().set(page));
            for (String view : page.views()) {
                Stand.run(() -> {
                    stand.guide.findings().view().set(view);
                    stand.guide.findings().sheet().get().tables().stream()
                            .flatMap(t -> t.rows().stream())
                            .filter(r -> r.subject().isPresent())
                            .findFirst()
                            .ifPresent(r -> stand.guide.findings().point(Optional.of(r)));
                });
                shot((page.title() + "-" + view).toLowerCase(Locale.ROOT).replace(' ', '-') + end);
            }
        }
    }

    /** A page in presentation, and its layer on the map of the house. */
    private void large() {
        Stand.run(() -> {
            stand.guide.findings().page().set(page("Placement"));
            stand.guide.findings().view().set(page("Placement").views().get(0));
            stand.bench.look().presentation().set(true);
        });
        shot("placement-large-1280-light.png");
        Stand.run(() -> {
            stand.bench.look().presentation().set(false);
            stand.guide.mode().set(Mode.HOUSE);
            stand.guide.sight().show().set(Show.FINDING);
        });
        shot("map-1280-light.png");
        Stand.run(() -> stand.guide.mode().set(Mode.FINDINGS));
    }

    /** A page whose house was changed since. */
    private void outOfDate() {
        Stand.run(() -> {
            stand.guide.findings().page().set(page("Measures"));
            stand.guide
                    .findings()
                    .sheet()
                    .get()
                    .tables()
                    .get(0)
                    .rows()
                    .get(1)
                    .acts()
                    .get(0)
                    .run()
                    .run();
        });
        shot("measures-out-of-date-1280-light.png");
    }

    private void shot(String name) {
        stand.settle();
        Stand.pause(PAINTED);
        stand.pulses(10);
        stand.save(FOLDER.resolve(name), Optional.empty());
    }
}
