package slabfield.network;

import java.util.Arrays;
import slabfield.field.Grid;
import slabfield.solve.ConjugateGradients;
import slabfield.solve.GridOperator;
import slabfield.solve.GridWithDevices;
import slabfield.solve.NestedDissection;
import slabfield.solve.SymmetricMatrix;
import slabfield.solve.Watch;
import slabfield.solve.Workers;

/**
 * Solves a large network's Newton system: conjugate gradients with a multigrid cycle on the layer's grid, to which the devices
 * are tied by block elimination.
 *
 * <p>The five-point operator of the cycle holds the layer's own links and leaks; a device passes a cell's leak to a fixed
 * pressure on through its tie in series, and a link between two devices whose main cells are neighbours adds to the link
 * between these, its own resistance in series with both ties.
 */
final class CycledGrid implements LayerFlow.Curvature {
    private static final int MOST_ITERATIONS = 60;

    private final int cells;
    private final int[] cellOf;
    private final int columns;
    private final GridOperator grid;
    private final GridWithDevices preconditioner;
    private final ConjugateGradients gradients;
    private final SymmetricMatrix devices;
    private final double[] deviceValues;
    private final int[] deviceDiagonal;
    /** For each link its entry in the devices' block, or its tie, or -1. */
    private final int[] linkSlot;

    private final int[] linkTie;
    private final double[] tie;
    private final int[] tieDevice;
    private final int[] tieCell;
    /** For each device the sum of its ties and the one that is largest, found anew at each solve. */
    private final double[] tied;

    private final int[] mainTie;
    private final int[] linkA;
    private final int[] linkB;
    private final double[] linkSlope;
    /** Whether coefficients were added since the preconditioner was made. */
    private boolean changed;

    CycledGrid(Network network, LayerGrid layer, SymmetricMatrix matrix) {
        Grid g = layer.grid;
        columns = g.columns();
        cells = network.cellUnknowns();
        double[][] places = network.places();
        cellOf = new int[cells];
        boolean[] active = new boolean[g.cells()];
        for (int u = 0; u < cells; u++) {
            cellOf[u] = network.nodeOf(u);
            active[cellOf[u]] = true;
        }
        int n = g.cells(), count = network.size() - cells, links = network.links();
        grid = new GridOperator(columns, g.rows(), new double[n], new double[n], new double[n], active);
        linkSlot = new int[links];
        linkTie = new int[links];
        linkA = new int[links];
        linkB = new int[links];
        linkSlope = new double[links];
        SymmetricMatrix.Builder builder = count > 0 ? new SymmetricMatrix.Builder(count) : null;
        int ties = 0;
        for (int k = 0; k < links; k++) {
            int a = network.unknownFrom(k), b = network.unknownTo(k);
            linkA[k] = a;
            linkB[k] = b;
            linkTie[k] = -1;
            if (a >= cells && b >= cells) builder.couple(a - cells, b - cells);
            else if (a >= 0 && b >= 0 && Math.max(a, b) >= cells) linkTie[k] = ties++;
        }
        devices = builder == null ? null : builder.build();
        deviceValues = devices == null ? new double[0] : devices.values();
        deviceDiagonal = new int[count];
        double[] x = new double[count], y = new double[count];
        for (int d = 0; d < count; d++) {
            deviceDiagonal[d] = devices.slot(d, d);
            x[d] = places[0][cells + d];
            y[d] = places[1][cells + d];
        }
        tie = new double[ties];
        tieDevice = new int[ties];
        tieCell = new int[ties];
        for (int k = 0; k < links; k++) {
            int a = linkA[k], b = linkB[k];
            linkSlot[k] = a >= cells && b >= cells ? devices.slot(a - cells, b - cells) : -1;
            if (linkTie[k] < 0) continue;
            tieDevice[linkTie[k]] = Math.max(a, b) - cells;
            tieCell[linkTie[k]] = Math.min(a, b);
        }
        tied = new double[count];
        mainTie = new int[count];
        int[] deviceOrder = devices == null ? new int[0] : NestedDissection.order(devices, x, y);
        preconditioner =
                new GridWithDevices(grid, cellOf, devices, deviceOrder, tieCell, tieDevice, tie, new Workers(1));
        gradients = new ConjugateGradients(matrix, preconditioner);
    }

