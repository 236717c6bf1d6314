package slabfield.network;

import java.util.Arrays;
import slabfield.field.CellKind;
import slabfield.solve.NestedDissection;
import slabfield.solve.RoomyFactor;
import slabfield.solve.SymmetricMatrix;

/**
 * Where networks get their factor from. One that is kept has its order of elimination and its analysis from an earlier network, as
 * long as the present one differs from that by the places of pits and spot openings at most: it has room for every cell of the
 * slab, and a disc's node, which comes last, may be tied to any other.
 */
final class FactorRoom {
    private final boolean keeps;
    private RoomyFactor kept;
    /** Node of the room for each of the network's, or -1. */
    private int[] inRoom = new int[0];

    private int laid;

    private FactorRoom(boolean keeps) {
        this.keeps = keeps;
    }

    /** For one network. */
    static FactorRoom once() {
        return new FactorRoom(false);
    }

    /** For networks that follow each other; a factor is good until the next is asked for. */
    static FactorRoom kept() {
        return new FactorRoom(true);
    }

    /** A factor that has taken up the matrix of a network's unknowns. */
    RoomyFactor factor(Network network, LayerGrid layer, SymmetricMatrix matrix) {
        if (!keeps) {
            double[][] places = network.places();
            return RoomyFactor.exact(matrix, NestedDissection.order(matrix, places[0], places[1]));
        }
        if (kept != null && inRoom.length == network.nodes() && kept.take(matrix, nodesInRoom(network))) return kept;
        kept = lay(network, layer);
        if (!kept.take(matrix, nodesInRoom(network)))
            throw new IllegalStateException("a network's matrix couples only what its layer and its links tie");
        return kept;
    }

    private int[] nodesInRoom(Network network) {
        int[] out = new int[network.size()];
        for (int u = 0; u < out.length; u++) out[u] = inRoom[network.nodeOf(u)];
        return out;
    }

    /** How often an analysis was made. */
    int laid() {
        return laid;
    }

    private RoomyFactor lay(Network network, LayerGrid layer) {
        laid++;
        int nodes = network.nodes(), cells = network.cells(), count = 0;
        inRoom = new int[nodes];
        Arrays.fill(inRoom, -1);
        for (int a = 0; a < nodes; a++)
            if (network.unknownOf(a) >= 0 || a < cells && layer.kind[a] == CellKind.DISC) inRoom[a] = count++;
        double[] x = new double[count], y = new double[count];
        for (int a = 0; a < nodes; a++)
            if (inRoom[a] >= 0) {
                x[inRoom[a]] = network.x(a);
                y[inRoom[a]] = network.y(a);
            }
        boolean[] roams = new boolean[count];
        for (int a = cells; a < nodes; a++) if (inRoom[a] >= 0) roams[inRoom[a]] = network.disc(a) >= 0;
        SymmetricMatrix still = couple(network, layer, roams, count, false);
        int[] order = NestedDissection.order(still, x, y), last = new int[count];
        int k = 0;
        for (int i : order) if (!roams[i]) last[k++] = i;
        for (int i : order) if (roams[i]) last[k++] = i;
        return new RoomyFactor(couple(network, layer, roams, count, true), last);
    }

    /** Couplings of all but the discs' nodes; or with these, each to all others. */
    private SymmetricMatrix couple(Network network, LayerGrid layer, boolean[] roams, int count, boolean all) {
        SymmetricMatrix.Builder to = new SymmetricMatrix.Builder(count);
        int columns = layer.grid.columns();
        for (int c = 0; c < network.cells(); c++) {
            boolean right = c % columns + 1 < columns, left = c % columns > 0;
            if (right) couple(c, c + 1, to);
            couple(c, c + columns, to);
            if (right && layer.flow.inertial) couple(c, c + columns + 1, to);
            if (left && layer.flow.inertial) couple(c, c + columns - 1, to);
        }
        for (int k = 0; k < network.links(); k++) {
            int a = network.from(k), b = network.to(k), disc = Math.max(network.disc(a), network.disc(b));
            if (disc < 0) couple(a, b, to);
            else if (network.disc(a) < 0 || network.disc(b) < 0) couple(layer, disc, network.disc(a) < 0 ? a : b, to);
        }
        for (int a = 0; a < count && all; a++) if (roams[a]) for (int b = 0; b < count; b++) to.couple(a, b);
        return to.build();
    }

    /** A node that is tied to a disc will be tied to the cells there once the disc has gone elsewhere. */
    private void couple(LayerGrid layer, int disc, int node, SymmetricMatrix.Builder to) {
        for (int c = 0; c < layer.disc.length; c++) if (layer.disc[c] == disc) couple(c, node, to);
    }

    private void couple(int a, int b, SymmetricMatrix.Builder to) {
        if (Math.max(a, b) < inRoom.length && inRoom[a] >= 0 && inRoom[b] >= 0) to.couple(inRoom[a], inRoom[b]);
    }
}
