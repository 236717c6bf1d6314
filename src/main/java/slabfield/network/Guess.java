package slabfield.network;

import java.util.Arrays;
import slabfield.field.CellKind;
import slabfield.field.Grid;
import slabfield.model.Point;

/**
 * Pressures of a solved network from which the solve of a like one can start.
 *
 * @param cells of each cell of the grid, those of a disc have its pressure; 0 where there is none
 * @param devices of each further node, in the order in which they were added
 */
record Guess(double[] cells, double[] devices) {
    /** Everything at the room's pressure. */
    static final Guess NONE = new Guess(new double[0], new double[0]);

    /** Around a disc that has moved the pressures go with it, less and less out to here [m], or to some times the way moved. */
    private static final double CARRIED = 2;

    private static final double WAYS = 3;

    static Guess of(Network network, double[] at, double[] rest) {
        double[] all = network.spread(at, rest).clone();
        int n = network.cells();
        return new Guess(Arrays.copyOf(all, n), Arrays.copyOfRange(all, n, all.length));
    }

    /** The same with the pressure of its disc in each cell of one. */
    Guess withDiscs(LayerGrid layer, int[] discNode) {
        double[] filled = cells.clone();
        for (int c = 0; c < filled.length; c++)
            if (layer.kind[c] == CellKind.DISC) filled[c] = devices[discNode[layer.disc[c]] - cells.length];
        return new Guess(filled, devices);
    }

    /** The same with a further device, before the one that has this number so far. */
    Guess withDevice(int number, double pressure) {
        double[] more = Arrays.copyOf(devices, devices.length + 1);
        System.arraycopy(devices, number, more, number + 1, devices.length - number);
        more[number] = pressure;
        return new Guess(cells, more);
    }

    /** What it would be about if a disc had moved: the field around it is carried along. */
    Guess carried(LayerGrid layer, Point from, Point to) {
        Grid g = layer.grid;
        if (cells.length != g.cells()) return this;
        double dx = to.x() - from.x(), dy = to.y() - from.y(), reach = Math.max(CARRIED, WAYS * Math.hypot(dx, dy));
        double[] moved = cells.clone();
        for (int c = 0; c < moved.length; c++) {
            if (layer.kind[c] != CellKind.LAYER) continue;
            double x = g.x(c % g.columns()), y = g.y(c / g.columns());
            double part = 1 - Math.hypot(x - to.x(), y - to.y()) / reach;
            if (part <= 0) continue;
            part = Math.min(1, 2 * part);
            moved[c] = at(layer, x - part * dx, y - part * dy, c);
        }
        return new Guess(moved, devices);
    }

    /** Bilinear between the four cells around a place; where not all of them are layer, the pressure of a cell given. */
    double at(LayerGrid layer, double x, double y, int otherwise) {
        Grid g = layer.grid;
        double fx = (x - g.left()) / g.width() - 0.5, fy = (y - g.bottom()) / g.height() - 0.5, sum = 0;
        int i = (int) Math.floor(fx), j = (int) Math.floor(fy);
        for (int k = 0; k < 4; k++) {
            double w = ((k & 1) == 0 ? 1 - (fx - i) : fx - i) * (k < 2 ? 1 - (fy - j) : fy - j);
            if (w < 1e-9) continue;
            int c = layer.cellAt(i + (k & 1), j + (k >> 1));
            if (c < 0 || layer.kind[c] != CellKind.LAYER && layer.kind[c] != CellKind.DISC) return cells[otherwise];
            sum += w * cells[c];
        }
        return sum;
    }

    /** Sets the unknowns of a network of the same grid; its devices only where there are as many of them. */
    void start(Network network, double[] at) {
        if (cells.length != network.cells()) return;
        boolean sameDevices = devices.length == network.nodes() - network.cells();
        for (int u = 0; u < at.length; u++) {
            int node = network.nodeOf(u);
            if (node < cells.length) at[u] = cells[node];
            else if (sameDevices) at[u] = devices[node - cells.length];
        }
    }
}