    void clear() {
        changed = true;
        Arrays.fill(grid.east(), 0);
        Arrays.fill(grid.north(), 0);
        Arrays.fill(grid.leak(), 0);
        Arrays.fill(deviceValues, 0);
    }

    @Override
    public void link(int a, int b, double h) {
        gridLink(Math.min(a, b), Math.abs(a - b) == 1, h);
    }

    @Override
    public void cross(int c, int a, int b, double h) {
        // The cycle's operator has no links across corners.
    }

    @Override
    public void diagonal(int a, double h) {
        gridLeak(a, h);
    }

    /** Adds to the link from a cell to the one at its right, or else to the one above it. */
    private void gridLink(int cell, boolean right, double h) {
        (right ? grid.east() : grid.north())[cell] += h;
    }

    private void gridLeak(int cell, double h) {
        grid.leak()[cell] += h;
    }

    /** Adds a link's slope; a and b are its unknowns, -1 for a fixed end. */
    void link(int k, int a, int b, double slope) {
        linkSlope[k] = slope;
        if (a >= cells) deviceValues[deviceDiagonal[a - cells]] += slope;
        if (b >= cells) deviceValues[deviceDiagonal[b - cells]] += slope;
        if (linkSlot[k] >= 0) deviceValues[linkSlot[k]] -= slope;
        if (linkTie[k] >= 0) tie[linkTie[k]] = -slope;
        int cell = Math.max(a, b);
        if (Math.min(a, b) < 0 && cell >= 0 && cell < cells) gridLeak(cellOf[cell], slope);
    }

    /** False where it stalls, or a part is not positive definite. */
    boolean solve(double[] right, double[] step, double tolerance) {
        if (changed) {
            passOn();
            if (!preconditioner.update()) return false;
            changed = false;
        }
        Arrays.fill(step, 0);
        return gradients
                .solve(right, step, tolerance, MOST_ITERATIONS, Watch.NONE)
                .hasConverged();
    }

    /** Lays on the grid what devices pass on between cells and to fixed pressures. */
    private void passOn() {
        Arrays.fill(tied, 0);
        Arrays.fill(mainTie, -1);
        for (int t = 0; t < tie.length; t++) {
            int d = tieDevice[t];
            tied[d] -= tie[t];
            if (mainTie[d] < 0 || tie[t] < tie[mainTie[d]]) mainTie[d] = t;
        }
        double[] toFixed = new double[tied.length];
        for (int k = 0; k < linkSlope.length; k++) {
            int a = linkA[k] - cells, b = linkB[k] - cells;
            if (linkA[k] < 0 && b >= 0) toFixed[b] += linkSlope[k];
            else if (linkB[k] < 0 && a >= 0) toFixed[a] += linkSlope[k];
            else if (a >= 0 && b >= 0) between(a, b, linkSlope[k]);
        }
        for (int t = 0; t < tie.length; t++) {
            int d = tieDevice[t];
            if (toFixed[d] > 0) gridLeak(cellOf[tieCell[t]], -tie[t] * toFixed[d] / (toFixed[d] + tied[d]));
        }
    }

    private void between(int a, int b, double slope) {
        if (mainTie[a] < 0 || mainTie[b] < 0) return;
        int p = cellOf[tieCell[mainTie[a]]], q = cellOf[tieCell[mainTie[b]]], low = Math.min(p, q);
        double h = 1 / (1 / tied[a] + 1 / slope + 1 / tied[b]);
        if (Math.abs(p - q) == 1 && low / columns == Math.max(p, q) / columns) gridLink(low, true, h);
        else if (Math.abs(p - q) == columns) gridLink(low, false, h);
    }
}
