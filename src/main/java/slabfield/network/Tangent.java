package slabfield.network;

import java.util.List;
import java.util.Optional;
import slabfield.field.CellKind;
import slabfield.field.Progress;
import slabfield.law.AirState;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;

/**
 * What would be read in a solved house, and how it changes with anything that is drawn, for one linear solve each.
 *
 * <p>The balance out(p, t) = 0 at all unknowns p holds for every value t of something drawn, so dp/dt = -K^-1 d out/dt with
 * K the curvature at the answer. The right side is a central difference of the outflow of two houses, drawn a little to
 * either side, at the same pressures; the change of a reading is a central difference between these houses at p + dp/dt
 * and p - dp/dt times the step. So it holds for whatever can be drawn: fill, leaks, gaps, pits, what draws.
 */
public final class Tangent {
    private static final double TOLERANCE = 1e-9;

    private final Scenario scenario;
    private final boolean fanOn;
    private final List<Point> places;
    private final House house;
    private final Guess guess;

    private Tangent(Scenario scenario, boolean fanOn, List<Point> places, House house) {
        this.scenario = scenario;
        this.fanOn = fanOn;
        this.places = places;
        this.house = house;
        guess = Guess.of(
                        house.state().network(),
                        house.state().at(),
                        house.state().rest())
                .withDiscs(house.layer(), house.state().built().discNode());
    }

    /**
     * What is read in a house, or how that changes.
     *
     * @param places pressure at each place, bilinear between cell middles, NaN where the layer has none [Pa]
     * @param risers pressure at each suction point, in the scenario's order, NaN where it has none [Pa]
     * @param flows drawn at each suction point [m3/s]
     */
    public record Reading(double[] places, double[] risers, double[] flows) {}

    /** A network laid and solved, or only laid. */
    private record House(Scenario scenario, LayerGrid layer, SlabSolver.State state) {}

    /**
     * Solves a house.
     *
     * @param scenario as it stood while it was read
     * @param fanOn false for the state with the suction off
     * @param places where pressures are read
     * @param grounds where its layer may be laid already
     * @param near a solved house to start from, of the same cells, or empty
     * @param progress asked once per Newton step
     * @return empty where the solve does not converge or is stopped
     */
    public static Optional<Tangent> of(
            Scenario scenario,
            boolean fanOn,
            List<Point> places,
            Grounds grounds,
            Optional<Tangent> near,
            Progress progress) {
        LayerGrid layer = grounds.layer(scenario);
        Devices.Built built = build(scenario, layer, fanOn);
        SlabSolver.State state =
                SlabSolver.State.of(built, progress, near.map(t -> t.guess).orElse(Guess.NONE));
        return state.refusal().isEmpty() && state.convergence().converged()
                ? Optional.of(new Tangent(scenario, fanOn, List.copyOf(places), new House(scenario, layer, state)))
                : Optional.empty();
    }

    private static Devices.Built build(Scenario scenario, LayerGrid layer, boolean fanOn) {
        AirState air = SlabSolver.airOf(scenario);
        Devices.addDiscs(scenario, layer);
        layer.isolateDiscs();
        return Devices.build(scenario, layer, air, fanOn);
    }

    public Scenario scenario() {
        return scenario;
    }

    /** What is read. */
    public Reading reading() {
        return read(house, house.state().at(), house.state().rest());
    }

    /**
     * Change of every reading per unit of what was changed.
     *
     * @param low the house with it a step lower
     * @param high the house with it a step higher
     * @param step half the distance between them, above 0
     * @param grounds as for {@link #of}
     * @return empty where the three houses have not the same nodes, as where a gap closes; then only whole solves can tell
     */
    public Optional<Reading> change(Scenario low, Scenario high, double step, Grounds grounds) {
        House below = laid(low, grounds), above = laid(high, grounds);
        if (!alike(below) || !alike(above)) return Optional.empty();
        SlabSolver.State state = house.state();
        int n = state.at().length;
        double[] out = new double[n], right = new double[n], dp = new double[n];
        above.state().network().residual(state.at(), state.rest(), right);
        below.state().network().residual(state.at(), state.rest(), out);
        boolean changes = false;
        for (int u = 0; u < n; u++) {
            right[u] = (out[u] - right[u]) / (2 * step);
            changes |= right[u] != 0;
        }
        if (changes && !state.network().solveCurvature(state.at(), state.rest(), right, dp, TOLERANCE))
            throw new IllegalStateException("the curvature at a converged answer is positive definite");
        Reading up = read(above, moved(state.at(), dp, step), state.rest());
        Reading down = read(below, moved(state.at(), dp, -step), state.rest());
        return Optional.of(new Reading(
                slope(up.places(), down.places(), step),
                slope(up.risers(), down.risers(), step),
                slope(up.flows(), down.flows(), step)));
    }

