package slabfield.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import slabfield.field.CellKind;
import slabfield.law.FlowLaw;
import slabfield.solve.Newton;
import slabfield.solve.NonlinearSystem;
import slabfield.solve.PanelCholesky;

/**
 * Nodes joined by links, each link with a flow law; the model is the mass balance at every node. The first nodes are the
 * grid's cells, the others are devices and fixed surroundings.
 */
final class Network implements NonlinearSystem {
    /** What a link's flow is counted as. */
    enum Kind {
        WITHIN,
        ROOM,
        OUTDOORS,
        EXHAUST
    }

    /** A flow that is reported under one name. */
    record Account(String name, Kind kind) {}

    static final int WITHIN = 0;
    private static final double SEALED_SHARE = 1e-9;
    /** Far from the answer a Newton step need not be exact; the last one must, for the sake of weak vacuums. */
    private static final double ROUGH_STEP = 0.1;

    private static final double LAST_STEP = 1e-10;
    /** Relative residual down to which devices are balanced by themselves, and the least part of it that must be theirs. */
    private static final double EASED_ABOVE = 1e-3;

    private static final double THEIRS = 0.9;
    /** Part of the tolerance that a step aims at. */
    private static final double SAFETY = 0.1;
    /** Relative residual that rounding leaves in any case. */
    private static final double ROUNDING = 1e-16;
    /** Relative residual from which on curvatures change little until the answer. */
    private static final double NEAR = 0.05;
    /** A step that is to end below this part of being settled is solved to that end. */
    private static final double NEARLY = 0.3;

    /** Change of a pressure difference that tells whether a law is linear [Pa]. */
    private static final double PROBE = 100;

    private static final int NUMBERED_LATER = Integer.MAX_VALUE;

    private final LayerGrid layer;
    private final double outdoors;
    private final List<Account> accounts = new ArrayList<>(List.of(new Account("", Kind.WITHIN)));

    private double[] nodeX = new double[64];
    private double[] nodeY = new double[64];
    private double[] drawn = new double[64];
    private boolean[] fixed = new boolean[64];
    private double[] held = new double[64];
    /** For each device the layer's disc that it is, or -1. */
    private int[] disc = new int[64];
    /** For each device the part of the house that it belongs to. */
    private int[] partOf = new int[64];

    private int part;

    private int devices;

    private int[] from = new int[256];
    private int[] to = new int[256];
    private int[] account = new int[256];
    private FlowLaw[] law = new FlowLaw[256];
    /** For each link the cell through whose fill part of its resistance goes, or -1, and that part's two coefficients. */
    private int[] seriesCell = new int[256];

    private double[] series = new double[256];
    private double[] seriesInertial = new double[256];
    private int links;

    /** Place for which the matrix holds the curvature, as long as nobody changes that array; null for none. */
    private double[] assembledAt;

    /** Flow through the network while the whole layer is at the room's pressure [m3/s]. */
    private double atRest;

    /** For each node its unknown, or -1. */
    private int[] unknown;

    private int[] nodeOf;
    /** Number of unknowns that are cells; they come first, in the grid's order. */
    private int cellUnknowns;

    private double[] all;
    private double[] allRest;
    private double[] out;
    private NetworkMatrix matrix;
    private DeviceBalance balance;
    private FactorRoom room = FactorRoom.once();
    /** Relative residual at the step before. */
    private double before = 1;

    private boolean sealed;

    Network(LayerGrid layer, double outdoors) {
        this.layer = layer;
        this.outdoors = outdoors;
    }

    /** Takes its factor from there; called before the first solve. */
    void factorIn(FactorRoom kept) {
        room = kept;
    }

    int cells() {
        return layer.grid.cells();
    }

    int addNode(double x, double y) {
        if (devices == nodeX.length) {
            int more = 2 * devices;
            nodeX = Arrays.copyOf(nodeX, more);
            nodeY = Arrays.copyOf(nodeY, more);
            drawn = Arrays.copyOf(drawn, more);
            fixed = Arrays.copyOf(fixed, more);
            held = Arrays.copyOf(held, more);
            disc = Arrays.copyOf(disc, more);
            partOf = Arrays.copyOf(partOf, more);
        }
        disc[devices] = -1;
        partOf[devices] = part;
        nodeX[devices] = x;
        nodeY[devices] = y;
        return cells() + devices++;
    }

