package slabfield.figure;

import java.util.List;
import slabfield.model.SealState;

/** Signs for things along a line. As with {@link Symbols}, the more of it is closed the more of it is dark. */
final class LineSigns {
    private final Canvas canvas;
    private final Ink ink;

    LineSigns(Canvas canvas, Ink ink) {
        this.canvas = canvas;
        this.ink = ink;
    }

    /** A footing that is known: dark, with light strokes across. */
    void knownBarrier(double[] strip) {
        canvas.fill(List.of(strip), 0xFF3A4450);
        canvas.hatch(List.of(strip), 3.6 * ink.size(), Math.PI / 4, ink.solid(0xFFB9C0C7, 0.7));
        canvas.line(strip, true, ink.solid(Ink.DARK, 1));
    }

    /** A footing that is only suspected: an outline in dashes over a light veil. */
    void suspectedBarrier(double[] strip) {
        canvas.fill(List.of(strip), 0x60FFFFFF);
        canvas.line(strip, true, ink.solid(Ink.WHITE, 2.6));
        canvas.line(strip, true, ink.dashed(Ink.DARK, 1.1, 4, 2.6));
    }

    /** Two rails in dashes. */
    void tile(double[] line) {
        rails(line, 2.1, ink.solid(Ink.VEIL, 2.2));
        rails(line, 2.1, ink.dashed(Ink.DARK, 1, 5, 2.4));
    }

    /** Tile full of water: a wave between whole rails. */
    void waterFilled(double[] line) {
        canvas.line(line, false, ink.solid(Ink.WHITE, 6.4));
        rails(line, 2.6, ink.solid(Ink.DARK, 1));
        canvas.line(Lines.zigzag(line, 3 * ink.size(), 1.5 * ink.size()), false, ink.solid(Ink.DARK, 0.8));
    }

    /** The two ends of a break, each a bar across the tile. */
    void tileBreak(double[] gap) {
        double length = Lines.length(gap), bar = 4.6 * ink.size();
        for (double end : new double[] {0, length}) {
            double[] here = Lines.at(gap, end), a = Lines.at(gap, end - 1), b = Lines.at(gap, end + 1);
            double along = Math.hypot(b[0] - a[0], b[1] - a[1]);
            double nx = -(b[1] - a[1]) / along * bar, ny = (b[0] - a[0]) / along * bar;
            double[] across = {here[0] - nx, here[1] - ny, here[0] + nx, here[1] + ny};
            canvas.line(across, false, ink.solid(Ink.WHITE, 3.4));
            canvas.line(across, false, ink.solid(Ink.DARK, 1.6));
        }
    }

    private void rails(double[] line, double apart, Canvas.Pen pen) {
        for (int side = -1; side <= 1; side += 2)
            canvas.line(Lines.beside(line, false, side * apart * ink.size()), false, pen);
    }

    /** A hollow-block wall as a row of cores, those that are closed dark. */
    void wall(double[] line, SealState tops) {
        canvas.line(line, false, ink.solid(Ink.DARK, 7));
        switch (tops) {
            case OPEN -> canvas.line(line, false, ink.dashed(Ink.WHITE, 4.8, 6.4, 1.6));
            case LOOSE -> canvas.line(line, false, ink.dashed(Ink.WHITE, 4.8, 6.4, 9.6));
            case COVERED -> canvas.line(line, false, ink.dashed(Ink.WHITE, 1.4, 6.4, 1.6));
            case SEALED -> canvas.line(line, false, ink.solid(Ink.DARK, 5));
        }
    }

    /** A joint as a channel with straight sides. */
    void joint(double[] line, boolean closed, SealState state) {
        canvas.line(line, closed, ink.solid(Ink.WHITE, 5.6));
        canvas.line(line, closed, ink.solid(Ink.DARK, 4));
        switch (state) {
            case OPEN -> canvas.line(line, closed, ink.solid(Ink.WHITE, 2.4));
            case LOOSE -> canvas.line(line, closed, ink.dashed(Ink.WHITE, 2.4, 6, 6));
            case COVERED -> canvas.line(line, closed, ink.dashed(Ink.WHITE, 2.4, 1.6, 8));
            case SEALED -> canvas.line(line, closed, ink.solid(Ink.DARK, 4));
        }
    }

    /** A crack as a joint that zigzags. */
    void crack(double[] line, SealState state) {
        joint(Lines.zigzag(line, 7 * ink.size(), 2.6 * ink.size()), false, state);
    }

    void target(double[] line, boolean closed) {
        canvas.line(line, closed, ink.solid(0xE8FFFFFF, 4.6));
        canvas.line(line, closed, ink.dashed(Ink.DARK, 2.4, 11, 2.6, 2.6, 2.6));
    }

    void isoline(double[] line, boolean closed, boolean index) {
        canvas.line(line, closed, ink.solid(0x70FFFFFF, index ? 2.2 : 1.6));
        canvas.line(line, closed, ink.solid(Ink.DARK, index ? 0.9 : 0.5));
    }
}
