package slabfield.network;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import slabfield.field.CellKind;
import slabfield.field.Grid;
import slabfield.law.AirState;
import slabfield.law.Forchheimer;
import slabfield.model.Barrier;
import slabfield.model.Fill;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Shapes;

/**
 * A scenario's layer laid on a grid: which cells are layer, how much of each cell and each face is open, and the linear
 * conductance between neighbours.
 *
 * <p>Cells have one size, such that whole cells fill the bounding box of all slabs. A face is open over the length that
 * lies under a slab and outside impermeable barriers; a barrier thinner than a cell cuts the links that cross its middle
 * line. Along a link the fills resist in series. Open area carries soil leakance; barriers and discs carry none.
 */
final class LayerGrid {
    private static final double SLIVER = 1e-6;
    /** A face on an edge is as open as its tighter side; both are looked at this part of a cell away. */
    private static final double HAIR = 1e-7;

    final Grid grid;
    final CellKind[] kind;
    final double[] openArea;
    final boolean[] counts;
    final LayerFlow flow;
    /** Transmissivity k h / mu at each cell's middle [m3/(s Pa)]. */
    final double[] transmissivity;
    /** Height of the layer at each cell's middle [m]. */
    final double[] thickness;
    /** beta rho at each cell's middle [kg/m4]. */
    final double[] drag;
    /** For each cell the index into {@link #discs} of the disc it belongs to, or -1. */
    final int[] disc;

    final List<Disc> discs = new ArrayList<>();
    private final AirState air;
    private double[] uncutEast;
    private double[] uncutNorth;
    private final List<List<double[]>> middleLines = new ArrayList<>();

    /** A round hole in the layer with one pressure. */
    record Disc(String subject, Point at, double radius, DiscTie tie) {}

    LayerGrid(Scenario scenario, AirState air) {
        this.air = air;
        Geometry slabs = Shapes.union(scenario.slabs());
        grid = gridOver(slabs, scenario.cellSize());
        int n = grid.cells();
        kind = new CellKind[n];
        openArea = new double[n];
        counts = new boolean[n];
        transmissivity = new double[n];
        thickness = new double[n];
        drag = new double[n];
        disc = new int[n];
        java.util.Arrays.fill(disc, -1);
        flow = new LayerFlow(grid.columns(), grid.rows(), grid.width(), grid.height());

        Geometry open = slabs, unbuilt = slabs;
        for (Barrier b : scenario.barriers()) {
            Geometry strip = Shapes.strip(b);
            unbuilt = unbuilt.difference(strip);
            if (b.permeability() > 0) continue;
            open = open.difference(strip);
            middleLines.add(middleLine(b));
        }
        classify(new Region(slabs), new Region(open), new Region(unbuilt));
        Fills fills = new Fills(scenario);
        fillCells(fills);
        link(new Region(open), fills);
        for (int c = 0; c < n; c++)
            flow.soil[c] = kind[c] == CellKind.LAYER ? scenario.soilLeakance() * openArea[c] : 0;
    }

    /** A copy into which discs can be cut without touching the original, which has none. */
    LayerGrid(LayerGrid bare) {
        air = bare.air;
        grid = bare.grid;
        kind = bare.kind.clone();
        openArea = bare.openArea.clone();
        counts = bare.counts.clone();
        transmissivity = bare.transmissivity;
        thickness = bare.thickness;
        drag = bare.drag;
        disc = bare.disc.clone();
        flow = new LayerFlow(bare.flow);
        middleLines.addAll(bare.middleLines);
    }

    static Grid gridOver(Geometry slabs, double cell) {
        var box = slabs.getEnvelopeInternal();
        int columns = Math.max(1, (int) Math.ceil(box.getWidth() / cell - 1e-6));
        int rows = Math.max(1, (int) Math.ceil(box.getHeight() / cell - 1e-6));
        return new Grid(box.getMinX(), box.getMinY(), box.getWidth() / columns, box.getHeight() / rows, columns, rows);
    }

    private static List<double[]> middleLine(Barrier b) {
        List<double[]> out = new ArrayList<>();
        for (Path piece : Shapes.pieces(b.path(), b.gaps())) {
            List<Point> points = piece.points();
            for (int i = 1; i < points.size(); i++)
                out.add(new double[] {
                    points.get(i - 1).x(),
                    points.get(i - 1).y(),
                    points.get(i).x(),
                    points.get(i).y()
                });
        }
        return out;
    }

