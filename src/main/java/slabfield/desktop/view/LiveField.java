package slabfield.desktop.view;

import java.util.List;
import java.util.Optional;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.field.Grid;
import slabfield.field.Result;
import slabfield.figure.Bounds;
import slabfield.figure.Box;
import slabfield.figure.Contours;
import slabfield.figure.HeatMap;
import slabfield.figure.MapStyle;
import slabfield.figure.VacuumMap;
import slabfield.figure.VacuumScale;

/**
 * The field while something is dragged, as a small picture that the screen enlarges, and the target's line. The colours
 * keep the scale that they had when the drag began.
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
        field.setMouseTransparent(true);
    }

    ImageView field() {
        return field;
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
    }

    private static Image picture(int[] argb, int columns, int rows) {
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
        VacuumScale colours = scale.orElseGet(
                () -> VacuumMap.scale(solved, bench.look().style().get()));
        long of = gesture;
        runner.run(progress -> painted(solved, colours), new TaskRunner.Outcome<Painted>() {
            @Override
            public void done(Painted now) {
                busy = false;
                if (of == gesture) show(now);
                next();
            }

            @Override
            public void failed(Throwable reason) {
                busy = false;
            }
        });
    }

    private static Painted painted(Result.Solved solved, VacuumScale colours) {
        Grid grid = solved.field().grid();
        Bounds bounds = new Bounds(grid.left(), grid.bottom(), grid.right(), grid.top());
        int columns = FINE * grid.columns(), rows = FINE * grid.rows();
        int[] argb = HeatMap.pixels(solved.field(), colours, columns, rows, bounds);
        List<double[]> targets = Contours.of(
                        solved.field(), List.of(-solved.coverage().target()))
                .stream()
                .map(Contours.Isoline::line)
                .toList();
        return new Painted(picture(argb, columns, rows), targets, bounds);
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
}
