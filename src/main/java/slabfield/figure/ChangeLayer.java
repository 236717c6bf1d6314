package slabfield.figure;

import java.util.List;
import slabfield.field.PressureField;
import slabfield.field.Result;
import slabfield.figure.VacuumScale.Law;
import slabfield.figure.VacuumScale.Range;
import slabfield.figure.VacuumScale.Sense;
import slabfield.model.Point;

/** What a change of the house does to the pressure, after less before: more vacuum is negative, as everywhere. */
public final class ChangeLayer implements PlanLayer {
    private static final int PART = 4;

    private final PressureField change;
    private final VacuumScale scale;
    private final MapStyle style;

    /**
     * @param before may be on another grid; then it is read at the middles of the cells of the other
     * @param style of the map; its range does not count, the change has one of its own, the same to both sides
     */
    public ChangeLayer(Result.Solved before, Result.Solved after, MapStyle style) {
        this.style = style;
        PressureField field = after.field();
        double[] d = field.pressure().clone();
        double most = 0;
        for (int c = 0; c < d.length; c++) {
            Point at = new Point(
                    field.grid().x(c % field.grid().columns()),
                    field.grid().y(c / field.grid().columns()));
            d[c] -= before.field().at(at.x(), at.y()).orElse(Double.NaN);
            if (field.counts()[c] && Double.isFinite(d[c])) most = Math.max(most, Math.abs(d[c]));
        }
        double unit = style.units().pressureUnit(), end = unit * Steps.end(Math.max(most / unit, 1e-3));
        change = new PressureField(field.grid(), field.kind(), d, field.counts(), field.openArea());
        scale = VacuumScale.of(Sense.SIGNED, Law.SQUARE_ROOT, new Range(-end, end), style.monochrome());
    }

    @Override
    public String heading() {
        return "change of the pressure, after less before";
    }

    @Override
    public boolean hidesField() {
        return true;
    }

    /** The change at a place, after less before [Pa]; NaN where there is none. */
    public double at(Point place) {
        return change.at(place.x(), place.y()).orElse(Double.NaN);
    }

    @Override
    public void draw(Canvas canvas, PlanView view, Box box, double fontScale) {
        Box seen = LayerInk.seen(change.grid(), view, box);
        if (seen.width() <= 0 || seen.height() <= 0) return;
        LayerInk.colours(canvas, view, seen, change, scale);
        Ink ink = new Ink(fontScale);
        weaker(canvas, view, seen, ink);
        lines(canvas, view, box, ink);
    }

    private void weaker(Canvas canvas, PlanView view, Box seen, Ink ink) {
        double least = 0.02 * scale.range().high();
        Hatching.Region region = (x, y) -> {
            var place = view.plan(x, y);
            return HeatMap.value(change, place.x(), place.y()) > least;
        };
        for (double[] line : Hatching.across(seen, region, 6.5 * ink.size(), -Math.PI / 4))
            canvas.line(line, false, ink.solid(Ink.SHORTFALL, 0.7));
    }

    private void lines(Canvas canvas, PlanView view, Box box, Ink ink) {
        double unit = style.units().pressureUnit(),
                part = unit * Steps.atMost(scale.range().high() / unit / PART);
        LayerInk.isolines(
                canvas,
                view,
                box,
                ink,
                change,
                List.of(-4 * part, -2 * part, -part, -part / 2, part / 2, part, 2 * part, 4 * part),
                style.units()::round);
    }

    @Override
    public void explain(Key key, double fontScale) {
        Ink ink = new Ink(fontScale);
        key.paragraph("Change of the pressure, after less before, "
                + style.units().pressureSymbol() + ". Negative = more vacuum than before.");
        double[] ends = {
            -scale.range().high(),
            -scale.range().high() / PART,
            0,
            scale.range().high() / PART,
            scale.range().high()
        };
        for (double at : ends)
            key.entry(
                    (canvas, x, y, half) -> {
                        double[] ring = LayerInk.swatch(x, y, half, ink);
                        canvas.fill(List.of(ring), scale.argb(at));
                        if (at > 0)
                            canvas.hatch(List.of(ring), 4.5 * ink.size(), -Math.PI / 4, ink.solid(Ink.SHORTFALL, 0.9));
                        canvas.line(ring, true, ink.solid(Ink.SOFT, 0.5));
                    },
                    (at > 0 ? "+" : "")
                            + style.units().round(at)
                            + (at == 0 ? ": no change" : at < 0 ? ": more vacuum" : ": less vacuum, hatched"));
    }
}