    private void classify(Region slabs, Region open, Region unbuilt) {
        boolean[] edge = open.touchedCells(grid), built = unbuilt.touchedCells(grid);
        double whole = grid.width() * grid.height();
        for (int j = 0; j < grid.rows(); j++) {
            double y = grid.y(j), y0 = grid.bottom() + j * grid.height();
            double[] inSlab = slabs.alongY(y), inOpen = open.alongY(y), inUnbuilt = unbuilt.alongY(y);
            for (int i = 0; i < grid.columns(); i++) {
                int c = grid.index(i, j);
                double x = grid.x(i), x0 = grid.left() + i * grid.width();
                double area = edge[c]
                        ? open.area(x0, y0, x0 + grid.width(), y0 + grid.height())
                        : Region.inside(inOpen, x) ? whole : 0;
                if (area > SLIVER * whole) kind[c] = CellKind.LAYER;
                else kind[c] = Region.inside(inSlab, x) ? CellKind.BARRIER : CellKind.OUTSIDE;
                if (kind[c] != CellKind.LAYER) continue;
                openArea[c] = built[c] ? unbuilt.area(x0, y0, x0 + grid.width(), y0 + grid.height()) : area;
                if (!built[c] && !Region.inside(inUnbuilt, x)) openArea[c] = 0;
                counts[c] = Region.inside(inUnbuilt, x);
            }
        }
    }

    private void fillCells(Fills fills) {
        for (int j = 0; j < grid.rows(); j++)
            for (int i = 0; i < grid.columns(); i++) {
                int c = grid.index(i, j);
                if (kind[c] != CellKind.LAYER) continue;
                Fill f = fills.at(grid.x(i), grid.y(j));
                flow.mobility[c] = f.permeability() / air.viscosity();
                transmissivity[c] = flow.mobility[c] * f.thickness();
                thickness[c] = f.thickness();
                drag[c] = f.inertial() * air.density();
                flow.inertia[c] = drag[c] * flow.mobility[c] * flow.mobility[c];
                if (flow.inertia[c] > 0) flow.inertial = true;
            }
    }

    private void link(Region open, Fills fills) {
        for (int i = 0; i + 1 < grid.columns(); i++) {
            double x = grid.left() + (i + 1) * grid.width(), hair = HAIR * grid.width();
            double[] left = open.alongX(x - hair), right = open.alongX(x + hair);
            for (int j = 0; j < grid.rows(); j++) {
                double y0 = grid.bottom() + j * grid.height(), y1 = y0 + grid.height();
                double length = Math.min(Region.overlap(left, y0, y1), Region.overlap(right, y0, y1));
                tie(grid.index(i, j), grid.index(i + 1, j), true, length, fills, i, j);
            }
        }
        for (int j = 0; j + 1 < grid.rows(); j++) {
            double y = grid.bottom() + (j + 1) * grid.height(), hair = HAIR * grid.height();
            double[] below = open.alongY(y - hair), above = open.alongY(y + hair);
            for (int i = 0; i < grid.columns(); i++) {
                double x0 = grid.left() + i * grid.width(), x1 = x0 + grid.width();
                double length = Math.min(Region.overlap(below, x0, x1), Region.overlap(above, x0, x1));
                tie(grid.index(i, j), grid.index(i, j + 1), false, length, fills, i, j);
            }
        }
    }

    private void tie(int a, int b, boolean alongX, double face, Fills fills, int i, int j) {
        double side = alongX ? grid.height() : grid.width(), step = alongX ? grid.width() : grid.height();
        if (kind[a] != CellKind.LAYER || kind[b] != CellKind.LAYER || face <= SLIVER * side) return;
        double x = grid.x(i), y = grid.y(j);
        if (cut(x, y, alongX ? x + step : x, alongX ? y : y + step)) return;
        double main = alongX ? x : y, middle = alongX ? y : x, sum = 0, near = 0;
        double[] edges = fills.edges(main, main + step, middle, side, alongX);
        for (int k = 1; k < edges.length; k++) {
            double across = middle + (edges[k] + edges[k - 1]) / 2, part = (edges[k] - edges[k - 1]) / side;
            double px = alongX ? x : across, py = alongX ? across : y;
            double r1 = fills.resistance(px, py, alongX, step / 2, air.viscosity());
            double r2 = fills.resistance(
                    alongX ? px + step / 2 : px, alongX ? py : py + step / 2, alongX, step / 2, air.viscosity());
            sum += part / (r1 + r2);
            near += part * r1 / ((r1 + r2) * (r1 + r2));
        }
        (alongX ? flow.east : flow.north)[a] = face * sum;
        (alongX ? flow.eastShare : flow.northShare)[a] = near / sum;
    }

