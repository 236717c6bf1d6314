package slabfield.figure;

import java.util.List;

/**
 * What a figure is drawn on: a page in points (1/72 inch), x to the right, y down. One drawing serves every backend: Java2D,
 * SVG and PDF here; a toolkit of a window needs these seven methods and no image in between.
 *
 * <p>A ring or line is an array x0, y0, x1, y1 ... in points. Rings are filled by the even-odd rule, so that a ring
 * inside another is a hole. Colours are 0xAARRGGBB.
 */
public interface Canvas {
    /** How a line is drawn: colour, width [points], and lengths of dash, space, dash ... [points], none for solid. */
    record Pen(int argb, double width, List<Double> dash) {
        public Pen {
            dash = List.copyOf(dash);
        }

        public static Pen solid(int argb, double width) {
            return new Pen(argb, width, List.of());
        }

        public static Pen dashed(int argb, double width, Double... dash) {
            return new Pen(argb, width, List.of(dash));
        }
    }

    /** How letters are drawn: size [points], weight, colour, and the colour of a rim behind them (0 for none). */
    record Lettering(double size, boolean bold, int argb, int halo) {
        private static final double RIM = 0.28;

        /** Width of the pen that draws the rim behind the letters [points]. */
        public double haloWidth() {
            return RIM * size;
        }
    }

    /** Which part of a text stands at the place given for it. */
    enum Anchor {
        START,
        MIDDLE,
        END
    }

    double width();

    double height();

    /** Raster pixels per point that are worth computing for an image. */
    double pixelsPerPoint();

    void fill(List<double[]> rings, int argb);

    /** A line with butt ends and mitred corners. */
    void line(double[] line, boolean closed, Pen pen);

    /**
     * One line of text.
     *
     * @param x place of the anchor
     * @param y of the baseline at the anchor
     * @param rotation about (x, y), clockwise as seen on the page [radians]
     */
    void text(String text, double x, double y, Anchor anchor, double rotation, Lettering lettering);

    /** Width of a text [points]; the same on every backend, as {@link Typeface} has it. */
    default double textWidth(String text, Lettering lettering) {
        return Typeface.width(text, lettering);
    }

    /** An image, row by row from the top, stretched into a box. */
    void image(int[] argb, int columns, int rows, Box box);

    /** Runs a drawing of which only what falls inside the rings is seen. */
    void clipped(List<double[]> rings, Runnable drawing);

    /** Parallel lines across the inside of rings. */
    default void hatch(List<double[]> rings, double spacing, double angle, Pen pen) {
        for (double[] line : Hatching.across(rings, spacing, angle)) line(line, false, pen);
    }
}