    /** A node that is one of the layer's discs. */
    int addDisc(int number, double x, double y) {
        int node = addNode(x, y);
        disc[node - cells()] = number;
        return node;
    }

    /** Nodes added from here on belong to the next part of the house: a pit, a tile, a wall, what stands behind a suction point. */
    void nextPart() {
        part++;
    }

    /** Number of the part that a device belongs to, the same on every grid. */
    int part(int node) {
        return partOf[node - cells()];
    }

    /** Number of the layer's disc that a node is, or -1. */
    int disc(int node) {
        return node < cells() ? -1 : disc[node - cells()];
    }

    /** Place of a node [m]. */
    double x(int node) {
        return node < cells() ? layer.grid.x(node % layer.grid.columns()) : nodeX[node - cells()];
    }

    double y(int node) {
        return node < cells() ? layer.grid.y(node / layer.grid.columns()) : nodeY[node - cells()];
    }

    int addFixed(double pressure) {
        int node = addNode(layer.grid.left(), layer.grid.bottom());
        hold(node, pressure);
        return node;
    }

    void hold(int node, double pressure) {
        fixed[node - cells()] = true;
        held[node - cells()] = pressure;
    }

    /** Draws a flow from a node, whatever its pressure [m3/s]. */
    void draw(int node, double flow) {
        drawn[node - cells()] += flow;
    }

    double drawn(int node) {
        return drawn[node - cells()];
    }

    int addAccount(String name, Kind kind) {
        accounts.add(new Account(name, kind));
        return accounts.size() - 1;
    }

    List<Account> accounts() {
        return accounts;
    }

    /** Ties two nodes and returns the link's number. */
    int link(int a, int b, FlowLaw flowLaw, int accountNumber) {
        return link(a, b, flowLaw, accountNumber, -1, 0, 0);
    }

    /**
     * Ties two nodes by a law part of whose resistance lies in the layer.
     *
     * @param cell whose fill the part goes through
     * @param resistance the part's linear coefficient, in series with the rest and included in the law [Pa s/m3]
     * @param inertial the part's quadratic coefficient [Pa s2/m6]
     */
    int link(int a, int b, FlowLaw flowLaw, int accountNumber, int cell, double resistance, double inertial) {
        if (links == from.length) {
            from = Arrays.copyOf(from, 2 * links);
            to = Arrays.copyOf(to, 2 * links);
            account = Arrays.copyOf(account, 2 * links);
            law = Arrays.copyOf(law, 2 * links);
            seriesCell = Arrays.copyOf(seriesCell, 2 * links);
            series = Arrays.copyOf(series, 2 * links);
            seriesInertial = Arrays.copyOf(seriesInertial, 2 * links);
        }
        from[links] = a;
        to[links] = b;
        law[links] = flowLaw;
        account[links] = accountNumber;
        seriesCell[links] = cell;
        series[links] = resistance;
        seriesInertial[links] = inertial;
        return links++;
    }

    /** A part of the network that no fixed pressure reaches. */
    record Island(int cell, int cells, double area, double drawn) {}

