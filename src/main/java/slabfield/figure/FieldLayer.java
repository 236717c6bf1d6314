package slabfield.figure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import slabfield.field.CellKind;
import slabfield.field.PressureField;
import slabfield.field.Result;

/** The field under the slab: colours, hatches, isolines and the target's line. */
final class FieldLayer {
    private static final double MOST_PIXELS = 4e6;

    /** A line on the page, with what is written on it. */
    record Labelled(double[] line, String text, boolean target) {}

    private final Canvas canvas;
    private final Result.Solved solved;
    private final PressureField field;
    private final MapStyle style;
    private final VacuumScale scale;
    private final PlanView view;
    private final Box seen;
    private final Ink ink;

    FieldLayer(Canvas canvas, Result.Solved solved, VacuumScale scale, MapStyle style, PlanView view, Box box) {
        this.canvas = canvas;
        this.solved = solved;
        this.field = solved.field();
        this.style = style;
        this.scale = scale;
        this.view = view;
        var grid = field.grid();
        Box slab = view.box(new Bounds(grid.left(), grid.bottom(), grid.right(), grid.top()));
        this.seen = new Box(
                Math.max(box.left(), slab.left()),
                Math.max(box.top(), slab.top()),
                Math.min(box.right(), slab.right()),
                Math.min(box.bottom(), slab.bottom()));
        this.ink = new Ink(style.fontScale());
    }

    /** Draws what lies in sight; returns the lines that should be labelled. */
    List<Labelled> draw(List<double[]> slabs) {
        List<Labelled> lines = new ArrayList<>();
        if (seen.width() <= 0 || seen.height() <= 0) return lines;
        canvas.clipped(slabs, () -> {
            colours();
            hatches();
            isolines(lines);
        });
        return lines;
    }

    private void colours() {
        double fine = canvas.pixelsPerPoint();
        double squeeze = Math.min(1, Math.sqrt(MOST_PIXELS / (seen.width() * seen.height() * fine * fine)));
        int columns = Math.max(1, (int) Math.round(seen.width() * fine * squeeze));
        int rows = Math.max(1, (int) Math.round(seen.height() * fine * squeeze));
        canvas.image(HeatMap.pixels(field, scale, columns, rows, view.bounds(seen)), columns, rows, seen);
    }

    private void hatches() {
        hatch(
                (x, y) -> kindAt(x, y) == CellKind.UNREACHED || kindAt(x, y) == CellKind.LAYER && noPressure(x, y),
                3.6,
                -Math.PI / 4,
                ink.solid(Ink.NO_DATA, 1));
        double target = solved.coverage().target();
        if (style.hatch())
            hatch(
                    (x, y) -> kindAt(x, y) == CellKind.LAYER && pressure(x, y) > -target,
                    7.5,
                    Math.PI / 4,
                    ink.solid(Ink.SHORTFALL, 0.7));
        if (style.monochrome() || pushes(field))
            hatch(
                    (x, y) -> kindAt(x, y) == CellKind.LAYER && pressure(x, y) > 0,
                    4,
                    Math.PI / 2,
                    ink.dashed(Ink.DARK, 0.9, 1.5, 2.5));
    }

    private void hatch(Hatching.Region region, double spacing, double angle, Canvas.Pen pen) {
        for (double[] line : Hatching.across(seen, region, spacing * ink.size(), angle)) canvas.line(line, false, pen);
    }

    /** Whether any part of the layer that counts lies above the room; it is hatched, since a grey print has no orange. */
    static boolean pushes(PressureField field) {
        for (int i = 0; i < field.pressure().length; i++) if (field.counts()[i] && field.pressure()[i] > 0) return true;
        return false;
    }

    private CellKind kindAt(double pageX, double pageY) {
        var grid = field.grid();
        var place = view.plan(pageX, pageY);
        int column = grid.column(place.x()), row = grid.row(place.y());
        return column < 0 || row < 0 ? CellKind.OUTSIDE : field.kind()[grid.index(column, row)];
    }

    private double pressure(double pageX, double pageY) {
        var place = view.plan(pageX, pageY);
        return HeatMap.value(field, place.x(), place.y());
    }

    private boolean noPressure(double pageX, double pageY) {
        return Double.isNaN(pressure(pageX, pageY));
    }

    /** The target's line last, so that it lies on top. */
    private void isolines(List<Labelled> labelled) {
        double target = solved.coverage().target();
        Map<Double, Boolean> strong = new LinkedHashMap<>();
        if (style.isolines())
            Levels.of(field, target, style.units().pressureUnit()).forEach(l -> strong.put(l.pressure(), l.index()));
        List<Double> levels = new ArrayList<>(strong.keySet());
        levels.add(-target);
        LineSigns signs = new LineSigns(canvas, ink);
        for (Contours.Isoline isoline : Contours.of(field, levels)) {
            double[] line = page(isoline);
            if (isoline.level() == -target) {
                signs.target(line, isoline.closed());
                labelled.add(new Labelled(line, "target " + targetText(solved, style), true));
                continue;
            }
            signs.isoline(line, isoline.closed(), strong.get(isoline.level()));
            if (strong.get(isoline.level()))
                labelled.add(new Labelled(line, style.units().round(isoline.level()), false));
        }
    }

    static String targetText(Result.Solved solved, MapStyle style) {
        return style.units().round(solved.coverage().target()) + " "
                + style.units().pressureSymbol();
    }

    private double[] page(Contours.Isoline isoline) {
        double[] line = isoline.line().clone();
        for (int i = 0; i < line.length; i += 2) {
            line[i] = view.pageX(isoline.line()[i]);
            line[i + 1] = view.pageY(isoline.line()[i + 1]);
        }
        return line;
    }
}
