package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.TestHole;

/**
 * How far the model's errors go together: how much of one at a hole stays the same when the house is read in another stage, and how
 * far holes share it. Asked by what the best even fill leaves of the true vacuums, which frees too little, and by what makes the readings
 * likeliest with all unknowns free, near the best fit. With {@code -Dslabfield.long=true} on the seeds on which the method was worked
 * out, written to validation/studies/shared-error.md; else on a few.
 */
class SharedErrorTest {
    private static final boolean LONG = Boolean.getBoolean("slabfield.long");
    private static final int FIRST = 1001, HOUSES = LONG ? 60 : 4;
    private static final double[] SHARES = {0, 0.25, 0.5, 0.7, 0.8, 0.9, 0.95};
    private static final double NEAR = 1.5, FAR = 3;
    private static final double[] REACHES = {0, 1, 2, 3, 4};
    private static final Path PAGE = Path.of("validation/studies/shared-error.md");

    private final List<Near> houses = new ArrayList<>();

    /** A house near its best fit: predictions f + J (x - at). */
    private record Near(Scenario drawn, List<Observation> observations, RealVector atMedian, RealMatrix slopes) {
        static Near of(long seed) throws NotFitted {
            Fitted fit = HouseFit.fit(SyntheticHouses.of(seed).drawn(), Progress.NONE);
            HouseModel model = new HouseModel(
                    fit.drawn(), fit.parameters(), fit.observations(), SyntheticHouses.COARSE, Progress.NONE);
            HouseModel.Evaluation best =
                    model.evaluate(fit.deviations(), Optional.empty()).orElseThrow();
            RealMatrix slopes = new Array2DRowRealMatrix(model.jacobian(best));
            RealVector atMedian =
                    new ArrayRealVector(best.predicted()).subtract(slopes.operate(new ArrayRealVector(best.at())));
            return new Near(fit.drawn(), fit.observations(), atMedian, slopes);
        }

        /** Logarithm of the readings' probability, apart from a constant: their covariance is C + J J^T. */
        double logEvidence(double shared, double reach) {
            Map<String, Point> holes = drawn.testHoles().stream().collect(Collectors.toMap(TestHole::id, TestHole::at));
            RealMatrix all =
                    slopes.multiply(slopes.transpose()).add(new ErrorCovariance(holes, shared, reach).of(observations));
            int n = observations.size();
            RealVector off = new ArrayRealVector(observations.stream()
                            .mapToDouble(Observation::measured)
                            .toArray())
                    .subtract(atMedian);
            CholeskyDecomposition c = new CholeskyDecomposition(all, 1e-9, 1e-300);
            double log = 0;
            for (int i = 0; i < n; i++) log += Math.log(c.getL().getEntry(i, i));
            return -off.dotProduct(c.getSolver().solve(off)) / 2 - log;
        }
    }

    @Test
    void whatIsSharedLiesBetweenTheAnswers() throws Exception {
        List<SyntheticHouses.Left> left = SyntheticHouses.left(FIRST, HOUSES);
        double even = SyntheticHouses.modelErrorShared(left);
        double near = SyntheticHouses.modelErrorTogether(FIRST, left, 0, NEAR),
                far = SyntheticHouses.modelErrorTogether(FIRST, left, FAR, Double.POSITIVE_INFINITY);
        double[] shares = evidence(SHARES, s -> h -> h.logEvidence(s, NoiseModel.REACH));
        double[] reaches = evidence(REACHES, r -> h -> h.logEvidence(NoiseModel.SHARED, r));
        if (LONG) write(even, near, far, shares, reaches);
        assertThat(even).isBetween(0.5, NoiseModel.SHARED);
        assertThat(near).isGreaterThan(LONG ? Math.exp(-1) : far);
        assertThat(far).isLessThan(Math.exp(-1));
        assertThat(SHARES[likeliest(shares)]).isGreaterThanOrEqualTo(NoiseModel.SHARED);
        assertThat(REACHES[likeliest(reaches)]).isGreaterThanOrEqualTo(NoiseModel.REACH);
    }

    private double[] evidence(double[] values, DoubleFunction<ToDoubleFunction<Near>> of) throws NotFitted {
        if (houses.isEmpty()) for (int seed = FIRST; seed < FIRST + HOUSES; seed++) houses.add(Near.of(seed));
        return Arrays.stream(values)
                .map(v -> houses.stream().mapToDouble(of.apply(v)).sum())
                .toArray();
    }

    private static int likeliest(double[] evidence) {
        return IntStream.range(0, evidence.length)
                .boxed()
                .max(Comparator.comparingDouble(i -> evidence[i]))
                .orElseThrow();
    }

    private static void write(double even, double near, double far, double[] shares, double[] reaches)
            throws Exception {
        StringBuilder page = new StringBuilder(String.format(
                Locale.ROOT,
                "# How far do the model's errors go together?%n%n%d houses with fixed seeds from %d, as in"
                        + " [fit-coverage.md](fit-coverage.md), whose seeds are others. Each is read as found and with its sump closed."
                        + " Two stages share %.2f of the model's variance at a hole, two holes the more the nearer they are, fallen to"
                        + " 1/e at %.0f m. Made by `SharedErrorTest` with `-Dslabfield.long=true`.%n%n"
                        + "- Of what the best even fill leaves of the true vacuums, over what [falls of their suction](model-error.md) let expect, with leaks as they are, both stages share %.2f (part of"
                        + " the mean square). That frees too little: in a fit the leaks follow too.%n"
                        + "- Of the same, two holes have in common %.2f of the mean square where they are less than %.1f m apart, and %.2f from"
                        + " %.0f m on.%n"
                        + "- With all unknowns free, the readings are likelier the more is shared by stages, and the further holes share it:%n",
                HOUSES,
                FIRST,
                NoiseModel.SHARED,
                NoiseModel.REACH,
                even,
                near,
                NEAR,
                far,
                FAR));
        table(page, "share of stages", "%.2f", SHARES, shares);
        table(page, "reach of holes (m)", "%.0f", REACHES, reaches);
        page.append(
                String.format(
                        Locale.ROOT,
                        "%nThe share in use lies between both answers, and the reach is not the likeliest either. In real houses"
                                + " something else may change between stages, and patches may be smaller than those of made ones.%n"));
        Files.createDirectories(PAGE.getParent());
        Files.writeString(PAGE, page);
    }

    private static void table(StringBuilder page, String what, String format, double[] values, double[] evidence) {
        page.append(String.format(
                Locale.ROOT,
                "%n| %s | logarithm of the readings' probability, over that with none |%n|---|---|%n",
                what));
        for (int i = 0; i < values.length; i++)
            page.append(
                    String.format(Locale.ROOT, "| " + format + " | %.1f |%n", values[i], evidence[i] - evidence[0]));
    }
}
