package slabfield.desktop.view;

import java.util.Optional;
import javafx.scene.Cursor;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import slabfield.desktop.viewmodel.MapLook;
import slabfield.desktop.viewmodel.Pins.Pin;
import slabfield.desktop.viewmodel.see.Sight;
import slabfield.desktop.viewmodel.see.Sight.Marking;
import slabfield.figure.Profile;
import slabfield.model.Point;

/** Sets and moves pins and draws the line of a profile on the map, while one of the two is asked for; else the map's own gestures hold. */
final class SightGestures {
    private static final double SHORTEST = 0.05;

    private final Sight sight;
    private final MapLook look;
    private final ViewPort port;
    private Optional<Point> from = Optional.empty();
    private Optional<Pin> held = Optional.empty();

    SightGestures(MapPane pane, Sight sight, MapLook look, ViewPort port) {
        this.look = look;
        this.sight = sight;
        this.port = port;
        pane.addEventFilter(MouseEvent.MOUSE_PRESSED, this::pressed);
        pane.addEventFilter(MouseEvent.MOUSE_DRAGGED, this::dragged);
        pane.addEventFilter(MouseEvent.MOUSE_RELEASED, this::released);
        pane.addEventFilter(KeyEvent.KEY_PRESSED, e -> {
            if (e.getCode() != KeyCode.ESCAPE || sight.marking().get() == Marking.NONE) return;
            sight.marking().set(Marking.NONE);
            e.consume();
        });
        sight.marking()
                .addListener((o, was, is) -> pane.setCursor(is == Marking.NONE ? Cursor.DEFAULT : Cursor.CROSSHAIR));
    }

    private void pressed(MouseEvent e) {
        if (e.getButton() != MouseButton.PRIMARY || sight.marking().get() == Marking.NONE) return;
        Point at = port.plan(e.getX(), e.getY());
        if (sight.marking().get() == Marking.PIN) {
            held = sight.pinAt(at, port.metres(look.reach(e.isSynthesized())));
            if (held.isEmpty()) sight.pin(at);
            sight.grabPin();
            sight.marking().set(Marking.NONE);
        } else if (from.isEmpty()) from = Optional.of(at);
        else end(at);
        e.consume();
    }

    private void dragged(MouseEvent e) {
        if (held.isPresent()) {
            sight.movePin(held.get(), port.plan(e.getX(), e.getY()));
            e.consume();
        }
        if (from.isEmpty()) return;
        line(port.plan(e.getX(), e.getY()));
        e.consume();
    }

    /** Ends the line where it was dragged; where it was only clicked, a second click ends it. */
    private void released(MouseEvent e) {
        if (held.isPresent()) e.consume();
        held = Optional.empty();
        if (from.isEmpty()) return;
        Point at = port.plan(e.getX(), e.getY());
        if (from.get().distanceTo(at) > SHORTEST) end(at);
        e.consume();
    }

    private void end(Point at) {
        line(at);
        from = Optional.empty();
        sight.marking().set(Marking.NONE);
    }

    private void line(Point to) {
        if (from.get().distanceTo(to) > SHORTEST) sight.cut().set(Optional.of(new Profile(from.get(), to)));
    }
}
