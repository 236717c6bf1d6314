package slabfield.desktop.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.geometry.VPos;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;
import slabfield.desktop.drawing.Form;
import slabfield.desktop.drawing.Item;
import slabfield.desktop.drawing.Items;
import slabfield.desktop.drawing.Kind;
import slabfield.desktop.drawing.Places;
import slabfield.desktop.drawing.Snap;
import slabfield.desktop.viewmodel.Selection;
import slabfield.desktop.viewmodel.Sketch;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.figure.Box;
import slabfield.model.NoDrillArea;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.SuctionPoint;

/** Draws what moves faster than the map: handles, what is chosen and its measures, what is being drawn, the cross-hair. */
final class MapOverlay {
    private static final Color DARK = Color.web("#18222e");
    private static final Color SELECTED = Color.web("#0b5cad");
    private static final Color FORBIDDEN = Color.web("#9c2b0e");
    private static final double SHORTEST = 36;

    /** A measure on the plan that can be clicked. */
    record Shown(Selection.Dimension dimension, Box box) {}

    private final GraphicsContext g;
    private final Canvas canvas;
    private final ViewPort port;
    private final Workbench bench;
    private final double size;
    private final List<Shown> dimensions = new ArrayList<>();

    private MapOverlay(Canvas canvas, ViewPort port, Workbench bench) {
        this.canvas = canvas;
        this.g = canvas.getGraphicsContext2D();
        this.port = port;
        this.bench = bench;
        this.size = bench.look().style().get().fontScale();
    }

    /**
     * @param cross where the keyboard's cross-hair stands, if it is shown
     * @param targets lines of the target while the map follows a drag, x0, y0, x1, y1 ... [m]
     * @return measures that can be clicked
     */
    static List<Shown> draw(
            Canvas canvas, ViewPort port, Workbench bench, Optional<Point> cross, List<double[]> targets) {
        return new MapOverlay(canvas, port, bench).draw(cross, targets);
    }

    private List<Shown> draw(Optional<Point> cross, List<double[]> targets) {
        g.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
        Scenario scenario =
                bench.drawing().layers().visible(bench.document().scenario().get());
        for (NoDrillArea area : scenario.plan().noDrillAreas()) noDrill(area);
        targets.forEach(this::target);
        for (Item item : bench.drawing().selection().items().get())
            Items.form(scenario, item).ifPresent(this::chosen);
        for (SuctionPoint point : scenario.suctionPoints())
            handle(
                    port.x(point.at()),
                    port.y(point.at()),
                    bench.drawing().selection().items().get().stream()
                            .anyMatch(i -> i.kind() == Kind.SUCTION && i.id().equals(point.id())));
        if (!bench.solving().dragging().get() || bench.moves().selected().get().isEmpty()) dimensions();
        sketch(bench.drawing().sketch().get());
        cross.ifPresent(at -> cross(port.x(at), port.y(at)));
        return dimensions;
    }

    private double[] xs(List<Point> points) {
        return points.stream().mapToDouble(port::x).toArray();
    }

    private double[] ys(List<Point> points) {
        return points.stream().mapToDouble(port::y).toArray();
    }

