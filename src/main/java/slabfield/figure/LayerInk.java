package slabfield.figure;

import java.util.List;
import java.util.function.DoubleFunction;
import slabfield.field.Grid;
import slabfield.field.PressureField;

/** What layers over a plan have in common: the part of a grid in sight, its colours, isolines with their numbers. */
final class LayerInk {
    private static final double MOST_PIXELS = 4e6;

    private LayerInk() {}

    /** The part of a grid that lies in a box of the page; of no width or height where none does. */
    static Box seen(Grid g, PlanView view, Box box) {
        Box slab = view.box(new Bounds(g.left(), g.bottom(), g.right(), g.top()));
        return new Box(
                Math.max(box.left(), slab.left()),
                Math.max(box.top(), slab.top()),
                Math.min(box.right(), slab.right()),
                Math.min(box.bottom(), slab.bottom()));
    }

    /** Colours the part in sight. */
    static void colours(Canvas canvas, PlanView view, Box seen, PressureField field, VacuumScale scale) {
        double fine = canvas.pixelsPerPoint(),
                squeeze = Math.min(1, Math.sqrt(MOST_PIXELS / (seen.width() * seen.height() * fine * fine)));
        int columns = Math.max(1, (int) Math.round(seen.width() * fine * squeeze)),
                rows = Math.max(1, (int) Math.round(seen.height() * fine * squeeze));
        canvas.image(HeatMap.pixels(field, scale, columns, rows, view.bounds(seen)), columns, rows, seen);
    }

    /** Lines of equal value with the value written along them. */
    static void isolines(
            Canvas canvas,
            PlanView view,
            Box box,
            Ink ink,
            PressureField field,
            List<Double> levels,
            DoubleFunction<String> text) {
        isolines(canvas, view, new Labels(box), ink, field, levels, text);
    }

    /** As the other, with labels kept clear of those that stand already. */
    static void isolines(
            Canvas canvas,
            PlanView view,
            Labels labels,
            Ink ink,
            PressureField field,
            List<Double> levels,
            DoubleFunction<String> text) {
        LineSigns signs = new LineSigns(canvas, ink);
        var lettering = ink.rimmed(ink.small(), false);
        for (Contours.Isoline isoline : Contours.of(field, levels)) {
            double[] line = new double[isoline.line().length];
            for (int i = 0; i < line.length; i += 2) {
                line[i] = view.pageX(isoline.line()[i]);
                line[i + 1] = view.pageY(isoline.line()[i + 1]);
            }
            signs.isoline(line, isoline.closed(), true);
            String words = text.apply(isoline.level());
            for (LineLabels.Spot s :
                    LineLabels.places(line, canvas.textWidth(words, lettering), lettering.size(), 1, labels)) {
                double drop = 0.36 * lettering.size();
                canvas.text(
                        words,
                        s.x() - drop * Math.sin(s.angle()),
                        s.y() + drop * Math.cos(s.angle()),
                        Canvas.Anchor.MIDDLE,
                        s.angle(),
                        lettering);
            }
        }
    }

    /** A small field of a key around the middle of its place. */
    static double[] swatch(double x, double y, double half, Ink ink) {
        return new Box(x - half, y - 4.2 * ink.size(), x + half, y + 4.2 * ink.size()).ring();
    }
}
