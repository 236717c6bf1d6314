package slabfield.network;

import java.util.Arrays;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;

/**
 * A polygonal area prepared for a grid: exact lengths along grid lines, exact areas of rectangles. A line that runs along
 * an edge of the area is read as lying just above (or right of) it, so that of two areas that touch exactly one counts.
 */
final class Region {
    private final double[][] ringX;
    private final double[][] ringY;

    Region(Geometry area) {
        int rings = 0;
        for (int g = 0; g < area.getNumGeometries(); g++)
            if (area.getGeometryN(g) instanceof Polygon p) rings += 1 + p.getNumInteriorRing();
        ringX = new double[rings][];
        ringY = new double[rings][];
        int k = 0;
        for (int g = 0; g < area.getNumGeometries(); g++)
            if (area.getGeometryN(g) instanceof Polygon p) {
                put(k++, p.getExteriorRing().getCoordinates(), 1);
                for (int h = 0; h < p.getNumInteriorRing(); h++)
                    put(k++, p.getInteriorRingN(h).getCoordinates(), -1);
            }
    }

    /** Stores a ring counter-clockwise for sign 1, clockwise for -1. */
    private void put(int k, Coordinate[] ring, int sign) {
        int n = ring.length - 1;
        double twice = 0;
        for (int i = 0; i < n; i++) twice += ring[i].x * ring[i + 1].y - ring[i + 1].x * ring[i].y;
        boolean turn = twice * sign < 0;
        ringX[k] = new double[n];
        ringY[k] = new double[n];
        for (int i = 0; i < n; i++) {
            Coordinate c = ring[turn ? n - 1 - i : i];
            ringX[k][i] = c.x;
            ringY[k][i] = c.y;
        }
    }

    /** Sorted y at which the vertical line through x enters and leaves, in pairs [m]. */
    double[] alongX(double x) {
        return crossings(ringX, ringY, x);
    }

    /** Sorted x at which the horizontal line through y enters and leaves, in pairs [m]. */
    double[] alongY(double y) {
        return crossings(ringY, ringX, y);
    }

    private static double[] crossings(double[][] across, double[][] along, double at) {
        double[] found = new double[16];
        int n = 0;
        for (int r = 0; r < across.length; r++) {
            double[] a = across[r], b = along[r];
            for (int i = 0, k = a.length - 1; i < a.length; k = i++) {
                if ((a[i] <= at) == (a[k] <= at)) continue;
                if (n == found.length) found = Arrays.copyOf(found, 2 * n);
                found[n++] = b[k] + (at - a[k]) / (a[i] - a[k]) * (b[i] - b[k]);
            }
        }
        double[] sorted = Arrays.copyOf(found, n);
        Arrays.sort(sorted);
        return sorted;
    }

    /**
     * Where edges of the area enter or leave a rectangle's stretch along x or y, or end in it: the places across, of those
     * between its sides [m].
     */
    double[] ends(double from, double to, double low, double high, boolean alongX) {
        double[] found = new double[8];
        int n = 0;
        for (int r = 0; r < ringX.length; r++) {
            double[] m = alongX ? ringX[r] : ringY[r], a = alongX ? ringY[r] : ringX[r];
            for (int i = 0, k = m.length - 1; i < m.length; k = i++) {
                if (Math.max(m[i], m[k]) <= from || Math.min(m[i], m[k]) >= to) continue;
                double rise = m[i] == m[k] ? 0 : (a[i] - a[k]) / (m[i] - m[k]);
                if (n + 2 > found.length) found = Arrays.copyOf(found, 2 * found.length);
                found[n++] = a[i] + (Math.max(from, Math.min(to, m[i])) - m[i]) * rise;
                found[n++] = a[k] + (Math.max(from, Math.min(to, m[k])) - m[k]) * rise;
            }
        }
        return Arrays.stream(found, 0, n).filter(v -> v > low && v < high).toArray();
    }