    /** True where the straight line between two places crosses the middle line of an impermeable barrier. */
    boolean cut(double x0, double y0, double x1, double y1) {
        for (List<double[]> line : middleLines) for (double[] s : line) if (crosses(x0, y0, x1, y1, s)) return true;
        return false;
    }

    private static boolean crosses(double x0, double y0, double x1, double y1, double[] s) {
        if (Math.max(x0, x1) < Math.min(s[0], s[2])
                || Math.min(x0, x1) > Math.max(s[0], s[2])
                || Math.max(y0, y1) < Math.min(s[1], s[3])
                || Math.min(y0, y1) > Math.max(s[1], s[3])) return false;
        double dx = s[2] - s[0], dy = s[3] - s[1];
        boolean side0 = dx * (y0 - s[1]) - dy * (x0 - s[0]) >= 0, side1 = dx * (y1 - s[1]) - dy * (x1 - s[0]) >= 0;
        if (side0 == side1) return false;
        double ex = x1 - x0, ey = y1 - y0;
        boolean end0 = ex * (s[1] - y0) - ey * (s[0] - x0) >= 0, end1 = ex * (s[3] - y0) - ey * (s[2] - x0) >= 0;
        return end0 != end1;
    }

    /** Takes a disc out of the layer and returns its number. */
    int addDisc(String subject, Point at, double radius) {
        DiscTie tie = DiscTie.of(grid, at.x(), at.y(), radius, DiscTie.found());
        int number = discs.size();
        discs.add(new Disc(subject, at, radius, tie));
        Region round = new Region(Shapes.disc(at, radius));
        int i0 = Math.max(0, (int) ((at.x() - radius - grid.left()) / grid.width()) - 1);
        int i1 = Math.min(grid.columns() - 1, (int) ((at.x() + radius - grid.left()) / grid.width()) + 1);
        int j0 = Math.max(0, (int) ((at.y() - radius - grid.bottom()) / grid.height()) - 1);
        int j1 = Math.min(grid.rows() - 1, (int) ((at.y() + radius - grid.bottom()) / grid.height()) + 1);
        for (int j = j0; j <= j1; j++)
            for (int i = i0; i <= i1; i++) {
                int c = grid.index(i, j);
                double x0 = grid.left() + i * grid.width(), y0 = grid.bottom() + j * grid.height();
                double part = round.area(x0, y0, x0 + grid.width(), y0 + grid.height());
                double left = Math.max(0, openArea[c] - part);
                if (openArea[c] > 0) flow.soil[c] *= left / openArea[c];
                openArea[c] = left;
                if (at.distanceTo(new Point(grid.x(i), grid.y(j))) <= radius) counts[c] = false;
            }
        for (int[] cell : tie.inside) {
            int c = cellAt(cell[0], cell[1]);
            if (c < 0 || kind[c] != CellKind.LAYER) continue;
            kind[c] = CellKind.DISC;
            disc[c] = number;
        }
        return number;
    }

    /** Open part, 0 to 1, of the face between a disc's own cell and one outside it. */
    double openness(DiscTie.Link l) {
        int a = cellAt(l.fromColumn(), l.fromRow()), b = cellAt(l.column(), l.row());
        if (a < 0 || b < 0) return 0;
        boolean alongX = l.row() == l.fromRow();
        double link = (alongX ? uncutEast : uncutNorth)[Math.min(a, b)];
        double side = alongX ? grid.height() : grid.width(), step = alongX ? grid.width() : grid.height();
        return Math.min(1, link * step / (side * transmissivity[b]));
    }

    /** Takes the links to and within discs out of the layer's own flow; called once after all discs are added. */
    void isolateDiscs() {
        uncutEast = flow.east.clone();
        uncutNorth = flow.north.clone();
        for (int c = 0; c < kind.length; c++) {
            if (flow.east[c] > 0 && (kind[c] == CellKind.DISC || kind[c + 1] == CellKind.DISC)) flow.east[c] = 0;
            if (flow.north[c] > 0 && (kind[c] == CellKind.DISC || kind[c + grid.columns()] == CellKind.DISC))
                flow.north[c] = 0;
            if (kind[c] == CellKind.DISC) flow.soil[c] = 0;
        }
    }

    int cellAt(int column, int row) {
        return column < 0 || row < 0 || column >= grid.columns() || row >= grid.rows() ? -1 : grid.index(column, row);
    }

    /** Quadratic over linear part of the pressure gradient at a speed of the air [m/s] in a cell. */
    double inertialShare(double speed, int c) {
        double beta =
                drag[c] > 0 ? drag[c] : Forchheimer.wardInertial(flow.mobility[c] * air.viscosity()) * air.density();
        return beta * flow.mobility[c] * speed;
    }
}
