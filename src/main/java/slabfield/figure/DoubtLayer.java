package slabfield.figure;

import java.util.ArrayList;
import java.util.List;
import slabfield.field.CellKind;
import slabfield.field.Grid;
import slabfield.field.Result;
import slabfield.model.TestHole;
import slabfield.model.Zone;

/**
 * Where the map rests on more than is known: where Darcy's law alone is used though the air moves too fast for it, and
 * where no test hole is near enough to hold the prediction against.
 */
public final class DoubtLayer implements PlanLayer {
    /** Distance beyond which no test hole stands for a place, common practice [m]. */
    public static final double NEAR = 3;

    private static final int LAW = 0xFF7B1F6A;
    private static final int FAR = Ink.DARK;

    private final Result.Solved solved;
    private final double limit;
    private final MapStyle style;

    /** @param limit quadratic over linear part of the pressure gradient above which Darcy's law alone is doubtful */
    public DoubtLayer(Result.Solved solved, double limit, MapStyle style) {
        this.solved = solved;
        this.limit = limit;
        this.style = style;
    }

    @Override
    public void draw(Canvas canvas, PlanView view, Box box, double fontScale) {
        Grid g = solved.field().grid();
        Box slab = view.box(new Bounds(g.left(), g.bottom(), g.right(), g.top()));
        Box seen = new Box(
                Math.max(box.left(), slab.left()),
                Math.max(box.top(), slab.top()),
                Math.min(box.right(), slab.right()),
                Math.min(box.bottom(), slab.bottom()));
        if (seen.width() <= 0 || seen.height() <= 0) return;
        Ink ink = new Ink(fontScale);
        boolean[] law = lawDoubtful();
        hatch(
                canvas,
                seen,
                (x, y) -> far(view, x, y),
                9 * ink.size(),
                Math.PI / 2,
                ink.dashed(Ink.WHITE, 2.6, 2.6, 6.4));
        hatch(canvas, seen, (x, y) -> far(view, x, y), 9 * ink.size(), Math.PI / 2, ink.dashed(FAR, 1.6, 1.6, 7.4));
        for (double angle : new double[] {0, Math.PI / 2})
            hatch(canvas, seen, (x, y) -> at(law, view, x, y), 6 * ink.size(), angle, ink.solid(LAW, 0.9));
    }

    private static void hatch(
            Canvas canvas, Box seen, Hatching.Region region, double spacing, double angle, Canvas.Pen pen) {
        for (double[] line : Hatching.across(seen, region, spacing, angle)) canvas.line(line, false, pen);
    }

    private boolean at(boolean[] marked, PlanView view, double pageX, double pageY) {
        int cell = cell(view, pageX, pageY);
        return cell >= 0 && marked[cell];
    }

    private int cell(PlanView view, double pageX, double pageY) {
        Grid g = solved.field().grid();
        var place = view.plan(pageX, pageY);
        int column = g.column(place.x()), row = g.row(place.y());
        return column < 0 || row < 0 ? -1 : g.index(column, row);
    }

    private boolean far(PlanView view, double pageX, double pageY) {
        int cell = cell(view, pageX, pageY);
        if (cell < 0 || solved.field().kind()[cell] != CellKind.LAYER) return false;
        var place = view.plan(pageX, pageY);
        return solved.scenario().testHoles().stream().map(TestHole::at).noneMatch(h -> h.distanceTo(place) <= NEAR);
    }

    /** For each cell, whether its fill has Darcy's law alone and the air moves too fast for it. */
    boolean[] lawDoubtful() {
        Grid g = solved.field().grid();
        boolean[] doubtful = new boolean[g.cells()];
        PlanView metres = new PlanView(1, 0, 0);
        List<List<double[]>> zones = new ArrayList<>();
        for (Zone z : solved.scenario().layer().zones()) zones.add(List.of(Lines.page(z.outline(), metres)));
        for (int c = 0; c < doubtful.length; c++) {
            double x = g.x(c % g.columns()),
                    y = g.y(c / g.columns()),
                    inertial = solved.scenario().layer().fill().inertial();
            for (int z = 0; z < zones.size(); z++)
                if (Lines.inside(zones.get(z), x, -y))
                    inertial = solved.scenario().layer().zones().get(z).fill().inertial();
            doubtful[c] = inertial == 0 && solved.inertialShare()[c] > limit;
        }
        return doubtful;
    }

    @Override
    public void explain(Key key, double fontScale) {
        Ink ink = new Ink(fontScale);
        boolean any = false;
        for (boolean each : lawDoubtful()) any |= each;
        if (any)
            key.entry(
                    (canvas, x, y, half) -> {
                        double[] ring = new Box(x - half, y - 4.2 * ink.size(), x + half, y + 4.2 * ink.size()).ring();
                        for (double angle : new double[] {0, Math.PI / 2})
                            canvas.hatch(List.of(ring), 4 * ink.size(), angle, ink.solid(LAW, 0.9));
                        canvas.line(ring, true, ink.solid(Ink.SOFT, 0.5));
                    },
                    "Darcy's law alone is doubtful: the air moves too fast");
        key.entry(
                (canvas, x, y, half) -> {
                    double[] ring = new Box(x - half, y - 4.2 * ink.size(), x + half, y + 4.2 * ink.size()).ring();
                    canvas.hatch(List.of(ring), 5 * ink.size(), Math.PI / 2, ink.dashed(FAR, 1.6, 1.6, 3));
                    canvas.line(ring, true, ink.solid(Ink.SOFT, 0.5));
                },
                "no test hole within about "
                        + Math.round(style.units().lengthFromSi().applyAsDouble(NEAR)) + " "
                        + style.units().lengthSymbol());
    }
}
