package slabfield.figure;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import slabfield.field.AirPaths;
import slabfield.field.Grid;

/**
 * Lines along which the air moves, about equally far apart on the page whatever the view. A new line starts beside one
 * that is drawn, and each ends where it would come closer than half the spacing to another.
 *
 * @see "B. Jobard and W. Lefer (1997), Creating evenly-spaced streamlines of arbitrary density"
 */
public final class Streamlines implements PlanLayer {
    static final int HALO = 0xC0FFFFFF;
    private static final double SPACING = 15;
    private static final double STEP = 1.5;
    private static final int MOST_STEPS = 3000;
    private static final double SHORTEST = 1.6;
    private static final double LEAST = 1e-6;
    private static final double HEAD_EVERY = 95;

    private final FlowField field;
    private final double least;

    public Streamlines(AirPaths paths) {
        field = new FlowField(paths);
        least = LEAST * field.below(1);
    }

    @Override
    public void draw(Canvas canvas, PlanView view, Box box, double fontScale) {
        Ink ink = new Ink(fontScale);
        List<double[]> lines = lines(view, box, SPACING * fontScale);
        for (double[] line : lines) canvas.line(line, false, ink.solid(HALO, 2.4));
        for (double[] line : lines) {
            canvas.line(line, false, ink.solid(Ink.DARK, 0.8));
            heads(canvas, line, ink);
        }
    }

    private static void heads(Canvas canvas, double[] line, Ink ink) {
        double length = Lines.length(line), every = HEAD_EVERY * ink.size(), size = 5.5 * ink.size();
        int heads = Math.max(1, (int) Math.round(length / every));
        for (int k = 0; k < heads; k++) {
            double at = length * (k + 0.5) / heads;
            double[] tip = Lines.at(line, at + size / 2), tail = Lines.at(line, at - size / 2);
            double dx = tip[0] - tail[0], dy = tip[1] - tail[1], d = Math.hypot(dx, dy);
            if (d > 0.5 * size)
                canvas.fill(List.of(FlowArrows.head(tip[0], tip[1], dx / d, dy / d, size, 0.4 * size)), Ink.DARK);
        }
    }

    /** The lines on the page, x0, y0, x1, y1 ..., each in the direction of the flow. */
    List<double[]> lines(PlanView view, Box box, double spacing) {
        Grid g = field.grid();
        Box slab = view.box(new Bounds(g.left(), g.bottom(), g.right(), g.top()));
        Box seen = new Box(
                Math.max(box.left(), slab.left()),
                Math.max(box.top(), slab.top()),
                Math.min(box.right(), slab.right()),
                Math.min(box.bottom(), slab.bottom()));
        List<double[]> lines = new ArrayList<>();
        if (seen.width() <= 0 || seen.height() <= 0) return lines;
        Taken taken = new Taken(seen, spacing);
        Deque<double[]> beside = new ArrayDeque<>();
        for (double y = seen.top() + spacing / 2; y < seen.bottom(); y += spacing)
            for (double x = seen.left() + spacing / 2; x < seen.right(); x += spacing) {
                start(view, seen, taken, x, y, lines, beside);
                while (!beside.isEmpty()) neighbours(view, seen, taken, beside.remove(), lines, beside);
            }
        return lines;
    }

    private void neighbours(
            PlanView view, Box seen, Taken taken, double[] line, List<double[]> lines, Deque<double[]> beside) {
        double length = Lines.length(line);
        for (double at = taken.spacing / 2; at < length; at += taken.spacing) {
            double[] p = Lines.at(line, at), q = Lines.at(line, at + STEP);
            double dx = q[0] - p[0], dy = q[1] - p[1], d = Math.hypot(dx, dy);
            if (d == 0) continue;
            for (int side = -1; side <= 1; side += 2)
                start(
                        view,
                        seen,
                        taken,
                        p[0] - side * 1.02 * taken.spacing * dy / d,
                        p[1] + side * 1.02 * taken.spacing * dx / d,
                        lines,
                        beside);
        }
    }

    private void start(
            PlanView view, Box seen, Taken taken, double x, double y, List<double[]> lines, Deque<double[]> beside) {
        if (!taken.isFree(x, y, taken.spacing)) return;
        double[] line = traced(view, seen, taken, x, y);
        if (Lines.length(line) < SHORTEST * taken.spacing) return;
        taken.add(line);
        lines.add(line);
        beside.add(line);
    }

