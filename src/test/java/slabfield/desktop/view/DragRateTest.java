package slabfield.desktop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import javafx.animation.AnimationTimer;
import javafx.scene.image.ImageView;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import slabfield.desktop.drawing.Makers;
import slabfield.desktop.drawing.Places;
import slabfield.desktop.viewmodel.Blank;
import slabfield.model.Point;
import slabfield.model.Scenario;

/**
 * How often the real window shows a new map while a suction point is dragged over 150 m2 of 10 cm cells. A measurement, so
 * it runs only where {@code slabfield.dragRate} asks for it, best on a quiet machine.
 */
@EnabledIfSystemProperty(named = "slabfield.dragRate", matches = "true")
class DragRateTest {
    private static final double SECONDS = 10;
    private static final double WANTED = 30;

    private static Scenario house() {
        Scenario s = Makers.slab(Blank.house(), Places.rectangle(new Point(0, 0), new Point(15, 10))).scenario();
        s = Makers.perimeter(s, "basement").scenario();
        s = Makers.barrier(s, List.of(new Point(9, 0), new Point(9, 10))).scenario();
        s = Makers.gap(s, new Point(9, 5), 1).orElseThrow().scenario();
        for (int i = 0; i < 6; i++) s = Makers.hole(s, new Point(1.5 + 2.3 * i, i % 2 == 0 ? 1 : 9)).scenario();
        return Makers.suction(s, new Point(4, 5)).scenario();
    }

    @Test
    void mapsASecondWhileDragging() {
        Stand.needsScreen();
        try (Stand stand = Stand.open(house(), 1280, 800)) {
            stand.settle();
            stand.awaitMap();
            drag(stand, 3);
            Rate rate = drag(stand, SECONDS);
            rate.work().forEach((thread, millis) -> System.out.printf(Locale.ROOT, "%-28s %6.1f ms of processor time a map%n", thread, millis));
            System.out.printf(Locale.ROOT, "frames %.1f/s, new maps %.1f/s, longest pause between maps %.0f ms, median %.1f ms%n",
                    rate.frames(), rate.maps(), rate.longest(), rate.median());
            assertThat(rate.frames()).isGreaterThanOrEqualTo(WANTED);
            assertThat(rate.maps()).isGreaterThanOrEqualTo(WANTED);
        }
    }

    private record Rate(double frames, double maps, double longest, double median, Map<String, Double> work) {}

    /** Processor time of each thread so far [ms]. */
    private static Map<String, Double> work() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        Map<String, Double> work = new TreeMap<>();
        for (long id : threads.getAllThreadIds())
            if (threads.getThreadInfo(id) != null) work.merge(threads.getThreadInfo(id).getThreadName(), threads.getThreadCpuTime(id) / 1e6, Double::sum);
        return work;
    }

    private static Rate drag(Stand stand, double seconds) {
        stand.moveTo(stand.bench.document().scenario().get().suctionPoints().get(0).at());
        stand.press();
        Map<String, Double> before = work();
        int[] frames = {0};
        List<Long> maps = Collections.synchronizedList(new ArrayList<>());
        AnimationTimer timer = new AnimationTimer() {
            @Override
            public void handle(long now) {
                frames[0]++;
            }
        };
        ImageView field = Stand.fx(() -> (ImageView) stand.map().getChildrenUnmodifiable().get(1));
        javafx.beans.value.ChangeListener<Object> counts = (o, was, is) -> maps.add(System.nanoTime());
        Stand.run(() -> {
            timer.start();
            field.imageProperty().addListener(counts);
        });
        long start = System.nanoTime();
        double passed = 0;
        while (passed < seconds) {
            double turn = 2 * Math.PI * passed / 4;
            Point to = new Point(4.5 + 2.5 * Math.cos(turn + Math.PI), 5 + 3 * Math.sin(turn));
            Stand.run(() -> stand.moveNow(to));
            Stand.pause(8);
            passed = (System.nanoTime() - start) / 1e9;
        }
        Stand.run(() -> {
            timer.stop();
            field.imageProperty().removeListener(counts);
        });
        stand.release();
        stand.settle();
        Map<String, Double> used = new TreeMap<>();
        work().forEach((thread, millis) -> {
            double each = (millis - before.getOrDefault(thread, 0.0)) / Math.max(1, maps.size());
            if (each > 0.3) used.put(thread, each);
        });
        List<Double> pauses = new ArrayList<>();
        for (int i = 1; i < maps.size(); i++) pauses.add((maps.get(i) - maps.get(i - 1)) / 1e6);
        Collections.sort(pauses);
        return new Rate(frames[0] / passed, maps.size() / passed, pauses.isEmpty() ? Double.NaN : pauses.get(pauses.size() - 1),
                pauses.isEmpty() ? Double.NaN : pauses.get(pauses.size() / 2), used);
    }
}
