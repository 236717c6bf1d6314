package slabfield.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver;

/**
 * Houses that all explain the readings as well as can be asked, in the proportion in which they are believable.
 *
 * <p>Randomised maximum likelihood (Kitanidis 1995, Oliver, He and Reynolds 1996, both from memory): each member fits
 * readings to which a draw of their error was added, from priors whose medians were moved by a draw of their spread. Where
 * the model is linear in the unknowns' scales that samples the posterior exactly. Each member also carries a draw of the
 * model's own errors, that of flows as the flows that were read leave it.
 *
 * <p>Members are fitted on coarse cells, with what the cells change at the best values added to their predictions. The same
 * seed gives the same members.
 */
public final class Ensemble {
    public static final int USUAL = 80;

    /** Step in standard deviations of the posterior below which a member is good enough: far below its own spread. */
    private static final double TOLERANCE = 0.2;

    private static final int LIMIT = 6;

    private final Fitted fit;
    private final List<Member> members;
    private final int solves;

    private Ensemble(Fitted fit, List<Member> members, int solves) {
        this.fit = fit;
        this.members = members;
        this.solves = solves;
    }

    /**
     * One house.
     *
     * @param deviations values of the unknowns, as standard deviations of the priors from their medians
     * @param house as drawn, with these values
     * @param error by which the truth may differ from this house
     */
    public record Member(double[] deviations, Scenario house, ModelError error) {}

    /**
     * Makes an ensemble.
     *
     * @param fit of the house
     * @param count of members, at least 10
     * @param seed of the draws
     * @param progress told of each member
     * @throws CancellationException where somebody asked to stop
     */
    public static Ensemble of(Fitted fit, int count, long seed, Progress progress) {
        if (count < 10) throw new IllegalArgumentException("an ensemble needs at least 10 members");
        Maker maker = new Maker(fit, progress);
        AtomicInteger done = new AtomicInteger();
        Member[] made = new Member[count];
        SplittableRandom seeds = new SplittableRandom(seed);
        SplittableRandom[] random = new SplittableRandom[count];
        for (int m = 0; m < count; m++) random[m] = seeds.split();
        HouseModel.inParallel(count, m -> {
            if (progress.isCancelled()) return;
            made[m] = maker.member(random[m]);
            progress.step(done.incrementAndGet(), count, Double.NaN);
        });
        if (progress.isCancelled()) throw new CancellationException();
        return new Ensemble(fit, List.of(made), maker.model.solves());
    }

    public Fitted fit() {
        return fit;
    }

    public List<Member> members() {
        return members;
    }

    /** Pressure fields solved to find the members. */
    int solves() {
        return solves;
    }

    /** Range of an unknown among the members, in its unit. */
    public Interval interval(int parameter, double probability) {
        double[] values =
                members.stream().mapToDouble(m -> m.deviations()[parameter]).toArray();
        Interval d = Band.of(values).interval(probability);
        Prior prior = fit.parameters().get(parameter).prior();
        return new Interval(prior.value(d.low()), prior.value(d.high()));
    }

    /**
     * How far the members are from Laplace's approximation: the largest distance of a mean from the best value, in standard
     * deviations of the posterior, or the largest logarithm of a ratio of standard deviations. Below about 0.4 the two agree
     * as well as 80 members can tell.
     */
    public double distanceFromLaplace() {
        double worst = 0, best[] = fit.deviations();
        for (int j = 0; j < best.length; j++) {
            int k = j;
            Band b =
                    Band.of(members.stream().mapToDouble(m -> m.deviations()[k]).toArray());
            double deviation = fit.doubtLeft(j);
            worst = Math.max(worst, Math.abs(b.mean() - best[j]) / deviation);
            worst = Math.max(worst, Math.abs(Math.log(b.deviation() / deviation)));
        }
        return worst;
    }

    /**
     * Solves every member with something changed.
     *
     * @param change to each member's house, for instance a measure or the system that is to be installed
     * @param cell side of the cells [m]
     * @param progress told of each member
     * @throws CancellationException where somebody asked to stop
     */
    public Outlook outlook(UnaryOperator<Scenario> change, double cell, Progress progress) {
        Result.Solved[] solved = new Result.Solved[members.size()];
        AtomicInteger done = new AtomicInteger();
        HouseModel.inParallel(solved.length, m -> {
            if (progress.isCancelled()) return;
            Scenario house = change.apply(members.get(m).house()).withCellSize(cell);
            Result r = SlabSolver.solve(house, SlabSolver.Extent.FAN_ON_ONLY, progress.stopOnly());
            solved[m] = r instanceof Result.Solved s ? s : null;
            progress.step(done.incrementAndGet(), solved.length, Double.NaN);
        });
        if (progress.isCancelled()) throw new CancellationException();
        List<Outlook.Forecast> forecasts = new ArrayList<>();
        for (int m = 0; m < solved.length; m++)
            if (solved[m] != null)
                forecasts.add(new Outlook.Forecast(m, solved[m], members.get(m).error()));
        return new Outlook(forecasts);
    }

    /** The outlook on cells as coarse as those on which the members were fitted. */
    public Outlook outlook(UnaryOperator<Scenario> change, Progress progress) {
        return outlook(change, HouseFit.coarseCell(fit.drawn()), progress);
    }

    /** Fits one member after another. */
    private static final class Maker {
        private final Fitted fit;
        private final HouseModel model;
        private final HouseModel.Evaluation best;
        private final double[] at;
        private final double[][] slopes;
        private final double[] offset;
        private final CholeskyDecomposition curvature;

