package slabfield.figure;

import java.util.List;

/** Lines and signs of charts in dark ink. */
final class ChartInk {
    private static final int BAR = 0xFFDCE1E6;
    private static final int BLUE = 0xFF1F4E8C;

    private final Canvas canvas;
    private final Ink ink;

    ChartInk(Canvas canvas, Ink ink) {
        this.canvas = canvas;
        this.ink = ink;
    }

    void line(double[] line, Series.Line form) {
        if (line.length < 4) return;
        switch (form) {
            case NONE -> {}
            case SOLID -> canvas.line(line, false, ink.solid(BLUE, 1.6));
            case DASHED -> canvas.line(line, false, ink.dashed(Ink.DARK, 1.5, 7, 3));
            case DOTTED -> canvas.line(line, false, ink.dashed(Ink.DARK, 1.7, 1.7, 2.6));
            case DASH_DOT -> canvas.line(line, false, ink.dashed(Ink.DARK, 1.3, 9, 2.4, 2, 2.4));
        }
    }

    void sign(Series.Sign sign, double x, double y) {
        double r = 3.4 * ink.size();
        switch (sign) {
            case NONE -> {}
            case RING -> outlined(Lines.circle(x, y, r), Ink.WHITE);
            case DISC -> outlined(Lines.circle(x, y, r), Ink.DARK);
            case SQUARE -> outlined(Box.around(x, y, 0.9 * r).ring(), Ink.WHITE);
            case FULL_SQUARE -> outlined(Box.around(x, y, 0.9 * r).ring(), BLUE);
            case TRIANGLE ->
                outlined(new double[] {x, y - 1.2 * r, x + 1.1 * r, y + 0.8 * r, x - 1.1 * r, y + 0.8 * r}, Ink.WHITE);
            case CROSS -> {
                canvas.line(new double[] {x - r, y - r, x + r, y + r}, false, ink.solid(Ink.DARK, 1.5));
                canvas.line(new double[] {x - r, y + r, x + r, y - r}, false, ink.solid(Ink.DARK, 1.5));
            }
        }
    }

    private void outlined(double[] ring, int inside) {
        canvas.fill(List.of(ring), inside);
        canvas.line(ring, true, ink.solid(Ink.DARK, 1.2));
    }

    void column(Box box) {
        canvas.fill(List.of(box.ring()), BAR);
        canvas.line(box.ring(), true, ink.solid(Ink.SOFT, 0.5));
    }

    /** A bar up and down with ends. */
    void spread(double x, double top, double bottom) {
        double w = 2.5 * ink.size();
        canvas.line(new double[] {x, top, x, bottom}, false, ink.solid(Ink.SOFT, 0.9));
        for (double y : new double[] {top, bottom})
            canvas.line(new double[] {x - w, y, x + w, y}, false, ink.solid(Ink.SOFT, 0.9));
    }
}