    private double[] traced(PlanView view, Box seen, Taken taken, double x, double y) {
        List<double[]> back = half(view, seen, taken, x, y, -1), ahead = half(view, seen, taken, x, y, 1);
        double[] line = new double[2 * (back.size() + ahead.size() + 1)];
        int k = 0;
        for (int i = back.size() - 1; i >= 0; i--) {
            line[k++] = back.get(i)[0];
            line[k++] = back.get(i)[1];
        }
        line[k++] = x;
        line[k++] = y;
        for (double[] p : ahead) {
            line[k++] = p[0];
            line[k++] = p[1];
        }
        return line;
    }

    private List<double[]> half(PlanView view, Box seen, Taken taken, double x, double y, int sign) {
        List<double[]> out = new ArrayList<>();
        double px = x, py = y;
        double[] first = new double[2], middle = new double[2];
        for (int k = 0; k < MOST_STEPS; k++) {
            if (!direction(view, px, py, first)) break;
            if (!direction(view, px + sign * STEP / 2 * first[0], py + sign * STEP / 2 * first[1], middle)) break;
            px += sign * STEP * middle[0];
            py += sign * STEP * middle[1];
            if (px < seen.left() || px > seen.right() || py < seen.top() || py > seen.bottom()) break;
            if (!taken.isFree(px, py, taken.spacing / 2)) break;
            if (k > 8 && k % 8 == 0 && Math.hypot(px - out.get(k - 8)[0], py - out.get(k - 8)[1]) < STEP) break;
            out.add(new double[] {px, py});
        }
        return out;
    }

    /** Where the air goes on the page, of length 1; false where it hardly moves. */
    private boolean direction(PlanView view, double x, double y, double[] to) {
        var place = view.plan(x, y);
        field.at(place.x(), place.y(), to);
        double size = Math.hypot(to[0], to[1]);
        if (!(size > least)) return false;
        to[0] /= size;
        to[1] /= -size;
        return true;
    }

    @Override
    public void explain(Key key, double fontScale) {
        key.entry(
                (canvas, x, y, half) -> {
                    double[] line = {x - half, y, x + half, y};
                    canvas.line(line, false, new Ink(fontScale).solid(Ink.DARK, 0.8));
                    heads(canvas, line, new Ink(fontScale));
                },
                "path of the air; the lines' spacing says nothing");
    }

    /** Points of lines that are drawn, sorted into squares of the page. */
    private static final class Taken {
        final double spacing;
        private final Box seen;
        private final int columns;
        private final int rows;
        private final List<List<double[]>> squares = new ArrayList<>();

        Taken(Box seen, double spacing) {
            this.seen = seen;
            this.spacing = spacing;
            columns = (int) Math.ceil(seen.width() / spacing) + 1;
            rows = (int) Math.ceil(seen.height() / spacing) + 1;
            for (int i = 0; i < columns * rows; i++) squares.add(List.of());
        }

        void add(double[] line) {
            for (int i = 0; i < line.length; i += 2) {
                int square = row(line[i + 1]) * columns + column(line[i]);
                if (squares.get(square).isEmpty()) squares.set(square, new ArrayList<>());
                squares.get(square).add(new double[] {line[i], line[i + 1]});
            }
        }

        boolean isFree(double x, double y, double reach) {
            if (x < seen.left() || x > seen.right() || y < seen.top() || y > seen.bottom()) return false;
            for (int j = Math.max(0, row(y) - 1); j <= Math.min(rows - 1, row(y) + 1); j++)
                for (int i = Math.max(0, column(x) - 1); i <= Math.min(columns - 1, column(x) + 1); i++)
                    for (double[] p : squares.get(j * columns + i))
                        if (Math.hypot(p[0] - x, p[1] - y) < reach) return false;
            return true;
        }

        private int column(double x) {
            return Math.max(0, Math.min(columns - 1, (int) ((x - seen.left()) / spacing)));
        }

        private int row(double y) {
            return Math.max(0, Math.min(rows - 1, (int) ((y - seen.top()) / spacing)));
        }
    }
}
