package slabfield.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import slabfield.field.CellKind;
import slabfield.field.Convergence;
import slabfield.field.Grid;
import slabfield.field.PressureField;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.law.AirState;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;
import slabfield.solve.Newton;

/** From a scenario to its pressure field: lays the model on a grid, ties the devices, solves, and reads the answer. */
public final class SlabSolver {
    /** Mass balance that a converged answer keeps, relative to the flow through the network. */
    public static final double BALANCE = 1e-9;

    /** Quadratic over linear part of the pressure gradient above which Darcy's law alone is doubtful. */
    public static final double DARCY_DOUBTFUL = 0.1;

    /** Share of the local vacuum that the momentum of air in a tile may reach before it is named as a doubt. */
    private static final double MOMENTUM_DOUBTFUL = 0.05;

    private SlabSolver() {}

    /** What to compute. */
    public enum Extent {
        /** Everything. */
        FULL,
        /** Without the state with the suction off: for a picture that follows a drag. */
        FAN_ON_ONLY
    }

    public static Result solve(Scenario scenario, Progress progress) {
        return solve(scenario, Extent.FULL, progress);
    }

    /**
     * Solves a scenario that has passed its checks.
     *
     * @param progress asked once per Newton step
     */
    public static Result solve(Scenario scenario, Extent extent, Progress progress) {
        return solve(
                        scenario,
                        extent,
                        progress,
                        new LayerGrid(scenario, airOf(scenario)),
                        Guess.NONE,
                        FactorRoom.once())
                .result();
    }

    /** A result, and the pressures from which a like house can start. */
    record Answer(Result result, Guess guess) {}

    /**
     * Solves on a layer that is laid on its grid already.
     *
     * @param layer without discs; they are cut into it here
     * @param guess where to start
     * @param room where the factor comes from
     */
    static Answer solve(
            Scenario scenario, Extent extent, Progress progress, LayerGrid layer, Guess guess, FactorRoom room) {
        return solve(scenario, extent, progress, layer, guess, room, 0);
    }

    /** @param enough relative residual at which the state with the suction on may be left; 0 for one that has converged */
    static Answer solve(
            Scenario scenario,
            Extent extent,
            Progress progress,
            LayerGrid layer,
            Guess guess,
            FactorRoom room,
            double enough) {
        AirState air = airOf(scenario);
        Devices.addDiscs(scenario, layer);
        layer.isolateDiscs();
        CellKind[] kinds = layer.kind.clone();
        State on = started(scenario, layer, true, progress, guess, room, enough);
        if (on.refusal.isPresent() || !on.convergence.converged())
            return new Answer(
                    new Result.Unsolved(scenario, on.convergence, on.refusal.orElseGet(() -> reason(on.convergence))),
                    guess);
        double[] pressure = on.cellPressures(layer);
        PressureField field =
                new PressureField(layer.grid, layer.kind.clone(), pressure, counting(layer, pressure), layer.openArea);
        List<Result.Unreached> unreached = on.islands.stream()
                .filter(i -> i.cells() > 0)
                .map(i -> new Result.Unreached(middle(layer.grid, i.cell()), i.area()))
                .toList();
        Guess next = Guess.of(on.network, on.at, on.rest).withDiscs(layer, on.built.discNode());
        Optional<PressureField> off = Optional.empty();
        if (extent == Extent.FULL) {
            System.arraycopy(kinds, 0, layer.kind, 0, kinds.length);
            State quiet = started(scenario, layer, false, progress, Guess.NONE, FactorRoom.once());
            if (quiet.convergence.ending() == Convergence.Ending.CANCELLED)
                return new Answer(new Result.Unsolved(scenario, quiet.convergence, reason(quiet.convergence)), next);
            if (quiet.convergence.converged()) {
                double[] p = quiet.cellPressures(layer);
                off = Optional.of(
                        new PressureField(layer.grid, layer.kind.clone(), p, counting(layer, p), layer.openArea));
            }
        }
        return new Answer(read(scenario, layer, on, field, off, unreached, air), next);
    }

    /** Solves from a guess, or where there is none from a rough answer on wide cells. */
    static State started(
            Scenario scenario, LayerGrid layer, boolean fanOn, Progress progress, Guess guess, FactorRoom room) {
        return started(scenario, layer, fanOn, progress, guess, room, 0);
    }

    private static State started(
            Scenario scenario,
            LayerGrid layer,
            boolean fanOn,
            Progress progress,
            Guess guess,
            FactorRoom room,
            double enough) {
        Devices.Built built = Devices.build(scenario, layer, airOf(scenario), fanOn);
        boolean none = guess.cells().length != layer.grid.cells();
        return State.of(
                built, progress, none ? CoarseStart.of(scenario, built, layer, fanOn, progress) : guess, room, enough);
    }

