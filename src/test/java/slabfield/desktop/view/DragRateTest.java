package slabfield.desktop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Consumer;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import slabfield.desktop.drawing.Makers;
import slabfield.desktop.drawing.Places;
import slabfield.desktop.viewmodel.Blank;
import slabfield.desktop.viewmodel.see.Sight;
import slabfield.figure.Profile;
import slabfield.model.Point;
import slabfield.model.Scenario;

/**
 * How often the real window shows a new map while a suction point is dragged over 150 m2 of 10 cm cells. A measurement, so
 * it runs only where {@code slabfield.dragRate} asks for it, best on a quiet machine.
 */
@EnabledIfSystemProperty(named = "slabfield.dragRate", matches = "true")
class DragRateTest {
    private static final double SECONDS = 10;
    private static final double WARMING = 4;
    private static final double WANTED = 30;
    private static final String HEAD = """
            | while a suction point is dragged over 150 m2, 10 cm cells | frames a second | of them with a new map | between two maps, median | longest | coarse grid | other programs |
            | --- | ---: | ---: | ---: | ---: | ---: | ---: |
            """;

    private static Scenario house() {
        Scenario s = Makers.slab(Blank.house(), Places.rectangle(new Point(0, 0), new Point(15, 10)))
                .scenario();
        s = Makers.perimeter(s, "basement").scenario();
        s = Makers.barrier(s, List.of(new Point(9, 0), new Point(9, 10))).scenario();
        s = Makers.gap(s, new Point(9, 5), 1).orElseThrow().scenario();
        for (int i = 0; i < 6; i++)
            s = Makers.hole(s, new Point(1.5 + 2.3 * i, i % 2 == 0 ? 1 : 9)).scenario();
        return Makers.suction(s, new Point(4, 5)).scenario();
    }

    @Test
    void aPlainMapIn1280By800() {
        measured("plain map, 1280 x 800", 1280, 800, stand -> {});
    }

    @Test
    void aPlainMapIn1920By1080() {
        measured("plain map, 1920 x 1080", 1920, 1080, stand -> {});
    }

    @Test
    void withArrowsPinsAndProfile() {
        measured("with arrows, a pin and a profile, 1280 x 800", 1280, 800, stand -> {
            stand.guide.sight().flow().set(Sight.Flow.ARROWS);
            stand.guide.sight().pin(new Point(12, 8));
            stand.guide.sight().cut().set(Optional.of(new Profile(new Point(0.5, 5), new Point(14.5, 5))));
        });
    }

    private static void measured(String name, double width, double height, Consumer<Stand> prepare) {
        Stand.needsScreen();
        try (Stand stand = Stand.open(house(), width, height)) {
            stand.settle();
            stand.awaitMap();
            Stand.run(() -> prepare.accept(stand));
            drag(stand, WARMING);
            Rate rate = drag(stand, SECONDS);
            if (Boolean.getBoolean("slabfield.dragWork"))
                rate.work()
                        .forEach((thread, millis) ->
                                System.out.printf(Locale.ROOT, "%-28s %5.1f %% of a processor%n", thread, millis));
            String row = String.format(
                    Locale.ROOT,
                    "| %s | %.1f | %.1f | %.0f ms | %.0f ms | %.2f m | %.0f %% |",
                    name,
                    rate.frames(),
                    rate.maps(),
                    rate.median(),
                    rate.longest(),
                    rate.cell(),
                    rate.others());
            System.out.println(row);
            keep(row);
            assertThat(rate.frames()).isGreaterThanOrEqualTo(WANTED);
            assertThat(rate.maps()).isGreaterThanOrEqualTo(WANTED);
        }
    }

    private static void keep(String row) {
        try {
            Path file = Path.of("target", "quality", "drag.md");
            Files.createDirectories(file.getParent());
            if (!Files.exists(file)) Files.writeString(file, HEAD);
            Files.writeString(file, row + "\n", StandardOpenOption.APPEND);
        } catch (IOException reason) {
            throw new UncheckedIOException(reason);
        }
    }

