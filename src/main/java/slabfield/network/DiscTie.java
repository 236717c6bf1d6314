package slabfield.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import slabfield.field.Grid;

/**
 * How a round hole in the layer (a suction pit, an opening) is tied to the cells of a grid at its true place, so that its
 * flow does not depend on the cell size.
 *
 * <p>A disc of at least {@link #RESOLVED} cells in radius takes the cells whose middles lie in it; the links across its
 * rim have their true lengths. A smaller one is shared among the cells around. In both cases all links are scaled by one
 * factor, found on a small patch of even fill around the disc: there the flow from the disc to a rim held at the exact
 * logarithm must be the exact one, dp = Q ln(r2/r1) / (2 pi T). For a point in the middle of a square cell this is the
 * equivalent radius of Peaceman (1978), 0.1985 of the cell; this construction holds off the middle and for larger discs
 * too. The same patch gives what the quadratic part of the Darcy-Forchheimer law loses between the rim and the cells.
 */
final class DiscTie {
    /** Radius in cells from which on a disc's rim is resolved. */
    static final double RESOLVED = 0.75;

    private static final double LARGEST_CALIBRATED = 12;
    private static final double SHORTEST = 0.02;
    /** Places closer than this part of a cell are one. */
    private static final double FINENESS = 0x1p32;

    private static final int MOST_FOUND = 1000;
    private static final Map<Round, DiscTie> FOUND = new ConcurrentHashMap<>();

    /**
     * A link between the disc and a cell outside it.
     *
     * @param column of the cell, may lie outside the grid
     * @param row of the cell
     * @param conductance for a transmissivity of one, dimensionless
     * @param inertial quadratic resistance for beta rho / thickness^2 of one [1/m]
     * @param fromColumn column of the cell of the disc at the other end, or the cell itself for a disc that is shared
     * @param fromRow row of that cell
     */
    record Link(int column, int row, double conductance, double inertial, int fromColumn, int fromRow) {}

    /** Cells whose middles lie inside, as {column, row}; none for a disc that is shared. */
    final List<int[]> inside = new ArrayList<>();

    final List<Link> links = new ArrayList<>();
    final boolean resolved;

    /** One that has been found in the grid's first cell, for the same place within another. */
    private DiscTie(DiscTie first, int columns, int rows) {
        resolved = first.resolved;
        for (int[] c : first.inside) inside.add(new int[] {c[0] + columns, c[1] + rows});
        for (Link l : first.links)
            links.add(new Link(
                    l.column + columns,
                    l.row + rows,
                    l.conductance,
                    l.inertial,
                    l.fromColumn + columns,
                    l.fromRow + rows));
    }

    /**
     * As the constructor, but looked up where one has been found at the same place within a cell.
     *
     * @param found before, to which this one is added
     */
    static DiscTie of(Grid grid, double x, double y, double radius, Map<Round, DiscTie> found) {
        double px = Math.rint((x - grid.left()) / grid.width() * FINENESS) / FINENESS;
        double py = Math.rint((y - grid.bottom()) / grid.height() * FINENESS) / FINENESS;
        int columns = (int) Math.floor(px), rows = (int) Math.floor(py);
        Round key = new Round(grid.width(), grid.height(), px - columns, py - rows, radius);
        DiscTie first = found.computeIfAbsent(
                key,
                r -> new DiscTie(new Grid(0, 0, r.width, r.height, 1, 1), r.x * r.width, r.y * r.height, r.radius));
        return new DiscTie(first, columns, rows);
    }

    /**
     * Ties found before, of all houses: what a tie depends on comes again in every solve of a fit, a search or a drag, and to find
     * one takes longer than many of these solves. For several threads.
     */
    static Map<Round, DiscTie> found() {
        if (FOUND.size() > MOST_FOUND) FOUND.clear();
        return FOUND;
    }

    /** All that a disc's tie depends on: the cell, the place within it as parts of it, and the disc. */
    record Round(double width, double height, double x, double y, double radius) {}

    DiscTie(Grid grid, double x, double y, double radius) {
        double dx = grid.width(), dy = grid.height(), h = Math.max(dx, dy);
        double px = (x - grid.left()) / dx, py = (y - grid.bottom()) / dy;
        int ci = (int) Math.floor(px), cj = (int) Math.floor(py);
        int reach = (int) Math.ceil(radius / Math.min(dx, dy)) + 10;
        Patch patch = new Patch(2 * reach + 1, dx, dy, x - grid.x(ci) + reach * dx, y - grid.y(cj) + reach * dy);
        resolved = radius >= RESOLVED * h;
        if (resolved) patch.resolve(radius);
        else patch.share(radius);
        double factor = radius > LARGEST_CALIBRATED * h ? 1 : patch.calibrate(radius);
        double[] lost = radius > LARGEST_CALIBRATED * h ? patch.rimLosses() : patch.inertialLosses(radius, factor);
        for (int k = 0; k < patch.ends.size(); k++) {
            int[] e = patch.ends.get(k);
            double conductance = factor * patch.strength.get(k);
            links.add(new Link(
                    e[0] - reach + ci, e[1] - reach + cj, conductance, lost[k], e[2] - reach + ci, e[3] - reach + cj));
        }
        for (int[] c : patch.held) inside.add(new int[] {c[0] - reach + ci, c[1] - reach + cj});
    }

