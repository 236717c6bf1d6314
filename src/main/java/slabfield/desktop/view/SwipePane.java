package slabfield.desktop.view;

import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.control.Label;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.field.Result;
import slabfield.figure.Bounds;
import slabfield.figure.Box;
import slabfield.figure.Canvas;
import slabfield.figure.MapStyle;
import slabfield.figure.PlanLayer;
import slabfield.figure.PlanView;
import slabfield.figure.VacuumMap;

/** Two maps of one house over each other, parted by a divider that is dragged or moved with the arrow keys. */
final class SwipePane extends Region {
    /** Width in which the divider is grabbed [px]; a finger needs it. */
    static final double HANDLE = 44;

    private static final double STEP = 0.02;

    /** Room about a plan, and more of it for the names above and the foot below [points]. */
    private static final double SIDE = 26, NAME = 16, FOOT = 8;

    private final PlanPicture before;
    private final PlanPicture after;
    private final Region line = new Region();
    private final Label handle = new Label("\u25c0 \u25b6");
    private final Label left = Parts.label("", "side-name");
    private final Label right = Parts.label("", "side-name");
    private final Region ring = new Region();
    private final Rectangle clip = new Rectangle();
    private double grabbed;
    private final DoubleProperty divider = new SimpleDoubleProperty(0.5);

    SwipePane(TaskRunner painting) {
        before = new PlanPicture(painting, "Map before");
        after = new PlanPicture(painting, "Map after");
        before.setClip(clip);
        line.getStyleClass().add("divider-line");
        handle.getStyleClass().add("divider-handle");
        handle.setMinSize(HANDLE, HANDLE);
        getStyleClass().add("swipe");
        ring.getStyleClass().add("ring");
        ring.visibleProperty().bind(focusedProperty());
        for (Region part : List.of(line, handle, left, right, ring)) part.setMouseTransparent(true);
        getChildren().addAll(after, before, line, handle, left, right, ring);
        setCursor(Cursor.H_RESIZE);
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.SLIDER);
        setAccessibleHelp(
                "Left and right arrow keys move the divider between the two maps; Home and End show one of them alone.");
        divider.addListener((o, was, is) -> requestLayout());
        setOnMousePressed(this::grab);
        setOnMouseDragged(this::move);
        setOnKeyPressed(this::key);
        setMinSize(200, 160);
    }

    /** Part of the width that shows the map before, 0 to 1. */
    DoubleProperty divider() {
        return divider;
    }

    /** A finger beside the divider grabs it where it stands; further off the divider comes to it. */
    private void grab(MouseEvent e) {
        requestFocus();
        double off = divider.get() * getWidth() - e.getX();
        grabbed = Math.abs(off) <= HANDLE / 2 ? off : 0;
        move(e);
    }

    private void move(MouseEvent e) {
        divider.set(Math.max(0, Math.min(1, (e.getX() + grabbed) / getWidth())));
        e.consume();
    }

    private void key(KeyEvent e) {
        double step = e.isShiftDown() ? 5 * STEP : STEP;
        switch (e.getCode()) {
            case LEFT, KP_LEFT -> divider.set(Math.max(0, divider.get() - step));
            case RIGHT, KP_RIGHT -> divider.set(Math.min(1, divider.get() + step));
            case HOME -> divider.set(0);
            case END -> divider.set(1);
            default -> {
                return;
            }
        }
        e.consume();
    }

    /** Shows two results in one style, whose range holds both. */
    void show(String beforeName, Result one, String afterName, Result other, MapStyle style, List<PlanLayer> layers) {
        left.setText(beforeName);
        right.setText(afterName);
        before.show(Optional.of(drawing(one, style, layers)));
        after.show(Optional.of(drawing(other, style, layers)));
        setAccessibleText("Map of " + beforeName + " at the left of the divider, of " + afterName + " at its right");
        setParts(true);
    }

    /** Shows one map alone. */
    void showOne(String name, Result only, MapStyle style, List<PlanLayer> layers) {
        left.setText(name);
        before.show(Optional.of(drawing(only, style, layers)));
        after.show(Optional.empty());
        setAccessibleText("Map of " + name);
        setParts(false);
    }

    private void setParts(boolean two) {
        for (Region part : List.of(line, handle, right, after)) part.setVisible(two);
        left.setVisible(!left.getText().isEmpty());
        setCursor(two ? Cursor.H_RESIZE : Cursor.DEFAULT);
        requestLayout();
    }

    void clear() {
        before.show(Optional.empty());
        after.show(Optional.empty());
        left.setText("");
        setParts(false);
    }

    private static BiConsumer<Canvas, Box> drawing(Result result, MapStyle style, List<PlanLayer> layers) {
        return (canvas, box) -> {
            double side = SIDE * style.fontScale();
            Box free = box.inset(side);
            Box below = new Box(
                    free.left(),
                    free.top() + NAME * style.fontScale(),
                    free.right(),
                    free.bottom() - FOOT * style.fontScale());
            PlanView view = PlanView.fit(Bounds.of(result.scenario()), below);
            VacuumMap.drawPlan(canvas, result, style, layers, view, box);
        };
    }

    @Override
    protected void layoutChildren() {
        double w = getWidth(), h = getHeight(), at = line.isVisible() ? divider.get() * w : w;
        before.resizeRelocate(0, 0, w, h);
        after.resizeRelocate(0, 0, w, h);
        ring.resizeRelocate(0, 0, w, h);
        clip.setWidth(at);
        clip.setHeight(h);
        line.resizeRelocate(at - 1.5, 0, 3, h);
        handle.resizeRelocate(at - HANDLE / 2, h / 2 - HANDLE / 2, HANDLE, HANDLE);
        left.autosize();
        right.autosize();
        left.relocate(6, 6);
        right.relocate(w - right.getWidth() - 6, 6);
    }
}
