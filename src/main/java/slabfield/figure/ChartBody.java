package slabfield.figure;

import java.util.ArrayList;
import java.util.List;

/** What stands inside the frame of a chart, and the ticks on it. */
final class ChartBody {
    private static final double COLUMN_PART = 1 / 3.0;

    private final Canvas canvas;
    private final Chart chart;
    private final Box plot;
    private final Ink ink;
    private final ChartInk signs;

    ChartBody(Canvas canvas, Chart chart, Box plot, Ink ink) {
        this.canvas = canvas;
        this.chart = chart;
        this.plot = plot;
        this.ink = ink;
        this.signs = new ChartInk(canvas, ink);
    }

    void draw() {
        grid();
        canvas.clipped(List.of(plot.ring()), () -> {
            columns();
            chart.series().forEach(this::lines);
        });
        canvas.line(plot.ring(), true, ink.solid(Ink.DARK, 0.9));
        chart.series().forEach(this::places);
        labels();
    }

    private double px(double x) {
        return plot.left() + chart.x().position(x) * plot.width();
    }

    private double py(double y) {
        return plot.bottom() - chart.y().position(y) * plot.height();
    }

    private void grid() {
        var fine = ink.fine(Ink.DARK);
        for (double t : chart.ticksX(plot.width())) {
            canvas.line(new double[] {px(t), plot.top(), px(t), plot.bottom()}, false, pen(t));
            canvas.text(chart.tick(t), px(t), plot.bottom() + 1.25 * ink.small(), Canvas.Anchor.MIDDLE, 0, fine);
        }
        for (double t : chart.ticksY(plot.height())) {
            canvas.line(new double[] {plot.left(), py(t), plot.right(), py(t)}, false, pen(t));
            canvas.text(
                    chart.tick(t),
                    plot.left() - 3 * ink.size(),
                    py(t) + 0.36 * ink.small(),
                    Canvas.Anchor.END,
                    0,
                    fine);
        }
    }

    private Canvas.Pen pen(double tick) {
        return ink.solid(Math.abs(tick) < 1e-12 ? Ink.SOFT : 0xFFD5D9DD, Math.abs(tick) < 1e-12 ? 0.9 : 0.5);
    }

    private void columns() {
        Chart.Columns c = chart.columns();
        for (int i = 0; i < c.x().length; i++) {
            double top = plot.bottom() - c.part()[i] * COLUMN_PART * plot.height();
            signs.column(new Box(px(c.x()[i] - c.width() / 2), top, px(c.x()[i] + c.width() / 2), plot.bottom()));
        }
    }

    private void lines(Series s) {
        List<Double> run = new ArrayList<>();
        for (int i = 0; i < s.x().length; i++) {
            if (Double.isFinite(s.x()[i] + s.y()[i])) {
                run.add(px(s.x()[i]));
                run.add(py(s.y()[i]));
            } else flush(run, s.line());
        }
        flush(run, s.line());
    }

    private void flush(List<Double> run, Series.Line form) {
        signs.line(run.stream().mapToDouble(Double::doubleValue).toArray(), form);
        run.clear();
    }

    private void places(Series s) {
        for (int i = 0; i < s.x().length; i++) {
            if (!Double.isFinite(s.x()[i] + s.y()[i])) continue;
            double x = px(s.x()[i]), y = py(s.y()[i]);
            if (s.spread().length > 0)
                signs.spread(
                        x,
                        Math.max(plot.top(), py(s.y()[i] + s.spread()[i])),
                        Math.min(plot.bottom(), py(s.y()[i] - s.spread()[i])));
            signs.sign(s.sign(), x, y);
        }
    }

    private void labels() {
        Labels labels = new Labels(plot.inset(1));
        double reach = 4 * ink.size(), size = ink.small();
        var lettering = ink.rimmed(size, false);
        for (Series s : chart.series())
            for (int i = 0; i < s.labels().size(); i++) labels.take(Box.around(px(s.x()[i]), py(s.y()[i]), reach));
        for (Series s : chart.series())
            for (int i = 0; i < s.labels().size(); i++) {
                String text = s.labels().get(i);
                if (text.isEmpty() || !Double.isFinite(s.y()[i])) continue;
                double near = reach + 2 * ink.size();
                labels.place(
                                px(s.x()[i]),
                                py(s.y()[i]),
                                canvas.textWidth(text, lettering) + 2,
                                1.2 * size,
                                near,
                                1.8 * near)
                        .ifPresent(b -> canvas.text(
                                text, b.left() + 1, b.bottom() - 0.3 * size, Canvas.Anchor.START, 0, lettering));
            }
    }
}
