package slabfield.desktop.view;

import java.util.Arrays;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.scene.Cursor;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.MenuItem;
import javafx.scene.input.ContextMenuEvent;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.SealState;
import slabfield.model.SuctionPoint;

/** What mouse and keys do on the map. */
final class MapGestures {
    private static final double GRIP = 14;
    private static final double FAST = 10;
    private static final double STEP = 6;

    private final MapPane pane;
    private final Workbench bench;
    private final ViewPort port;
    private final ObjectProperty<Optional<Point>> probe;
    private final ContextMenu menu = new ContextMenu();
    private boolean panning;
    private double lastX;
    private double lastY;

    MapGestures(MapPane pane, Workbench bench, ViewPort port, ObjectProperty<Optional<Point>> probe) {
        this.pane = pane;
        this.bench = bench;
        this.port = port;
        this.probe = probe;
        pane.setOnMouseMoved(this::moved);
        pane.setOnMouseExited(e -> {
            if (!pane.isFocused()) probe.set(Optional.empty());
        });
        pane.setOnMousePressed(this::pressed);
        pane.setOnMouseDragged(this::dragged);
        pane.setOnMouseReleased(e -> released());
        pane.setOnContextMenuRequested(this::stateMenu);
        pane.setOnScroll(e -> {
            if (!e.isInertia() && e.getDeltaY() != 0) port.zoom(Math.pow(1.0018, e.getDeltaY()), e.getX(), e.getY());
        });
        pane.setOnZoom(e -> port.zoom(e.getZoomFactor(), e.getX(), e.getY()));
        pane.setOnKeyPressed(this::key);
    }

    private Optional<SuctionPoint> suctionAt(double x, double y) {
        return bench.document().scenario().get().suctionPoints().stream()
                .filter(s -> Math.hypot(port.x(s.at()) - x, port.y(s.at()) - y) <= GRIP)
                .findFirst();
    }

    private void moved(MouseEvent e) {
        pane.setCursor(suctionAt(e.getX(), e.getY()).isPresent() ? Cursor.OPEN_HAND : Cursor.CROSSHAIR);
        probe.set(Optional.of(port.plan(e.getX(), e.getY())));
    }

    private void pressed(MouseEvent e) {
        pane.requestFocus();
        menu.hide();
        lastX = e.getX();
        lastY = e.getY();
        panning = false;
        if (e.getButton() != MouseButton.PRIMARY) return;
        if (e.getClickCount() == 2) port.fit();
        Optional<SuctionPoint> grip = suctionAt(e.getX(), e.getY());
        if (grip.isPresent()) {
            probe.set(Optional.empty());
            pane.setCursor(Cursor.CLOSED_HAND);
            bench.moves().begin(grip.get().id());
        } else {
            panning = true;
            bench.moves().selected().set(Optional.empty());
        }
    }

    private void dragged(MouseEvent e) {
        if (panning) {
            probe.set(Optional.empty());
            port.pan(e.getX() - lastX, e.getY() - lastY);
            lastX = e.getX();
            lastY = e.getY();
        } else if (bench.solving().dragging().get()) bench.moves().dragTo(port.plan(e.getX(), e.getY()));
    }

    private void released() {
        panning = false;
        if (bench.solving().dragging().get()) bench.moves().end();
        pane.setCursor(Cursor.CROSSHAIR);
    }

    private void stateMenu(ContextMenuEvent e) {
        Point at = port.plan(e.getX(), e.getY());
        bench.document().scenario().get().openings().stream()
                .filter(o -> o.place() instanceof Opening.Spot spot
                        && spot.at().distanceTo(at) <= Math.max(port.metres(GRIP), spot.radius()))
                .findFirst()
                .ifPresent(o -> {
                    menu.getItems().setAll(Arrays.stream(SealState.values()).map(state -> item(o, state)).toList());
                    menu.show(pane, e.getScreenX(), e.getScreenY());
                });
    }

    private MenuItem item(Opening opening, SealState state) {
        boolean is = opening.seal().state() == state;
        MenuItem item = new MenuItem(opening.id() + ": " + state.word() + (is ? " (as it is)" : ""));
        item.setDisable(is);
        item.setOnAction(a -> bench.seal(opening.id(), state));
        return item;
    }

    private void key(KeyEvent e) {
        if (e.isShortcutDown() || e.isAltDown()) return;
        int many = e.isShiftDown() ? (int) FAST : 1;
        switch (e.getCode()) {
            case LEFT, KP_LEFT -> arrow(-many, 0);
            case RIGHT, KP_RIGHT -> arrow(many, 0);
            case UP, KP_UP -> arrow(0, many);
            case DOWN, KP_DOWN -> arrow(0, -many);
            case N -> bench.moves().selectNext();
            case PLUS, ADD, EQUALS -> port.zoom(1.25);
            case MINUS, SUBTRACT -> port.zoom(0.8);
            case DIGIT0, NUMPAD0, HOME -> port.fit();
            case ESCAPE -> {
                probe.set(Optional.empty());
                bench.moves().selected().set(Optional.empty());
            }
            default -> {
                return;
            }
        }
        e.consume();
    }

    private void arrow(int right, int up) {
        if (bench.moves().selected().get().isPresent()) {
            bench.moves().nudge(right, up);
            return;
        }
        Point from = probe.get().orElseGet(() -> port.plan(port.width() / 2, port.height() / 2));
        double step = port.metres(STEP);
        probe.set(Optional.of(new Point(from.x() + right * step, from.y() + up * step)));
    }
}