    /** Standard air where the scenario gives neither temperature nor altitude; else 20 C or sea level for the other. */
    public static AirState airOf(Scenario scenario) {
        return AirState.of(scenario.air().temperature(), scenario.air().altitude());
    }

    private static String reason(Convergence c) {
        return switch (c.ending()) {
            case CANCELLED -> "The solve was stopped before it was done.";
            case SINGULAR ->
                "The pressures have no single answer: a part of the network has no tie to any fixed pressure.";
            default ->
                "The solve did not settle (residual " + String.format(java.util.Locale.ROOT, "%.1e", c.residual())
                        + " after " + c.iterations()
                        + " steps). No field is shown. Look for values far outside the usual.";
        };
    }

    private static Point middle(Grid grid, int cell) {
        return new Point(grid.x(cell % grid.columns()), grid.y(cell / grid.columns()));
    }

    private static boolean[] counting(LayerGrid layer, double[] pressure) {
        boolean[] counts = layer.counts.clone();
        for (int c = 0; c < counts.length; c++)
            counts[c] &= layer.kind[c] == CellKind.LAYER && !Double.isNaN(pressure[c]);
        return counts;
    }

    /** One solved network. */
    record State(
            Devices.Built built,
            Network network,
            double[] at,
            double[] rest,
            Convergence convergence,
            List<Network.Island> islands,
            Optional<String> refusal) {

        static State of(Devices.Built built, Progress progress, Guess guess) {
            return of(built, progress, guess, FactorRoom.once(), 0);
        }

        static State of(Devices.Built built, Progress progress, Guess guess, FactorRoom room, double enough) {
            Network network = built.network();
            network.factorIn(room);
            List<Network.Island> islands = network.close();
            double[] at = new double[network.size()], rest = new double[at.length];
            for (Network.Island i : islands)
                if (i.drawn() > 0)
                    return new State(
                            built,
                            network,
                            at,
                            rest,
                            new Convergence(Convergence.Ending.SINGULAR, 0, Double.NaN, Double.NaN),
                            islands,
                            Optional.of(
                                    "A suction point draws a fixed flow from a part of the layer into which no air can"
                                            + " come: no opening, no wall and no soil leakance reaches it. Give it one of these,"
                                            + " or a fan or a pressure instead of a flow."));
            if (at.length == 0)
                return new State(
                        built,
                        network,
                        at,
                        rest,
                        new Convergence(Convergence.Ending.CONVERGED, 0, 0, 0),
                        islands,
                        Optional.empty());
            guess.start(network, at);
            Newton.Outcome o = Newton.solve(network, at, rest, (k, residual) -> {
                progress.step(k, 0, residual);
                return progress.isCancelled() || residual < enough;
            });
            network.letGo();
            double scale = network.scale(at, rest);
            double balance = scale > 0 ? network.imbalance(at, rest) / scale : 0;
            Convergence.Ending ending = Convergence.Ending.valueOf(o.ending().name());
            if (o.residual() < enough) ending = Convergence.Ending.CONVERGED;
            else if (ending == Convergence.Ending.CONVERGED && !(Math.abs(balance) <= BALANCE))
                ending = Convergence.Ending.STALLED;
            return new State(
                    built,
                    network,
                    at,
                    rest,
                    new Convergence(ending, o.iterations(), o.residual(), balance),
                    islands,
                    Optional.empty());
        }

        /** Closed but not solved; all its pressures are 0. */
        static State laid(Devices.Built built) {
            List<Network.Island> islands = built.network().close();
            double[] none = new double[built.network().size()];
            return new State(
                    built,
                    built.network(),
                    none,
                    none,
                    new Convergence(Convergence.Ending.CANCELLED, 0, Double.NaN, Double.NaN),
                    islands,
                    Optional.empty());
        }

        double[] cellPressures(LayerGrid layer) {
            double[] all = network.spread(at, rest), out = new double[layer.kind.length];
            for (int c = 0; c < out.length; c++) {
                int node = layer.kind[c] == CellKind.DISC ? built.discNode()[layer.disc[c]] : c;
                boolean has = layer.kind[c] == CellKind.LAYER || layer.kind[c] == CellKind.DISC;
                out[c] = has && network.reached(node) ? all[node] : Double.NaN;
            }
            return out;
        }

        double pressure(int node) {
            return network.reached(node) ? network.spread(at, rest)[node] : Double.NaN;
        }
    }