    /**
     * One drag.
     *
     * @param frames a second
     * @param maps frames a second that showed another map than the one before
     * @param median time between two maps [ms]
     * @param longest time between two maps [ms]
     * @param cell of the coarse grid at the end [m]
     * @param others part of the machine that other programs took, the display server among them [%]
     * @param work of each thread, part of one processor [%]
     */
    private record Rate(
            double frames,
            double maps,
            double median,
            double longest,
            double cell,
            double others,
            Map<String, Double> work) {}

    /** Processor time of each thread so far [ms]. */
    private static Map<String, Double> work() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        Map<String, Double> work = new TreeMap<>();
        for (long id : threads.getAllThreadIds())
            if (threads.getThreadInfo(id) != null)
                work.merge(threads.getThreadInfo(id).getThreadName(), threads.getThreadCpuTime(id) / 1e6, Double::sum);
        return work;
    }

    /** Processor time of the whole machine and of this program so far, in the system's ticks; zeros where it does not tell. */
    private static long[] ticks() {
        try {
            String[] all =
                    Files.readAllLines(Path.of("/proc/stat")).get(0).trim().split("\\s+");
            String[] own = Files.readString(Path.of("/proc/self/stat"))
                    .replaceFirst(".*\\) ", "")
                    .split(" ");
            long total = 0;
            for (int i = 1; i <= 8; i++) total += Long.parseLong(all[i]);
            long idle = Long.parseLong(all[4]) + Long.parseLong(all[5]);
            return new long[] {total, total - idle - Long.parseLong(own[11]) - Long.parseLong(own[12])};
        } catch (IOException elsewhere) {
            return new long[2];
        }
    }

    private static Rate drag(Stand stand, double seconds) {
        stand.moveTo(
                stand.bench.document().scenario().get().suctionPoints().get(0).at());
        stand.press();
        MapPane map = stand.map();
        ImageView field =
                Stand.fx(() -> (ImageView) map.getChildrenUnmodifiable().get(1));
        Map<String, Double> before = work();
        long[] ticks = ticks();
        List<Long> frames = new ArrayList<>(), maps = new ArrayList<>();
        Image[] last = {null};
        Runnable counts = () -> {
            frames.add(System.nanoTime());
            if (field.getImage() != last[0]) maps.add(System.nanoTime());
            last[0] = field.getImage();
        };
        Stand.run(() -> stand.stage().getScene().addPostLayoutPulseListener(counts));
        long start = System.nanoTime();
        double passed = 0;
        while (passed < seconds) {
            double turn = 2 * Math.PI * passed / 4;
            Point to = new Point(4.5 + 2.5 * Math.cos(turn + Math.PI), 5 + 3 * Math.sin(turn));
            Stand.run(() -> stand.moveNow(map, to));
            Stand.pause(8);
            passed = (System.nanoTime() - start) / 1e9;
        }
        Stand.run(() -> stand.stage().getScene().removePostLayoutPulseListener(counts));
        long[] since = ticks();
        double cell = Stand.fx(
                () -> stand.bench.solving().picture().get().result().scenario().cellSize());
        Map<String, Double> used = new TreeMap<>();
        double time = passed;
        work().forEach((thread, millis) -> {
            double part = (millis - before.getOrDefault(thread, 0.0)) / time / 10;
            if (part > 0.5) used.put(thread, part);
        });
        stand.release();
        stand.settle();
        List<Double> pauses = new ArrayList<>();
        for (int i = 1; i < maps.size(); i++) pauses.add((maps.get(i) - maps.get(i - 1)) / 1e6);
        Collections.sort(pauses);
        return new Rate(
                frames.size() / passed,
                maps.size() / passed,
                pauses.isEmpty() ? Double.NaN : pauses.get(pauses.size() / 2),
                pauses.isEmpty() ? Double.NaN : pauses.get(pauses.size() - 1),
                cell,
                100.0 * (since[1] - ticks[1]) / Math.max(1, since[0] - ticks[0]),
                used);
    }
}
