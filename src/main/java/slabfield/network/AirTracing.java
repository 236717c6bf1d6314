package slabfield.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import slabfield.field.AirPaths;
import slabfield.field.CellKind;
import slabfield.field.Progress;
import slabfield.model.Scenario;

/**
 * Follows the air of a solved house from where it enters to where it leaves.
 *
 * <p>Each node holds a perfect mixture of what flows into it, so that with q the flows into a node and f the parts of one
 * origin in them, its own part is {@code sum(q f) / sum(q)}: first-order upwind transport in the steady state. Air under a
 * slab flows from higher to lower pressure along every link but a fan's last, which ends outside; so one pass over the
 * nodes by falling pressure gives all parts exactly. Mixing across a cell is numerical and shrinks with the cell.
 */
public final class AirTracing {
    private final Network network;
    private final LayerGrid layer;
    private final double[] pressure;
    private final double[] rest;
    private final double[] toEast;
    private final double[] toNorth;
    private final double[] linkFlow;
    private final Map<String, Integer> origins = new LinkedHashMap<>();

    private AirTracing(SlabSolver.State state, LayerGrid layer) {
        this.network = state.network();
        this.layer = layer;
        pressure = network.spread(state.at(), state.rest()).clone();
        rest = network.spreadRest().clone();
        int n = layer.grid.cells();
        toEast = new double[n];
        toNorth = new double[n];
        layer.flow.faceFlows(pressure, rest, toEast, toNorth);
        linkFlow = new double[network.links()];
        for (int k = 0; k < linkFlow.length; k++) linkFlow[k] = network.spreadFlow(k);
    }

    /**
     * Solves a house with the suction on and follows its air.
     *
     * @return empty where the house has no solution, or the work was stopped
     */
    public static Optional<AirPaths> of(Scenario scenario, Progress progress) {
        LayerGrid layer = new LayerGrid(scenario, SlabSolver.airOf(scenario));
        Devices.addDiscs(scenario, layer);
        layer.isolateDiscs();
        SlabSolver.State state = SlabSolver.started(scenario, layer, true, progress, Guess.NONE, FactorRoom.once());
        if (state.refusal().isPresent() || !state.convergence().converged()) return Optional.empty();
        return Optional.of(new AirTracing(state, layer).trace(scenario, state.built()));
    }

    private AirPaths trace(Scenario scenario, Devices.Built built) {
        for (Network.Account a : network.accounts())
            if (a.kind() == Network.Kind.ROOM || a.kind() == Network.Kind.OUTDOORS) origin(a.name());
        origin("soil");
        double[][] part = parts();
        return read(scenario, built, part);
    }

    private int origin(String name) {
        return origins.computeIfAbsent(name, fresh -> origins.size());
    }

    /** One way for air from node to node; -1 for soil. */
    private record Way(int from, double flow, int origin) {}

    /** Part of each origin at every node, by node and origin; all 0 where no air comes by. */
    private double[][] parts() {
        List<List<Way>> into = ways();
        double[][] part = new double[network.nodes()][origins.size()];
        int[] order = IntStream.range(0, network.nodes())
                .boxed()
                .sorted(Comparator.comparingDouble((Integer a) -> -(pressure[a] + rest[a]))
                        .thenComparing(a -> a))
                .mapToInt(a -> a)
                .toArray();
        for (int node : order) {
            double sum = 0;
            for (Way w : into.get(node)) {
                sum += w.flow();
                if (w.origin() >= 0) part[node][w.origin()] += w.flow();
                else for (int k = 0; k < part[node].length; k++) part[node][k] += w.flow() * part[w.from()][k];
            }
            if (sum > 0) for (int k = 0; k < part[node].length; k++) part[node][k] /= sum;
        }
        return part;
    }

