package slabfield.figure;

import java.util.ArrayList;
import java.util.List;
import slabfield.field.Result;
import slabfield.model.Scenario;

/** What the colours and signs of a map mean, as items that flow down one or more columns. */
final class Legend {
    static final double COLUMN = 172;
    private static final double GUTTER = 14;

    /** Something with a height, drawn from its top left corner. */
    private record Item(double height, Painter painter) {}

    private interface Painter {
        void paint(double x, double y);
    }

    /** Draws a sample around the middle of its place. */
    interface Sample {
        void paint(double x, double y, double halfWidth);
    }

    private final Canvas canvas;
    private final Result result;
    private final Scenario scenario;
    private final MapStyle style;
    private final Ink ink;
    private final int columns;
    private final double width;
    private final List<Item> items = new ArrayList<>();

    /**
     * A legend in as many columns of at least {@link #COLUMN} as fit beside each other.
     *
     * @param available width for all columns [points]
     */
    Legend(Canvas canvas, Result result, MapStyle style, List<PlanLayer> layers, double available) {
        this.canvas = canvas;
        this.result = result;
        this.scenario = result.scenario();
        this.style = style;
        this.ink = new Ink(style.fontScale());
        double gutter = GUTTER * ink.size();
        this.columns = Math.max(1, (int) ((available + gutter + 1e-6) / (COLUMN * ink.size() + gutter)));
        this.width = (available + gutter) / columns - gutter;
        boolean hidden = layers.stream().anyMatch(PlanLayer::hidesField);
        if (result instanceof Result.Solved solved && !hidden) prediction(solved);
        for (PlanLayer layer : layers) layer.explain(new LayerKey(), ink.size());
        String unit = Plan.compact(style) ? ", " + style.units().pressureSymbol() : "";
        boolean predicted = layers.stream().noneMatch(PlanLayer::hidesPrediction);
        new LegendKey(canvas, scenario, result instanceof Result.Solved && predicted, unit, ink).entries(this::entry);
        facts();
    }

    /** Takes what a layer says of itself as items. */
    private final class LayerKey implements PlanLayer.Key {
        @Override
        public void entry(Sample sample, String text) {
            Legend.this.entry((x, y, half) -> sample.paint(canvas, x, y, half), text);
        }

        @Override
        public void paragraph(String text) {
            Legend.this.paragraph(text);
        }
    }

    private void prediction(Result.Solved solved) {
        var bar = new ColourBar(
                canvas,
                "Pressure, " + style.units().pressureSymbol(),
                VacuumMap.scale(solved, style),
                style.units(),
                ink);
        items.add(new Item(bar.height(), (x, y) -> bar.draw(x, y, width)));
        paragraph("Negative = soil under vacuum relative to the room.");
        var coverage = solved.coverage();
        String target = FieldLayer.targetText(solved, style);
        LineSigns signs = new LineSigns(canvas, ink);
        entry(
                (x, y, half) -> signs.target(new double[] {x - half, y, x + half, y}, false),
                "target: vacuum of at least " + target + " ("
                        + scenario.target().choice() + "), met under " + percent(coverage.meeting()) + " of the area");
        if (style.hatch())
            entry(
                    hatched(Ink.SHORTFALL, 4.5, Math.PI / 4),
                    "below target: " + percent(1 - coverage.meeting()) + " of the area");
        if (!solved.unreached().isEmpty())
            entry(hatched(Ink.NO_DATA, 3.6, -Math.PI / 4), "no pressure: this part of the layer is cut off");
        if (!Double.isNaN(coverage.weakest()))
            entry(
                    (x, y, half) -> new Symbols(canvas, ink).weakest(x, y),
                    "weakest place, to within a cell of " + length(coverage.cell()));
        if (style.monochrome() || FieldLayer.pushes(solved.field())) entry(this::dotted, "soil pushes into the room");
    }

    private void dotted(double x, double y, double half) {
        var dots = ink.dashed(Ink.DARK, 0.9, 1.5, 2.5);
        canvas.hatch(List.of(swatch(x, y, half)), 4 * ink.size(), Math.PI / 2, dots);
    }

    private Sample hatched(int argb, double spacing, double angle) {
        return (x, y, half) -> {
            double[] ring = swatch(x, y, half);
            canvas.fill(List.of(ring), Ink.GROUND);
            canvas.hatch(List.of(ring), spacing * ink.size(), angle, ink.solid(argb, 0.9));
            canvas.line(ring, true, ink.solid(Ink.SOFT, 0.5));
        };
    }

    private double[] swatch(double x, double y, double half) {
        return new Box(x - half, y - 4.2 * ink.size(), x + half, y + 4.2 * ink.size()).ring();
    }

    private void facts() {
        if (result instanceof Result.Solved solved) {
            int doubts = solved.doubts().size();
            if (doubts > 0) paragraph("Doubts about this result: " + doubts + ", listed in the report.");
            paragraph("Cell " + length(solved.coverage().cell()) + "; scenario: " + scenario.name());
        } else if (!scenario.slabs().isEmpty()) paragraph("Scenario: " + scenario.name());
    }

    private String length(double si) {
        return style.units().length(si) + " " + style.units().lengthSymbol();
    }

    /** Whole percents that say 0 and 100 only where they are meant. */
    static String percent(double part) {
        if (Double.isNaN(part)) return "an unknown part";
        if (part > 0 && part < 0.005) return "less than 1 %";
        if (part < 1 && part > 0.995) return "more than 99 %";
        return Math.round(100 * part) + " %";
    }

    private void paragraph(String text) {
        var lettering = ink.fine(Ink.SOFT);
        List<String> lines = Words.wrap(canvas, text, width, lettering);
        double step = 1.25 * ink.small();
        items.add(new Item(lines.size() * step + 0.5 * step, (x, y) -> {
            for (int i = 0; i < lines.size(); i++)
                canvas.text(lines.get(i), x, y + (i + 0.8) * step, Canvas.Anchor.START, 0, lettering);
        }));
    }

    private void entry(Sample sample, String text) {
        var lettering = ink.fine(Ink.DARK);
        double half = 13 * ink.size(), indent = 2 * half + 6 * ink.size(), step = 1.22 * ink.small();
        List<String> lines = Words.wrap(canvas, text, width - indent, lettering);
        double height = Math.max(14.2 * ink.size(), lines.size() * step + 4 * ink.size());
        items.add(new Item(height, (x, y) -> {
            sample.paint(x + half, y + 7 * ink.size(), half);
            double top = y + 7 * ink.size() + 0.36 * ink.small();
            for (int i = 0; i < lines.size(); i++)
                canvas.text(lines.get(i), x + indent, top + i * step, Canvas.Anchor.START, 0, lettering);
        }));
    }

    /** Height at which the columns are as even as can be. */
    double height() {
        double height = items.stream().mapToDouble(Item::height).max().orElse(0);
        double total = items.stream().mapToDouble(Item::height).sum();
        height = Math.max(height, total / columns);
        while (columnsAt(height) > columns) height += ink.size();
        return height;
    }

    void draw(double left, double top) {
        double height = height(), x = left, y = top;
        for (Item item : items) {
            if (y + item.height() > top + height + 1e-6 && y > top) {
                x += width + GUTTER * ink.size();
                y = top;
            }
            item.painter().paint(x, y);
            y += item.height();
        }
    }

    private int columnsAt(double height) {
        int used = 1;
        double y = 0;
        for (Item item : items) {
            if (y + item.height() > height + 1e-6 && y > 0) {
                used++;
                y = 0;
            }
            y += item.height();
        }
        return used;
    }
}
