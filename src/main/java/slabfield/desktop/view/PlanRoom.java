package slabfield.desktop.view;

import java.util.Optional;
import java.util.function.BiConsumer;
import javafx.scene.input.MouseEvent;
import slabfield.figure.Bounds;
import slabfield.figure.Box;
import slabfield.figure.Canvas;
import slabfield.figure.PlanView;

/** Lets a picture of a plan be moved and enlarged as the map of the house is; pictures of other things fill it. */
final class PlanRoom {
    /** Draws a plan in a view [points]. */
    interface Drawing {
        void draw(Canvas canvas, PlanView view, Box box);
    }

    private final PlanPicture picture;
    private final ViewPort port = new ViewPort();
    private final PanZoom moves;
    private Optional<Drawing> plan = Optional.empty();
    private Optional<Bounds> shown = Optional.empty();

    PlanRoom(PlanPicture picture) {
        this.picture = picture;
        this.moves = new PanZoom(picture, port);
        picture.setFocusTraversable(true);
        picture.setAccessibleHelp("Plus and minus enlarge and shrink a plan, 0 shows all of it; a drag moves it.");
        picture.setOnMousePressed(this::pressed);
        picture.setOnMouseDragged(e -> moves.drag(e.getX(), e.getY()));
        picture.setOnKeyPressed(e -> {
            if (moves.key(e.getCode())) e.consume();
        });
        picture.widthProperty().addListener((o, was, is) -> size());
        picture.heightProperty().addListener((o, was, is) -> size());
        port.view().addListener((o, was, is) -> draw());
    }

    private void pressed(MouseEvent e) {
        picture.requestFocus();
        moves.press(e.getX(), e.getY());
        if (e.getClickCount() == 2) port.fit();
    }

    private void size() {
        port.size(Math.max(1, picture.getWidth()), Math.max(1, picture.getHeight()));
    }

    ViewPort port() {
        return port;
    }

    /**
     * Shows a plan; it keeps its place while another of the same house is shown.
     *
     * @param bounds of the plan
     * @param letters how much larger than usual they are
     */
    void show(Bounds bounds, double letters, Drawing drawing) {
        plan = Optional.of(drawing);
        port.enlarge(letters);
        if (!shown.equals(Optional.of(bounds))) port.house(bounds);
        shown = Optional.of(bounds);
        draw();
    }

    /** Shows what is not a plan. */
    void showOther(Optional<BiConsumer<Canvas, Box>> drawing) {
        plan = Optional.empty();
        picture.show(drawing);
    }

    private void draw() {
        if (plan.isEmpty()) return;
        Drawing drawing = plan.get();
        PlanView v = port.view().get();
        double points = Pictures.PIXELS_PER_POINT;
        PlanView at = new PlanView(v.scale() / points, v.originX() / points, v.originY() / points);
        picture.show(Optional.of((canvas, box) -> drawing.draw(canvas, at, box)));
    }
}
