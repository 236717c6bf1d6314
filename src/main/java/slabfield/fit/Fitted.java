package slabfield.fit;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import slabfield.model.Scenario;

/**
 * A house fitted to its readings: values of the unknowns, how sure they are, and how well they explain what was read. How
 * sure is told by Laplace's approximation: near the best values the posterior is normal, on the scales of the priors, with
 * the inverse of the misfit's curvature as its covariance. Immutable; the arrays that it gives away are copies.
 */
public final class Fitted {
    private final Scenario drawn;
    private final List<Parameter> parameters;
    private final NoiseModel noise;
    private final List<Observation> observations;
    private final LevenbergMarquardt.Outcome<HouseModel.Evaluation> outcome;
    private final int coarseIterations;
    private final int solves;
    private final Misfit misfit;
    private final RealMatrix covariance;

    Fitted(
            Scenario drawn,
            List<Parameter> parameters,
            NoiseModel noise,
            List<Observation> observations,
            LevenbergMarquardt.Outcome<HouseModel.Evaluation> outcome,
            int coarseIterations,
            int solves) {
        this.drawn = drawn;
        this.parameters = List.copyOf(parameters);
        this.noise = noise;
        this.observations = List.copyOf(observations);
        this.outcome = outcome;
        this.coarseIterations = coarseIterations;
        this.solves = solves;
        misfit = new Misfit(drawn, observations);
        covariance = new LUDecomposition(new Array2DRowRealMatrix(outcome.curvature()))
                .getSolver()
                .getInverse();
    }

    /**
     * One reading with its explanation.
     *
     * @param observation what was read
     * @param predicted by the fitted house
     * @param deviations measured minus predicted, in standard deviations of meter and model
     */
    public record Residual(Observation observation, double predicted, double deviations) {}

    /** The house as it was drawn. */
    public Scenario drawn() {
        return drawn;
    }

    /** The house with the values found. */
    public Scenario house() {
        return with(outcome.at());
    }

    /** The drawn house with other values, given as standard deviations of the priors from their medians. */
    Scenario with(double[] deviations) {
        return HouseModel.house(drawn, parameters, deviations);
    }

    public List<Parameter> parameters() {
        return parameters;
    }

    /** Place of an unknown in {@link #parameters}, or -1. */
    public int indexOf(String id) {
        for (int j = 0; j < parameters.size(); j++) if (parameters.get(j).id().equals(id)) return j;
        return -1;
    }

    /** How far readings and model were taken to lie apart. */
    public NoiseModel noise() {
        return noise;
    }

    public List<Observation> observations() {
        return observations;
    }

    /** Value found, in the unknown's unit. */
    public double value(int parameter) {
        return parameters.get(parameter).prior().value(outcome.at()[parameter]);
    }

    /** Values found, as standard deviations of the priors from their medians. */
    public double[] deviations() {
        return outcome.at().clone();
    }

    /** Covariance of the posterior, in the same standard deviations. */
    public double[][] covariance() {
        return covariance.getData();
    }

    /** What is left of the prior's standard deviation: near 1 the readings say nothing of the unknown, near 0 they fix it. */
    public double doubtLeft(int parameter) {
        return Math.sqrt(covariance.getEntry(parameter, parameter));
    }

    /**
     * Range that holds an unknown, by Laplace's approximation.
     *
     * @param probability for instance 0.9
     */
    public Interval interval(int parameter, double probability) {
        double z = new NormalDistribution(null, 0, 1).inverseCumulativeProbability((1 + probability) / 2);
        double half = z * doubtLeft(parameter), at = outcome.at()[parameter];
        Prior prior = parameters.get(parameter).prior();
        return new Interval(prior.value(at - half), prior.value(at + half));
    }

    /** Sensitivities of the readings, in their own standard deviations, to the unknowns, in those of the priors. */
    public double[][] scaledSensitivities() {
        double[][] out = new double[outcome.slopes().length][];
        for (int i = 0; i < out.length; i++) {
            out[i] = outcome.slopes()[i].clone();
            for (int j = 0; j < out[i].length; j++) out[i][j] = -out[i][j];
        }
        return out;
    }

    /**
     * Changes of the readings, in the errors' standard deviations and free of their correlation, as in
     * {@link #scaledSensitivities}.
     *
     * @param changes of each reading, in its unit, one column for each cause; not changed
     */
    public double[][] inDeviations(double[][] changes) {
        double[][] out = misfit.slopes(changes, outcome.value().predicted(), misfit.measured());
        for (double[] row : out) for (int j = 0; j < row.length; j++) row[j] = -row[j];
        return out;
    }

    /** Measured minus predicted, in the errors' standard deviations and free of their correlation. */
    public double[] independentResiduals() {
        return misfit.residuals(outcome.value().predicted());
    }

    public List<Residual> residuals() {
        List<Residual> out = new ArrayList<>();
        double[] predicted = outcome.value().predicted();
        for (int i = 0; i < predicted.length; i++) {
            Observation o = observations.get(i);
            out.add(new Residual(o, predicted[i], (o.measured() - predicted[i]) / o.deviation()));
        }
        return out;
    }

    /** Sum of squared residuals; where the model is right, about the number of readings less the unknowns that they fix. */
    public double chiSquare() {
        double sum = 0;
        for (double r : misfit.residuals(outcome.value().predicted())) sum += r * r;
        return sum;
    }

    /** Number of unknowns that the readings fix: the trace of posterior times curvature without the prior. */
    public double fixed() {
        double sum = 0;
        for (int j = 0; j < parameters.size(); j++) sum += 1 - covariance.getEntry(j, j);
        return sum;
    }

    /**
     * Logarithm of the probability of the readings under this set of unknowns and their priors, by Laplace's approximation
     * (MacKay 1992, from memory): ln p(readings | best) - |x|^2 / 2 - ln det(curvature) / 2. The difference between two
     * explanations of the same readings is the logarithm of their odds.
     */
    public double logEvidence() {
        double determinant = 0;
        for (double v : new EigenDecomposition(new Array2DRowRealMatrix(outcome.curvature())).getRealEigenvalues())
            determinant += Math.log(v);
        return misfit.logNorm() - outcome.cost() - determinant / 2;
    }

    /** Akaike's criterion with the number of unknowns that the readings fix: -2 ln p(readings | best) + 2 fixed. */
    public double informationCriterion() {
        return chiSquare() - 2 * misfit.logNorm() + 2 * fixed();
    }

    /** True where the last step was far below a standard deviation of the posterior. */
    public boolean converged() {
        return outcome.converged();
    }

    /** Steps on coarse cells and on the house's own. */
    public int iterations() {
        return coarseIterations + outcome.iterations();
    }

    /** Pressure fields solved. */
    public int solves() {
        return solves;
    }

    LevenbergMarquardt.Outcome<HouseModel.Evaluation> outcome() {
        return outcome;
    }

    Misfit misfit() {
        return misfit;
    }
}
