package slabfield.network;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import slabfield.field.Grid;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;

/**
 * How one number of a solved house changes with every cell's permeability and with every leak: one more linear solve for
 * all of them together (adjoint method, e.g. Sun 1994, from memory).
 *
 * <p>For J(p, t) with the balance out(p, t) = 0 at all unknowns, dJ/dt = nu . d out/dt over all nodes, where nu solves
 * curvature * nu = -dJ/dp. Derivatives are with respect to logarithms: the change of J for a relative change of one.
 */
public final class Adjoint {
    private static final double TOLERANCE = 1e-12;

    private final Scenario scenario;
    private final LayerGrid layer;
    private final SlabSolver.State state;

    private Adjoint(Scenario scenario, LayerGrid layer, SlabSolver.State state) {
        this.scenario = scenario;
        this.layer = layer;
        this.state = state;
    }

    /**
     * A number and its gradient.
     *
     * @param value the number itself
     * @param byPermeability d value / d ln k of each cell of the grid, row-major, with the inertial coefficient kept
     * @param byLeak d value / d ln (conductance) of each opening, wall part and the soil, named as in
     *     {@link Result.Flows#bySource()}
     */
    public record Gradient(double value, double[] byPermeability, Map<String, Double> byLeak) {}

    /** Solves the house with its suction on; empty where that does not converge. */
    public static Optional<Adjoint> of(Scenario scenario, Progress progress) {
        return of(scenario, true, progress);
    }

    /**
     * Solves the house; empty where that does not converge.
     *
     * @param fanOn false for the state with the suction off
     */
    public static Optional<Adjoint> of(Scenario scenario, boolean fanOn, Progress progress) {
        LayerGrid layer = new LayerGrid(scenario, SlabSolver.airOf(scenario));
        Devices.addDiscs(scenario, layer);
        layer.isolateDiscs();
        SlabSolver.State state = SlabSolver.started(scenario, layer, fanOn, progress, Guess.NONE, FactorRoom.once());
        return state.refusal().isEmpty() && state.convergence().converged()
                ? Optional.of(new Adjoint(scenario, layer, state))
                : Optional.empty();
    }

    /**
     * Pressure at a place, bilinear between cell middles [Pa].
     *
     * @throws IllegalArgumentException where the layer has no pressure there
     */
    public Gradient pressure(Point at) {
        double[] weight = new double[state.at().length];
        return gradient(weigh(at, weight), weight, Map.of());
    }

    /** Sets the weights of the unknowns in the pressure at a place, and returns that pressure. */
    private double weigh(Point at, double[] weight) {
        double fx = (at.x() - layer.grid.left()) / layer.grid.width() - 0.5;
        double fy = (at.y() - layer.grid.bottom()) / layer.grid.height() - 0.5;
        int i = (int) Math.floor(fx), j = (int) Math.floor(fy);
        double sum = 0, value = 0;
        for (int k = 0; k < 4; k++) {
            int cell = layer.cellAt(i + (k & 1), j + (k >> 1));
            double w = ((k & 1) == 0 ? 1 - (fx - i) : fx - i) * (k < 2 ? 1 - (fy - j) : fy - j);
            int u = cell < 0 ? -1 : state.network().unknownOf(cell);
            if (u < 0 || w <= 0) continue;
            weight[u] += w;
            value += w * state.at()[u];
            sum += w;
        }
        if (sum < 1e-12) throw new IllegalArgumentException("the layer has no pressure at " + at);
        for (int u = 0; u < weight.length; u++) weight[u] /= sum;
        return value / sum;
    }

    /** Cells of the solve. */
    public Grid grid() {
        return layer.grid;
    }

    /** Pressure of every cell, NaN where it has none of its own; row-major [Pa]. */
    public double[] cellPressures() {
        return ofCells(state.at());
    }

    /**
     * Change of the pressure at a place per air let into each cell, row-major, NaN where the cell has no pressure of its
     * own; above 0, for a leak takes away vacuum everywhere [Pa s/m3].
     *
     * @throws IllegalArgumentException where the layer has no pressure at the place
     */
    public double[] pressureByInflow(Point at) {
        double[] weight = new double[state.at().length];
        weigh(at, weight);
        return byInflow(weight);
    }

    /** Change of the pressure at a suction point, by its place in the list, per air let into each cell [Pa s/m3]. */
    public double[] suctionPressureByInflow(int suctionPoint) {
        double[] weight = new double[state.at().length];
        int node = state.built().suctionNode()[suctionPoint];
        int u = node < 0 ? -1 : state.network().unknownOf(node);
        if (u >= 0) weight[u] = 1;
        return byInflow(weight);
    }

