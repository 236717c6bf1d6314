package slabfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import slabfield.field.Progress;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.model.SuctionPoint;
import slabfield.network.Grounds;
import slabfield.network.Tangent;

/**
 * From values of the unknowns to what would be read in all stages, with the derivatives, on one cell size. Values are given
 * as standard deviations of the priors from their medians. Stages are solved side by side.
 */
final class HouseModel {
    /** Step of the central differences, in the logarithm or in standard deviations of a linear unknown. */
    private static final double STEP = 1e-4;
    /** Step where only whole solves can tell. */
    private static final double WHOLE_STEP = 2e-3;

    private final Scenario drawn;
    private final List<Parameter> parameters;
    private final List<Observation> observations;
    private final List<Seen> stages = new ArrayList<>();
    private final Grounds grounds = new Grounds();
    private final Progress progress;
    private final AtomicInteger solves = new AtomicInteger();

    /** What one stage tells: the numbers of its observations and the places at which pressures are read. */
    private record Seen(
            String stage, List<Integer> observations, List<String> holes, List<Point> places, boolean off) {}

    /** Solves of one stage with the fan on, and off where that is read and not simply zero. */
    private record Pair(Tangent on, Optional<Tangent> off) {}

    /** A house with its predictions. */
    record Evaluation(double[] at, Scenario house, double[] predicted, List<Object> solved) {}

    HouseModel(
            Scenario drawn,
            List<Parameter> parameters,
            List<Observation> observations,
            double cell,
            Progress progress) {
        this.drawn = drawn.withCellSize(cell);
        this.parameters = parameters;
        this.observations = observations;
        this.progress = progress;
        for (Stage s : drawn.stages()) {
            List<Integer> mine = IntStream.range(0, observations.size())
                    .filter(i -> observations.get(i).stage().equals(s.id()))
                    .boxed()
                    .toList();
            if (mine.isEmpty()) continue;
            List<String> holes = mine.stream()
                    .map(observations::get)
                    .filter(Observation::isPressureAtHole)
                    .map(Observation::place)
                    .distinct()
                    .toList();
            List<Point> places = holes.stream()
                    .map(h -> drawn.testHole(h).orElseThrow().at())
                    .toList();
            boolean off = mine.stream()
                    .map(observations::get)
                    .anyMatch(o -> o.what() == Observation.What.FAN_OFF || o.what() == Observation.What.DIFFERENCE);
            stages.add(new Seen(s.id(), mine, holes, places, off));
        }
    }

    /** The house with given values, on this model's cells. */
    Scenario house(double[] at) {
        return house(drawn, parameters, at);
    }

    /** A house with given values of its unknowns. */
    static Scenario house(Scenario drawn, List<Parameter> parameters, double[] at) {
        Scenario h = drawn;
        for (int j = 0; j < at.length; j++)
            h = parameters.get(j).with(h, parameters.get(j).prior().value(at[j]));
        return h;
    }

    /** Number of houses solved so far, the fan on and off counted apart. */
    int solves() {
        return solves.get();
    }

    /**
     * Predictions.
     *
     * @param near an evaluation to start from, or empty
     * @return empty where a stage has no solution
     * @throws CancellationException where somebody asked to stop
     */
    Optional<Evaluation> evaluate(double[] at, Optional<Evaluation> near) {
        Scenario house = house(at);
        Pair[] pairs = new Pair[stages.size()];
        boolean[] failed = new boolean[stages.size()];
        inParallel(stages.size(), i -> {
            Optional<Pair> pair =
                    solve(house, stages.get(i), near.map(e -> (Pair) e.solved().get(i)));
            failed[i] = pair.isEmpty();
            pairs[i] = pair.orElse(null);
        });
        if (progress.isCancelled()) throw new CancellationException();
        for (boolean f : failed) if (f) return Optional.empty();
        double[] predicted = new double[observations.size()];
        for (int i = 0; i < pairs.length; i++)
            put(
                    predicted,
                    stages.get(i),
                    pairs[i].on().reading(),
                    pairs[i].off().map(Tangent::reading));
        for (double p : predicted) if (!Double.isFinite(p)) return Optional.empty();
        return Optional.of(new Evaluation(at.clone(), house, predicted, List.of((Object[]) pairs)));
    }

