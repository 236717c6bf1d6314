package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against the MINPACK translation of Apache Commons Math on a curved valley (Rosenbrock 1960), with the same priors. */
class LevenbergMarquardtTest {
    private static final double[] MEAN = {0.3, -0.2};

    /** Residuals 10 (y - x^2) and 1 - x; no value where x is above a wall. */
    private record Valley(double wall) implements LevenbergMarquardt.Model<double[]> {
        @Override
        public Optional<double[]> value(double[] at, Optional<double[]> near) {
            return at[0] > wall ? Optional.empty() : Optional.of(at.clone());
        }

        @Override
        public double[] residuals(double[] x) {
            return new double[] {10 * (x[1] - x[0] * x[0]), 1 - x[0]};
        }

        @Override
        public double[][] slopes(double[] x) {
            return new double[][] {{-20 * x[0], 10}, {-1, 0}};
        }
    }

    private static double[] byTheLibrary(double x, double y) {
        Valley valley = new Valley(Double.MAX_VALUE);
        return new LevenbergMarquardtOptimizer()
                .optimize(new LeastSquaresBuilder()
                        .start(new double[] {x, y})
                        .model((RealVector at) -> {
                            double[] p = at.toArray(), r = valley.residuals(p);
                            double[][] s = valley.slopes(p);
                            RealVector v =
                                    new ArrayRealVector(new double[] {r[0], r[1], p[0] - MEAN[0], p[1] - MEAN[1]});
                            RealMatrix j = new Array2DRowRealMatrix(new double[][] {s[0], s[1], {1, 0}, {0, 1}});
                            return new Pair<>(v, j);
                        })
                        .target(new double[4])
                        .lazyEvaluation(false)
                        .maxEvaluations(1000)
                        .maxIterations(1000)
                        .build())
                .getPoint()
                .toArray();
    }

    @ParameterizedTest
    @CsvSource({"-1.2, 1", "0, 0", "3, -3", "-4, 4"})
    void findsTheLeastOfTheLibrary(double x, double y) {
        var found = new LevenbergMarquardt<>(new Valley(Double.MAX_VALUE), MEAN, new boolean[2], 1e-7, 200)
                .search(new double[] {x, y}, Optional.empty())
                .orElseThrow();
        assertThat(found.converged()).isTrue();
        assertThat(found.at()).containsExactly(byTheLibrary(x, y), Offset.offset(1e-5));
    }

    @Test
    void anUnknownThatIsHeldStays() {
        boolean[] held = {true, false};
        var found = new LevenbergMarquardt<>(new Valley(Double.MAX_VALUE), MEAN, held, 1e-9, 200)
                .search(new double[] {0.5, 3}, Optional.empty())
                .orElseThrow();
        assertThat(found.at()[0]).isEqualTo(0.5);
        // 100 (y - 1/4) + (y + 1/5) = 0
        assertThat(found.at()[1]).isCloseTo((25 - 0.2) / 101, Offset.offset(1e-8));
    }

    @Test
    void aPlaceWithoutValueShortensTheStep() {
        var found = new LevenbergMarquardt<>(new Valley(0.7), MEAN, new boolean[2], 1e-7, 200)
                .search(new double[] {-1.2, 1}, Optional.empty())
                .orElseThrow();
        assertThat(found.at()).containsExactly(byTheLibrary(-1.2, 1), Offset.offset(1e-5));
    }

    @Test
    void aStartWithoutValueHasNoAnswer() {
        assertThat(new LevenbergMarquardt<>(new Valley(0.7), MEAN, new boolean[2], 1e-7, 200)
                        .search(new double[] {1, 1}, Optional.empty()))
                .isEmpty();
    }
}
