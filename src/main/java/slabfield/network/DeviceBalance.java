package slabfield.network;

import java.util.Arrays;
import java.util.stream.IntStream;
import slabfield.solve.CholeskySolver;
import slabfield.solve.NestedDissection;
import slabfield.solve.Newton;
import slabfield.solve.NonlinearSystem;
import slabfield.solve.SymmetricMatrix;

/**
 * The mass balance of a network's devices alone, their pits, tile, walls and pipes, while the pressures of all cells are held. It is a
 * small part of the network and the part whose laws bend most: orifices, and a tile whose flow goes with the root of its pressure
 * drop. Balanced by itself between two steps of the whole, it leaves these less to do (nonlinear elimination; Lanzkron, Rose and Wilkes
 * 1996, SIAM J. Sci. Comput. 17). As the whole has a convex potential, balancing a part only lowers it.
 *
 * <p>Unknowns are those of the network that are no cells, in its order.
 */
final class DeviceBalance implements NonlinearSystem {
    /** Part of the whole's relative residual, or near the answer of its square, to which the devices' is brought: about what its next step leaves. */
    private static final double FINE = 0.1;

    private final Network network;
    private final int first;
    /** The network's links with such an unknown at either end, and the slot of their entry, or -1. */
    private final int[] links;

    private final int[] slots;
    private final SymmetricMatrix matrix;
    private final CholeskySolver solver;
    private double scale;

    /** @param network closed, with at least one unknown that is no cell */
    DeviceBalance(Network network) {
        this.network = network;
        first = network.cellUnknowns();
        links = IntStream.range(0, network.links())
                .filter(k -> unknownFrom(k) >= 0 || unknownTo(k) >= 0)
                .toArray();
        SymmetricMatrix.Builder builder = new SymmetricMatrix.Builder(size());
        for (int k : links) if (isWithin(k)) builder.couple(unknownFrom(k), unknownTo(k));
        matrix = builder.build();
        slots = Arrays.stream(links)
                .map(k -> isWithin(k) ? matrix.slot(unknownFrom(k), unknownTo(k)) : -1)
                .toArray();
        double[] x = new double[size()], y = new double[x.length];
        for (int u = 0; u < x.length; u++) {
            x[u] = network.x(network.nodeOf(first + u));
            y[u] = network.y(network.nodeOf(first + u));
        }
        solver = new CholeskySolver(matrix, NestedDissection.order(matrix, x, y));
    }

    private int unknownFrom(int link) {
        return Math.max(-1, network.unknownFrom(link) - first);
    }

    private int unknownTo(int link) {
        return Math.max(-1, network.unknownTo(link) - first);
    }

    private boolean isWithin(int link) {
        return unknownFrom(link) >= 0 && unknownTo(link) >= 0;
    }

    /**
     * Balances the devices.
     *
     * @param at pressures of all the network's unknowns; those of devices are replaced
     * @param rest what rounding leaves out of them, replaced likewise
     * @param relative residual of the whole
     * @param flow that residuals are compared with [m3/s]
     */
    void settle(double[] at, double[] rest, double relative, double flow) {
        scale = flow;
        network.spread(at, rest);
        double[] own = Arrays.copyOfRange(at, first, at.length), ownRest = Arrays.copyOfRange(rest, first, at.length);
        Newton.solve(this, own, ownRest, (k, residual) -> residual <= FINE * relative * Math.min(1, relative));
        System.arraycopy(own, 0, at, first, own.length);
        System.arraycopy(ownRest, 0, rest, first, own.length);
    }

    @Override
    public int size() {
        return network.size() - first;
    }

    @Override
    public void residual(double[] at, double[] rest, double[] residual) {
        network.spreadDevices(at, rest);
        for (int u = 0; u < residual.length; u++) residual[u] = network.drawn(network.nodeOf(first + u));
        for (int k : links) {
            double q = network.spreadFlow(k);
            int a = unknownFrom(k), b = unknownTo(k);
            if (a >= 0) residual[a] += q;
            if (b >= 0) residual[b] -= q;
        }
    }

    @Override
    public boolean step(double[] at, double[] rest, double[] residual, double[] step) {
        network.spreadDevices(at, rest);
        matrix.clear();
        double[] values = matrix.values();
        for (int i = 0; i < links.length; i++) {
            double slope = network.spreadSlope(links[i]);
            int a = unknownFrom(links[i]), b = unknownTo(links[i]);
            if (a >= 0) values[a] += slope;
            if (b >= 0) values[b] += slope;
            if (slots[i] >= 0) values[slots[i]] -= slope;
        }
        if (solver.factor().isPresent()) return false;
        solver.solve(residual, step);
        for (int u = 0; u < step.length; u++) step[u] = -step[u];
        return true;
    }

    @Override
    public double scale(double[] at, double[] rest) {
        return scale;
    }
}
