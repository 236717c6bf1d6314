package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static slabfield.network.Houses.at;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.field.Result;
import slabfield.model.Source;

/**
 * Linear flow in a leaky layer against exact solutions. The governing equation, T lap(p) = g p, is that of a leaky
 * confined aquifer (Hantush and Jacob 1955), so its known solutions hold: a point sink gives K0, plates and discs give
 * hyperbolic and Bessel functions, and a rectangle follows from the method of images.
 */
class LeakyFieldsTest {
    private static final double MU = 1.81e-5;
    private static final double T = 2e-8 * 0.1 / MU;

    @ParameterizedTest
    @CsvSource({"0.01,4.721245,99.973894", "0.1,2.427069,9.853845", "1,0.421024,0.601907", "5,0.003691,0.004045"})
    void referenceBesselFunctionsAgreeWithTables(double x, double k0, double k1) {
        assertThat(Bessel.k(0, x)).isCloseTo(k0, within(1e-6));
        assertThat(Bessel.k(1, x)).isCloseTo(k1, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"1.5", "3", "6"})
    void rectangleWithAPointSinkEqualsTheSumOfImages(double lambda) {
        double q = 0.01;
        Result.Solved s = Houses.on(2e-8, 0)
                .rectangle(0, 0, 10, 8)
                .leakance(T / (lambda * lambda))
                .suction("S", 2.5, 3, 0.02, new Source.Flow(q))
                .solved();
        double[][] places = {{4.5, 3}, {7.5, 3}, {2.5, 6}, {5, 4}};
        for (double[] p : places)
            assertThat(-at(s, p[0], p[1]) * 2 * Math.PI * T / q)
                    .as("at (%s, %s)", p[0], p[1])
                    .isCloseTo(images(p[0], p[1], lambda), Percentage.withPercentage(0.5));
        double[][] corners = {{0.05, 0.05}, {9.95, 0.05}, {9.95, 7.95}, {0.05, 7.95}};
        for (double[] p : corners)
            assertThat(-at(s, p[0], p[1]) * 2 * Math.PI * T / q)
                    .as("at (%s, %s)", p[0], p[1])
                    .isCloseTo(images(p[0], p[1], lambda), Percentage.withPercentage(1));
    }

    @Test
    void sumOfImagesAgreesWithTheRecordedValues() {
        assertThat(images(4.5, 3, 1.5)).isCloseTo(0.282078, within(1e-6));
        assertThat(images(7.5, 3, 3)).isCloseTo(0.342458, within(1e-6));
        assertThat(images(10, 8, 3)).isCloseTo(0.201784, within(1e-6));
    }

    private static double images(double x, double y, double lambda) {
        double sum = 0;
        for (int m = -12; m <= 12; m++)
            for (int n = -12; n <= 12; n++)
                for (int sx = -1; sx <= 1; sx += 2)
                    for (int sy = -1; sy <= 1; sy += 2) {
                        double d = Math.hypot(x - (20 * m + sx * 2.5), y - (16 * n + sy * 3.0)) / lambda;
                        if (d < 40) sum += Bessel.k(0, d);
                    }
        return sum;
    }

    @ParameterizedTest
    @CsvSource({"1e-7", "1e-6", "1e-5"})
    void roundSlabEqualsTheBesselSolution(double leakance) {
        double q = 0.01, rw = 0.15, outer = 6, lambda = Math.sqrt(T / leakance);
        Result.Solved s = Houses.on(2e-8, 0)
                .round(outer)
                .leakance(leakance)
                .suction("S", 0, 0, rw, new Source.Flow(q))
                .solved();
        for (double r : new double[] {0.5, 1, 2, 3, 5})
            assertThat(-at(s, r * 0.8, r * 0.6))
                    .as("at r = %s", r)
                    .isCloseTo(disc(r, q, lambda, rw, outer), Percentage.withPercentage(0.5));
        assertThat(-s.suctions().get(0).pressure())
                .isCloseTo(disc(rw, q, lambda, rw, outer), Percentage.withPercentage(0.5));
    }

    @Test
    void besselSolutionAgreesWithTheRecordedValues() {
        double lambda = Math.sqrt(T / 1e-6);
        assertThat(disc(0.15, 0.01, lambda, 0.15, 6)).isCloseTo(130.5480, within(1e-3));
        assertThat(disc(3, 0.01, lambda, 0.15, 6)).isCloseTo(89.4331, within(1e-3));
    }