    /** Numbers the unknowns; parts that no boundary reaches get none and are returned. */
    List<Island> close() {
        int n = cells(), nodes = n + devices;
        int[] start = new int[nodes + 1], next = neighbours(start);
        int[] part = new int[nodes];
        Arrays.fill(part, -1);
        List<Island> islands = new ArrayList<>();
        unknown = new int[nodes];
        Arrays.fill(unknown, -1);
        nodeOf = new int[nodes];
        int count = 0;
        int parts = 0;
        int[] members = new int[nodes];
        int end = 0;
        for (int seed = 0; seed < nodes; seed++) {
            boolean exists = seed < n ? layer.kind[seed] == CellKind.LAYER : !fixed[seed - n];
            if (part[seed] >= 0 || !exists) continue;
            int begin = end;
            members[end++] = seed;
            part[seed] = parts;
            boolean bounded = false;
            double sum = 0, area = 0;
            int cellsIn = 0, firstCell = -1;
            for (int at = begin; at < end; at++) {
                int a = members[at];
                if (a < n) {
                    cellsIn++;
                    area += layer.openArea[a];
                    if (firstCell < 0) firstCell = a;
                    if (layer.flow.soil[a] > 0) bounded = true;
                } else sum += Math.abs(drawn[a - n]);
                for (int k = start[a]; k < start[a + 1]; k++) {
                    int b = next[k];
                    if (b >= n && fixed[b - n]) bounded = true;
                    else if (part[b] < 0) {
                        part[b] = parts;
                        members[end++] = b;
                    }
                }
            }
            parts++;
            if (bounded) for (int at = begin; at < end; at++) unknown[members[at]] = NUMBERED_LATER;
            else if (cellsIn > 0 || sum > 0) {
                islands.add(new Island(firstCell, cellsIn, area, sum));
                for (int at = begin; at < end; at++) if (members[at] < n) layer.kind[members[at]] = CellKind.UNREACHED;
            }
        }
        for (int a = 0; a < nodes; a++)
            if (unknown[a] == NUMBERED_LATER) {
                nodeOf[count] = a;
                unknown[a] = count++;
                if (a < n) cellUnknowns = count;
            }
        nodeOf = Arrays.copyOf(nodeOf, count);
        all = new double[nodes];
        allRest = new double[nodes];
        out = new double[nodes];
        for (int d = 0; d < devices; d++) if (fixed[d]) all[n + d] = held[d];
        atRest = throughflow(new double[count], new double[count]);
        return islands;
    }

    private int[] neighbours(int[] start) {
        int n = cells(), columns = layer.grid.columns();
        for (int c = 0; c < n; c++) {
            if (layer.flow.east[c] > 0) count(start, c, c + 1);
            if (layer.flow.north[c] > 0) count(start, c, c + columns);
        }
        for (int k = 0; k < links; k++) count(start, from[k], to[k]);
        for (int i = 0; i + 1 < start.length; i++) start[i + 1] += start[i];
        int[] fill = Arrays.copyOf(start, start.length), next = new int[start[start.length - 1]];
        for (int c = 0; c < n; c++) {
            if (layer.flow.east[c] > 0) put(next, fill, c, c + 1);
            if (layer.flow.north[c] > 0) put(next, fill, c, c + columns);
        }
        for (int k = 0; k < links; k++) put(next, fill, from[k], to[k]);
        return next;
    }

    private static void count(int[] start, int a, int b) {
        start[a + 1]++;
        start[b + 1]++;
    }

    private static void put(int[] next, int[] fill, int a, int b) {
        next[fill[a]++] = b;
        next[fill[b]++] = a;
    }

    @Override
    public int size() {
        return nodeOf.length;
    }

    /** Pressures of all nodes for a set of unknowns; nodes without pressure hold 0. Valid until the next call. */
    double[] spread(double[] at, double[] rest) {
        for (int u = 0; u < at.length; u++) {
            all[nodeOf[u]] = at[u];
            allRest[nodeOf[u]] = rest[u];
        }
        return all;
    }

    /** The same for the unknowns that are no cells alone. */
    void spreadDevices(double[] at, double[] rest) {
        for (int u = 0; u < at.length; u++) {
            all[nodeOf[cellUnknowns + u]] = at[u];
            allRest[nodeOf[cellUnknowns + u]] = rest[u];
        }
    }

    private double difference(int k) {
        int a = from[k], b = to[k];
        return all[a] - all[b] + (allRest[a] - allRest[b]);
    }

    boolean reached(int node) {
        return unknown[node] >= 0 || (node >= cells() && fixed[node - cells()]);
    }

    @Override
    public void residual(double[] at, double[] rest, double[] residual) {
        spread(at, rest);
        outflow();
        for (int u = 0; u < at.length; u++) residual[u] = out[nodeOf[u]];
    }

