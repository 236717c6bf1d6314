package slabfield.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.stream.IntStream;
import slabfield.field.CellKind;
import slabfield.field.Progress;
import slabfield.law.AirState;
import slabfield.model.Scenario;
import slabfield.solve.PanelCholesky;
import slabfield.solve.SideBySide;
import slabfield.solve.Subtrees;
import slabfield.solve.UnitLoads;

/** A solved house in which a further pit is tried at every place; makes a {@link PlacementMap}. */
final class Coring {
    private static final int BATCH = 128;
    /** Up to this many unknowns, samples are taken on the house's own grid. */
    private static final int SMALL = 5000;

    final Scenario scenario;
    final PlacementMap.Question question;
    final Progress progress;
    /** Without discs, and with those of the house. */
    final LayerGrid bare;

    final LayerGrid layer;
    final SlabSolver.State state;
    final PanelCholesky factor;
    final NewPit pit;
    private final SpotLeaks leaks;
    final PitPlaces places;
    /** Unknowns of the cells that count, and the open area of each. */
    private final int[] counting;

    private final double[] openArea;

    private Coring(
            Scenario scenario,
            PlacementMap.Question question,
            Progress progress,
            LayerGrid bare,
            LayerGrid layer,
            SlabSolver.State state,
            PanelCholesky factor) {
        this.scenario = scenario;
        this.question = question;
        this.progress = progress;
        this.bare = bare;
        this.layer = layer;
        this.state = state;
        this.factor = factor;
        pit = new NewPit(layer, question.pit(), question.source(), SlabSolver.airOf(scenario));
        leaks = new SpotLeaks(state.network(), state.at(), state.rest(), factor);
        places = new PitPlaces(scenario.plan(), question, layer, state.network());
        int[] cells = IntStream.range(0, layer.counts.length)
                .filter(c -> layer.counts[c] && state.network().unknownOf(c) >= 0)
                .toArray();
        counting = Arrays.stream(cells).map(c -> state.network().unknownOf(c)).toArray();
        openArea = Arrays.stream(cells).mapToDouble(c -> layer.openArea[c]).toArray();
    }

    /** Solves the house as it is; empty where that fails. */
    static Optional<Coring> of(Scenario scenario, PlacementMap.Question question, Progress progress) {
        return of(
                scenario,
                question,
                progress,
                layer -> SlabSolver.started(scenario, layer, true, progress, Guess.NONE, FactorRoom.once()));
    }

    /** The same house on cells of another size, whose solve starts from this one's answer. */
    Optional<Coring> onCells(double cell) {
        Scenario other = scenario.withCellSize(cell);
        Guess found = Guess.of(state.network(), state.at(), state.rest())
                .withDiscs(layer, state.built().discNode());
        return of(other, question, progress, on -> {
            Devices.Built built = Devices.build(other, on, SlabSolver.airOf(other), true);
            return SlabSolver.State.of(
                    built, progress, CoarseStart.onto(on, built.network(), found, layer, state.network()));
        });
    }

    private static Optional<Coring> of(
            Scenario scenario,
            PlacementMap.Question question,
            Progress progress,
            Function<LayerGrid, SlabSolver.State> solve) {
        AirState air = SlabSolver.airOf(scenario);
        LayerGrid bare = new LayerGrid(scenario, air), layer = new LayerGrid(bare);
        Devices.addDiscs(scenario, layer);
        layer.isolateDiscs();
        SlabSolver.State state = solve.apply(layer);
        if (state.refusal().isPresent() || !state.convergence().converged() || state.at().length == 0)
            return Optional.empty();
        return state.network()
                .factor(state.at(), state.rest())
                .map(f -> new Coring(scenario, question, progress, bare, layer, state, f));
    }

    /** Empty when cancelled. */
    Optional<PlacementMap> map() {
        int[] tried = places();
        return map(tried, samples(tried));
    }

    /** Places at which a pit can be. */
    int[] places() {
        return places.open();
    }

