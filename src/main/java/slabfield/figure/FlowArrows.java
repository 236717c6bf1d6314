package slabfield.figure;

import java.util.List;
import slabfield.field.AirPaths;

/** Arrows that point where the air goes, evenly over the page; their length follows the cube root of the flow. */
public final class FlowArrows implements PlanLayer {
    private static final double SPACING = 23;
    private static final double LONGEST = 20;
    private static final double LEAST = 1e-4;
    /** Part of the cells whose flow an arrow's length tells apart; above it all arrows are as long. */
    private static final double MANY = 0.9;

    private final FlowField field;
    private final double large;

    public FlowArrows(AirPaths paths) {
        field = new FlowField(paths);
        large = field.below(MANY);
    }

    @Override
    public void draw(Canvas canvas, PlanView view, Box box, double fontScale) {
        double step = SPACING * fontScale;
        double[] flow = new double[2];
        for (double y = box.top() + step / 2; y < box.bottom(); y += step)
            for (double x = box.left() + step / 2; x < box.right(); x += step) {
                var place = view.plan(x, y);
                field.at(place.x(), place.y(), flow);
                double size = Math.hypot(flow[0], flow[1]);
                if (size <= LEAST * large) continue;
                double length = LONGEST * fontScale * Math.min(1, Math.cbrt(size / large));
                arrow(canvas, x, y, length * flow[0] / size, -length * flow[1] / size, new Ink(fontScale));
            }
    }

    private static void arrow(Canvas canvas, double x, double y, double dx, double dy, Ink ink) {
        double length = Math.hypot(dx, dy),
                ux = dx / length,
                uy = dy / length,
                head = Math.min(0.55 * length, 5 * ink.size());
        double tipX = x + dx / 2, tipY = y + dy / 2, neckX = tipX - head * ux, neckY = tipY - head * uy;
        double[] shaft = {x - dx / 2, y - dy / 2, neckX, neckY}, ring = head(tipX, tipY, ux, uy, head, 0.42 * head);
        canvas.line(shaft, false, ink.solid(Streamlines.HALO, 2.6));
        canvas.fill(
                List.of(head(
                        tipX + 1.2 * ink.size() * ux,
                        tipY + 1.2 * ink.size() * uy,
                        ux,
                        uy,
                        head + 2.2 * ink.size(),
                        0.42 * head + 1.2 * ink.size())),
                Streamlines.HALO);
        canvas.line(shaft, false, ink.solid(Ink.DARK, 1));
        canvas.fill(List.of(ring), Ink.DARK);
    }

    /** A triangle with its tip at a place. */
    static double[] head(double x, double y, double ux, double uy, double length, double half) {
        double bx = x - length * ux, by = y - length * uy;
        return new double[] {x, y, bx - half * uy, by + half * ux, bx + half * uy, by - half * ux};
    }

    @Override
    public void explain(Key key, double fontScale) {
        key.entry(
                (canvas, x, y, half) -> arrow(canvas, x, y, 1.4 * half, 0, new Ink(fontScale)),
                "where the air goes; longer is more flow, by its cube root");
    }
}