    /** Flow out of every node at the spread pressures; for a fixed node, what the network takes from it. */
    private double[] outflow() {
        Arrays.fill(out, 0);
        layer.flow.addOutflow(all, allRest, outdoors, out);
        int n = cells();
        for (int d = 0; d < devices; d++) out[n + d] += drawn[d];
        for (int k = 0; k < links; k++) {
            double q = law[k].flow(difference(k));
            out[from[k]] += q;
            out[to[k]] -= q;
        }
        return out;
    }

    /** Flow of each link's account, positive into the network, plus the soil's, at the given unknowns. */
    double[] accountFlows(double[] at, double[] rest) {
        spread(at, rest);
        double[] sum = new double[accounts.size()];
        for (int k = 0; k < links; k++) if (account[k] != WITHIN) sum[account[k]] -= law[k].flow(difference(k));
        return sum;
    }

    /** Flow from the soil into the layer [m3/s]. */
    double soilFlow(double[] at, double[] rest) {
        spread(at, rest);
        double sum = 0;
        for (int c = 0; c < cells(); c++)
            if (layer.flow.soil[c] > 0 && unknown[c] >= 0) sum += layer.flow.soil[c] * (outdoors - all[c] - allRest[c]);
        return sum;
    }

    /** Flow that the network gives to a fixed node [m3/s]. */
    double givenTo(int node, double[] at, double[] rest) {
        spread(at, rest);
        return -outflow()[node];
    }

    /**
     * The flow through the network; where next to nothing flows, as into a sealed layer, a billionth of what would flow
     * from a layer at the room's pressure.
     */
    @Override
    public double scale(double[] at, double[] rest) {
        double through = throughflow(at, rest);
        sealed = through < SEALED_SHARE * atRest;
        return sealed ? SEALED_SHARE * atRest : through;
    }

    /** Where next to nothing flows all that does is a weak flow, and only rounding tells that it is settled. */
    @Override
    public double settled() {
        return sealed ? 0 : Newton.SETTLED;
    }

    /** Half of the sum of what flows over each boundary, whichever way and however much of it cancels. */
    private double throughflow(double[] at, double[] rest) {
        spread(at, rest);
        double sum = 0;
        for (int k = 0; k < links; k++)
            if (isFixed(from[k]) || isFixed(to[k])) sum += Math.abs(law[k].flow(difference(k)));
        for (int d = 0; d < devices; d++) sum += Math.abs(drawn[d]);
        for (int c = 0; c < cells(); c++)
            if (layer.flow.soil[c] > 0) sum += layer.flow.soil[c] * Math.abs(all[c] - outdoors);
        return sum / 2;
    }

    /** Sum of all flows over the boundaries, which should be nothing [m3/s]. */
    double imbalance(double[] at, double[] rest) {
        double sum = soilFlow(at, rest);
        outflow();
        int n = cells();
        for (int d = 0; d < devices; d++) {
            if (fixed[d]) sum += out[n + d];
            sum -= drawn[d];
        }
        return sum;
    }

    /** Far from the answer, balances the devices by themselves where much of what is left is theirs. */
    @Override
    public boolean ease(double[] at, double[] rest, double[] residual, double relative) {
        if (!(relative > EASED_ABOVE)) return false;
        double sum = 0;
        for (int u = cellUnknowns; u < residual.length; u++) sum += Math.abs(residual[u]);
        double flow = scale(at, rest);
        if (!(sum > THEIRS * relative * flow)) return false;
        if (balance == null) balance = new DeviceBalance(this);
        balance.settle(at, rest, relative, flow);
        return true;
    }

    @Override
    public boolean step(double[] at, double[] rest, double[] residual, double[] step) {
        double[] right = new double[residual.length];
        double sum = 0;
        for (int i = 0; i < right.length; i++) {
            right[i] = -residual[i];
            sum += Math.abs(residual[i]);
        }
        if (sum == 0) {
            Arrays.fill(step, 0);
            return true;
        }
        assemble(at, rest);
        assembledAt = null;
        double relative = sum / scale(at, rest), tolerance = tolerance(relative);
        double toGo = relative < NEAR ? Math.min(tolerance, SAFETY * Newton.SETTLED / relative) : tolerance;
        return matrix.solve(right, step, tolerance, toGo);
    }

