package slabfield.desktop.view;

import java.util.Optional;
import java.util.function.BiConsumer;
import javafx.css.PseudoClass;
import javafx.scene.AccessibleRole;
import javafx.scene.image.ImageView;
import javafx.scene.layout.Region;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.figure.Box;
import slabfield.figure.Canvas;

/** Something drawn to fill its room, painted away from the thread of the screen whenever the room or the drawing changes. */
final class PlanPicture extends Region {
    private static final PseudoClass EMPTY = PseudoClass.getPseudoClass("empty");

    private final TaskRunner runner;
    private final ImageView view = new ImageView();
    private final Region ring = new Region();
    private Optional<BiConsumer<Canvas, Box>> drawing = Optional.empty();
    private Optional<TaskRunner.Task> running = Optional.empty();
    private double drawnWidth;
    private double drawnHeight;
    private long asked;

    PlanPicture(TaskRunner runner, String what) {
        this.runner = runner;
        getStyleClass().add("picture");
        pseudoClassStateChanged(EMPTY, true);
        ring.getStyleClass().add("ring");
        ring.setManaged(false);
        ring.setMouseTransparent(true);
        ring.visibleProperty().bind(focusedProperty());
        getChildren().addAll(view, ring);
        setMinSize(40, 40);
        setPrefSize(400, 260);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleText(what);
    }

    /** Shows a drawing; empty for nothing. */
    void show(Optional<BiConsumer<Canvas, Box>> what) {
        drawing = what;
        pseudoClassStateChanged(EMPTY, what.isEmpty());
        if (what.isEmpty()) view.setImage(null);
        drawnWidth = 0;
        requestLayout();
    }

    @Override
    protected void layoutChildren() {
        ring.resizeRelocate(0, 0, getWidth(), getHeight());
        if (getWidth() == drawnWidth && getHeight() == drawnHeight || getWidth() < 10 || getHeight() < 10) return;
        drawnWidth = getWidth();
        drawnHeight = getHeight();
        drawing.ifPresent(this::paint);
    }

    private void paint(BiConsumer<Canvas, Box> what) {
        long number = ++asked;
        running.ifPresent(TaskRunner.Task::cancel);
        double width = drawnWidth / Pictures.PIXELS_PER_POINT, height = drawnHeight / Pictures.PIXELS_PER_POINT;
        double fine = getScene() == null || getScene().getWindow() == null
                ? 1
                : Math.max(1, getScene().getWindow().getOutputScaleX());
        running = Optional.of(runner.run(
                progress ->
                        Pictures.of(width, height, fine, canvas -> what.accept(canvas, new Box(0, 0, width, height))),
                new TaskRunner.Outcome<>() {
                    @Override
                    public void done(javafx.scene.image.Image image) {
                        if (number != asked || drawing.isEmpty()) return;
                        view.setImage(image);
                        view.setFitWidth(drawnWidth);
                        view.setFitHeight(drawnHeight);
                    }

                    @Override
                    public void failed(Throwable reason) {
                        view.setImage(null);
                    }
                }));
    }
}
