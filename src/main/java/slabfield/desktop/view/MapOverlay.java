package slabfield.desktop.view;

import java.util.Optional;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.SuctionPoint;

/** Draws what moves faster than the map: handles of suction points and the cross-hair. */
final class MapOverlay {
    private static final Color DARK = Color.web("#18222e");
    private static final Color SELECTED = Color.web("#0b5cad");

    private MapOverlay() {}

    static void draw(Canvas canvas, ViewPort port, Scenario scenario, Optional<String> selected, Optional<Point> cross, double size) {
        GraphicsContext g = canvas.getGraphicsContext2D();
        g.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
        for (SuctionPoint point : scenario.suctionPoints())
            handle(g, port.x(point.at()), port.y(point.at()), size, selected.equals(Optional.of(point.id())));
        cross.ifPresent(at -> cross(g, port.x(at), port.y(at)));
    }

    private static void handle(GraphicsContext g, double x, double y, double size, boolean selected) {
        double r = 8.5 * size;
        g.setFill(Color.WHITE);
        g.fillOval(x - r, y - r, 2 * r, 2 * r);
        g.setStroke(selected ? SELECTED : DARK);
        g.setLineWidth(2.2 * size);
        g.strokeOval(x - r, y - r, 2 * r, 2 * r);
        g.setFill(selected ? SELECTED : DARK);
        double w = 4.6 * size;
        g.fillPolygon(new double[] {x, x + w, x, x - w}, new double[] {y - w, y + 0.75 * w, y + 0.2 * w, y + 0.75 * w}, 4);
        if (!selected) return;
        g.setLineWidth(2 * size);
        g.setLineDashes(4 * size, 3 * size);
        g.strokeOval(x - 1.6 * r, y - 1.6 * r, 3.2 * r, 3.2 * r);
        g.setLineDashes();
    }

    private static void cross(GraphicsContext g, double x, double y) {
        for (int pass = 0; pass < 2; pass++) {
            g.setStroke(pass == 0 ? Color.WHITE : DARK);
            g.setLineWidth(pass == 0 ? 4 : 1.6);
            g.strokeLine(x - 14, y, x - 4, y);
            g.strokeLine(x + 4, y, x + 14, y);
            g.strokeLine(x, y - 14, x, y - 4);
            g.strokeLine(x, y + 4, x, y + 14);
        }
    }
}
