package slabfield.figure;

import slabfield.figure.Canvas.Lettering;
import slabfield.figure.Canvas.Pen;

/**
 * Colours, pens and letters of a map, enlarged together.
 *
 * @param size 1 for print
 */
record Ink(double size) {
    static final int DARK = 0xFF18222E;
    static final int SOFT = 0xFF56616D;
    static final int WHITE = 0xFFFFFFFF;
    static final int VEIL = 0xD8FFFFFF;
    static final int GROUND = 0xFFE4E6E8;
    static final int NO_DATA = 0xFF8A9199;
    static final int SHORTFALL = 0x9018222E;
    static final int STOP = 0xFFA3260F;

    double body() {
        return 8.5 * size;
    }

    double small() {
        return 7.5 * size;
    }

    Pen solid(int argb, double width) {
        return Pen.solid(argb, width * size);
    }

    Pen dashed(int argb, double width, double... dash) {
        Double[] lengths = new Double[dash.length];
        for (int i = 0; i < dash.length; i++) lengths[i] = dash[i] * size;
        return Pen.dashed(argb, width * size, lengths);
    }

    Lettering text(int argb) {
        return new Lettering(body(), false, argb, 0);
    }

    Lettering bold(int argb) {
        return new Lettering(body(), true, argb, 0);
    }

    Lettering fine(int argb) {
        return new Lettering(small(), false, argb, 0);
    }

    Lettering rimmed(double height, boolean bold) {
        return new Lettering(height, bold, DARK, 0xF0FFFFFF);
    }
}