    /**
     * The map by samples that were taken before. Samples taken again differ a little, as a thread's solves begin from the factor that it
     * had last.
     */
    Optional<PlacementMap> map(int[] tried, Samples samples) {
        Sums sums = new Sums(places.grid.cells());
        int[] placeOf = new int[state.at().length];
        for (int p : tried) placeOf[unknown(places.cell(p))] = p;
        int[] nodes = UnitLoads.inOrder(
                factor, Arrays.stream(tried).map(p -> unknown(places.cell(p))).toArray());
        int batches = (nodes.length + BATCH - 1) / BATCH;
        Judge.Parts parts = parts();
        double weakestNow = weakest(new double[state.at().length], 0);
        AtomicInteger next = new AtomicInteger(), done = new AtomicInteger();
        IntStream.range(0, Math.min(Runtime.getRuntime().availableProcessors(), batches))
                .parallel()
                .forEach(worker -> {
                    UnitLoads loads = new UnitLoads(factor, BATCH);
                    Judge judge = new Judge(
                            parts, leaks, state.at(), -scenario.target().vacuum(), BATCH);
                    for (int b = next.getAndIncrement();
                            b < batches && !progress.isCancelled();
                            b = next.getAndIncrement()) {
                        int from = b * BATCH, to = Math.min(nodes.length, from + BATCH);
                        judge(judge, loads, new Batch(nodes, from, to, placeOf, parts, weakestNow), samples, sums);
                        progress.step(done.incrementAndGet(), batches, Double.NaN);
                    }
                });
        if (progress.isCancelled()) return Optional.empty();
        return Optional.of(finish(sums, samples));
    }

    Samples samples(int[] tried) {
        boolean exact =
                !layer.flow.inertial && state.network().nonlinearLinks(state.at(), state.rest()) == leaks.count();
        if (exact) return Samples.none();
        if (state.at().length <= SMALL) return Samples.of(this, this, Samples.choose(this, tried));
        double cell = 2 * Math.max(layer.grid.width(), layer.grid.height());
        List<Samples.Choice> choice = new ArrayList<>();
        List<Coring> coarse = new ArrayList<>();
        SideBySide.both(
                SideBySide.helps(),
                () -> choice.add(Samples.choose(this, tried)),
                () -> onCells(cell).ifPresent(coarse::add));
        return coarse.isEmpty() ? Samples.none() : Samples.of(this, coarse.get(0), choice.get(0));
    }

    int unknown(int cell) {
        return state.network().unknownOf(cell);
    }

    /** What a batch of places gives. */
    private void judge(Judge judge, UnitLoads loads, Batch batch, Samples samples, Sums sums) {
        double[] toLeak = new double[leaks.count()], own = new double[leaks.count()];
        judge.begin(batch.to - batch.from, () -> {
            for (int b = 0; b < batch.to - batch.from; b++) {
                int node = batch.nodes[batch.from + b], place = batch.placeOf[node];
                double g = loads.at(node)[b];
                for (int j = 0; j < toLeak.length; j++) toLeak[j] = leaks.response(j)[node];
                double q = leaks.settle(
                        node, state.at()[node], open -> pit.flow(places.cell(place), open, g), toLeak, own);
                Samples.Share share = samples.at(node, g);
                sums.flow[place] = q * share.flow();
                judge.place(b, q, share, own);
            }
        });
        loads.solve(batch.nodes, batch.from, batch.to, batch.parts.subtrees, judge);
        for (int b = 0; b < batch.to - batch.from; b++) {
            int node = batch.nodes[batch.from + b], place = batch.placeOf[node];
            double held = pit.pressure(places.cell(place), state.at()[node], loads.at(node)[b], judge.flow(b));
            sums.weakest[place] = bounded(judge.weakest(b), batch.weakestNow, -held, judge.flow(b));
            sums.covered[place] = Math.max(0, judge.covered(b) - places.pitArea);
        }
    }