    /** Change of the flow drawn at a suction point, by its place in the list, per air let into each cell; 0 to 1. */
    public double[] suctionFlowByInflow(int suctionPoint) {
        Network net = state.network();
        double[] weight = new double[state.at().length];
        Source source = scenario.suctionPoints().get(suctionPoint).source();
        int node = state.built().suctionNode()[suctionPoint];
        if (source instanceof Source.Pressure && node >= 0)
            net.addCurvatureToFixed(node, -1, state.at(), state.rest(), weight);
        else if (!(source instanceof Source.Flow) && node >= 0)
            net.addAccountSlope(state.built().suctionAccount()[suctionPoint], -1, state.at(), state.rest(), weight);
        return byInflow(weight);
    }

    /** For J with dJ/dp over the unknowns: the curvature is symmetric, so one solve gives dJ per inflow into every cell. */
    private double[] byInflow(double[] weight) {
        double[] out = new double[weight.length];
        if (!state.network().solveCurvature(state.at(), state.rest(), weight, out, TOLERANCE))
            throw new IllegalStateException("the curvature at a converged answer is positive definite");
        return ofCells(out);
    }

    private double[] ofCells(double[] unknowns) {
        double[] out = new double[layer.grid.cells()];
        for (int c = 0; c < out.length; c++) {
            int u = state.network().unknownOf(c);
            out[c] = u < 0 ? Double.NaN : unknowns[u];
        }
        return out;
    }

    /**
     * Least vacuum, smoothed: ln(mean of exp(s p)) / s over the cells that count, as a pressure; for a large s the
     * pressure at the weakest place [Pa].
     *
     * @param sharpness s [1/Pa]
     */
    public Gradient weakest(double sharpness) {
        double[] weight = new double[state.at().length];
        double top = Double.NEGATIVE_INFINITY, sum = 0;
        int count = 0;
        for (int c = 0; c < layer.counts.length; c++)
            if (counts(c)) {
                top = Math.max(top, state.at()[state.network().unknownOf(c)]);
                count++;
            }
        for (int c = 0; c < layer.counts.length; c++)
            if (counts(c)) {
                int u = state.network().unknownOf(c);
                weight[u] = Math.exp(sharpness * (state.at()[u] - top));
                sum += weight[u];
            }
        for (int u = 0; u < weight.length; u++) weight[u] /= sum;
        return gradient(top + Math.log(sum / count) / sharpness, weight, Map.of());
    }

    private boolean counts(int cell) {
        return layer.counts[cell] && state.network().unknownOf(cell) >= 0;
    }

    /** Flow drawn by all suction points together [m3/s]. */
    public Gradient exhaust() {
        Network net = state.network();
        double[] weight = new double[state.at().length];
        Map<Integer, Double> ends = new LinkedHashMap<>();
        double value = 0;
        for (int k = 0; k < scenario.suctionPoints().size(); k++) {
            int node = state.built().suctionNode()[k];
            if (node < 0) continue;
            Source source = scenario.suctionPoints().get(k).source();
            if (source instanceof Source.Flow f) value += f.flow();
            else {
                int end =
                        source instanceof Source.Pressure ? node : state.built().suctionEnd()[k];
                if (ends.containsKey(end)) continue;
                value += net.givenTo(end, state.at(), state.rest());
                net.addCurvatureToFixed(end, -1, state.at(), state.rest(), weight);
                ends.put(end, -1.0);
            }
        }
        return gradient(value, weight, ends);
    }

    /** Gradient of J with dJ/dp over the unknowns and, for flows, the weights of fixed nodes in J. */
    private Gradient gradient(double value, double[] weight, Map<Integer, Double> ends) {
        Network net = state.network();
        double[] right = new double[weight.length], nu = new double[weight.length];
        for (int u = 0; u < right.length; u++) right[u] = -weight[u];
        if (!net.solveCurvature(state.at(), state.rest(), right, nu, TOLERANCE))
            throw new IllegalStateException("the curvature at a converged answer is positive definite");
        double[] all = new double[net.nodes()];
        for (int u = 0; u < nu.length; u++) all[net.nodeOf(u)] = nu[u];
        ends.forEach((node, w) -> all[node] = w);
        double[] byPermeability = new double[layer.grid.cells()],
                byAccount = new double[net.accounts().size()];
        double soil = net.addGradient(all, state.at(), state.rest(), byPermeability, byAccount);
        Map<String, Double> byLeak = new LinkedHashMap<>();
        List<Network.Account> accounts = net.accounts();
        for (int k = 0; k < byAccount.length; k++)
            if (accounts.get(k).kind() == Network.Kind.ROOM || accounts.get(k).kind() == Network.Kind.OUTDOORS)
                byLeak.merge(accounts.get(k).name(), byAccount[k], Double::sum);
        byLeak.put("soil", soil);
        return new Gradient(value, Arrays.copyOf(byPermeability, byPermeability.length), byLeak);
    }
}
