package slabfield.figure;

import java.util.Arrays;
import slabfield.field.AirPaths;
import slabfield.field.Grid;

/**
 * Direction and size of the air's flow at any place, from the solved flows across the faces of the cells. Inside a cell
 * each component is linear between its two faces, so that what flows in at one side flows out at the others.
 *
 * @see "D. W. Pollock (1988), Semianalytical computation of path lines for finite-difference models"
 */
final class FlowField {
    private final AirPaths paths;
    private final Grid grid;

    FlowField(AirPaths paths) {
        this.paths = paths;
        this.grid = paths.grid();
    }

    Grid grid() {
        return grid;
    }

    /** Flow per metre of width at a place, along x and along y [m2/s]; both 0 outside the grid and where nothing flows. */
    void at(double x, double y, double[] flow) {
        flow[0] = 0;
        flow[1] = 0;
        int i = grid.column(x), j = grid.row(y);
        if (i < 0 || j < 0) return;
        int c = grid.index(i, j);
        double tx = (x - grid.left()) / grid.width() - i, ty = (y - grid.bottom()) / grid.height() - j;
        double west = i > 0 ? paths.toEast()[c - 1] : 0, south = j > 0 ? paths.toNorth()[c - grid.columns()] : 0;
        flow[0] = ((1 - tx) * west + tx * paths.toEast()[c]) / grid.height();
        flow[1] = ((1 - ty) * south + ty * paths.toNorth()[c]) / grid.width();
    }

    /** Flow per metre of width that a part of all cells with a flow stays below [m2/s]; 0 where nothing flows. */
    double below(double part) {
        double[] flow = new double[2], sizes = new double[grid.cells()];
        int n = 0;
        for (int j = 0; j < grid.rows(); j++)
            for (int i = 0; i < grid.columns(); i++) {
                at(grid.x(i), grid.y(j), flow);
                double size = Math.hypot(flow[0], flow[1]);
                if (size > 0) sizes[n++] = size;
            }
        Arrays.sort(sizes, 0, n);
        return n == 0 ? 0 : sizes[(int) Math.min(n - 1, part * n)];
    }
}
