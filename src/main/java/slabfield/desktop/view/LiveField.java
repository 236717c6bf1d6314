package slabfield.desktop.view;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.nio.IntBuffer;
import java.util.List;
import java.util.Optional;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.field.Grid;
import slabfield.field.Result;
import slabfield.figure.AwtCanvas;
import slabfield.figure.Bounds;
import slabfield.figure.Box;
import slabfield.figure.Contours;
import slabfield.figure.HeatMap;
import slabfield.figure.MapStyle;
import slabfield.figure.PlanView;
import slabfield.figure.VacuumMap;
import slabfield.figure.VacuumScale;
import slabfield.model.Scenario;

/**
 * The map while something is dragged: the field as a small picture that the screen enlarges, the house over it as a
 * picture of its own, the target's line. The colours keep the scale that they had when the drag began.
 */
final class LiveField {
    /** Pixels to a cell of the grid, either way. */
    private static final int FINE = 3;

    private record Painted(Image image, List<double[]> targets, Bounds bounds) {}

    private final Workbench bench;
    private final ViewPort port;
    private final TaskRunner runner;
    private final Runnable painted;
    private final ImageView field = new ImageView();
    private final ImageView house = new ImageView();
    private Optional<VacuumScale> scale = Optional.empty();
    private Optional<Result.Solved> waiting = Optional.empty();
    private List<double[]> targets = List.of();
    private boolean busy;
    private long gesture;

    LiveField(Workbench bench, ViewPort port, TaskRunner runner, Runnable painted) {
        this.bench = bench;
        this.port = port;
        this.runner = runner;
        this.painted = painted;
        field.setSmooth(true);
        for (ImageView each : List.of(field, house)) each.setMouseTransparent(true);
        house.visibleProperty().bind(field.imageProperty().isNotNull());
    }

    ImageView field() {
        return field;
    }

    ImageView house() {
        return house;
    }

    /** Lines on which the pressure is the target's, x0, y0, x1, y1 ... [m]. */
    List<double[]> targets() {
        return targets;
    }

    /** A drag begins. */
    void begin() {
        gesture++;
        MapStyle style = bench.look().style().get();
        scale = bench.solving().picture().get().solved().map(s -> VacuumMap.scale(s, style));
        paintHouse();
    }

    /** Paints the house as it is now, without what shows above it anyway. */
    void paintHouse() {
        Scenario scenario = bench.drawing().layers().visible(bench.document().scenario().get());
        MapStyle style = bench.look().style().get();
        PlanView view = new PlanView(
                port.view().get().scale() / MapPainter.PIXELS_PER_POINT, port.view().get().originX() / MapPainter.PIXELS_PER_POINT,
                port.view().get().originY() / MapPainter.PIXELS_PER_POINT);
        int columns = Math.max(1, (int) port.width()), rows = Math.max(1, (int) port.height());
        run(() -> drawnHouse(scenario, style, view, columns, rows), house::setImage);
    }

    private static Image drawnHouse(Scenario scenario, MapStyle style, PlanView view, int columns, int rows) {
        BufferedImage image = new BufferedImage(columns, rows, BufferedImage.TYPE_INT_ARGB_PRE);
        Graphics2D graphics = image.createGraphics();
        double width = columns / MapPainter.PIXELS_PER_POINT, height = rows / MapPainter.PIXELS_PER_POINT;
        VacuumMap.drawHouse(
                new AwtCanvas(graphics, width, height, MapPainter.PIXELS_PER_POINT), scenario, style, view, new Box(0, 0, width, height));
        graphics.dispose();
        return picture(((DataBufferInt) image.getRaster().getDataBuffer()).getData(), columns, rows, true);
    }

    private static Image picture(int[] argb, int columns, int rows, boolean premultiplied) {
        if (premultiplied)
            return new WritableImage(new PixelBuffer<>(columns, rows, IntBuffer.wrap(argb), PixelFormat.getIntArgbPreInstance()));
        WritableImage image = new WritableImage(columns, rows);
        image.getPixelWriter().setPixels(0, 0, columns, rows, PixelFormat.getIntArgbInstance(), argb, 0, columns);
        return image;
    }

    /** Shows a prediction of a drag; false where it is not one. */
    boolean takes(Solving.Picture picture) {
        if (!picture.quick() || picture.solved().isEmpty()) return false;
        waiting = picture.solved();
        if (!busy) next();
        return true;
    }

    private void next() {
        if (waiting.isEmpty()) return;
        Result.Solved solved = waiting.get();
        waiting = Optional.empty();
        busy = true;
        VacuumScale colours = scale.orElseGet(() -> VacuumMap.scale(solved, bench.look().style().get()));
        long of = gesture;
        run(() -> painted(solved, colours), now -> {
            busy = false;
            if (of == gesture) show(now);
            next();
        });
    }

    private static Painted painted(Result.Solved solved, VacuumScale colours) {
        Grid grid = solved.field().grid();
        Bounds bounds = new Bounds(grid.left(), grid.bottom(), grid.right(), grid.top());
        int columns = FINE * grid.columns(), rows = FINE * grid.rows();
        int[] argb = HeatMap.pixels(solved.field(), colours, columns, rows, bounds);
        List<double[]> targets = Contours.of(solved.field(), List.of(-solved.coverage().target())).stream()
                .map(Contours.Isoline::line).toList();
        return new Painted(picture(argb, columns, rows, false), targets, bounds);
    }

    private void show(Painted now) {
        Box box = port.view().get().box(now.bounds());
        field.setX(box.left());
        field.setY(box.top());
        field.setFitWidth(box.width());
        field.setFitHeight(box.height());
        field.setImage(now.image());
        targets = now.targets();
        painted.run();
    }

    /** The whole map is back. */
    void end() {
        gesture++;
        field.setImage(null);
        targets = List.of();
    }

    private interface Painting<T> {
        T paint();
    }

    private <T> void run(Painting<T> work, java.util.function.Consumer<T> show) {
        runner.run(progress -> work.paint(), new TaskRunner.Outcome<T>() {
            @Override
            public void done(T value) {
                show.accept(value);
            }

            @Override
            public void failed(Throwable reason) {
                busy = false;
            }
        });
    }
}
