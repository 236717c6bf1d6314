package slabfield.figure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleFunction;
import slabfield.field.CellKind;
import slabfield.field.Grid;
import slabfield.field.PressureField;
import slabfield.figure.VacuumScale.Law;
import slabfield.figure.VacuumScale.Range;
import slabfield.figure.VacuumScale.Sense;

/**
 * Any number known for each cell of a grid, over a plan: the larger the darker, in equal steps of lightness, with isolines
 * that say the numbers, so that no colour is needed to read it.
 */
public final class ValueLayer implements PlanLayer {
    /** Parts that isolines cut a scale into, at most. */
    private static final int PARTS = 5;

    /**
     * What is shown.
     *
     * @param heading of a sheet with it
     * @param sentences of the key: what the number is, its unit, what large and small mean
     * @param low value of the lightest colour
     * @param high value of the darkest colour, above low
     * @param levels of isolines
     * @param text of a value, with its unit where the sentences do not name it
     */
    public record Subject(
            String heading,
            List<String> sentences,
            double low,
            double high,
            List<Double> levels,
            DoubleFunction<String> text) {
        public Subject {
            if (!(high > low)) throw new IllegalArgumentException("the darkest value must lie above the lightest");
            sentences = List.copyOf(sentences);
            levels = List.copyOf(levels);
        }

        /**
         * A subject whose ends and isolines are round in a unit.
         *
         * @param from end that is wanted, at or below all values
         * @param to end that is wanted, at or above all values
         * @param unit size of the unit in which they are round
         */
        public static Subject round(
                String heading,
                List<String> sentences,
                double from,
                double to,
                double unit,
                DoubleFunction<String> text) {
            double step = Steps.atLeast(Math.max(to - from, 1e-6 * unit) / unit / PARTS);
            double low = Math.floor(from / unit / step + 1e-9) * step,
                    high = Math.max(low + step, Math.ceil(to / unit / step - 1e-9) * step);
            List<Double> levels = Steps.multiples(step, low + step / 2, high - step / 2).stream()
                    .map(m -> m * unit)
                    .toList();
            return new Subject(heading, sentences, low * unit, high * unit, levels, text);
        }
    }

    private final Grid grid;
    private final double[] values;
    private final Subject subject;
    private final PressureField turned;
    private final VacuumScale scale;

    /**
     * A layer.
     *
     * @param values of each cell, row-major; NaN where there is none, which stays without colour; not changed
     * @param monochrome greys alone
     */
    public ValueLayer(Grid grid, double[] values, Subject subject, boolean monochrome) {
        if (values.length != grid.cells()) throw new IllegalArgumentException("there must be one value for each cell");
        this.grid = grid;
        this.values = values.clone();
        this.subject = subject;
        CellKind[] kind = new CellKind[values.length];
        Arrays.setAll(kind, c -> Double.isNaN(values[c]) ? CellKind.OUTSIDE : CellKind.LAYER);
        turned = new PressureField(
                grid,
                kind,
                Arrays.stream(values).map(this::onScale).toArray(),
                new boolean[values.length],
                new double[values.length]);
        scale = VacuumScale.of(Sense.VACUUM_ONLY, Law.LINEAR, new Range(-1, 0), monochrome);
    }

    /** Place on the scale of vacuums, on which the darkest is -1. */
    private double onScale(double value) {
        if (Double.isNaN(value)) return value;
        double part = (value - subject.low()) / (subject.high() - subject.low());
        return part <= 0 ? 0 : -Math.min(1, part);
    }

    public Subject subject() {
        return subject;
    }

    /** Value of the cell at a place; NaN where there is none. */
    public double at(double x, double y) {
        int column = grid.column(x), row = grid.row(y);
        return column < 0 || row < 0 ? Double.NaN : values[grid.index(column, row)];
    }

    @Override
    public String heading() {
        return subject.heading();
    }

    @Override
    public boolean hidesField() {
        return true;
    }

    @Override
    public void draw(Canvas canvas, PlanView view, Box box, double fontScale) {
        Box seen = LayerInk.seen(grid, view, box);
        if (seen.width() <= 0 || seen.height() <= 0) return;
        LayerInk.colours(canvas, view, seen, turned, scale);
        List<Double> levels = new ArrayList<>();
        for (double level : subject.levels()) levels.add(onScale(level));
        LayerInk.isolines(
                canvas,
                view,
                box,
                new Ink(fontScale),
                turned,
                levels,
                t -> subject.text().apply(subject.low() - t * (subject.high() - subject.low())));
    }

    @Override
    public void explain(Key key, double fontScale) {
        Ink ink = new Ink(fontScale);
        subject.sentences().forEach(key::paragraph);
        List<Double> samples = new ArrayList<>(List.of(subject.low()));
        samples.addAll(subject.levels());
        samples.add(subject.high());
        for (int k = samples.size() - 1; k >= 0; k--) {
            double value = samples.get(k);
            key.entry(
                    (canvas, x, y, half) -> {
                        double[] ring = LayerInk.swatch(x, y, half, ink);
                        canvas.fill(List.of(ring), scale.argb(onScale(value)));
                        canvas.line(ring, true, ink.solid(Ink.SOFT, 0.5));
                    },
                    subject.text().apply(value));
        }
    }
}
