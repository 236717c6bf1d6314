package slabfield.network;

import java.util.Optional;
import slabfield.solve.KeptFactor;
import slabfield.solve.NestedDissection;
import slabfield.solve.PanelCholesky;
import slabfield.solve.RoomyFactor;
import slabfield.solve.SymmetricMatrix;

/**
 * The curvature of a network's potential as a sparse matrix: five entries a cell, nine where the fill has an inertial
 * part, and those of the links. The pattern is made once; values are added anew for each Newton step. Systems are solved by a
 * sparse factor, large ones by cycles on the grid unless these stall.
 */
final class NetworkMatrix {
    /** Up to this many unknowns a factor by panels takes no longer than the cycles, and needs no good guess of the devices' part. */
    private static final int MOST_DIRECT = 60_000;

    private final Network network;
    private final int columns;
    private final SymmetricMatrix matrix;
    private final LayerGrid layer;
    private final FactorRoom room;
    /** Null where the network is small or the cycles stall. */
    private CycledGrid cycles;

    private KeptFactor direct;
    private RoomyFactor roomy;
    private Quadrants.Entries quadrants;
    private final double[] values;
    /** For each cell the entry that couples it with the cell to the right, above, above right and above left, or -1. */
    private final int[] east;

    private final int[] north;
    private final int[] rising;
    private final int[] falling;
    private final int[] diagonal;
    private final int[] links;

    NetworkMatrix(Network network, LayerGrid layer, FactorRoom room) {
        this.network = network;
        this.layer = layer;
        this.room = room;
        columns = layer.grid.columns();
        int n = layer.grid.cells();
        LayerFlow flow = layer.flow;
        SymmetricMatrix.Builder builder = new SymmetricMatrix.Builder(network.size());
        for (int c = 0; c < n; c++) {
            if (unknown(c) < 0) continue;
            if (flow.east[c] > 0) builder.couple(unknown(c), unknown(c + 1));
            if (flow.north[c] > 0) builder.couple(unknown(c), unknown(c + columns));
            if (joined(flow, c, 1)) builder.couple(unknown(c), unknown(c + columns + 1));
            if (joined(flow, c, -1)) builder.couple(unknown(c), unknown(c + columns - 1));
        }
        for (int k = 0; k < network.links(); k++)
            if (network.unknownFrom(k) >= 0 && network.unknownTo(k) >= 0)
                builder.couple(network.unknownFrom(k), network.unknownTo(k));
        matrix = builder.build();
        values = matrix.values();
        east = new int[n];
        north = new int[n];
        rising = new int[flow.inertial ? n : 0];
        falling = new int[rising.length];
        for (int c = 0; c < n; c++) {
            boolean has = unknown(c) >= 0;
            east[c] = has && flow.east[c] > 0 ? matrix.slot(unknown(c), unknown(c + 1)) : -1;
            north[c] = has && flow.north[c] > 0 ? matrix.slot(unknown(c), unknown(c + columns)) : -1;
            if (!flow.inertial) continue;
            rising[c] = has && joined(flow, c, 1) ? matrix.slot(unknown(c), unknown(c + columns + 1)) : -1;
            falling[c] = has && joined(flow, c, -1) ? matrix.slot(unknown(c), unknown(c + columns - 1)) : -1;
        }
        diagonal = new int[network.size()];
        for (int u = 0; u < diagonal.length; u++) diagonal[u] = matrix.slot(u, u);
        links = new int[network.links()];
        for (int k = 0; k < links.length; k++)
            if (network.unknownFrom(k) >= 0 && network.unknownTo(k) >= 0)
                links[k] = matrix.slot(network.unknownFrom(k), network.unknownTo(k));
        cycles = matrix.size() > MOST_DIRECT ? new CycledGrid(network, layer, matrix) : null;
    }

    /** True where cycles on the grid solve it, or were to. */
    boolean isLarge() {
        return matrix.size() > MOST_DIRECT;
    }

    private int unknown(int cell) {
        return network.unknownOfCell(cell);
    }

    /** True where the cell and the one diagonally above it (to the right for 1, left for -1) share a quadrant. */
    private boolean joined(LayerFlow flow, int c, int side) {
        int i = c % columns, other = c + columns + side;
        if (!flow.inertial || i + side < 0 || i + side >= columns) return false;
        if (other >= flow.east.length || unknown(other) < 0) return false;
        boolean below = side > 0 ? flow.east[c] > 0 : flow.east[c - 1] > 0;
        boolean above = side > 0 ? flow.east[c + columns] > 0 : flow.east[c + columns - 1] > 0;
        return (below && flow.north[c + side] > 0) || (flow.north[c] > 0 && above);
    }

    void clear() {
        matrix.clear();
        if (direct != null) direct.changed();
        if (cycles != null) cycles.clear();
    }

    /** Adds a link's slope. */
    void link(int k, double slope) {
        int a = network.unknownFrom(k), b = network.unknownTo(k);
        if (a >= 0) values[diagonal[a]] += slope;
        if (b >= 0) values[diagonal[b]] += slope;
        if (a >= 0 && b >= 0) values[links[k]] -= slope;
        if (cycles != null) cycles.link(k, a, b, slope);
    }

    /** Adds the layer's part at the pressures of the cells. */
    void addLayer(double[] p, double[] rest) {
        LayerFlow flow = layer.flow;
        for (int c = 0; c < flow.soil.length; c++) {
            int u = unknown(c);
            if (u < 0) continue;
            values[diagonal[u]] += flow.soil[c];
            if (flow.inertial) continue;
            if (east[c] >= 0) add(u, unknown(c + 1), east[c], flow.east[c]);
            if (north[c] >= 0) add(u, unknown(c + columns), north[c], flow.north[c]);
        }
        if (flow.inertial) quadrants().add(p, rest, values);
        if (cycles != null) flow.addCurvature(p, rest, cycles);
    }

    private void add(int a, int b, int entry, double h) {
        values[diagonal[a]] += h;
        values[diagonal[b]] += h;
        values[entry] -= h;
    }

    private Quadrants.Entries quadrants() {
        if (quadrants == null)
            quadrants = layer.flow.quadrants().entries((a, b) -> {
                int low = Math.min(a, b), apart = Math.abs(a - b);
                if (unknown(a) < 0) return -1;
                if (apart == 0) return diagonal[unknown(a)];
                if (apart == 1 && east[low] >= 0) return east[low];
                return apart == columns ? north[low] : apart == columns + 1 ? rising[low] : falling[low];
            });
        return quadrants;
    }

    /** A factor of the values added since the last {@link #clear}; empty where the matrix is not positive definite. */
    Optional<PanelCholesky> factor() {
        Optional<PanelCholesky> kept = roomy == null ? Optional.empty() : roomy.exactPanels();
        PanelCholesky factor = kept.orElseGet(() -> {
            double[][] places = network.places();
            return new PanelCholesky(matrix, NestedDissection.order(matrix, places[0], places[1]));
        });
        return factor.factor().isEmpty() ? Optional.of(factor) : Optional.empty();
    }

    /**
     * Solves for the values added since the last {@link #clear}.
     *
     * @param tolerance relative residual that is good enough
     * @param toGo relative residual that this and like solves to come are to reach together
     * @return false where the matrix is not positive definite
     */
    boolean solve(double[] right, double[] step, double tolerance, double toGo) {
        if (cycles != null) {
            if (cycles.solve(right, step, tolerance)) return true;
            cycles = null;
        }
        if (direct == null) {
            roomy = room.factor(network, layer, matrix);
            direct = new KeptFactor(matrix, roomy);
        }
        return direct.solve(right, step, tolerance, toGo);
    }
}
