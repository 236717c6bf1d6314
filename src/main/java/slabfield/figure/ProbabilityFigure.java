package slabfield.figure;

import java.util.Arrays;
import java.util.List;
import slabfield.field.Result;
import slabfield.figure.VacuumScale.Law;
import slabfield.figure.VacuumScale.Range;
import slabfield.figure.VacuumScale.Sense;

/**
 * How likely something holds at each cell.
 *
 * @param base a solve on the same grid; the array is not changed
 * @param probability of each cell, 0 to 1, NaN where there is none, length {@code base.field().grid().cells()}
 * @param what the probability is of, such as "vacuum of at least 5 Pa"
 * @param basis what was varied to find it, in a sentence
 */
public record ProbabilityFigure(Result.Solved base, double[] probability, String what, String basis, MapStyle style)
        implements Figure {
    private static final double MARGIN = 14;
    private static final double BELOW = 58;
    private static final UnitsShown PERCENT = new UnitsShown("%", p -> -100 * p, "", q -> q, "", x -> x);

    public ProbabilityFigure {
        if (probability.length != base.field().grid().cells())
            throw new IllegalArgumentException("there must be one probability for each cell");
        for (double p : probability)
            if (p < 0 || p > 1) throw new IllegalArgumentException("a probability lies between 0 and 1, not at " + p);
    }

    @Override
    public String title() {
        return base.scenario().name();
    }

    @Override
    public String description() {
        double likely = Arrays.stream(probability)
                .filter(Double::isFinite)
                .filter(p -> p >= 0.9)
                .count();
        double all = Arrays.stream(probability).filter(Double::isFinite).count();
        return "Map of the probability of " + what + ": 90 % or more under " + Legend.percent(likely / all)
                + " of the cells. " + basis;
    }

    @Override
    public double height(Canvas measure, double width) {
        double u = style.fontScale(), inner = width - 2 * MARGIN * u;
        Bounds bounds = Bounds.of(base.scenario());
        return (2 * MARGIN + Heading.HEIGHT + BELOW) * u
                + inner * Math.min(1.2, bounds.height() / bounds.width())
                + notes(measure, inner).size() * 1.25 * new Ink(u).small();
    }

    private List<String> notes(Canvas canvas, double inner) {
        return Words.wrap(
                canvas, "Hatched: less likely than not. " + basis, inner, new Ink(style.fontScale()).fine(Ink.SOFT));
    }

    @Override
    public void draw(Canvas canvas) {
        Ink ink = new Ink(style.fontScale());
        double u = ink.size();
        Box page = new Box(0, 0, canvas.width(), canvas.height()).inset(MARGIN * u);
        new Heading(canvas, page, ink).draw(title(), "PREDICTED", Ink.DARK, "probability of " + what);
        VacuumScale scale = VacuumScale.of(Sense.VACUUM_ONLY, Law.LINEAR, new Range(-1, 0), style.monochrome());
        double[] turned = Arrays.stream(probability).map(p -> p == 0 ? 0 : -p).toArray();
        List<String> notes = notes(canvas, page.width());
        double foot = page.bottom() - notes.size() * 1.25 * ink.small();
        Box plan = new Box(page.left(), page.top() + Heading.HEIGHT * u, page.right(), foot - (BELOW - 6) * u);
        new ValuePlan(canvas, base.scenario(), ValuePlan.with(base, turned), scale, ink)
                .draw(plan, List.of(-0.1, -0.5, -0.9), p -> Math.round(-100 * p) + " %", p -> p > -0.5);
        new ColourBar(canvas, "Probability, %", scale, PERCENT, ink, true)
                .draw(page.left(), foot - (BELOW - 12) * u, Math.min(page.width(), 300 * u));
        double y = foot;
        for (String line : notes)
            canvas.text(line, page.left(), y += 1.25 * ink.small(), Canvas.Anchor.START, 0, ink.fine(Ink.SOFT));
    }
}
