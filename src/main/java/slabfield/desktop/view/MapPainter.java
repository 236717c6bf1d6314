package slabfield.desktop.view;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.nio.IntBuffer;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.image.Image;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Units;
import slabfield.field.Result;
import slabfield.figure.AwtCanvas;
import slabfield.figure.Bounds;
import slabfield.figure.Box;
import slabfield.figure.MapStyle;
import slabfield.figure.PlanLayer;
import slabfield.figure.PlanView;
import slabfield.figure.VacuumMap;

/** Paints maps and their keys away from the thread of the screen, one at a time; of those that wait only the last counts. */
final class MapPainter {
    /** Pixels of the screen to a point of the page. */
    static final double PIXELS_PER_POINT = 96.0 / 72;

    private static final int UNSEEN = 300;
    private static final double KEY_WIDTH = 174;
    private static final double LARGEST_KEY = 1.25;
    private static final double LONGEST_KEY = 900;

    /**
     * What to paint.
     *
     * @param layers laid over the field
     * @param view in pixels of the screen
     * @param width of the map [pixels of the screen]
     * @param height of the map [pixels of the screen]
     * @param fine pixels of the image to one of the screen
     */
    record Wanted(
            Result result,
            MapStyle style,
            List<PlanLayer> layers,
            PlanView view,
            double width,
            double height,
            double fine) {}

    /** A map and its key, both larger than on the screen by {@code wanted.fine()}. */
    record Painted(Wanted wanted, Image map, Image key) {}

    private final TaskRunner runner;
    private final Consumer<Painted> show;
    private Optional<Wanted> waiting = Optional.empty();
    private boolean busy;

    MapPainter(TaskRunner runner, Consumer<Painted> show) {
        this.runner = runner;
        this.show = show;
    }

    void paint(Wanted wanted) {
        waiting = Optional.of(wanted);
        if (!busy) next();
    }

    private void next() {
        if (waiting.isEmpty()) return;
        Wanted wanted = waiting.get();
        waiting = Optional.empty();
        busy = true;
        runner.run(progress -> painted(wanted), new TaskRunner.Outcome<>() {
            @Override
            public void done(Painted painted) {
                busy = false;
                show.accept(painted);
                next();
            }

            @Override
            public void failed(Throwable reason) {
                busy = false;
                next();
            }
        });
    }

    private static Painted painted(Wanted wanted) {
        double width = wanted.width() / PIXELS_PER_POINT, height = wanted.height() / PIXELS_PER_POINT;
        PlanView view = new PlanView(
                wanted.view().scale() / PIXELS_PER_POINT,
                wanted.view().originX() / PIXELS_PER_POINT,
                wanted.view().originY() / PIXELS_PER_POINT);
        Image map = drawn(
                width,
                height,
                wanted.fine(),
                canvas -> VacuumMap.drawPlan(
                        canvas, wanted.result(), wanted.style(), wanted.layers(), view, new Box(0, 0, width, height)));
        double keyWidth = keyWidth(wanted.style()) / PIXELS_PER_POINT,
                keyHeight = LONGEST_KEY * keyScale(wanted.style());
        MapStyle style = wanted.style().withFontScale(keyScale(wanted.style()));
        Image key = drawn(
                keyWidth,
                keyHeight,
                wanted.fine(),
                canvas -> VacuumMap.drawLegend(
                        canvas, wanted.result(), style, wanted.layers(), new Box(1, 2, keyWidth - 1, keyHeight)));
        return new Painted(wanted, map, key);
    }

    /** Paints where nobody sees it. */
    static void warm(Result result) {
        Units units = new Units();
        units.take(result.scenario().display());
        MapStyle style = MapStyle.of(units.shown().get());
        BufferedImage image = new BufferedImage(UNSEEN, UNSEEN, BufferedImage.TYPE_INT_ARGB_PRE);
        Graphics2D graphics = image.createGraphics();
        Box box = new Box(0, 0, UNSEEN, UNSEEN);
        AwtCanvas canvas = new AwtCanvas(graphics, UNSEEN, UNSEEN, 1);
        VacuumMap.drawPlan(canvas, result, style, PlanView.fit(Bounds.of(result.scenario()), box), box);
        VacuumMap.drawLegend(canvas, result, style, box);
        graphics.dispose();
    }

    /** Width of the key of a map [pixels of the screen]. */
    static double keyWidth(MapStyle style) {
        return KEY_WIDTH * PIXELS_PER_POINT * keyScale(style);
    }

    /** A key grows less than a map, so that it does not take the room of the map. */
    private static double keyScale(MapStyle style) {
        return Math.min(LARGEST_KEY, style.fontScale());
    }

    /** An image of a page, cut below the last row on which something is drawn. */
    private static Image drawn(double width, double height, double fine, Consumer<AwtCanvas> drawing) {
        double pixels = fine * PIXELS_PER_POINT;
        int columns = Math.max(1, (int) Math.round(width * pixels)),
                rows = Math.max(1, (int) Math.round(height * pixels));
        BufferedImage image = new BufferedImage(columns, rows, BufferedImage.TYPE_INT_ARGB_PRE);
        Graphics2D graphics = image.createGraphics();
        drawing.accept(new AwtCanvas(graphics, width, height, pixels));
        graphics.dispose();
        int[] argb = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        int used = argb.length;
        while (used > columns && argb[used - 1] == 0) used--;
        int usedRows = (used + columns - 1) / columns;
        return new WritableImage(new PixelBuffer<>(
                columns, usedRows, IntBuffer.wrap(argb, 0, usedRows * columns), PixelFormat.getIntArgbPreInstance()));
    }
}
