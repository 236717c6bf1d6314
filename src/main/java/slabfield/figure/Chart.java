package slabfield.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleFunction;

/**
 * A chart of two axes: lines and signs that black ink tells apart, labels where nothing stands yet, a legend below.
 *
 * @param title name of the house or the case
 * @param stamp PREDICTED, MEASURED or both
 * @param text what it shows
 * @param description for those who cannot see it
 * @param x axis to the right
 * @param y axis upwards
 * @param series drawn in this order
 * @param columns bars behind everything; places on x and heights of 0 to 1, empty for none
 * @param notes below the legend
 * @param look units for the decimal mark, and size of letters
 */
record Chart(
        String title,
        String stamp,
        String text,
        String description,
        Axis x,
        Axis y,
        List<Series> series,
        Columns columns,
        List<String> notes,
        MapStyle look)
        implements Figure {
    /** Bars that stand on the lower edge: x, width in units of x, height as a part of a third of the plot; name for the legend. */
    record Columns(String name, double[] x, double width, double[] part) {
        static final Columns NONE = new Columns("", new double[0], 0, new double[0]);
    }

    private static final double MARGIN = 14;
    private static final double SHAPE = 0.44;
    private static final double TICK_EVERY_X = 52;
    private static final double TICK_EVERY_Y = 26;

    @Override
    public double height(Canvas measure, double width) {
        Ink ink = ink();
        double u = ink.size(), inner = width - 2 * MARGIN * u;
        return (2 * MARGIN + Heading.HEIGHT) * u + SHAPE * inner + below(measure, inner, ink);
    }

    private Ink ink() {
        return new Ink(look.fontScale());
    }

    /** Height of tick labels, axis label, legend and notes. */
    private double below(Canvas canvas, double inner, Ink ink) {
        double rows = legend(canvas, inner, ink).size(), step = 1.6 * ink.small();
        double lines = noteLines(canvas, inner, ink).size();
        return 1.6 * ink.small() + 1.7 * ink.body() + rows * step + lines * 1.25 * ink.small() + 8 * ink.size();
    }

    private List<String> noteLines(Canvas canvas, double inner, Ink ink) {
        List<String> lines = new ArrayList<>();
        for (String note : notes) lines.addAll(Words.wrap(canvas, note, inner, ink.fine(Ink.SOFT)));
        return lines;
    }

    @Override
    public void draw(Canvas canvas) {
        Ink ink = ink();
        double u = ink.size();
        Box page = new Box(0, 0, canvas.width(), canvas.height()).inset(MARGIN * u);
        new Heading(canvas, page, ink).draw(title, stamp, Ink.DARK, text);
        double top = page.top() + Heading.HEIGHT * u, bottom = page.bottom() - below(canvas, page.width(), ink);
        panel(canvas, new Box(page.left(), top, page.right(), bottom), ink);
        double y = bottom
                + below(canvas, page.width(), ink)
                - 8 * u
                - noteLines(canvas, page.width(), ink).size() * 1.25 * ink.small();
        for (String line : noteLines(canvas, page.width(), ink))
            canvas.text(line, page.left(), y += 1.25 * ink.small(), Canvas.Anchor.START, 0, ink.fine(Ink.SOFT));
    }

    /** Draws it in a box of a window, which has its own title: axes, lines, signs and legend alone. */
    void drawPanel(Canvas canvas, Box box) {
        Ink ink = ink();
        double rows = legend(canvas, box.width(), ink).size() * 1.6 * ink.small();
        panel(
                canvas,
                new Box(
                        box.left(),
                        box.top() + 4 * ink.size(),
                        box.right(),
                        box.bottom() - rows - 1.6 * ink.small() - 2.2 * ink.body()),
                ink);
    }

    /** Plot with its axes in a box, and the legend below it. */
    private void panel(Canvas canvas, Box box, Ink ink) {
        double u = ink.size(), left = box.left() + tickWidth(canvas, box.height(), ink) + 2.1 * ink.body();
        Box plot = new Box(left, box.top(), box.right(), box.bottom());
        new ChartBody(canvas, this, plot, ink).draw();
        double y = plot.bottom() + 1.6 * ink.small() + 1.4 * ink.body();
        canvas.text(x.label(), (plot.left() + plot.right()) / 2, y, Canvas.Anchor.MIDDLE, 0, ink.text(Ink.DARK));
        double middle = (plot.top() + plot.bottom()) / 2;
        canvas.text(
                y().label(), box.left() + ink.body(), middle, Canvas.Anchor.MIDDLE, -Math.PI / 2, ink.text(Ink.DARK));
        y += 0.6 * ink.body();
        for (List<Entry> row : legend(canvas, box.width(), ink)) {
            double at = box.left();
            for (Entry entry : row) {
                entry.sample(canvas, at, y + 0.7 * ink.small(), ink);
                canvas.text(
                        entry.text(), at + 34 * u, y + 1.05 * ink.small(), Canvas.Anchor.START, 0, ink.fine(Ink.DARK));
                at += entry.width();
            }
            y += 1.6 * ink.small();
        }
    }

    private double tickWidth(Canvas canvas, double tall, Ink ink) {
        return ticksY(tall).stream()
                .mapToDouble(t -> canvas.textWidth(tick(t), ink.fine(Ink.DARK)))
                .max()
                .orElse(0);
    }

    String tick(double value) {
        return look.units().marked(UnitsShown.trimmed(Math.abs(value) < 1e-12 ? 0 : value));
    }

    List<Double> ticksX(double length) {
        return x.ticks(length / (TICK_EVERY_X * look.fontScale()));
    }

    List<Double> ticksY(double length) {
        return y.ticks(length / (TICK_EVERY_Y * look.fontScale()));
    }

    /** One item of the legend: a series, or the columns where it is empty. */
    private record Entry(List<Series> of, String text, double width) {
        void sample(Canvas canvas, double x, double y, Ink ink) {
            double u = ink.size();
            ChartInk signs = new ChartInk(canvas, ink);
            if (of.isEmpty()) {
                signs.column(new Box(x + 6 * u, y - 4 * u, x + 22 * u, y + 4 * u));
                return;
            }
            Series s = of.get(0);
            signs.line(new double[] {x, y, x + 28 * u, y}, s.line());
            signs.sign(s.sign(), x + 14 * u, y);
        }
    }

    /** Entries in rows that fit the width. */
    private List<List<Entry>> legend(Canvas canvas, double inner, Ink ink) {
        DoubleFunction<Double> wide = w -> w + 50 * ink.size();
        List<Entry> all = new ArrayList<>();
        for (Series s : series)
            if (!s.name().isEmpty())
                all.add(new Entry(List.of(s), s.name(), wide.apply(canvas.textWidth(s.name(), ink.fine(Ink.DARK)))));
        if (!columns.name().isEmpty())
            all.add(new Entry(
                    List.of(), columns.name(), wide.apply(canvas.textWidth(columns.name(), ink.fine(Ink.DARK)))));
        List<List<Entry>> rows = new ArrayList<>();
        double used = Double.MAX_VALUE;
        for (Entry entry : all) {
            if (used + entry.width() > inner + 14 * ink.size()) {
                rows.add(new ArrayList<>());
                used = 0;
            }
            rows.get(rows.size() - 1).add(entry);
            used += entry.width();
        }
        return rows;
    }

    /** A number for a description. */
    static String spoken(double value) {
        return String.format(Locale.ROOT, "%.3g", value);
    }
}
