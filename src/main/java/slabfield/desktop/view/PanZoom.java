package slabfield.desktop.view;

import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;

/** Moves and enlarges a plan: by wheel, by two fingers, by keys, and by a drag that its owner hands over. */
final class PanZoom {
    /** A press that moves less is not a drag [px]. */
    private static final double STILL = 3;

    private static final double LARGER = 1.25, SMALLER = 0.8;

    private final ViewPort port;
    private double lastX;
    private double lastY;
    private boolean panned;

    PanZoom(Region pane, ViewPort port) {
        this.port = port;
        pane.setOnScroll(e -> {
            if (!e.isInertia() && e.getDeltaY() != 0) port.zoom(Math.pow(1.0018, e.getDeltaY()), e.getX(), e.getY());
        });
        pane.setOnZoom(e -> port.zoom(e.getZoomFactor(), e.getX(), e.getY()));
    }

    /** A button goes down. */
    void press(double x, double y) {
        lastX = x;
        lastY = y;
        panned = false;
    }

    /** The mouse moves with the button down; true once that moves the plan. */
    boolean drag(double x, double y) {
        panned |= Math.hypot(x - lastX, y - lastY) > STILL;
        if (!panned) return false;
        port.pan(x - lastX, y - lastY);
        lastX = x;
        lastY = y;
        return true;
    }

    /** Whether the last press moved the plan. */
    boolean hasPanned() {
        return panned;
    }

    /** Takes a key that enlarges, shrinks or shows all; false where it does none of that. */
    boolean key(KeyCode code) {
        switch (code) {
            case PLUS, ADD, EQUALS -> port.zoom(LARGER);
            case MINUS, SUBTRACT -> port.zoom(SMALLER);
            case DIGIT0, NUMPAD0, HOME -> port.fit();
            default -> {
                return false;
            }
        }
        return true;
    }
}
