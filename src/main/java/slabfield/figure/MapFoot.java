package slabfield.figure;

import java.util.List;

/** What a plan in a window says of itself: whether it is predicted or measured, how long a metre is, where north lies. */
public final class MapFoot implements PlanLayer {
    private static final double LONGEST_BAR = 110;

    private final String stamp;
    private final UnitsShown units;
    private final double north;

    /**
     * @param stamp such as "PREDICTED"; empty for none
     * @param north direction of north on the plan, clockwise from its y axis [degree]
     */
    public MapFoot(String stamp, UnitsShown units, double north) {
        this.stamp = stamp;
        this.units = units;
        this.north = north;
    }

    @Override
    public Depth depth() {
        return Depth.TOP;
    }

    @Override
    public List<Box> keepsFree(Canvas measure, PlanView view, Box box, double fontScale) {
        return List.of(new Laid(measure, view, box, new Ink(fontScale)).veil());
    }

    @Override
    public void draw(Canvas canvas, PlanView view, Box box, double fontScale) {
        Ink ink = new Ink(fontScale);
        Laid laid = new Laid(canvas, view, box, ink);
        double u = ink.size(), x = laid.stamp().left(), y = laid.base;
        canvas.fill(List.of(laid.veil().ring()), Ink.VEIL);
        if (!stamp.isEmpty()) canvas.fill(List.of(laid.stamp().ring()), Ink.DARK);
        canvas.text(stamp, x + 4 * u, y - 2.4 * u, Canvas.Anchor.START, 0, letters(ink));
        bar(canvas, ink, units, view, laid.barAt, y);
        arrow(canvas, ink, laid.northAt, y - 7.5 * u);
    }

    private static Canvas.Lettering letters(Ink ink) {
        return new Canvas.Lettering(ink.body(), true, Ink.WHITE, 0);
    }

    /** Where its parts lie. */
    private final class Laid {
        private final Box box;
        private final double u, base, stampWidth, barAt, northAt;

        Laid(Canvas measure, PlanView view, Box box, Ink ink) {
            this.box = box;
            u = ink.size();
            base = box.bottom() - 7 * u;
            stampWidth = measure.textWidth(stamp, letters(ink)) + 8 * u;
            barAt = box.left() + 8 * u + stampWidth + 14 * u;
            northAt = barAt + length(ink, units, view) + 46 * u;
        }

        Box stamp() {
            double x = box.left() + 8 * u;
            return new Box(x, base - 12 * u, x + stampWidth, base + 1 * u);
        }

        Box veil() {
            return new Box(box.left(), base - 19 * u, northAt + 13 * u, box.bottom());
        }
    }

    private static double count(Ink ink, UnitsShown units, PlanView view) {
        return Steps.atMost(Math.max(0.01, LONGEST_BAR * ink.size() / (units.lengthUnit() * view.scale())));
    }

    private static double length(Ink ink, UnitsShown units, PlanView view) {
        return count(ink, units, view) * units.lengthUnit() * view.scale();
    }

    /**
     * Draws the scale bar.
     *
     * @param x of its left end
     * @param y of its lower edge
     * @return its length on the page [points]
     */
    static double bar(Canvas canvas, Ink ink, UnitsShown units, PlanView view, double x, double y) {
        double u = ink.size(), length = length(ink, units, view);
        for (int i = 0; i < 2; i++) {
            double[] half = new Box(x + i * length / 2, y - 4 * u, x + (i + 1) * length / 2, y).ring();
            canvas.fill(List.of(half), i == 0 ? Ink.DARK : Ink.WHITE);
            canvas.line(half, true, ink.solid(Ink.DARK, 0.8));
        }
        canvas.text("0", x, y - 6.5 * u, Canvas.Anchor.MIDDLE, 0, ink.fine(Ink.DARK));
        String end = units.marked(UnitsShown.trimmed(count(ink, units, view))) + " " + units.lengthSymbol();
        canvas.text(end, x + length, y - 6.5 * u, Canvas.Anchor.MIDDLE, 0, ink.fine(Ink.DARK));
        return length;
    }

    private void arrow(Canvas canvas, Ink ink, double x, double y) {
        double u = ink.size(), angle = Math.toRadians(north), c = Math.cos(angle), s = Math.sin(angle);
        double[] shape = {0, -9, 4, 7, 0, 3.5, -4, 7}, ring = new double[8];
        for (int i = 0; i < 8; i += 2) {
            ring[i] = x + u * (c * shape[i] - s * shape[i + 1]);
            ring[i + 1] = y + u * (s * shape[i] + c * shape[i + 1]);
        }
        canvas.fill(List.of(ring), Ink.DARK);
        canvas.text("N", x - 10 * u, y + 3 * u, Canvas.Anchor.MIDDLE, 0, ink.bold(Ink.DARK));
    }
}
