package slabfield.fit;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.NormalDistribution;
import slabfield.field.Progress;

/**
 * Range of one unknown by its profile: it is moved away from its best value while all others are fitted anew, until the
 * misfit has grown by z^2/2 (Venzon and Moolgavkar 1988, from memory). Right where the posterior is far from normal, which
 * Laplace's approximation is not. On coarse cells.
 */
public final class Profile {
    private static final double TOLERANCE = 0.05;
    private static final int LIMIT = 25;
    private static final int TRIES = 30;
    private static final double GROWTH = 1.6;
    private static final double CLOSE = 0.03;
    /** Furthest look, in standard deviations of the prior from its median. */
    private static final double FURTHEST = 5;

    private final HouseModel model;
    private final LevenbergMarquardt.Model<HouseModel.Evaluation> problem;
    private final int parameter;
    private final double[] best;
    private final double cost;
    private final HouseModel.Evaluation value;
    /** What was found so far, by how far the unknown was moved; searched again from elsewhere, it could come out a hair otherwise. */
    private final Map<Double, Double> depths = new HashMap<>();
    /** Place of the last search, from which the next starts. */
    private double[] last;

    private Profile(Fitted fit, int parameter, Progress progress) {
        model = new HouseModel(
                fit.drawn(), fit.parameters(), fit.observations(), HouseFit.coarseCell(fit.drawn()), progress);
        problem = HouseFit.problem(model, fit.misfit(), fit.misfit().measured(), progress);
        this.parameter = parameter;
        LevenbergMarquardt.Outcome<HouseModel.Evaluation> o =
                search(fit.deviations(), false, Optional.empty()).orElseThrow();
        best = o.at();
        cost = o.cost();
        value = o.value();
        last = best;
    }

    /**
     * Ranges of all unknowns that are sought for themselves, side by side.
     *
     * @param fit whose unknowns they are
     * @param probability for instance 0.9
     * @param progress told of each unknown, asked whether to go on
     * @return by the unknowns' places, in their order
     * @throws CancellationException where somebody asked to stop
     */
    public static SortedMap<Integer, Interval> intervals(Fitted fit, double probability, Progress progress) {
        int[] sought = IntStream.range(0, fit.parameters().size())
                .filter(j -> fit.parameters().get(j).kind().sought())
                .toArray();
        Interval[] found = new Interval[sought.length];
        AtomicInteger done = new AtomicInteger();
        HouseModel.inParallel(sought.length, k -> {
            if (progress.isCancelled()) return;
            found[k] = interval(fit, sought[k], probability, progress.stopOnly());
            progress.step(done.incrementAndGet(), sought.length, Double.NaN);
        });
        if (progress.isCancelled()) throw new CancellationException();
        SortedMap<Integer, Interval> out = new TreeMap<>();
        for (int k = 0; k < sought.length; k++) out.put(sought[k], found[k]);
        return out;
    }

    /**
     * Range of an unknown.
     *
     * @param fit whose unknown it is
     * @param parameter its place
     * @param probability for instance 0.9
     * @param progress asked whether to go on
     */
    public static Interval interval(Fitted fit, int parameter, double probability, Progress progress) {
        Profile profile = new Profile(fit, parameter, progress);
        double z = new NormalDistribution(null, 0, 1).inverseCumulativeProbability((1 + probability) / 2);
        double step = z * fit.doubtLeft(parameter);
        Prior prior = fit.parameters().get(parameter).prior();
        return new Interval(prior.value(profile.end(-step, z)), prior.value(profile.end(step, z)));
    }

    private Optional<LevenbergMarquardt.Outcome<HouseModel.Evaluation>> search(
            double[] start, boolean hold, Optional<HouseModel.Evaluation> near) {
        boolean[] held = new boolean[start.length];
        held[parameter] = hold;
        return new LevenbergMarquardt<>(problem, new double[start.length], held, TOLERANCE, LIMIT).search(start, near);
    }

    /** Where the root of twice the misfit's growth reaches z, going in the direction of a first step. */
    private double end(double step, double z) {
        double furthest = Math.signum(step) * FURTHEST - best[parameter], inner = 0, outer = step;
        while (Math.abs(outer) < Math.abs(furthest) && depth(outer, z) < z) {
            inner = outer;
            outer *= GROWTH;
        }
        if (Math.abs(outer) >= Math.abs(furthest)) {
            outer = furthest;
            if (depth(outer, z) < z) return best[parameter] + furthest;
        }
        double root = new BrentSolver(CLOSE * Math.abs(step))
                .solve(TRIES, t -> depth(t, z) - z, Math.min(inner, outer), Math.max(inner, outer));
        return best[parameter] + root;
    }

    /** Root of twice the misfit's growth with the unknown moved, at most twice z. */
    private double depth(double moved, double z) {
        if (moved == 0) return 0;
        return depths.computeIfAbsent(moved, m -> searched(m, z));
    }

    private double searched(double moved, double z) {
        double[] from = last.clone();
        from[parameter] = best[parameter] + moved;
        Optional<LevenbergMarquardt.Outcome<HouseModel.Evaluation>> o = search(from, true, Optional.of(value));
        o.ifPresent(v -> last = v.at());
        return Math.min(
                2 * z, o.map(v -> Math.sqrt(2 * Math.max(0, v.cost() - cost))).orElse(2 * z));
    }
}