    /** Logarithm of the factor within which it mostly lies, either way, and beyond which none is looked for. */
    private static final double USUAL = 0.4;

    private static final double MOST = 7;

    /** A square patch of cells with transmissivity one around the disc, its outermost ring held at the exact solution. */
    private static final class Patch {
        final int n;
        final double dx;
        final double dy;
        final double x;
        final double y;
        final boolean[] isHeld;
        final List<int[]> held = new ArrayList<>();
        final List<int[]> ends = new ArrayList<>();
        final List<Double> strength = new ArrayList<>();
        final List<Double> length = new ArrayList<>();
        final List<Double> face = new ArrayList<>();
        private double[] pressure;

        /** The disc's middle is at (x, y) from the middle of cell (0, 0). */
        Patch(int n, double dx, double dy, double x, double y) {
            this.n = n;
            this.dx = dx;
            this.dy = dy;
            this.x = x;
            this.y = y;
            isHeld = new boolean[n * n];
        }

        private double distance(int i, int j) {
            return Math.hypot(i * dx - x, j * dy - y);
        }

        void resolve(double radius) {
            for (int j = 0; j < n; j++)
                for (int i = 0; i < n; i++)
                    if (distance(i, j) <= radius) {
                        isHeld[j * n + i] = true;
                        held.add(new int[] {i, j});
                    }
            for (int[] c : held) {
                rim(radius, c[0], c[1], 1, 0);
                rim(radius, c[0], c[1], -1, 0);
                rim(radius, c[0], c[1], 0, 1);
                rim(radius, c[0], c[1], 0, -1);
            }
        }

        private void rim(double radius, int i, int j, int di, int dj) {
            int a = i + di, b = j + dj;
            if (isHeld[b * n + a]) return;
            double step = di != 0 ? dx : dy, width = di != 0 ? dy : dx;
            double across = di != 0 ? j * dy - y : i * dx - x;
            double along = di != 0 ? Math.abs(a * dx - x) : Math.abs(b * dy - y);
            double d = along - Math.sqrt(Math.max(0, radius * radius - across * across));
            d = Math.max(SHORTEST * step, Math.min(step, d));
            ends.add(new int[] {a, b, i, j});
            strength.add(width / d);
            length.add(d);
            face.add(width);
        }

        /** Links to the cells that a square around the point overlaps; the larger the disc the wider the square. */
        void share(double radius) {
            double widen = 0.5 + Math.max(0, radius / Math.max(dx, dy) - 0.15) * 0.9;
            double ax = widen * dx, ay = widen * dy;
            for (int j = 0; j < n; j++)
                for (int i = 0; i < n; i++) {
                    double w = overlap(i * dx - dx / 2, i * dx + dx / 2, x - ax, x + ax)
                            / (2 * ax)
                            * overlap(j * dy - dy / 2, j * dy + dy / 2, y - ay, y + ay)
                            / (2 * ay);
                    if (w < 1e-9) continue;
                    ends.add(new int[] {i, j, i, j});
                    strength.add(w);
                    length.add(0.0);
                    face.add(dx);
                }
        }

        private static double overlap(double a0, double a1, double b0, double b1) {
            return Math.max(0, Math.min(a1, b1) - Math.max(a0, b0));
        }

        /** Factor on all links for which the patch carries a flow of exactly one. */
        double calibrate(double radius) {
            double low = -USUAL, high = USUAL, fLow = excess(radius, low), fHigh = excess(radius, high);
            while (fHigh <= 0) {
                if (high > MOST) return Math.exp(high);
                low = high;
                fLow = fHigh;
                high *= 2;
                fHigh = excess(radius, high);
            }
            while (fLow >= 0) {
                if (low < -MOST) return Math.exp(low);
                high = low;
                fHigh = fLow;
                low *= 2;
                fLow = excess(radius, low);
            }
            for (int k = 0; k < 60 && high - low > 1e-10; k++) {
                double guess = k % 3 == 2 ? (low + high) / 2 : low - fLow * (high - low) / (fHigh - fLow);
                double f = excess(radius, guess);
                if (Math.abs(f) < 1e-9) return Math.exp(guess);
                if (f < 0) {
                    low = guess;
                    fLow = f;
                } else {
                    high = guess;
                    fHigh = f;
                }
            }
            return Math.exp((low + high) / 2);
        }

        private double excess(double radius, double logarithm) {
            return Math.log(flow(radius, Math.exp(logarithm)));
        }

        /** Flow into the disc at pressure 0 while the outermost ring is held at ln(r / radius) / (2 pi). */
        private double flow(double radius, double factor) {
            double[] extra = new double[n * n];
            for (int k = 0; k < ends.size(); k++)
                extra[ends.get(k)[1] * n + ends.get(k)[0]] += factor * strength.get(k);
            pressure = solve(radius, extra);
            double q = 0;
            for (int k = 0; k < ends.size(); k++)
                q += factor * strength.get(k) * pressure[ends.get(k)[1] * n + ends.get(k)[0]];
            return q;
        }