    private void noDrill(NoDrillArea area) {
        double[] x = xs(area.outline()), y = ys(area.outline());
        g.setFill(Color.color(0.61, 0.17, 0.05, 0.13));
        g.fillPolygon(x, y, x.length);
        g.setStroke(FORBIDDEN);
        g.setLineWidth(1.5 * size);
        g.setLineDashes(7 * size, 4 * size);
        g.strokePolygon(x, y, x.length);
        g.setLineDashes();
        label(
                "no drilling" + (area.reason().isEmpty() ? "" : ": " + area.reason()),
                mean(x),
                mean(y),
                FORBIDDEN,
                false);
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double v : values) sum += v;
        return sum / values.length;
    }

    private void target(double[] line) {
        for (int pass = 0; pass < 2; pass++) {
            g.setStroke(pass == 0 ? Color.WHITE : DARK);
            g.setLineWidth((pass == 0 ? 4.5 : 2.4) * size);
            g.beginPath();
            for (int i = 0; i < line.length; i += 2) {
                double x = port.view().get().pageX(line[i]),
                        y = port.view().get().pageY(line[i + 1]);
                if (i == 0) g.moveTo(x, y);
                else g.lineTo(x, y);
            }
            g.stroke();
        }
    }

    private void chosen(Form form) {
        double[] x = xs(form.points()), y = ys(form.points());
        g.setStroke(SELECTED);
        g.setLineWidth(2.2 * size);
        if (form.shape() == Form.Shape.SPOT) {
            double r = Math.max(11 * size, form.reach() * port.view().get().scale());
            g.setLineDashes(4 * size, 3 * size);
            g.strokeOval(x[0] - r, y[0] - r, 2 * r, 2 * r);
            g.setLineDashes();
            return;
        }
        if (form.isRing()) g.strokePolygon(x, y, x.length);
        else g.strokePolyline(x, y, x.length);
        if (form.fixed()) return;
        double h = 4.2 * size;
        for (int i = 0; i < x.length; i++) {
            g.setFill(Color.WHITE);
            g.fillRect(x[i] - h, y[i] - h, 2 * h, 2 * h);
            g.strokeRect(x[i] - h, y[i] - h, 2 * h, 2 * h);
        }
    }

    /** Measures stand outside of an outline. */
    private void dimensions() {
        List<Selection.Dimension> all = bench.drawing().selection().dimensions();
        int out = Places.twiceArea(all.stream().map(Selection.Dimension::from).toList()) < 0 ? -1 : 1;
        all.forEach(d -> dimension(d, out));
    }

    private void dimension(Selection.Dimension d, int out) {
        double ax = port.x(d.from()), ay = port.y(d.from()), bx = port.x(d.to()), by = port.y(d.to());
        double length = Math.hypot(bx - ax, by - ay);
        if (length < SHORTEST) return;
        double nx = -out * (by - ay) / length, ny = out * (bx - ax) / length, off = 16 * size;
        Box box = label(
                bench.units().length(d.length()), (ax + bx) / 2 + off * nx, (ay + by) / 2 + off * ny, SELECTED, true);
        dimensions.add(new Shown(d, box));
    }

    private Box label(String words, double x, double y, Color colour, boolean framed) {
        Font font = Font.font("System", FontWeight.NORMAL, 12 * size);
        Text text = new Text(words);
        text.setFont(font);
        double w = text.getLayoutBounds().getWidth() + 8 * size,
                h = text.getLayoutBounds().getHeight() + 2 * size;
        g.setFill(Color.color(1, 1, 1, 0.9));
        g.fillRoundRect(x - w / 2, y - h / 2, w, h, 4, 4);
        if (framed) {
            g.setStroke(colour);
            g.setLineWidth(1);
            g.strokeRoundRect(x - w / 2, y - h / 2, w, h, 4, 4);
        }
        g.setFill(colour);
        g.setFont(font);
        g.setTextAlign(TextAlignment.CENTER);
        g.setTextBaseline(VPos.CENTER);
        g.fillText(words, x, y);
        return new Box(x - w / 2, y - h / 2, x + w / 2, y + h / 2);
    }

    private void sketch(Sketch sketch) {
        if (sketch.line().isEmpty()) return;
        double[] x = xs(sketch.line()), y = ys(sketch.line());
        if (sketch.frame()) {
            g.setFill(Color.color(0.04, 0.36, 0.68, 0.12));
            g.fillPolygon(x, y, x.length);
        }
        for (int pass = 0; pass < 2; pass++) {
            g.setStroke(pass == 0 ? Color.WHITE : SELECTED);
            g.setLineWidth((sketch.frame() ? 1 : 2) * (pass == 0 ? 2.2 : 1) * size);
            if (pass == 1) g.setLineDashes(6 * size, 4 * size);
            if (sketch.closed()) g.strokePolygon(x, y, x.length);
            else g.strokePolyline(x, y, x.length);
        }
        g.setLineDashes();
        sketch.snap().ifPresent(this::snap);
    }

    /** Each sort of snap has a sign of its own: square, triangle, cross, right angle, hourglass, bar, dot. */
    private void snap(Snap snap) {
        double x = port.x(snap.at()), y = port.y(snap.at()), r = 6.5 * size;
        g.setStroke(Color.web("#b4540a"));
        g.setLineWidth(1);
        g.setLineDashes(2, 3);
        for (Point guide : snap.guides()) g.strokeLine(port.x(guide), port.y(guide), x, y);
        g.setLineDashes();
        g.setLineWidth(2.2 * size);
        switch (snap.sort()) {
            case CORNER -> g.strokeRect(x - r, y - r, 2 * r, 2 * r);
            case MIDPOINT -> g.strokePolygon(new double[] {x - r, x + r, x}, new double[] {y + r, y + r, y - r}, 3);
            case CROSSING -> {
                g.strokeLine(x - r, y - r, x + r, y + r);
                g.strokeLine(x - r, y + r, x + r, y - r);
            }
            case PERPENDICULAR ->
                g.strokePolyline(new double[] {x - r, x - r, x + r}, new double[] {y - r, y + r, y + r}, 3);
            case EDGE ->
                g.strokePolygon(
                        new double[] {x - r, x + r, x - r, x + r}, new double[] {y - r, y - r, y + r, y + r}, 4);
            case STRAIGHT, ALIGNED -> g.strokeOval(x - r / 2, y - r / 2, r, r);
            case GRID, FREE -> {
                g.strokeLine(x - r / 2, y, x + r / 2, y);
                g.strokeLine(x, y - r / 2, x, y + r / 2);
            }
        }
    }

    private void handle(double x, double y, boolean selected) {
        double r = 8.5 * size;
        g.setFill(Color.WHITE);
        g.fillOval(x - r, y - r, 2 * r, 2 * r);
        g.setStroke(selected ? SELECTED : DARK);
        g.setLineWidth(2.2 * size);
        g.strokeOval(x - r, y - r, 2 * r, 2 * r);
        g.setFill(selected ? SELECTED : DARK);
        double w = 4.6 * size;
        g.fillPolygon(
                new double[] {x, x + w, x, x - w}, new double[] {y - w, y + 0.75 * w, y + 0.2 * w, y + 0.75 * w}, 4);
    }

    private void cross(double x, double y) {
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