    private static double[] moved(double[] at, double[] by, double step) {
        double[] to = new double[at.length];
        for (int u = 0; u < to.length; u++) to[u] = at[u] + step * by[u];
        return to;
    }

    private static double[] slope(double[] up, double[] down, double step) {
        double[] s = new double[up.length];
        for (int i = 0; i < s.length; i++) s[i] = (up[i] - down[i]) / (2 * step);
        return s;
    }

    private House laid(Scenario other, Grounds grounds) {
        LayerGrid layer = grounds.layer(other);
        return new House(other, layer, SlabSolver.State.laid(build(other, layer, fanOn)));
    }

    private boolean alike(House other) {
        Network a = house.state().network(), b = other.state().network();
        if (a.size() != b.size() || a.nodes() != b.nodes()) return false;
        for (int u = 0; u < a.size(); u++) if (a.nodeOf(u) != b.nodeOf(u)) return false;
        return true;
    }

    private Reading read(House of, double[] at, double[] rest) {
        SlabSolver.State s = of.state();
        Network net = s.network();
        double[] all = net.spread(at, rest).clone();
        double[] pressures = new double[places.size()];
        for (int i = 0; i < pressures.length; i++) pressures[i] = pressure(of, all, places.get(i));
        int count = of.scenario().suctionPoints().size();
        double[] risers = new double[count], flows = new double[count], accounts = net.accountFlows(at, rest);
        for (int k = 0; k < count; k++) {
            int node = s.built().suctionNode()[k];
            risers[k] = node >= 0 && net.reached(node) ? all[node] : Double.NaN;
            flows[k] = node < 0 ? 0 : flow(of, k, node, accounts, at, rest);
        }
        return new Reading(pressures, risers, flows);
    }

    private double flow(House of, int k, int node, double[] accounts, double[] at, double[] rest) {
        SuctionPoint point = of.scenario().suctionPoints().get(k);
        Source source = point.source();
        if (source instanceof Source.Fan || source instanceof Source.Branch)
            return -accounts[of.state().built().suctionAccount()[k]];
        if (!fanOn) return 0;
        if (source instanceof Source.Flow f) return f.flow();
        return of.state().network().givenTo(node, at, rest);
    }

    /** As {@link slabfield.field.PressureField#at}, for cells and for the discs of pits and openings. */
    private static double pressure(House of, double[] all, Point at) {
        LayerGrid layer = of.layer();
        double fx = (at.x() - layer.grid.left()) / layer.grid.width() - 0.5;
        double fy = (at.y() - layer.grid.bottom()) / layer.grid.height() - 0.5;
        int i = (int) Math.floor(fx), j = (int) Math.floor(fy);
        double sum = 0, weight = 0;
        for (int k = 0; k < 4; k++) {
            int cell = layer.cellAt(i + (k & 1), j + (k >> 1));
            double w = ((k & 1) == 0 ? 1 - (fx - i) : fx - i) * (k < 2 ? 1 - (fy - j) : fy - j);
            if (cell < 0 || w <= 0) continue;
            int node = layer.kind[cell] == CellKind.LAYER
                    ? cell
                    : layer.kind[cell] == CellKind.DISC ? of.state().built().discNode()[layer.disc[cell]] : -1;
            if (node < 0 || !of.state().network().reached(node)) continue;
            sum += w * all[node];
            weight += w;
        }
        return weight < 1e-12 ? Double.NaN : sum / weight;
    }
}
