package slabfield.figure;

import java.util.Arrays;
import java.util.List;
import slabfield.field.Result;
import slabfield.figure.VacuumScale.Law;
import slabfield.figure.VacuumScale.Range;
import slabfield.figure.VacuumScale.Sense;

/**
 * One house before and after a change, both on one scale of pressure, and the change itself below.
 *
 * @param before on the same grid as after
 * @param after the house changed
 * @param what was changed, in the user's words
 */
public record DifferenceFigure(Result.Solved before, Result.Solved after, String what, MapStyle style)
        implements Figure {
    private static final double MARGIN = 14;
    private static final double GAP = 12;
    private static final double CAPTION = 14;

    public DifferenceFigure {
        if (!before.field().grid().equals(after.field().grid()))
            throw new IllegalArgumentException("a difference needs two fields on one grid");
    }

    @Override
    public String title() {
        return before.scenario().name();
    }

    @Override
    public String description() {
        return "Predicted pressure before and after: " + what + ". The target is met under "
                + Legend.percent(before.coverage().meeting()) + " of the area before and "
                + Legend.percent(after.coverage().meeting())
                + " after.";
    }

    private Ink ink() {
        return new Ink(style.fontScale());
    }

    private double panel(double inner) {
        Bounds bounds = Bounds.of(before.scenario());
        double room = (inner - GAP * style.fontScale()) / 2 - 16 * style.fontScale();
        return room * Math.min(1.5, bounds.height() / bounds.width()) + 16 * style.fontScale();
    }

    @Override
    public double height(Canvas measure, double width) {
        double u = style.fontScale();
        return (2 * MARGIN + Heading.HEIGHT + 2 * CAPTION + GAP) * u + 2 * panel(width - 2 * MARGIN * u);
    }

    /** Change of the pressure at each cell, after less before [Pa]. */
    double[] change() {
        double[] a = before.field().pressure(), b = after.field().pressure(), d = new double[a.length];
        for (int i = 0; i < d.length; i++) d[i] = b[i] - a[i];
        return d;
    }

    /** One range that holds both fields. */
    Range shared() {
        double unit = style.units().pressureUnit();
        Range one = VacuumScale.rangeOf(before.field(), style.sense(), unit),
                two = VacuumScale.rangeOf(after.field(), style.sense(), unit);
        return new Range(Math.min(one.low(), two.low()), Math.max(one.high(), two.high()));
    }

    @Override
    public void draw(Canvas canvas) {
        Ink ink = ink();
        double u = ink.size();
        Box page = new Box(0, 0, canvas.width(), canvas.height()).inset(MARGIN * u);
        new Heading(canvas, page, ink).draw(title(), "PREDICTED", Ink.DARK, "before and after: " + what);
        double side = (page.width() - GAP * u) / 2,
                tall = panel(page.width()),
                top = page.top() + (Heading.HEIGHT + CAPTION) * u;
        MapStyle one = style.with(style.range().orElseGet(this::shared));
        pane(canvas, before, "before", new Box(page.left(), top, page.left() + side, top + tall), one, ink);
        pane(canvas, after, "after", new Box(page.right() - side, top, page.right(), top + tall), one, ink);
        double lower = top + tall + (CAPTION + GAP) * u;
        change(
                canvas,
                new Box(page.left(), lower, page.left() + side, lower + tall),
                new Box(page.right() - side, lower, page.right(), lower + tall),
                one,
                ink);
    }

    private void pane(Canvas canvas, Result.Solved solved, String name, Box box, MapStyle one, Ink ink) {
        String met = ": target met under " + Legend.percent(solved.coverage().meeting()) + " of the area";
        caption(canvas, name + met, box, ink);
        PlanView view = PlanView.fit(Bounds.of(solved.scenario()), box.inset(8 * ink.size()));
        VacuumMap.drawPlan(canvas, solved, one, view, box);
    }

    private static void caption(Canvas canvas, String text, Box box, Ink ink) {
        canvas.text(text, box.left(), box.top() - 4 * ink.size(), Canvas.Anchor.START, 0, ink.bold(Ink.DARK));
    }

    private void change(Canvas canvas, Box plan, Box key, MapStyle one, Ink ink) {
        double[] change = change();
        double reach = Arrays.stream(change)
                .filter(Double::isFinite)
                .map(Math::abs)
                .max()
                .orElse(0);
        double unit = style.units().pressureUnit(), end = unit * Steps.end(Math.max(reach / unit, 1e-3));
        VacuumScale scale = VacuumScale.of(Sense.SIGNED, Law.SQUARE_ROOT, new Range(-end, end), style.monochrome());
        caption(canvas, "the change: after less before", plan, ink);
        double part = Steps.atMost(reach / unit / 4) * unit;
        List<Double> levels = List.of(-4 * part, -2 * part, -part, part, 2 * part, 4 * part);
        new ValuePlan(canvas, after.scenario(), ValuePlan.with(after, change), scale, ink)
                .draw(plan, levels, style.units()::round, v -> v > 0.02 * end);
        VacuumScale pressure = VacuumMap.scale(before, one);
        String symbol = style.units().pressureSymbol();
        ColourBar upper = new ColourBar(canvas, "Before and after: pressure, " + symbol, pressure, style.units(), ink);
        upper.draw(key.left(), key.top(), key.width());
        ColourBar lower = new ColourBar(canvas, "The change, " + symbol, scale, style.units(), ink);
        double y = key.top() + upper.height() + 6 * ink.size();
        lower.draw(key.left(), y, key.width());
        y += lower.height() + 4 * ink.size();
        for (String line : Words.wrap(
                canvas,
                "Negative = more vacuum than before; hatched = less vacuum than before. Pressures are"
                        + " relative to the room.",
                key.width(),
                ink.fine(Ink.SOFT)))
            canvas.text(line, key.left(), y += 1.25 * ink.small(), Canvas.Anchor.START, 0, ink.fine(Ink.SOFT));
    }
}