    private List<List<Way>> ways() {
        List<List<Way>> into = new ArrayList<>();
        for (int a = 0; a < network.nodes(); a++) into.add(List.of());
        int columns = layer.grid.columns();
        for (int c = 0; c < layer.grid.cells(); c++) {
            if (toEast[c] != 0) add(into, c, c + 1, toEast[c], -1);
            if (toNorth[c] != 0) add(into, c, c + columns, toNorth[c], -1);
            double soil = network.reached(c) ? network.soilFlowInto(c) : 0;
            if (soil > 0) put(into, c, new Way(-1, soil, origin("soil")));
        }
        for (int k = 0; k < linkFlow.length; k++) {
            Network.Account account = network.accounts().get(network.account(k));
            boolean named = account.kind() == Network.Kind.ROOM || account.kind() == Network.Kind.OUTDOORS;
            int from = linkFlow[k] > 0 ? network.from(k) : network.to(k);
            boolean enters = network.isFixed(from);
            int label = !enters ? -1 : origin(named ? account.name() : "discharge");
            if (linkFlow[k] != 0) add(into, network.from(k), network.to(k), linkFlow[k], label);
        }
        return into;
    }

    private static void add(List<List<Way>> into, int a, int b, double flow, int origin) {
        if (flow > 0) put(into, b, new Way(a, flow, origin));
        else put(into, a, new Way(b, -flow, origin));
    }

    private static void put(List<List<Way>> into, int node, Way way) {
        if (into.get(node).isEmpty()) into.set(node, new ArrayList<>(4));
        into.get(node).add(way);
    }

    private AirPaths read(Scenario scenario, Devices.Built built, double[][] part) {
        double[] exhaust = exhaust(scenario, built, part);
        List<String> names = List.copyOf(origins.keySet());
        int[] order = IntStream.range(0, names.size())
                .boxed()
                .sorted(Comparator.comparingDouble((Integer k) -> Double.isNaN(exhaust[k]) ? 0 : -exhaust[k]))
                .mapToInt(k -> k)
                .toArray();
        int n = layer.grid.cells();
        double[][] share = new double[order.length][n];
        double[] drawn = new double[order.length];
        for (int i = 0; i < order.length; i++) {
            drawn[i] = exhaust[order[i]];
            for (int c = 0; c < n; c++)
                share[i][c] = passes(part, built, c) ? part[node(built, c)][order[i]] : Double.NaN;
        }
        return new AirPaths(
                layer.grid,
                toEast,
                toNorth,
                Arrays.stream(order).mapToObj(names::get).toList(),
                share,
                drawn);
    }

    private int node(Devices.Built built, int cell) {
        return layer.kind[cell] == CellKind.DISC ? built.discNode()[layer.disc[cell]] : cell;
    }

    private boolean passes(double[][] part, Devices.Built built, int cell) {
        if (layer.kind[cell] != CellKind.LAYER && layer.kind[cell] != CellKind.DISC) return false;
        int node = node(built, cell);
        return network.reached(node) && Arrays.stream(part[node]).sum() > 0.5;
    }

    private double[] exhaust(Scenario scenario, Devices.Built built, double[][] part) {
        double[] sum = new double[origins.size()];
        double all = 0;
        for (int s = 0; s < scenario.suctionPoints().size(); s++) {
            int node = built.suctionNode()[s];
            double flow = node < 0 ? 0 : drawnAt(node, built.suctionAccount()[s]);
            if (!(flow > 0)) continue;
            all += flow;
            for (int k = 0; k < sum.length; k++) sum[k] += flow * part[node][k];
        }
        for (int k = 0; k < sum.length; k++) sum[k] = all > 0 ? sum[k] / all : Double.NaN;
        return sum;
    }

    /** What is drawn from a suction point's node: through its pipe, as a given flow, or by the pressure held there. */
    private double drawnAt(int node, int account) {
        if (account > 0) {
            for (int k = 0; k < linkFlow.length; k++)
                if (network.account(k) == account) return network.from(k) == node ? linkFlow[k] : -linkFlow[k];
            return 0;
        }
        return network.isFixed(node) ? -network.spreadOutflow(node) : network.drawn(node);
    }
}