        Maker(Fitted fit, Progress progress) {
            this.fit = fit;
            at = fit.deviations();
            model = new HouseModel(
                    fit.drawn(), fit.parameters(), fit.observations(), HouseFit.coarseCell(fit.drawn()), progress);
            best = model.evaluate(at, Optional.empty()).orElseThrow();
            double[] fine = fit.outcome().value().predicted();
            offset = IntStream.range(0, fine.length)
                    .mapToDouble(i -> fine[i] - best.predicted()[i])
                    .toArray();
            slopes = fit.outcome().slopes();
            curvature = new CholeskyDecomposition(
                    new Array2DRowRealMatrix(fit.outcome().curvature()), 1e-8, 1e-300);
        }

        Member member(SplittableRandom random) {
            double[] noise = normal(random, offset.length), mean = normal(random, at.length);
            double pressures = normal(random, 1)[0], flows = normal(random, 1)[0];
            double[] readings = fit.misfit().drawn(noise);
            double[] pull = new double[at.length];
            for (int j = 0; j < pull.length; j++) {
                pull[j] = mean[j];
                for (int i = 0; i < noise.length; i++) pull[j] -= slopes[i][j] * noise[i];
            }
            double[]
                    step =
                            curvature
                                    .getSolver()
                                    .solve(new ArrayRealVector(pull))
                                    .toArray(),
                    start = at.clone();
            for (int j = 0; j < start.length; j++) start[j] += Math.max(-3, Math.min(3, step[j]));
            Optional<LevenbergMarquardt.Outcome<HouseModel.Evaluation>> found =
                    search(start, mean, readings).or(() -> search(at, mean, readings));
            double[] values = found.map(LevenbergMarquardt.Outcome::at).orElse(start);
            double ofFlows =
                    found.map(o -> flowError(predicted(o.value()), flows)).orElse(flows);
            return new Member(values, fit.with(values), new ModelError(fit.noise(), pressures, ofFlows));
        }

        private Optional<LevenbergMarquardt.Outcome<HouseModel.Evaluation>> search(
                double[] start, double[] mean, double[] readings) {
            return new LevenbergMarquardt<>(new Following(readings), mean, new boolean[start.length], TOLERANCE, LIMIT)
                    .search(start, Optional.of(best));
        }

        private double[] predicted(HouseModel.Evaluation e) {
            double[] p = e.predicted().clone();
            for (int i = 0; i < p.length; i++) p[i] += offset[i];
            return p;
        }

        /**
         * A draw of the model's error of flows, in its standard deviations, as it is known once flows have been read in a house: the
         * flows that were read lie off by the same error but for what stages do not share, and by their meters.
         *
         * @param predicted by the member
         * @param normal a draw from the standard normal distribution
         */
        private double flowError(double[] predicted, double normal) {
            List<Observation> all = fit.observations();
            int[] read = IntStream.range(0, all.size())
                    .filter(i -> all.get(i).what() == Observation.What.FLOW
                            && all.get(i).model() > 0)
                    .toArray();
            if (read.length == 0) return normal;
            RealMatrix c = new Array2DRowRealMatrix(read.length, read.length);
            RealVector off = new ArrayRealVector(read.length),
                    with = new ArrayRealVector(read.length, NoiseModel.SHARED);
            for (int i = 0; i < read.length; i++) {
                Observation o = all.get(read[i]);
                for (int j = 0; j < read.length; j++) c.setEntry(i, j, NoiseModel.SHARED);
                double meter = o.meter() / o.model();
                c.setEntry(i, i, 1 + meter * meter);
                off.setEntry(i, (o.measured() - predicted[read[i]]) / o.model());
            }
            RealVector weights = new CholeskyDecomposition(c).getSolver().solve(with);
            return weights.dotProduct(off) + Math.sqrt(1 - weights.dotProduct(with)) * normal;
        }

        private static double[] normal(SplittableRandom random, int n) {
            double[] out = new double[n];
            for (int i = 0; i < n; i++) {
                double radius = Math.sqrt(-2 * Math.log(1 - random.nextDouble()));
                out[i] = radius * Math.cos(2 * Math.PI * random.nextDouble());
            }
            return out;
        }

        /** The fit's own derivatives, brought up to date by each step (Broyden 1965). */
        private final class Following implements LevenbergMarquardt.Model<HouseModel.Evaluation> {
            private final double[] readings;
            private final double[][] now =
                    Arrays.stream(slopes).map(double[]::clone).toArray(double[][]::new);
            private HouseModel.Evaluation last = best;

            Following(double[] readings) {
                this.readings = readings;
            }

            @Override
            public Optional<HouseModel.Evaluation> value(double[] to, Optional<HouseModel.Evaluation> near) {
                return model.evaluate(to, near);
            }

            @Override
            public double[] residuals(HouseModel.Evaluation e) {
                return fit.misfit().residuals(predicted(e), readings);
            }

            @Override
            public double[][] slopes(HouseModel.Evaluation e) {
                double[] before = residuals(last), after = residuals(e);
                double[] moved = new double[at.length];
                double length = 0;
                for (int j = 0; j < moved.length; j++) {
                    moved[j] = e.at()[j] - last.at()[j];
                    length += moved[j] * moved[j];
                }
                if (length > 0)
                    for (int i = 0; i < now.length; i++) {
                        double miss = after[i] - before[i];
                        for (int j = 0; j < moved.length; j++) miss -= now[i][j] * moved[j];
                        for (int j = 0; j < moved.length; j++) now[i][j] += miss * moved[j] / length;
                    }
                last = e;
                return now;
            }
        }
    }
}
