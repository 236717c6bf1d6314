package slabfield.figure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Parallel lines over an area of the page. All hatchings of one spacing and angle fall on the same lines, wherever the
 * areas are.
 */
final class Hatching {
    /** An area of the page by its points. */
    interface Region {
        boolean has(double x, double y);
    }

    private Hatching() {}

    /** Lines across the inside of rings, even-odd. */
    static List<double[]> across(List<double[]> rings, double spacing, double angle) {
        double c = Math.cos(angle), s = Math.sin(angle), low = Double.MAX_VALUE, high = -Double.MAX_VALUE;
        for (double[] r : rings)
            for (int i = 0; i < r.length; i += 2) {
                double v = -s * r[i] + c * r[i + 1];
                low = Math.min(low, v);
                high = Math.max(high, v);
            }
        List<double[]> lines = new ArrayList<>();
        for (long k = (long) Math.ceil(low / spacing); k * spacing <= high; k++) {
            double v = k * spacing;
            double[] cuts = cuts(rings, c, s, v);
            for (int i = 0; i + 1 < cuts.length; i += 2) lines.add(line(cuts[i], cuts[i + 1], v, c, s));
        }
        return lines;
    }

    /** Lines across a region inside a box; ends are found by halving a step of a quarter of the spacing. */
    static List<double[]> across(Box box, Region region, double spacing, double angle) {
        List<double[]> lines = new ArrayList<>();
        double step = spacing / 4, c = Math.cos(angle), s = Math.sin(angle);
        for (double[] whole : across(List.of(box.ring()), spacing, angle)) {
            double u0 = c * whole[0] + s * whole[1], u1 = c * whole[2] + s * whole[3], v = -s * whole[0] + c * whole[1];
            double start = Double.NaN;
            for (double u = u0; u <= u1 + step; u += step) {
                double at = Math.min(u, u1);
                boolean inside = u <= u1 && region.has(c * at - s * v, s * at + c * v);
                if (inside && Double.isNaN(start)) start = u == u0 ? u : edge(region, u, u - step, v, c, s);
                if (!inside && !Double.isNaN(start)) {
                    double end = u > u1 ? u1 : edge(region, u - step, u, v, c, s);
                    lines.add(line(start, end, v, c, s));
                    start = Double.NaN;
                }
            }
        }
        return lines;
    }

    private static double edge(Region region, double inside, double outside, double v, double c, double s) {
        double a = inside, b = outside;
        for (int i = 0; i < 6; i++) {
            double m = (a + b) / 2;
            if (region.has(c * m - s * v, s * m + c * v)) a = m;
            else b = m;
        }
        return a;
    }

    private static double[] cuts(List<double[]> rings, double c, double s, double v) {
        double[] found = new double[16];
        int n = 0;
        for (double[] r : rings)
            for (int i = 0, j = r.length - 2; i < r.length; j = i, i += 2) {
                double va = -s * r[j] + c * r[j + 1], vb = -s * r[i] + c * r[i + 1];
                if (va < v == vb < v) continue;
                double ua = c * r[j] + s * r[j + 1], ub = c * r[i] + s * r[i + 1];
                if (n == found.length) found = Arrays.copyOf(found, 2 * n);
                found[n++] = ua + (v - va) / (vb - va) * (ub - ua);
            }
        double[] cuts = Arrays.copyOf(found, n);
        Arrays.sort(cuts);
        return cuts;
    }

    private static double[] line(double u0, double u1, double v, double c, double s) {
        return new double[] {c * u0 - s * v, s * u0 + c * v, c * u1 - s * v, s * u1 + c * v};
    }
}
