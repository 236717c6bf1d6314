package slabfield.figure;

import java.util.List;
import java.util.stream.DoubleStream;

/** The scale as a bar from most vacuum at the left, with ticks, unit and points for what lies beyond its ends. */
final class ColourBar {
    private static final double TALL = 11;
    private static final double POINT = 8;

    private final Canvas canvas;
    private final String title;
    private final VacuumScale scale;
    private final UnitsShown units;
    private final Ink ink;
    private final boolean closed;

    ColourBar(Canvas canvas, String title, VacuumScale scale, UnitsShown units, Ink ink) {
        this(canvas, title, scale, units, ink, false);
    }

    /**
     * A bar.
     *
     * @param closed nothing can lie beyond its ends, as with a probability; ticks then stand at the quarters
     */
    ColourBar(Canvas canvas, String title, VacuumScale scale, UnitsShown units, Ink ink, boolean closed) {
        this.canvas = canvas;
        this.title = title;
        this.scale = scale;
        this.units = units;
        this.ink = ink;
        this.closed = closed;
    }

    double height() {
        return 1.5 * ink.body() + TALL * ink.size() + 1.9 * ink.small() + 3 * ink.size();
    }

    void draw(double x, double y, double width) {
        double point = POINT * ink.size(), top = y + 1.5 * ink.body(), bottom = top + TALL * ink.size();
        String law = switch (scale.law()) {
            case LINEAR -> "linear";
            case SQUARE_ROOT -> "square-root scale";
            case SYMMETRIC_LOG -> "logarithmic scale";
        };
        canvas.text(title, x, y + ink.body(), Canvas.Anchor.START, 0, ink.bold(Ink.DARK));
        canvas.text(law, x + width, y + ink.body(), Canvas.Anchor.END, 0, ink.fine(Ink.SOFT));
        Box bar = new Box(x + point, top, x + width - point, bottom);
        colours(bar);
        if (!closed) ends(bar, point);
        canvas.line(bar.ring(), true, ink.solid(Ink.DARK, 0.7));
        ticks(bar);
    }

    private void colours(Box bar) {
        int n = Math.max(64, (int) (bar.width() * canvas.pixelsPerPoint()));
        int[] argb = new int[n];
        for (int i = 0; i < n; i++) argb[i] = scale.argb(scale.pressureAt((i + 0.5) / n));
        canvas.image(argb, n, 1, bar);
    }

    private void ends(Box bar, double point) {
        double middle = (bar.top() + bar.bottom()) / 2,
                reach = scale.range().high() - scale.range().low();
        double[] low = {bar.left(), bar.top(), bar.left() - point, middle, bar.left(), bar.bottom()};
        double[] high = {bar.right(), bar.top(), bar.right() + point, middle, bar.right(), bar.bottom()};
        canvas.fill(List.of(low), scale.argb(scale.range().low() - reach));
        canvas.fill(List.of(high), scale.argb(Math.max(0, scale.range().high()) + reach));
        canvas.line(low, true, ink.solid(Ink.DARK, 0.7));
        canvas.line(high, true, ink.solid(Ink.DARK, 0.7));
    }

    private void ticks(Box bar) {
        var lettering = ink.fine(Ink.DARK);
        double widest = canvas.textWidth("−0.05", lettering) + 3 * ink.size();
        for (VacuumScale.Tick tick : closed ? quarters() : scale.ticks(units.pressureUnit(), widest / bar.width())) {
            double at = bar.left() + tick.position() * bar.width();
            double[] mark = {at, bar.bottom(), at, bar.bottom() + 3 * ink.size()};
            canvas.line(mark, false, ink.solid(Ink.DARK, 0.7));
            String text = units.round(tick.pressure());
            double half = canvas.textWidth(text, lettering) / 2, rim = POINT * ink.size();
            double middle = Math.max(bar.left() - rim + half, Math.min(bar.right() + rim - half, at));
            canvas.text(text, middle, bar.bottom() + 3 * ink.size() + ink.small(), Canvas.Anchor.MIDDLE, 0, lettering);
        }
    }

    private List<VacuumScale.Tick> quarters() {
        return DoubleStream.of(0, 0.25, 0.5, 0.75, 1)
                .mapToObj(p -> new VacuumScale.Tick(scale.pressureAt(p), p))
                .toList();
    }
}
