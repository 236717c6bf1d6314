package slabfield.network;

import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.field.CellKind;
import slabfield.field.Progress;
import slabfield.model.Point;
import slabfield.model.Scenario;

/**
 * What a further suction point would do to a solved house, place by place, for one linear solve each: the pressures are
 * followed along their tangent, so the answer is exact where all laws are linear and an estimate elsewhere (openings and
 * coarse stone pass relatively less at higher pressure differences, so the estimate errs towards too much flow).
 *
 * <p>The point draws from the cell that holds it, through the resistance ln(r0 / r) / (2 pi T) between the cell's
 * equivalent radius r0 = 0.1403 sqrt(dx^2 + dy^2) and the pit's radius r (Peaceman 1978, from memory).
 */
public final class Responses {
    private static final double PEACEMAN = 0.1403;
    private static final double TOLERANCE = 1e-6;

    private final LayerGrid layer;
    private final SlabSolver.State state;

    private Responses(LayerGrid layer, SlabSolver.State state) {
        this.layer = layer;
        this.state = state;
    }

    /** Solves the house with its suction on; empty where that does not converge. */
    public static Optional<Responses> of(Scenario scenario, Progress progress) {
        LayerGrid layer = new LayerGrid(scenario, SlabSolver.airOf(scenario));
        Devices.addDiscs(scenario, layer);
        layer.isolateDiscs();
        SlabSolver.State state = SlabSolver.started(scenario, layer, true, progress, Guess.NONE, FactorRoom.once());
        return state.refusal().isEmpty() && state.convergence().converged()
                ? Optional.of(new Responses(layer, state))
                : Optional.empty();
    }

    /**
     * The house with one more point.
     *
     * @param flow drawn by it [m3/s]
     * @param weakest least vacuum at any cell that counts [Pa]
     */
    public record Outlook(double flow, double weakest) {}

    /** Pressure in the pit of a suction point of the scenario, by its place in the list [Pa]. */
    public OptionalDouble pitPressure(int suctionPoint) {
        int node = state.built().suctionNode()[suctionPoint];
        return node < 0 ? OptionalDouble.empty() : OptionalDouble.of(state.pressure(node));
    }

    /**
     * Holds a pressure in a new pit.
     *
     * @param at its place, taken to the middle of the cell that holds it
     * @param radius of the pit [m]
     * @param pressure held in it [Pa]
     * @return empty where no layer lies there
     */
    public Optional<Outlook> holding(Point at, double radius, double pressure) {
        int cell = cell(at);
        if (cell < 0) return Optional.empty();
        double[] change = change(cell);
        double t = layer.transmissivity[cell];
        double tie =
                Math.log(PEACEMAN * Math.hypot(layer.grid.width(), layer.grid.height()) / radius) / (2 * Math.PI * t);
        int u = state.network().unknownOf(cell);
        double resistance = change[u] + tie;
        if (!(resistance > 0)) return Optional.empty();
        return Optional.of(drawing(change, (state.at()[u] - pressure) / resistance));
    }

    /** Draws a flow from a new pit [m3/s]; empty where no layer lies there. */
    public Optional<Outlook> drawing(Point at, double flow) {
        int cell = cell(at);
        return cell < 0 ? Optional.empty() : Optional.of(drawing(change(cell), flow));
    }

    private int cell(Point at) {
        int cell = layer.cellAt(layer.grid.column(at.x()), layer.grid.row(at.y()));
        return cell >= 0
                        && layer.kind[cell] == CellKind.LAYER
                        && state.network().unknownOf(cell) >= 0
                ? cell
                : -1;
    }

    private Outlook drawing(double[] change, double flow) {
        double top = Double.NEGATIVE_INFINITY;
        for (int c = 0; c < layer.counts.length; c++) {
            int u = layer.counts[c] ? state.network().unknownOf(c) : -1;
            if (u >= 0) top = Math.max(top, state.at()[u] - flow * change[u]);
        }
        return new Outlook(flow, -top);
    }

    /** Fall of every unknown's pressure per flow drawn from a cell [Pa s/m3]. */
    private double[] change(int cell) {
        double[] right = new double[state.at().length], change = new double[right.length];
        right[state.network().unknownOf(cell)] = 1;
        if (!state.network().solveCurvature(state.at(), state.rest(), right, change, TOLERANCE))
            throw new IllegalStateException("the curvature at a converged answer is positive definite");
        return change;
    }
}
