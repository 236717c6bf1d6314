package slabfield.figure;

import java.util.List;
import java.util.function.DoubleFunction;
import slabfield.field.CellKind;
import slabfield.field.PressureField;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;

/** A plan coloured by any number known for each cell: changes, probabilities. Isolines carry it, hatches mark a part of it. */
final class ValuePlan {
    private final Canvas canvas;
    private final Scenario scenario;
    private final PressureField values;
    private final VacuumScale scale;
    private final Ink ink;

    ValuePlan(Canvas canvas, Scenario scenario, PressureField values, VacuumScale scale, Ink ink) {
        this.canvas = canvas;
        this.scenario = scenario;
        this.values = values;
        this.scale = scale;
        this.ink = ink;
    }

    /** The same cells with other numbers. */
    static PressureField with(Result.Solved solved, double[] values) {
        PressureField field = solved.field();
        return new PressureField(field.grid(), field.kind(), values, field.counts(), field.openArea());
    }

    /** Cells to hatch, by their number. */
    interface Marked {
        boolean is(double value);
    }

    /**
     * Draws it.
     *
     * @param levels of isolines, in the scale's numbers
     * @param text of a level
     */
    void draw(Box box, List<Double> levels, DoubleFunction<String> text, Marked marked) {
        PlanView view = PlanView.fit(Bounds.of(scenario), box.inset(8 * ink.size()));
        canvas.clipped(List.of(box.ring()), () -> {
            List<double[]> slabs = Lines.rings(scenario.slabs(), view);
            canvas.fill(slabs, Ink.GROUND);
            var grid = values.grid();
            Box seen = view.box(new Bounds(grid.left(), grid.bottom(), grid.right(), grid.top()));
            canvas.clipped(slabs, () -> {
                colours(view, seen);
                hatch(view, seen, marked);
            });
            new HouseLayer(canvas, scenario, view, ink).draw();
            Labels labels = new Labels(box);
            signs(view, labels);
            LayerInk.isolines(canvas, view, labels, ink, values, levels, text);
            names(view, labels);
        });
    }

    private void colours(PlanView view, Box seen) {
        double fine = canvas.pixelsPerPoint();
        int columns = Math.max(1, (int) Math.round(seen.width() * fine)),
                rows = Math.max(1, (int) Math.round(seen.height() * fine));
        canvas.image(HeatMap.pixels(values, scale, columns, rows, view.bounds(seen)), columns, rows, seen);
    }

    private void hatch(PlanView view, Box seen, Marked marked) {
        Hatching.Region region = (x, y) -> {
            var place = view.plan(x, y);
            int column = values.grid().column(place.x()), row = values.grid().row(place.y());
            if (column < 0 || row < 0) return false;
            int cell = values.grid().index(column, row);
            return values.kind()[cell] == CellKind.LAYER && marked.is(values.pressure()[cell]);
        };
        for (double[] line : Hatching.across(seen, region, 6.5 * ink.size(), Math.PI / 4))
            canvas.line(line, false, ink.solid(Ink.SHORTFALL, 0.7));
    }

    private void signs(PlanView view, Labels labels) {
        Symbols symbols = new Symbols(canvas, ink);
        for (TestHole hole : scenario.testHoles()) {
            symbols.hole(view.pageX(hole.at().x()), view.pageY(hole.at().y()), Ink.WHITE);
            labels.take(
                    Box.around(view.pageX(hole.at().x()), view.pageY(hole.at().y()), symbols.reach()));
        }
        for (SuctionPoint point : scenario.suctionPoints()) {
            symbols.suction(view.pageX(point.at().x()), view.pageY(point.at().y()));
            labels.take(
                    Box.around(view.pageX(point.at().x()), view.pageY(point.at().y()), symbols.reach()));
        }
    }

    private void names(PlanView view, Labels labels) {
        var lettering = ink.rimmed(ink.small(), true);
        double near = 8 * ink.size();
        for (TestHole hole : scenario.testHoles())
            name(hole.id(), view.pageX(hole.at().x()), view.pageY(hole.at().y()), near, labels, lettering);
        for (SuctionPoint p : scenario.suctionPoints())
            name(p.id(), view.pageX(p.at().x()), view.pageY(p.at().y()), near, labels, lettering);
    }

    private void name(String text, double x, double y, double near, Labels labels, Canvas.Lettering lettering) {
        labels.place(x, y, canvas.textWidth(text, lettering) + 2, 1.2 * lettering.size(), near, 2 * near)
                .ifPresent(b -> canvas.text(
                        text, b.left() + 1, b.bottom() - 0.3 * lettering.size(), Canvas.Anchor.START, 0, lettering));
    }
}