    /** Length of [from, to] that lies in the pairs of {@code crossings}. */
    static double overlap(double[] crossings, double from, double to) {
        double sum = 0;
        for (int i = 0; i + 1 < crossings.length; i += 2)
            sum += Math.max(0, Math.min(to, crossings[i + 1]) - Math.max(from, crossings[i]));
        return sum;
    }

    static boolean inside(double[] crossings, double at) {
        int i = Arrays.binarySearch(crossings, at);
        int before = i >= 0 ? i + 1 : -i - 1;
        return before % 2 == 1;
    }

    boolean contains(double x, double y) {
        return inside(alongY(y), x);
    }

    /** True where an edge of the area passes through the rectangle's closure, told by bounding boxes. */
    boolean[] touchedCells(slabfield.field.Grid grid) {
        boolean[] touched = new boolean[grid.cells()];
        for (int r = 0; r < ringX.length; r++) {
            double[] xs = ringX[r], ys = ringY[r];
            for (int i = 0, k = xs.length - 1; i < xs.length; k = i++) {
                int j0 = clamp((Math.min(ys[i], ys[k]) - grid.bottom()) / grid.height() - 1e-9, grid.rows());
                int j1 = clamp((Math.max(ys[i], ys[k]) - grid.bottom()) / grid.height() + 1e-9, grid.rows());
                for (int j = j0; j <= j1; j++) {
                    double lo = grid.bottom() + j * grid.height() - 1e-9, hi = lo + grid.height() + 2e-9;
                    double xa = atY(xs[k], ys[k], xs[i], ys[i], lo), xb = atY(xs[k], ys[k], xs[i], ys[i], hi);
                    int i0 = clamp((Math.min(xa, xb) - grid.left()) / grid.width() - 1e-9, grid.columns());
                    int i1 = clamp((Math.max(xa, xb) - grid.left()) / grid.width() + 1e-9, grid.columns());
                    for (int c = i0; c <= i1; c++) touched[grid.index(c, j)] = true;
                }
            }
        }
        return touched;
    }

    private static int clamp(double cell, int count) {
        return (int) Math.max(0, Math.min(count - 1, Math.floor(cell)));
    }

    /** x of the segment at y, held to the segment's own ends; for a level segment one of its ends, then the other. */
    private static double atY(double x0, double y0, double x1, double y1, double y) {
        if (Math.abs(y1 - y0) < 1e-12) return y < y0 ? x0 : x1;
        double t = Math.max(0, Math.min(1, (y - y0) / (y1 - y0)));
        return x0 + t * (x1 - x0);
    }

    /** Area inside a rectangle, by clipping each ring to it (Sutherland and Hodgman 1974) [m2]. */
    double area(double x0, double y0, double x1, double y1) {
        double sum = 0;
        for (int r = 0; r < ringX.length; r++) {
            double[] px = ringX[r], py = ringY[r];
            int n = px.length;
            double[][] a = {px, py};
            a = clip(a, n, 0, x0, 1);
            a = clip(a, a[0].length, 0, x1, -1);
            a = clip(a, a[0].length, 1, y0, 1);
            a = clip(a, a[0].length, 1, y1, -1);
            px = a[0];
            py = a[1];
            for (int i = 0, k = px.length - 1; i < px.length; k = i++) sum += px[k] * py[i] - px[i] * py[k];
        }
        return Math.max(0, sum / 2);
    }

    private static double[][] clip(double[][] ring, int n, int axis, double at, int sign) {
        double[] main = ring[axis], other = ring[1 - axis];
        double[] m = new double[2 * n + 2], o = new double[2 * n + 2];
        int count = 0;
        for (int i = 0, k = n - 1; i < n; k = i++) {
            double di = sign * (main[i] - at), dk = sign * (main[k] - at);
            if (di >= 0 != dk >= 0) {
                double t = dk / (dk - di);
                m[count] = at;
                o[count++] = other[k] + t * (other[i] - other[k]);
            }
            if (di >= 0) {
                m[count] = main[i];
                o[count++] = other[i];
            }
        }
        m = Arrays.copyOf(m, count);
        o = Arrays.copyOf(o, count);
        return axis == 0 ? new double[][] {m, o} : new double[][] {o, m};
    }
}
