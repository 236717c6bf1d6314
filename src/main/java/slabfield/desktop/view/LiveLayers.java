package slabfield.desktop.view;

import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.util.Duration;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.figure.Box;
import slabfield.figure.Canvas;
import slabfield.figure.MapFoot;
import slabfield.figure.PlanLayer;
import slabfield.figure.PlanView;
import slabfield.figure.VacuumMap;
import slabfield.model.Scenario;

/**
 * What lies over the field while something is dragged, as pictures of its own between field and house and above all: the
 * house, arrows, paths, pins. They follow as fast as they can be painted, the field does not wait for them.
 */
final class LiveLayers {
    /** Painted no more often than this, so that the field, which is painted by the same thread, comes first. */
    private static final Duration LEAST = Duration.millis(60);

    private record Painted(Optional<Image> below, Optional<Image> above) {}

    private final Workbench bench;
    private final ViewPort port;
    private final TaskRunner runner;
    private final ImageView below = new ImageView();
    private final ImageView house = new ImageView();
    private final ImageView above = new ImageView();
    private final Throttle throttle = new Throttle(LEAST, this::paint);
    private List<PlanLayer> layers = List.of();
    private boolean busy;
    private boolean again;
    private long gesture;

    LiveLayers(Workbench bench, ViewPort port, TaskRunner runner) {
        this.bench = bench;
        this.port = port;
        this.runner = runner;
        for (ImageView each : all()) each.setMouseTransparent(true);
    }

    /** The pictures, the lowest first. */
    List<ImageView> all() {
        return List.of(below, house, above);
    }

    /** A drag begins. */
    void begin(List<PlanLayer> now) {
        gesture++;
        layers = now;
        paintHouse();
        if (!busy) paint();
        else again = true;
    }

    /** Other layers are to be shown; a foot alone stays as it is. */
    void show(List<PlanLayer> now) {
        boolean plain = layers.size() == now.size() && now.stream().allMatch(MapFoot.class::isInstance);
        layers = now;
        if (!plain) throttle.ask();
    }

    void end() {
        gesture++;
        all().forEach(v -> v.setImage(null));
    }

    /** Paints the house as it is now, without what shows above it anyway. */
    void paintHouse() {
        Scenario scenario = scenario();
        var style = bench.look().style().get();
        Work<Image> work =
                page -> page.image((canvas, box) -> VacuumMap.drawHouse(canvas, scenario, style, page.view(), box));
        run(work, house::setImage, () -> {});
    }

    private Scenario scenario() {
        return bench.drawing().layers().visible(bench.document().scenario().get());
    }

    private void paint() {
        if (busy) {
            again = true;
            return;
        }
        busy = true;
        Scenario scenario = scenario();
        List<PlanLayer> now = layers;
        double fontScale = bench.look().style().get().fontScale();
        Work<Painted> work = page -> new Painted(
                drawn(page, scenario, now, PlanLayer.Depth.FIELD, fontScale),
                drawn(page, scenario, now, PlanLayer.Depth.TOP, fontScale));
        run(
                work,
                painted -> {
                    below.setImage(painted.below().orElse(null));
                    above.setImage(painted.above().orElse(null));
                },
                () -> {
                    busy = false;
                    if (again) throttle.ask();
                    again = false;
                });
    }

    private static Optional<Image> drawn(
            Page page, Scenario scenario, List<PlanLayer> layers, PlanLayer.Depth depth, double fontScale) {
        if (layers.stream().noneMatch(l -> l.depth() == depth)) return Optional.empty();
        return Optional.of(page.image(
                (canvas, box) -> VacuumMap.drawLayers(canvas, scenario, layers, depth, fontScale, page.view(), box)));
    }

    private interface Work<T> {
        T on(Page page);
    }

    /** The map's room, in points. */
    private record Page(PlanView view, double width, double height) {
        Image image(BiConsumer<Canvas, Box> drawing) {
            return Pictures.of(width, height, 1, canvas -> drawing.accept(canvas, new Box(0, 0, width, height)));
        }
    }

    private <T> void run(Work<T> work, java.util.function.Consumer<T> show, Runnable after) {
        PlanView v = port.view().get();
        double points = Pictures.PIXELS_PER_POINT;
        Page page = new Page(
                new PlanView(v.scale() / points, v.originX() / points, v.originY() / points),
                Math.max(1, port.width()) / points,
                Math.max(1, port.height()) / points);
        long of = gesture;
        runner.run(progress -> work.on(page), new TaskRunner.Outcome<T>() {
            @Override
            public void done(T value) {
                if (of == gesture) show.accept(value);
                after.run();
            }

            @Override
            public void failed(Throwable reason) {
                after.run();
            }
        });
    }
}