    private static double disc(double r, double q, double lambda, double rw, double outer) {
        double a = r / lambda, b = outer / lambda, c = rw / lambda;
        return q
                / (2 * Math.PI * T)
                * (Bessel.k(0, a) * Bessel.i(1, b) + Bessel.i(0, a) * Bessel.k(1, b))
                / (c * (Bessel.k(1, c) * Bessel.i(1, b) - Bessel.i(1, c) * Bessel.k(1, b)));
    }

    /** A strip whose two ends are held at the room's pressure while the soil pushes. */
    private static double stripError(double cell, double lambda, boolean shifted) {
        double length = 8, push = 100, shift = shifted ? 0.237 * cell : 0;
        Result.Solved s = Houses.on(2e-8, 0)
                .rectangle(-shift, 0, length + (shifted ? 1 : 0), 1)
                .drainedLine("left", 0, 0, 0, 1)
                .drainedLine("right", length, 0, length, 1)
                .leakance(T / (lambda * lambda))
                .outdoors(push)
                .cell(cell)
                .solved();
        double worst = 0;
        for (double x = 1; x <= 7; x++) {
            double exact = push * (1 - Math.cosh((x - length / 2) / lambda) / Math.cosh(length / 2 / lambda));
            worst = Math.max(worst, Math.abs(at(s, x, 0.5) - exact));
        }
        return worst;
    }

    @ParameterizedTest
    @CsvSource({"4", "2", "1"})
    void stripBetweenTwoDrainedLinesIsSecondOrder(double lambda) {
        double coarse = stripError(0.2, lambda, false), fine = stripError(0.1, lambda, false);
        assertThat(fine).isLessThan(0.2);
        double order = Math.log(coarse / fine) / Math.log(2);
        assertThat(order).as("order of convergence").isBetween(1.9, 2.1);
    }

    @Test
    void stripWhoseLinesLieBetweenGridLinesConverges() {
        double coarse = stripError(0.2, 2, true), fine = stripError(0.05, 2, true);
        assertThat(Math.log(coarse / fine) / Math.log(4))
                .as("order of convergence")
                .isGreaterThan(0.9);
        assertThat(fine).isLessThan(0.2);
    }

    @Test
    void flowPerMetreOfADrainedLineEqualsTheHyperbolicTangent() {
        double lambda = 2, length = 8, push = 100;
        Result.Solved s = Houses.on(2e-8, 0)
                .rectangle(0, 0, length, 1)
                .drainedLine("left", 0, 0, 0, 1)
                .drainedLine("right", length, 0, length, 1)
                .leakance(T / (lambda * lambda))
                .outdoors(push)
                .cell(0.05)
                .solved();
        double exact = T * push * Math.tanh(length / 2 / lambda) / lambda;
        assertThat(-s.flows().bySource().get("left")).isCloseTo(exact, Percentage.withPercentage(0.2));
    }

    /**
     * Behind a nearly tight footing the vacuum is a millionth of the source's, and must still be right to a thousandth of
     * itself: a leaky strip, drawn from on the near side.
     */
    @Test
    void weakVacuumBehindATightFootingKeepsItsDigits() {
        double leakance = 1e-6, far = 4, barrier = 4e-17, lambda = Math.sqrt(T / leakance);
        Result.Solved t = Houses.on(2e-8, 0)
                .rectangle(0, 0, 8, 1)
                .barrier(0.4, barrier, java.util.List.of(), 3.8, 0, 3.8, 1)
                .leakance(leakance)
                .suction("S", 1, 0.5, 0.15, new Source.Pressure(-250))
                .cell(0.05)
                .solved();
        double near = at(t, 3.575, 0.5), slope = (at(t, 3.575, 0.5) - at(t, 3.525, 0.5)) / 0.05;
        double face = near + slope * 0.025;
        double conductance = barrier * 0.1 / MU / 0.4;
        double behind = face * conductance / (conductance + T / lambda * Math.tanh(far / lambda));
        assertThat(Math.abs(behind)).isLessThan(1e-6 * 250);
        double exact = behind * Math.cosh((8 - 6) / lambda) / Math.cosh(far / lambda);
        assertThat(at(t, 6, 0.5)).isCloseTo(exact, Percentage.withPercentage(0.1));
    }
}