    private static Result read(
            Scenario scenario,
            LayerGrid layer,
            State on,
            PressureField field,
            Optional<PressureField> off,
            List<Result.Unreached> unreached,
            AirState air) {
        List<Result.Suction> suctions = suctions(scenario, on);
        List<Result.Hole> holes = new ArrayList<>();
        for (TestHole h : scenario.testHoles())
            holes.add(new Result.Hole(
                    h.id(),
                    h.at(),
                    field.at(h.at().x(), h.at().y()),
                    off.map(f -> f.at(h.at().x(), h.at().y())).orElse(OptionalDouble.empty())));
        double[] inertial = new double[layer.kind.length];
        Arrays.fill(inertial, Double.NaN);
        double[] all = on.network.spread(on.at, on.rest).clone();
        for (int c = 0; c < inertial.length; c++)
            if (field.kind()[c] == CellKind.LAYER) inertial[c] = layer.inertialShare(layer.flow.speed(all, c), c);
        List<String> doubts = new ArrayList<>(on.built.doubts());
        doubts.addAll(Doubts.of(scenario, field, inertial, suctions));
        doubts.addAll(momentumDoubts(on, air));
        return new Result.Solved(
                scenario,
                on.convergence,
                field,
                off,
                flows(on, suctions),
                holes,
                suctions,
                coverage(scenario, field),
                unreached,
                doubts,
                inertial);
    }

    /** Tiles in which the momentum of the air, at most rho V^2 and left out of the model, is not small. */
    private static Set<String> momentumDoubts(State on, AirState air) {
        Set<String> out = new LinkedHashSet<>();
        double[] all = on.network.spread(on.at, on.rest);
        for (Devices.TileLink l : on.built.tileLinks()) {
            if (!on.network.reached(l.from())) continue;
            double area = Math.PI * l.tile().diameter() * l.tile().diameter() / 4;
            double speed = on.network.spreadFlow(l.link()) / area;
            double vacuum = Math.min(Math.abs(all[l.from()]), Math.abs(all[l.to()]));
            if (air.density() * speed * speed > MOMENTUM_DOUBTFUL * vacuum)
                out.add("In tile \"" + l.tile().id()
                        + "\" the air moves so fast that its momentum, which the model leaves"
                        + " out, may change the vacuum along it by more than " + Math.round(100 * MOMENTUM_DOUBTFUL)
                        + " %.");
        }
        return out;
    }

    private static List<Result.Suction> suctions(Scenario scenario, State on) {
        List<Result.Suction> out = new ArrayList<>();
        double[] accounts = on.network.accountFlows(on.at, on.rest);
        for (int k = 0; k < scenario.suctionPoints().size(); k++) {
            SuctionPoint s = scenario.suctionPoints().get(k);
            int node = on.built.suctionNode()[k];
            double flow;
            if (node < 0) flow = 0;
            else if (s.source() instanceof Source.Fan || s.source() instanceof Source.Branch)
                flow = -accounts[on.built.suctionAccount()[k]];
            else if (s.source() instanceof Source.Flow f) flow = f.flow();
            else flow = on.network.givenTo(node, on.at, on.rest);
            out.add(new Result.Suction(s.id(), s.at(), node < 0 ? Double.NaN : on.pressure(node), flow));
        }
        return out;
    }

    private static Result.Flows flows(State on, List<Result.Suction> suctions) {
        double[] sums = on.network.accountFlows(on.at, on.rest);
        Map<String, Double> bySource = new LinkedHashMap<>();
        double room = 0, outside = 0;
        List<Network.Account> accounts = on.network.accounts();
        for (int k = 0; k < sums.length; k++) {
            Network.Account a = accounts.get(k);
            if (a.kind() == Network.Kind.ROOM) room += sums[k];
            else if (a.kind() == Network.Kind.OUTDOORS) outside += sums[k];
            else continue;
            bySource.merge(a.name(), sums[k], Double::sum);
        }
        double soil = on.network.soilFlow(on.at, on.rest);
        bySource.put("soil", soil);
        double exhaust = suctions.stream().mapToDouble(Result.Suction::flow).sum();
        return new Result.Flows(exhaust, room, soil, outside, java.util.Collections.unmodifiableMap(bySource));
    }

    private static Result.Coverage coverage(Scenario scenario, PressureField field) {
        double target = scenario.target().vacuum(), area = 0, meeting = 0, weakest = Double.NaN;
        int where = -1;
        for (int c = 0; c < field.pressure().length; c++) {
            if (field.kind()[c] == CellKind.UNREACHED) area += field.openArea()[c];
            if (!field.counts()[c]) continue;
            double vacuum = -field.pressure()[c];
            area += field.openArea()[c];
            if (vacuum >= target) meeting += field.openArea()[c];
            if (where < 0 || vacuum < weakest) {
                weakest = vacuum;
                where = c;
            }
        }
        Grid g = field.grid();
        return new Result.Coverage(
                target,
                area > 0 ? meeting / area : 0,
                weakest,
                where < 0 ? new Point(g.left(), g.bottom()) : middle(g, where),
                Math.max(g.width(), g.height()));
    }
}
