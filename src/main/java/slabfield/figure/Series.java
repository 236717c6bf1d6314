package slabfield.figure;

import java.util.List;

/**
 * Places of a chart that belong together, in shown units. A place with NaN is left out and breaks a line.
 *
 * @param name for the legend; empty for none
 * @param x of each place
 * @param y of each place
 * @param line how neighbours are joined
 * @param sign what stands at each place
 * @param spread half-width of a bar up and down at each place; empty for none
 * @param labels beside each place; empty for none
 */
record Series(String name, double[] x, double[] y, Line line, Sign sign, double[] spread, List<String> labels) {
    /** A line is told from the others by its form, not by its colour alone. */
    enum Line {
        NONE,
        SOLID,
        DASHED,
        DOTTED,
        DASH_DOT
    }

    /** What stands at a place. */
    enum Sign {
        NONE,
        RING,
        DISC,
        SQUARE,
        FULL_SQUARE,
        TRIANGLE,
        CROSS
    }

    Series {
        if (x.length != y.length
                || spread.length > 0 && spread.length != x.length
                || !labels.isEmpty() && labels.size() != x.length)
            throw new IllegalArgumentException("a series needs as many x as y, spreads and labels");
        labels = List.copyOf(labels);
    }

    static Series line(String name, double[] x, double[] y, Line line) {
        return new Series(name, x, y, line, Sign.NONE, new double[0], List.of());
    }

    static Series points(String name, double[] x, double[] y, Sign sign, List<String> labels) {
        return new Series(name, x, y, Line.NONE, sign, new double[0], labels);
    }

    Series spread(double[] halfWidths) {
        return new Series(name, x, y, line, sign, halfWidths, labels);
    }
}
