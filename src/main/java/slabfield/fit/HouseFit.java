package slabfield.fit;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import slabfield.field.Progress;
import slabfield.model.Scenario;

/**
 * Finds the house that explains the readings of all its stages together and is still believable: the least of
 *
 * <p>(|L^-1 (measured - predicted)|^2 + sum over unknowns of ((value - median)/spread)^2) / 2
 *
 * <p>with L from {@link Misfit} and the unknowns on the scales of their priors, by Levenberg and Marquardt's method
 * (Levenberg 1944, Marquardt 1963) with derivatives from {@link slabfield.network.Tangent}. It searches on coarse cells
 * first and ends on those that were asked for.
 */
public final class HouseFit {
    /** Cells of the first search, about; the sparse factor is quickest on so few. */
    private static final int COARSE_CELLS = 1300;

    private static final double COARSE_STEP = 0.05;
    private static final double LAST_STEP = 0.01;
    private static final int LIMIT = 40;
    private static final int FEWEST = 2;

    private HouseFit() {}

    /** Fits what is usually unknown, with the usual errors. */
    public static Fitted fit(Scenario house, Progress progress) throws NotFitted {
        return fit(house, Unknowns.of(house), NoiseModel.USUAL, progress);
    }

    /** Fits with the usual errors. */
    public static Fitted fit(Scenario house, List<Parameter> unknowns, Progress progress) throws NotFitted {
        return fit(house, unknowns, NoiseModel.USUAL, progress);
    }

    /**
     * Fits.
     *
     * @param house as drawn, with its stages and readings
     * @param unknowns at least one, with different ids
     * @param noise how far readings and model may lie apart
     * @param progress told of each step with the misfit, asked whether to go on
     * @throws NotFitted where there are too few readings or the house has no solution
     * @throws CancellationException where somebody asked to stop
     */
    public static Fitted fit(Scenario house, List<Parameter> unknowns, NoiseModel noise, Progress progress)
            throws NotFitted {
        boolean outdoors = unknowns.stream().anyMatch(p -> p.kind() == Parameter.Kind.OUTDOORS);
        return fit(house, unknowns, noise, Observations.of(house, noise, outdoors), progress);
    }

    /**
     * What a house would show of readings, on its own cells.
     *
     * @return one number for each reading, in SI; empty where a stage has no solution or a hole no pressure
     */
    public static Optional<double[]> predicted(Scenario house, List<Observation> readings) {
        return new HouseModel(house, List.of(), readings, house.cellSize(), Progress.NONE)
                .evaluate(new double[0], Optional.empty())
                .map(HouseModel.Evaluation::predicted);
    }

    private static Fitted fit(
            Scenario house,
            List<Parameter> unknowns,
            NoiseModel noise,
            List<Observation> observations,
            Progress progress)
            throws NotFitted {
        if (unknowns.isEmpty()
                || unknowns.stream().map(Parameter::id).distinct().count() < unknowns.size())
            throw new IllegalArgumentException("a fit needs unknowns with different ids");
        if (observations.size() < FEWEST)
            throw new NotFitted(
                    "There is too little to fit: " + observations.size() + " of the readings tells something, and "
                            + FEWEST
                            + " are the least. Read the holes with the fan on, near and far from the suction point, and"
                            + " measure the flow.");
        double coarse = coarseCell(house);
        double[] start = new double[unknowns.size()];
        Search search = new Search(house, unknowns, observations, progress);
        Optional<Solved> first = Optional.empty();
        if (coarse > 1.2 * house.cellSize()) {
            first = search.on(coarse, COARSE_STEP, start);
            if (first.isPresent()) start = first.get().outcome().at();
        }
        Solved last = search.on(house.cellSize(), LAST_STEP, start)
                .orElseThrow(
                        () -> new NotFitted("The house as drawn has no solution in one of its stages, so nothing can be"
                                + " fitted. Solve each stage by itself to see why."));
        int before = first.map(s -> s.outcome().iterations()).orElse(0);
        int solves = first.map(s -> s.model().solves()).orElse(0) + last.model().solves();
        return new Fitted(house, unknowns, noise, observations, last.outcome(), before, solves);
    }

    /** Cell size of the first search: such that few cells cover the slabs' box [m]. */
    static double coarseCell(Scenario house) {
        DoubleSummaryStatistics x = new DoubleSummaryStatistics(), y = new DoubleSummaryStatistics();
        house.slabs().stream().flatMap(s -> s.outline().stream()).forEach(p -> {
            x.accept(p.x());
            y.accept(p.y());
        });
        double box = (x.getMax() - x.getMin()) * (y.getMax() - y.getMin());
        return Math.max(house.cellSize(), Math.sqrt(box / COARSE_CELLS));
    }

    /** One search's end and the model that it used. */
    record Solved(LevenbergMarquardt.Outcome<HouseModel.Evaluation> outcome, HouseModel model) {}

    /** The same question asked on different cells, with unknowns held or not. */
    record Search(Scenario house, List<Parameter> unknowns, List<Observation> observations, Progress progress) {
        Optional<Solved> on(double cell, double tolerance, double[] start) {
            HouseModel model = new HouseModel(house, unknowns, observations, cell, progress);
            Misfit misfit = new Misfit(house, observations);
            return new LevenbergMarquardt<>(
                            problem(model, misfit, misfit.measured(), progress),
                            new double[start.length],
                            new boolean[start.length],
                            tolerance,
                            LIMIT)
                    .search(start, Optional.empty())
                    .map(o -> new Solved(o, model));
        }
    }

    /** The least-squares problem of a model held against readings. */
    static LevenbergMarquardt.Model<HouseModel.Evaluation> problem(
            HouseModel model, Misfit misfit, double[] measured, Progress progress) {
        return new LevenbergMarquardt.Model<>() {
            @Override
            public Optional<HouseModel.Evaluation> value(double[] at, Optional<HouseModel.Evaluation> near) {
                return model.evaluate(at, near);
            }

            @Override
            public double[] residuals(HouseModel.Evaluation e) {
                return misfit.residuals(e.predicted(), measured);
            }

            @Override
            public double[][] slopes(HouseModel.Evaluation e) {
                return misfit.slopes(model.jacobian(e), e.predicted(), measured);
            }

            @Override
            public void step(int iteration, double cost) {
                progress.step(iteration, 0, cost);
            }
        };
    }
}