    /**
     * Relative residual to which a step is solved; the faster the steps get on, the smaller (Eisenstat and Walker 1996). Where an exact
     * step would settle it, as steps near the answer square what is left, this one is made exact enough.
     */
    private double tolerance(double relative) {
        double pace = relative / before, next = pace * pace * relative;
        before = relative;
        if (relative <= Newton.TOLERANCE) return Math.max(LAST_STEP, ROUNDING / relative);
        if (next <= NEARLY * settled()) return Math.max(LAST_STEP, SAFETY * Newton.SETTLED / relative);
        return Math.min(ROUGH_STEP, Math.max(pace * pace, SAFETY * Newton.TOLERANCE / relative));
    }

    private void assemble(double[] at, double[] rest) {
        assembledAt = null;
        if (matrix == null) matrix = new NetworkMatrix(this, layer, room);
        spread(at, rest);
        matrix.clear();
        matrix.addLayer(all, allRest);
        for (int k = 0; k < links; k++) matrix.link(k, law[k].slope(difference(k)));
        assembledAt = at;
    }

    /** Lets go of the matrix of a large network, which takes more memory than all the rest; it is made anew if asked for again. */
    void letGo() {
        if (matrix == null || !matrix.isLarge()) return;
        matrix = null;
        assembledAt = null;
    }

    int cellUnknowns() {
        return cellUnknowns;
    }

    int nodeOf(int unknownNumber) {
        return nodeOf[unknownNumber];
    }

    int links() {
        return links;
    }

    /** Unknown of the node at a link's first end, or -1. */
    int unknownFrom(int link) {
        return unknown[from[link]];
    }

    /** Unknown of the node at a link's second end, or -1. */
    int unknownTo(int link) {
        return unknown[to[link]];
    }

    /** Unknown of a cell, or -1. */
    int unknownOfCell(int cell) {
        return unknown[cell];
    }

    /** Where on the plan each unknown lies, as {x, y}. */
    double[][] places() {
        double[] x = new double[size()], y = new double[size()];
        for (int u = 0; u < size(); u++) {
            x[u] = x(nodeOf[u]);
            y[u] = y(nodeOf[u]);
        }
        return new double[][] {x, y};
    }

    /**
     * Solves curvature(at) * x = right for the unknowns.
     *
     * @param tolerance relative residual that is good enough
     * @return false where the curvature is not positive definite
     */
    boolean solveCurvature(double[] at, double[] rest, double[] right, double[] x, double tolerance) {
        if (at != assembledAt) assemble(at, rest);
        return matrix.solve(right, x, tolerance, tolerance);
    }

    /** A factor of the curvature; empty where that is not positive definite. */
    Optional<PanelCholesky> factor(double[] at, double[] rest) {
        if (at != assembledAt) assemble(at, rest);
        return matrix.factor();
    }

    /** Number of links whose flow does not go in proportion with the pressure difference, as far as a probe shows. */
    int nonlinearLinks(double[] at, double[] rest) {
        spread(at, rest);
        int count = 0;
        for (int k = 0; k < links; k++) if (!isLinear(k)) count++;
        return count;
    }

    private boolean isLinear(int link) {
        double d = difference(link), slope = law[link].slope(d);
        return Math.abs(law[link].slope(d - PROBE) - slope) <= 1e-9 * slope;
    }

    /** Nonlinear links between an unknown and a fixed node that are alone in their account. */
    List<SpotLeaks.Leak> loneLeaks(double[] at, double[] rest) {
        spread(at, rest);
        int[] inAccount = new int[accounts.size()];
        for (int k = 0; k < links; k++) inAccount[account[k]]++;
        List<SpotLeaks.Leak> out = new ArrayList<>();
        for (int k = 0; k < links; k++) {
            boolean leak = accounts.get(account[k]).kind() == Kind.ROOM && inAccount[account[k]] == 1;
            int u = unknown[from[k]];
            if (leak && u >= 0 && unknown[to[k]] < 0 && !isLinear(k))
                out.add(new SpotLeaks.Leak(u, law[k], difference(k)));
        }
        return out;
    }