    /** Some of the nodes at which pits are tried, and what all such share. */
    private record Batch(int[] nodes, int from, int to, int[] placeOf, Judge.Parts parts, double weakestNow) {}

    private Judge.Parts parts() {
        double[] area = new double[state.at().length];
        boolean[] counts = new boolean[area.length];
        Arrays.fill(area, Double.NaN);
        for (int k = 0; k < counting.length; k++) {
            area[counting[k]] = openArea[k];
            counts[counting[k]] = true;
        }
        return new Judge.Parts(new Subtrees(factor, counts), area, state.at(), leaks);
    }

    /** A pit that draws weakens no place and leaves none below the less of its own vacuum and the present one; and conversely. */
    static double bounded(double weakest, double now, double inPit, double flow) {
        return flow >= 0
                ? Math.max(now, Math.min(weakest, Math.max(now, inPit)))
                : Math.min(now, Math.max(weakest, Math.min(now, inPit)));
    }

    /**
     * The linear answer with a pit in a cell.
     *
     * @param response column of G there
     * @param fall receives by how much every unknown's pressure falls [Pa]
     * @return flow drawn [m3/s]
     */
    double fall(int cell, double[] response, double[] fall) {
        int u = unknown(cell);
        double[] excess = new double[leaks.count()], toLeak = new double[leaks.count()];
        for (int j = 0; j < toLeak.length; j++) toLeak[j] = leaks.response(j)[u];
        double q = leaks.settle(u, state.at()[u], open -> pit.flow(cell, open, response[u]), toLeak, excess);
        for (int k = 0; k < fall.length; k++) {
            fall[k] = q * response[k];
            for (int j = 0; j < excess.length; j++) fall[k] += excess[j] * leaks.response(j)[k];
        }
        return q;
    }

    private PlacementMap finish(Sums sums, Samples samples) {
        double top = Double.NEGATIVE_INFINITY, met = 0, best = 0;
        for (int k = 0; k < counting.length; k++) {
            double p = state.at()[counting[k]];
            top = Math.max(top, p);
            if (p <= -scenario.target().vacuum()) met += openArea[k];
        }
        for (double w : sums.weakest) best = Math.max(best, Double.isNaN(w) ? 0 : w);
        return new PlacementMap(
                places.grid,
                sums.weakest,
                sums.covered,
                sums.flow,
                counting.length == 0 ? Double.NaN : -top,
                met,
                area(),
                best > 0 ? samples.misfit() / best : 0);
    }

    /** Vacuum left at the weakest place if the pressures fall by a part of the given falls [Pa]. */
    double weakest(double[] fall, double part) {
        double top = Double.NEGATIVE_INFINITY;
        for (int u : counting) top = Math.max(top, state.at()[u] - part * fall[u]);
        return -top;
    }

    /** Area that meets the target then [m2]. */
    double covered(double[] fall, double part) {
        double sum = 0;
        for (int k = 0; k < counting.length; k++)
            if (state.at()[counting[k]] - part * fall[counting[k]]
                    <= -scenario.target().vacuum()) sum += openArea[k];
        return sum;
    }

    int[] counting() {
        return counting;
    }

    /** Open area that counts, with that which has no pressure [m2]. */
    double area() {
        double sum = Arrays.stream(openArea).sum();
        for (int c = 0; c < layer.kind.length; c++) if (layer.kind[c] == CellKind.UNREACHED) sum += layer.openArea[c];
        return sum;
    }

    /** Pressures of a house like this one to start from. */
    synchronized Guess guess(double[] pressure) {
        return Guess.of(state.network(), pressure, new double[pressure.length]);
    }

    /** Results by place. */
    private static final class Sums {
        final double[] weakest;
        final double[] covered;
        final double[] flow;

        Sums(int places) {
            weakest = new double[places];
            covered = new double[places];
            flow = new double[places];
            for (double[] a : new double[][] {weakest, covered, flow}) Arrays.fill(a, Double.NaN);
        }
    }
}
