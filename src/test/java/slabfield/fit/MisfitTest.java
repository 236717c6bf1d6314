package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Residuals against their definition. */
class MisfitTest {
    /** Nothing is known of where the holes are. */
    private static final ErrorCovariance APART = new ErrorCovariance(Map.of(), NoiseModel.SHARED, NoiseModel.REACH);

    private static Observation fanOn(String stage, String hole, double p, double meter, double model) {
        return new Observation(stage, Observation.What.FAN_ON, hole, p, meter, model, false);
    }

    private static Observation bound(double value, double meter) {
        return new Observation("s", Observation.What.FLOW, "S", value, meter, 0, true);
    }

    @Test
    void oneReadingCountsInItsDeviation() {
        Misfit m = new Misfit(APART, List.of(fanOn("s", "1", -10, 3, 4)));
        assertThat(m.residuals(new double[] {-20})).containsExactly(new double[] {2}, Offset.offset(1e-12));
    }

    /** r^T C^-1 r by hand for C = [[1 + 4, 3.6], [3.6, 1 + 4]] and r = (3, 1): (5*9 - 2*3.6*3 + 5)/(25 - 3.6^2). */
    @Test
    void theModelsErrorIsPartlySharedByStages() {
        Misfit m = new Misfit(APART, List.of(fanOn("a", "1", 3, 1, 2), fanOn("b", "1", 1, 1, 2)));
        double[] r = m.residuals(new double[2]);
        assertThat(r[0] * r[0] + r[1] * r[1]).isCloseTo((45.0 - 21.6 + 5) / 12.04, Offset.offset(1e-12));
        Misfit apart = new Misfit(APART, List.of(fanOn("a", "1", 3, 1, 2), fanOn("b", "2", 1, 1, 2)));
        double[] q = apart.residuals(new double[2]);
        assertThat(q[0] * q[0] + q[1] * q[1]).isCloseTo(10.0 / 5, Offset.offset(1e-12));
        Misfit kinds = new Misfit(
                APART,
                List.of(fanOn("a", "1", 3, 1, 2), new Observation("b", Observation.What.RISER, "1", 1, 1, 2, false)));
        double[] k = kinds.residuals(new double[2]);
        assertThat(k[0] * k[0] + k[1] * k[1]).isCloseTo(10.0 / 5, Offset.offset(1e-12));
    }

    /** Table of the normal distribution function (Abramowitz and Stegun 1964, table 26.1; -10 by its asymptotic series). */
    @ParameterizedTest
    @CsvSource({"2, 0.977249868051821", "0, 0.5", "-2, 0.022750131948179", "-10, 7.61985302416e-24"})
    void aBoundCountsByTheProbabilityThatItHolds(double z, double probability) {
        Misfit m = new Misfit(APART, List.of(bound(5, 2)));
        double r = m.residuals(new double[] {5 - 2 * z})[0];
        assertThat(r * r / 2).isCloseTo(-Math.log(probability), Percentage.withPercentage(1e-3));
    }

    /** A flow of 0.05 L/s has a variance of some 1e-11 m6/s2, which is not none. */
    @Test
    void aFaintFlowCountsInItsDeviation() {
        Misfit m =
                new Misfit(APART, List.of(new Observation("s", Observation.What.FLOW, "S", 5e-5, 3e-6, 4e-6, false)));
        assertThat(m.residuals(new double[] {3e-5})).containsExactly(new double[] {4}, Offset.offset(1e-9));
    }

    /** The normal density of deviation 5 at its middle is 1/(5 sqrt(2 pi)); a bound's probability has no such constant. */
    @Test
    void theConstantIsThatOfTheDensity() {
        double one = -Math.log(5 * Math.sqrt(2 * Math.PI));
        assertThat(new Misfit(APART, List.of(fanOn("s", "1", -10, 3, 4))).logNorm())
                .isCloseTo(one, Offset.offset(1e-12));
        assertThat(new Misfit(APART, List.of(fanOn("s", "1", -10, 3, 4), bound(5, 2))).logNorm())
                .isCloseTo(one, Offset.offset(1e-12));
    }

    /** Two bounds at one place in two stages share nothing: each holds its own probability. */
    @Test
    void boundsShareNothing() {
        Misfit m = new Misfit(
                APART,
                List.of(
                        new Observation("a", Observation.What.FLOW, "S", 5, 2, 3, true),
                        new Observation("b", Observation.What.FLOW, "S", 5, 2, 3, true)));
        double[] r = m.residuals(new double[] {5, 9});
        assertThat(r[0] * r[0] / 2).isCloseTo(Math.log(2), Offset.offset(1e-12));
        // Phi(-4/sqrt(13)) = 0.1336287, from scipy
        assertThat(r[1] * r[1] / 2).isCloseTo(-Math.log(0.1336287), Offset.offset(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"-12", "-3", "0", "1", "3"})
    void slopesAreThoseOfTheResiduals(double z) {
        Misfit m = new Misfit(APART, List.of(bound(5, 2), fanOn("a", "1", -3, 1, 2), fanOn("b", "1", -4, 1, 1)));
        double[] at = {5 - 2 * z, -2, -6}, direction = {0.7, -0.4, 1.1};
        double h = 1e-5;
        double[] up = at.clone(), down = at.clone();
        for (int i = 0; i < 3; i++) {
            up[i] += h * direction[i];
            down[i] -= h * direction[i];
        }
        double[][] slopes = m.slopes(new double[][] {{0.7}, {-0.4}, {1.1}}, at, m.measured());
        for (int i = 0; i < 3; i++)
            assertThat(slopes[i][0])
                    .isCloseTo((m.residuals(up)[i] - m.residuals(down)[i]) / (2 * h), Offset.offset(1e-6));
    }
}