    private Optional<Pair> solve(Scenario house, Seen seen, Optional<Pair> near) {
        Scenario then = house.during(house.stage(seen.stage()).orElseThrow());
        Progress watch = progress.stopOnly();
        solves.incrementAndGet();
        Optional<Tangent> on = Tangent.of(then, true, seen.places(), grounds, near.map(Pair::on), watch);
        if (on.isEmpty()) return Optional.empty();
        if (!seen.off() || quiet(then)) return Optional.of(new Pair(on.get(), Optional.empty()));
        solves.incrementAndGet();
        Optional<Tangent> off = Tangent.of(then, false, seen.places(), grounds, near.flatMap(Pair::off), watch);
        return off.map(o -> new Pair(on.get(), off));
    }

    /** True where nothing drives a flow with the fan off. */
    private static boolean quiet(Scenario then) {
        return then.outdoorPressure() == 0 && then.suctionPoints().stream().noneMatch(SuctionPoint::openWhenOff);
    }

    /** Derivative of every prediction with respect to every unknown, in standard deviations of the prior. */
    double[][] jacobian(Evaluation e) {
        double[][] out = new double[observations.size()][parameters.size()];
        Scenario[] low = new Scenario[parameters.size()], high = new Scenario[low.length];
        double[] steps = new double[low.length];
        for (int j = 0; j < steps.length; j++) {
            steps[j] = step(j, STEP);
            low[j] = house(moved(e.at(), j, -steps[j]));
            high[j] = house(moved(e.at(), j, steps[j]));
        }
        inParallel(stages.size(), i -> {
            for (int j = 0; j < steps.length && !progress.isCancelled(); j++)
                column(out, j, stages.get(i), (Pair) e.solved().get(i), low[j], high[j], steps[j], e);
        });
        if (progress.isCancelled()) throw new CancellationException();
        return out;
    }

    private double step(int j, double size) {
        Prior prior = parameters.get(j).prior();
        return prior.scale() == Prior.Scale.LOGARITHMIC ? size / Math.log(prior.spread()) : size;
    }

    private static double[] moved(double[] at, int j, double by) {
        double[] to = at.clone();
        to[j] += by;
        return to;
    }

    private void column(
            double[][] out, int j, Seen seen, Pair pair, Scenario low, Scenario high, double step, Evaluation e) {
        Stage stage = low.stage(seen.stage()).orElseThrow(),
                above = high.stage(seen.stage()).orElseThrow();
        Scenario down = low.during(stage), up = high.during(above);
        Optional<Tangent.Reading> on = pair.on().change(down, up, step, grounds);
        Optional<Tangent.Reading> off = pair.off().flatMap(t -> t.change(down, up, step, grounds));
        double[] column = new double[observations.size()];
        if (on.isPresent() && off.isPresent() == pair.off().isPresent()) put(column, seen, on.get(), off);
        else byWholeSolves(column, j, seen, pair, e);
        for (int k : seen.observations()) out[k][j] = column[k];
    }

    private void byWholeSolves(double[] column, int j, Seen seen, Pair pair, Evaluation e) {
        double step = step(j, WHOLE_STEP);
        double[] up = new double[column.length], down = new double[column.length];
        for (int side = -1; side <= 1; side += 2) {
            Optional<Pair> p = solve(house(moved(e.at(), j, side * step)), seen, Optional.of(pair));
            if (p.isEmpty()) return;
            put(
                    side < 0 ? down : up,
                    seen,
                    p.get().on().reading(),
                    p.get().off().map(Tangent::reading));
        }
        for (int k : seen.observations()) column[k] = (up[k] - down[k]) / (2 * step);
    }

    private void put(double[] to, Seen seen, Tangent.Reading on, Optional<Tangent.Reading> off) {
        for (int k : seen.observations()) {
            Observation o = observations.get(k);
            int hole = seen.holes().indexOf(o.place());
            double quiet = off.map(r -> hole < 0 ? 0 : r.places()[hole]).orElse(0.0);
            to[k] = switch (o.what()) {
                case FAN_ON -> on.places()[hole];
                case FAN_OFF -> quiet;
                case DIFFERENCE -> on.places()[hole] - quiet;
                case FLOW -> on.flows()[suction(o.place())];
                case RISER -> on.risers()[suction(o.place())];
            };
        }
    }

    private int suction(String id) {
        for (int k = 0; k < drawn.suctionPoints().size(); k++)
            if (drawn.suctionPoints().get(k).id().equals(id)) return k;
        throw new IllegalArgumentException("the house has no suction point \"" + id + "\"");
    }

    /** Does the work for 0 to count - 1, side by side. */
    static void inParallel(int count, IntConsumer work) {
        IntStream.range(0, count).parallel().forEach(work);
    }
}
