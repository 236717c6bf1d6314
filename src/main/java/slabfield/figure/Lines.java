package slabfield.figure;

import java.util.ArrayList;
import java.util.List;
import slabfield.model.Gap;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Slab;

/** Geometry of lines and rings, x0, y0, x1, y1 ..., on the page unless said otherwise. */
final class Lines {
    private Lines() {}

    static double[] page(List<Point> places, PlanView view) {
        double[] line = new double[2 * places.size()];
        for (int i = 0; i < places.size(); i++) {
            line[2 * i] = view.pageX(places.get(i).x());
            line[2 * i + 1] = view.pageY(places.get(i).y());
        }
        return line;
    }

    /** Outlines of slabs with their holes. */
    static List<double[]> rings(List<Slab> slabs, PlanView view) {
        List<double[]> rings = new ArrayList<>();
        for (Slab slab : slabs) {
            rings.add(page(slab.outline(), view));
            for (List<Point> hole : slab.holes()) rings.add(page(hole, view));
        }
        return rings;
    }

    static double[] circle(double x, double y, double radius) {
        int n = 40;
        double[] ring = new double[2 * n];
        for (int i = 0; i < n; i++) {
            ring[2 * i] = x + radius * Math.cos(2 * Math.PI * i / n);
            ring[2 * i + 1] = y + radius * Math.sin(2 * Math.PI * i / n);
        }
        return ring;
    }

    static double length(double[] line) {
        double sum = 0;
        for (int i = 2; i < line.length; i += 2) sum += Math.hypot(line[i] - line[i - 2], line[i + 1] - line[i - 1]);
        return sum;
    }

    /** The place at a distance along a line, held to its ends. */
    static double[] at(double[] line, double distance) {
        double left = Math.max(0, distance);
        for (int i = 2; i < line.length; i += 2) {
            double dx = line[i] - line[i - 2], dy = line[i + 1] - line[i - 1], piece = Math.hypot(dx, dy);
            if (left <= piece && piece > 0)
                return new double[] {line[i - 2] + left / piece * dx, line[i - 1] + left / piece * dy};
            left -= piece;
        }
        return new double[] {line[line.length - 2], line[line.length - 1]};
    }

    static boolean inside(List<double[]> rings, double x, double y) {
        boolean in = false;
        for (double[] r : rings)
            for (int i = 0, j = r.length - 2; i < r.length; j = i, i += 2) {
                boolean crosses = r[i + 1] > y != r[j + 1] > y;
                if (crosses && x < r[i] + (y - r[i + 1]) / (r[j + 1] - r[i + 1]) * (r[j] - r[i])) in = !in;
            }
        return in;
    }

    /** A line beside another, at a distance to its right as one goes along it on the page. */
    static double[] beside(double[] line, boolean closed, double distance) {
        int n = line.length / 2;
        double[] moved = new double[line.length];
        for (int i = 0; i < n; i++) {
            double[] in = closed || i > 0 ? normal(line, (i + n - 1) % n, i) : normal(line, 0, 1);
            double[] out = closed || i < n - 1 ? normal(line, i, (i + 1) % n) : in;
            double dot = in[0] * out[0] + in[1] * out[1], mitre = 1 / Math.max(0.3, 1 + dot);
            moved[2 * i] = line[2 * i] + distance * mitre * (in[0] + out[0]);
            moved[2 * i + 1] = line[2 * i + 1] + distance * mitre * (in[1] + out[1]);
        }
        return moved;
    }

    private static double[] normal(double[] line, int from, int to) {
        double dx = line[2 * to] - line[2 * from], dy = line[2 * to + 1] - line[2 * from + 1];
        double length = Math.hypot(dx, dy);
        return length == 0 ? new double[] {0, 0} : new double[] {-dy / length, dx / length};
    }

    /** The area within half a width of a line, with butt ends. */
    static double[] strip(double[] line, double width) {
        double[] right = beside(line, false, width / 2), left = beside(line, false, -width / 2);
        double[] ring = new double[2 * line.length];
        System.arraycopy(right, 0, ring, 0, right.length);
        for (int i = 0, n = left.length; i < n; i += 2) {
            ring[right.length + i] = left[n - 2 - i];
            ring[right.length + i + 1] = left[n - 1 - i];
        }
        return ring;
    }

    /** A line that swings to both sides of another. */
    static double[] zigzag(double[] line, double step, double swing) {
        double length = length(line);
        int n = Math.max(2, (int) Math.round(length / step));
        double[] swung = new double[2 * (n + 1)];
        for (int i = 0; i <= n; i++) {
            double[] here = at(line, length * i / n);
            double[] a = at(line, length * i / n - step / 2), b = at(line, length * i / n + step / 2);
            double along = Math.hypot(b[0] - a[0], b[1] - a[1]);
            double side = i == 0 || i == n || along == 0 ? 0 : (i % 2 == 0 ? swing : -swing) / along;
            swung[2 * i] = here[0] - side * (b[1] - a[1]);
            swung[2 * i + 1] = here[1] + side * (b[0] - a[0]);
        }
        return swung;
    }

    /** The stretches that gaps take from a path, on the page, each at least so long [m]. */
    static List<double[]> gaps(Path path, List<Gap> gaps, double least, PlanView view) {
        return spans(path, gaps, least).stream()
                .map(s -> page(cut(path, s[0], s[1]), view))
                .toList();
    }

    /** What gaps leave of a path, on the page. */
    static List<double[]> remaining(Path path, List<Gap> gaps, double least, PlanView view) {
        List<double[]> left = new ArrayList<>();
        double from = 0;
        for (double[] span : spans(path, gaps, least)) {
            if (span[0] > from) left.add(page(cut(path, from, span[0]), view));
            from = Math.max(from, span[1]);
        }
        if (from < path.length()) left.add(page(cut(path, from, path.length()), view));
        return left;
    }

    /** From and to along the path, by rising from; a gap over the start of a closed path gives two. */
    private static List<double[]> spans(Path path, List<Gap> gaps, double least) {
        double length = path.length();
        List<double[]> spans = new ArrayList<>();
        for (Gap gap : gaps) {
            double middle = path.nearest(gap.at()), half = Math.max(gap.length(), least) / 2;
            spans.add(new double[] {Math.max(0, middle - half), Math.min(length, middle + half)});
            if (!path.isClosed()) continue;
            if (middle - half < 0) spans.add(new double[] {length + middle - half, length});
            if (middle + half > length) spans.add(new double[] {0, middle + half - length});
        }
        spans.sort(java.util.Comparator.comparingDouble(s -> s[0]));
        return spans;
    }

    private static List<Point> cut(Path path, double from, double to) {
        List<Point> places = new ArrayList<>(List.of(path.at(from)));
        double along = 0;
        for (int i = 1; i < path.points().size(); i++) {
            along += path.points().get(i - 1).distanceTo(path.points().get(i));
            if (along > from + 1e-9 && along < to - 1e-9)
                places.add(path.points().get(i));
        }
        places.add(path.at(to));
        return places;
    }
}
