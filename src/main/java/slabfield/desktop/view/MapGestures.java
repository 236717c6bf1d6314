package slabfield.desktop.view;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.scene.Cursor;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.MenuItem;
import javafx.scene.input.ContextMenuEvent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import slabfield.desktop.drawing.Hit;
import slabfield.desktop.viewmodel.Drawing;
import slabfield.desktop.viewmodel.Pointer;
import slabfield.desktop.viewmodel.Tool;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.SealState;

/** What mouse and keys do on the map: hands them to the drawing, in places of the plan. */
final class MapGestures {
    private static final int FAST = 10;
    private static final double STEP = 6;

    private final MapPane pane;
    private final Workbench bench;
    private final Drawing drawing;
    private final ViewPort port;
    private final ObjectProperty<Optional<Point>> probe;
    private final PanZoom moves;
    private final ContextMenu menu = new ContextMenu();
    private final PerFrame frame = new PerFrame();
    private boolean panning;
    private boolean space;

    MapGestures(MapPane pane, Workbench bench, ViewPort port, ObjectProperty<Optional<Point>> probe) {
        this.pane = pane;
        this.bench = bench;
        this.drawing = bench.drawing();
        this.port = port;
        this.probe = probe;
        this.moves = new PanZoom(pane, port);
        pane.setOnMouseMoved(e -> frame.next(() -> moved(e)));
        pane.setOnMouseExited(e -> {
            frame.flush();
            if (!pane.isFocused()) probe.set(Optional.empty());
            drawing.leave();
        });
        pane.setOnMousePressed(this::pressed);
        pane.setOnMouseDragged(e -> frame.next(() -> dragged(e)));
        pane.setOnMouseReleased(this::released);
        pane.setOnContextMenuRequested(this::stateMenu);
        pane.setOnKeyPressed(this::key);
        pane.setOnKeyReleased(e -> {
            if (e.getCode() == KeyCode.SPACE) space = false;
        });
        pane.setOnKeyTyped(this::typed);
    }

    private Pointer pointer(MouseEvent e) {
        return new Pointer(
                port.plan(e.getX(), e.getY()),
                port.metres(bench.look().reach(e.isSynthesized())),
                e.isShiftDown(),
                e.isAltDown());
    }

    private void moved(MouseEvent e) {
        Pointer p = pointer(e);
        if (drawing.tool().get() == Tool.SELECT) {
            probe.set(Optional.of(p.at()));
            pane.setCursor(pane.dimensionAt(e.getX(), e.getY()).isPresent() ? Cursor.TEXT : cursor(drawing.under(p)));
        } else {
            probe.set(Optional.empty());
            pane.setCursor(Cursor.CROSSHAIR);
            drawing.hover(p);
        }
    }

    private static Cursor cursor(Optional<Hit> under) {
        return under.filter(h -> h.part() != Hit.Part.BODY || h.item().kind() != slabfield.desktop.drawing.Kind.SLAB)
                .map(h -> switch (h.part()) {
                    case CORNER -> Cursor.HAND;
                    case EDGE, BODY -> Cursor.OPEN_HAND;
                })
                .orElse(Cursor.CROSSHAIR);
    }

    private void pressed(MouseEvent e) {
        frame.flush();
        pane.requestFocus();
        menu.hide();
        moves.press(e.getX(), e.getY());
        panning = e.getButton() != MouseButton.PRIMARY || space;
        if (panning) return;
        probe.set(Optional.empty());
        var dimension = pane.dimensionAt(e.getX(), e.getY());
        if (dimension.isPresent() && drawing.tool().get() == Tool.SELECT) pane.editDimension(dimension.get());
        else drawing.press(pointer(e));
    }

    private void dragged(MouseEvent e) {
        if (panning) {
            if (moves.drag(e.getX(), e.getY())) probe.set(Optional.empty());
        } else drawing.drag(pointer(e));
    }

    private void released(MouseEvent e) {
        frame.flush();
        if (!panning) {
            drawing.release(pointer(e));
            if (e.getClickCount() == 2 && e.isStillSincePress() && !drawing.doubleClick(pointer(e))) port.fit();
        }
        panning = false;
    }

    private void stateMenu(ContextMenuEvent e) {
        if (moves.hasPanned()) return;
        Point at = port.plan(e.getX(), e.getY());
        double reach = port.metres(bench.look().reach(false));
        Pointer p = Pointer.at(at, reach);
        if (drawing.tool().get() == Tool.SELECT && drawing.deleteCorner(p)) return;
        bench.document().scenario().get().openings().stream()
                .filter(o -> o.place() instanceof Opening.Spot spot
                        && spot.at().distanceTo(at) <= Math.max(reach, spot.radius()))
                .findFirst()
                .ifPresent(o -> {
                    menu.getItems()
                            .setAll(Arrays.stream(SealState.values())
                                    .map(state -> item(o, state))
                                    .toList());
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

    private void typed(KeyEvent e) {
        if (e.isShortcutDown()
                || e.isAltDown()
                || e.getCharacter().isBlank() && !e.getCharacter().equals(" ")) return;
        boolean zooms = drawing.tool().get() == Tool.SELECT
                && List.of("+", "-", "=", "0").contains(e.getCharacter());
        if (!zooms && drawing.type(e.getCharacter())) e.consume();
    }

    private void key(KeyEvent e) {
        frame.flush();
        if (e.isShortcutDown() || e.isAltDown()) return;
        int many = e.isShiftDown() ? FAST : 1;
        boolean selecting = drawing.tool().get() == Tool.SELECT;
        switch (e.getCode()) {
            case LEFT, KP_LEFT -> arrow(-many, 0);
            case RIGHT, KP_RIGHT -> arrow(many, 0);
            case UP, KP_UP -> arrow(0, many);
            case DOWN, KP_DOWN -> arrow(0, -many);
            case ENTER -> drawing.enter();
            case BACK_SPACE, DELETE -> drawing.backspace();
            case SPACE -> space = selecting;
            case ESCAPE -> {
                probe.set(Optional.empty());
                drawing.escape();
            }
            case TAB -> {
                if (e.isShiftDown() || !drawing.tab()) return;
            }
            case N -> {
                if (!selecting) return;
                bench.moves().selectNext();
            }
            case PLUS, ADD, EQUALS, MINUS, SUBTRACT, DIGIT0, NUMPAD0, HOME -> {
                if (!selecting) return;
                moves.key(e.getCode());
            }
            default -> {
                return;
            }
        }
        e.consume();
    }

    private void arrow(int right, int up) {
        if (drawing.nudge(right, up)) return;
        Point from = probe.get().orElseGet(() -> port.plan(port.width() / 2, port.height() / 2));
        double step = port.metres(STEP);
        probe.set(Optional.of(new Point(from.x() + right * step, from.y() + up * step)));
    }
}