        /** Five-point Laplace equation by banded Cholesky. */
        private double[] solve(double radius, double[] extra) {
            int m = n - 2, size = m * m;
            double east = dy / dx, north = dx / dy;
            double[][] band = new double[size][m + 1];
            double[] b = new double[size];
            for (int j = 0; j < m; j++)
                for (int i = 0; i < m; i++) {
                    int u = j * m + i, c = (j + 1) * n + i + 1;
                    if (isHeld[c]) {
                        band[u][m] = 1;
                        continue;
                    }
                    double d = extra[c];
                    for (int k = 0; k < 4; k++) {
                        int a = i + 1 + (k == 0 ? 1 : k == 1 ? -1 : 0), e = j + 1 + (k == 2 ? 1 : k == 3 ? -1 : 0);
                        double link = k < 2 ? east : north;
                        if (isHeld[e * n + a]) continue;
                        d += link;
                        if (a == 0 || e == 0 || a == n - 1 || e == n - 1)
                            b[u] += link * Math.log(distance(a, e) / radius) / (2 * Math.PI);
                        else if (k == 1) band[u][m - 1] = -link;
                        else if (k == 3) band[u][0] = -link;
                    }
                    band[u][m] = d;
                }
            Banded.solve(band, b);
            double[] p = new double[n * n];
            for (int j = 0; j < n; j++)
                for (int i = 0; i < n; i++) {
                    int c = j * n + i;
                    if (i == 0 || j == 0 || i == n - 1 || j == n - 1)
                        p[c] = Math.log(distance(i, j) / radius) / (2 * Math.PI);
                    else p[c] = isHeld[c] ? 0 : b[(j - 1) * m + i - 1];
                }
            return p;
        }

        /** Quadratic resistance of links of their true lengths across the rim; 0 for a disc that is shared. */
        double[] rimLosses() {
            double[] out = new double[ends.size()];
            for (int k = 0; k < out.length; k++) out[k] = length.get(k) / (face.get(k) * face.get(k));
            return out;
        }

        /**
         * Quadratic resistance of each link. What the flow of one dissipates in the continuum outside the disc, the
         * integral of |v|^3, less what the same flow dissipates between the cells, is laid on the links: on those across
         * a resolved rim by one factor on their own losses, on those of a shared disc in equal parts of the flow.
         */
        double[] inertialLosses(double radius, double factor) {
            flow(radius, factor);
            double rest = Math.max(0, inContinuum(radius) - betweenCells());
            double[] lost = rimLosses(), share = new double[lost.length];
            double onLinks = 0;
            for (int k = 0; k < lost.length; k++) {
                share[k] = factor * strength.get(k) * pressure[ends.get(k)[1] * n + ends.get(k)[0]];
                onLinks += lost[k] * Math.abs(share[k]) * share[k] * share[k];
            }
            for (int k = 0; k < lost.length; k++) {
                if (onLinks > 0) lost[k] *= rest / onLinks;
                else lost[k] = rest / (share[k] * share[k]);
            }
            return lost;
        }

        /** Integral of |v|^3 over the inner cells outside the disc for a flow of one from a line source [1/m]. */
        private double inContinuum(double radius) {
            double halfX = (n - 2) * 0.5 * dx, halfY = (n - 2) * 0.5 * dy;
            double midX = (n - 1) * 0.5 * dx - x, midY = (n - 1) * 0.5 * dy - y;
            int parts = 720;
            double sum = 0;
            for (int k = 0; k < parts; k++) {
                double a = 2 * Math.PI * (k + 0.5) / parts, c = Math.cos(a), s = Math.sin(a);
                double rx = c > 0 ? (midX + halfX) / c : (midX - halfX) / c;
                double ry = s > 0 ? (midY + halfY) / s : (midY - halfY) / s;
                sum += 2 * Math.PI / parts * (1 / radius - 1 / Math.min(rx, ry));
            }
            return sum / Math.pow(2 * Math.PI, 3);
        }

        /** The same integral by the differences between cells, in quadrants as the layer's own flow takes it. */
        private double betweenCells() {
            double sum = 0;
            for (int j = 1; j < n - 1; j++)
                for (int i = 1; i < n - 1; i++) {
                    int c = j * n + i;
                    if (isHeld[c]) continue;
                    for (int q = 0; q < 4; q++) {
                        int a = (q & 1) == 0 ? c + 1 : c - 1, e = (q & 2) == 0 ? c + n : c - n;
                        double u = isHeld[a] ? 0 : (pressure[a] - pressure[c]) / dx;
                        double v = isHeld[e] ? 0 : (pressure[e] - pressure[c]) / dy;
                        sum += dx * dy / 4 * Math.pow(u * u + v * v, 1.5);
                    }
                }
            return sum;
        }
    }
}
