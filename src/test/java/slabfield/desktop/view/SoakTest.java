package slabfield.desktop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import slabfield.desktop.viewmodel.Example;
import slabfield.desktop.viewmodel.find.ReadHouse;
import slabfield.io.ExampleScenarios;
import slabfield.quality.Measured;

/**
 * A window that is used for long does not grow. {@code -Dslabfield.soak=MINUTES} goes on for so long and writes what it
 * finds; {@code -Dslabfield.soak.pause=MILLISECONDS} waits after each action. Without them a few rounds are made.
 */
class SoakTest {
    private static final double MINUTES = Double.parseDouble(System.getProperty("slabfield.soak", "0"));
    private static final long PAUSE = Long.getLong("slabfield.soak.pause", 0);
    private static final boolean LONG = MINUTES > 0;

    /** Rounds before the first look: everything has been shown once, and caches are full. */
    private static final int WARM = LONG ? 3 : 2;

    private static final int ROUNDS = 2;
    /** Minutes between two looks of a long run. */
    private static final double APART = 5;

    private static final double CELL = 0.4;

    /** What a later look may show more than the first, without arrays of numbers and with them: kept factors of large grids come and go. */
    private static final long OBJECTS_SLACK = 12L << 20, HEAP_SLACK = 160L << 20;

    /** Objects of the toolkit for one node that is shown: what a scroll bar or a list's row more may cost. */
    private static final int PARTS_OF_A_NODE = 100;

    private static final int SHOWN_SLACK = 40,
            PARTS_SLACK = 150,
            CLOSURES_SLACK = 25,
            HOUSES_SLACK = 40,
            THREADS_SLACK = 3,
            FILES_SLACK = 5;

    @TempDir
    private Path folder;

    private static List<Example> houses() {
        return ExampleScenarios.all().stream()
                .limit(LONG ? Integer.MAX_VALUE : 1)
                .map(e -> new Example(e.file(), e.scenario().withCellSize(CELL)))
                .toList();
    }

    @Test
    void aWindowInUseDoesNotGrow() throws IOException {
        Stand.needsScreen();
        Example read = new Example("read.json", ReadHouse.withReadings());
        List<String> table = new ArrayList<>(List.of(SoakMeter.Held.HEAD.split("\n")));
        try (Stand stand = Stand.open(houses(), 1280, 800)) {
            stand.settle();
            SoakRound round = new SoakRound(stand, houses(), read, folder.resolve("house.json"), PAUSE);
            for (int i = 0; i < WARM; i++) round.go();
            SoakMeter.Held first = SoakMeter.held();
            int warm = round.actions();
            table.add(first.row(0, 0, 0));
            long begun = System.nanoTime(), looked = begun;
            int rounds = 0;
            SoakMeter.Held last = first;
            while (LONG ? minutes(begun) < MINUTES : rounds < ROUNDS) {
                round.go();
                rounds++;
                if (LONG && minutes(looked) < APART && minutes(begun) < MINUTES) continue;
                looked = System.nanoTime();
                last = SoakMeter.held();
                table.add(last.row(minutes(begun), rounds, round.actions() - warm));
                if (LONG) Measured.write("soak", table);
            }
            System.out.println(String.join("\n", table));
            String more = last.more(first, rounds);
            System.out.println("grown:" + more);
            assertThat(last.heap() - last.numbers() - first.heap() + first.numbers())
                    .as("growth of objects other than arrays of numbers [byte]:%s", more)
                    .isLessThan(OBJECTS_SLACK);
            System.out.println("without arrays of numbers: " + (first.heap() - first.numbers()) + " then "
                    + (last.heap() - last.numbers()) + " byte");
            assertThat(last.heap() - first.heap())
                    .as("growth of the heap after %d rounds [byte]:%s", rounds, more)
                    .isLessThan(HEAP_SLACK);
            assertThat(last.shown()).as("nodes shown").isLessThanOrEqualTo(first.shown() + SHOWN_SLACK);
            long shownMore = Math.max(0, last.shown() - first.shown());
            assertThat(last.parts())
                    .as("parts of scenes:%s", more)
                    .isLessThanOrEqualTo(first.parts() + PARTS_SLACK + PARTS_OF_A_NODE * shownMore);
            assertThat(last.closures())
                    .as("listeners and closures:%s", more)
                    .isLessThanOrEqualTo(first.closures() + CLOSURES_SLACK);
            assertThat(last.houses())
                    .as("houses and predictions:%s", more)
                    .isLessThanOrEqualTo(first.houses() + HOUSES_SLACK);
            assertThat(last.threads()).as("threads").isLessThanOrEqualTo(first.threads() + THREADS_SLACK);
            assertThat(last.files()).as("open files").isLessThanOrEqualTo(first.files() + FILES_SLACK);
        }
    }

    private static double minutes(long since) {
        return Duration.ofNanos(System.nanoTime() - since).toMillis() / 60000.0;
    }
}