    /** Curvature between the unknowns and one fixed node, times a weight, added to a vector over the unknowns. */
    void addCurvatureToFixed(int node, double weight, double[] at, double[] rest, double[] sum) {
        spread(at, rest);
        for (int k = 0; k < links; k++) {
            int other = from[k] == node ? to(k) : to(k) == node ? from[k] : -1;
            if (other >= 0 && unknown[other] >= 0) sum[unknown[other]] -= weight * law[k].slope(difference(k));
        }
    }

    /** Slope of the flow into the network through an account's links, times a weight, added to a vector over the unknowns. */
    void addAccountSlope(int accountNumber, double weight, double[] at, double[] rest, double[] sum) {
        spread(at, rest);
        for (int k = 0; k < links; k++) {
            if (account[k] != accountNumber) continue;
            double slope = weight * law[k].slope(difference(k));
            if (unknown[from[k]] >= 0) sum[unknown[from[k]]] -= slope;
            if (unknown[to[k]] >= 0) sum[unknown[to[k]]] += slope;
        }
    }

    /**
     * Derivative of the sum of weight times outflow over all nodes, at fixed pressures, with respect to the logarithm of
     * every cell's permeability and of every account's leak.
     *
     * @param weight of each node, cells first
     * @param byPermeability receives the derivatives for the cells
     * @param byAccount receives those for the accounts, the leak's own law scaled and the layer in series kept
     * @return the derivative for the soil's leakance
     */
    double addGradient(double[] weight, double[] at, double[] rest, double[] byPermeability, double[] byAccount) {
        spread(at, rest);
        layer.flow.addPermeabilityGradient(all, allRest, weight, byPermeability);
        for (int k = 0; k < links; k++) {
            double w = weight[from[k]] - weight[to[k]];
            if (w == 0) continue;
            double q = law[k].flow(difference(k)), slope = law[k].slope(difference(k));
            if (seriesCell[k] >= 0) byPermeability[seriesCell[k]] += w * q * slope * series[k];
            if (account[k] != WITHIN) {
                double inLayer = series[k] + 2 * seriesInertial[k] * Math.abs(q);
                byAccount[account[k]] += w * q * (1 - slope * inLayer);
            }
        }
        double soil = 0;
        for (int c = 0; c < cells(); c++)
            if (layer.flow.soil[c] > 0 && unknown[c] >= 0)
                soil += weight[c] * layer.flow.soil[c] * (all[c] - outdoors + allRest[c]);
        return soil;
    }

    int nodes() {
        return cells() + devices;
    }

    int unknownOf(int node) {
        return unknown[node];
    }

    /** What {@link #spread} leaves out by rounding, for all nodes. Valid until the next call of it. */
    double[] spreadRest() {
        return allRest;
    }

    /** Flow through a link from its first to its second node at the spread pressures [m3/s]. */
    double spreadFlow(int link) {
        return law[link].flow(difference(link));
    }

    /** Slope of a link's law at the spread pressures [m3/(s Pa)]. */
    double spreadSlope(int link) {
        return law[link].slope(difference(link));
    }

    /** Flow out of a node at the spread pressures; for a fixed node, what the network takes from it [m3/s]. */
    double spreadOutflow(int node) {
        return outflow()[node];
    }

    /** Flow from the soil into a cell at the spread pressures, below 0 where air leaves there [m3/s]. */
    double soilFlowInto(int cell) {
        return layer.flow.soil[cell] * (outdoors - all[cell] - allRest[cell]);
    }

    /** Node at a link's first end. */
    int from(int link) {
        return from[link];
    }

    /** Node at a link's second end. */
    int to(int link) {
        return to[link];
    }

    /** Account of a link. */
    int account(int link) {
        return account[link];
    }

    /** True for a node whose pressure is given. */
    boolean isFixed(int node) {
        return node >= cells() && fixed[node - cells()];
    }
}
