package slabfield.siting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against what is known of normal variables. */
class PassOrFailTest {
    private static final int HOUSES = 600;

    private static double[] normal(long seed) {
        Random random = new Random(seed);
        return IntStream.range(0, HOUSES)
                .mapToDouble(i -> random.nextGaussian())
                .toArray();
    }

    private static double[] mix(double a, double[] x, double b, double[] y) {
        return IntStream.range(0, x.length)
                .mapToDouble(i -> a * x[i] + b * y[i])
                .toArray();
    }

    /** Half pass: one bit is lacking; a reading that tells nothing leaves it, one of the weakest place itself takes it. */
    @Test
    void betweenNothingAndEverything() {
        double[] weakest = normal(1), other = normal(2);
        PassOrFail doubt = new PassOrFail(weakest, 0);
        assertThat(doubt.meeting()).isCloseTo(0.5, within(3 * 0.5 / Math.sqrt(HOUSES)));
        assertThat(doubt.now().bits()).isCloseTo(1, within(0.01));
        assertThat(doubt.now().scatter()).isCloseTo(1, within(0.1));
        assertThat(doubt.after(other, 0.1).bits()).as("an independent reading").isCloseTo(1, within(0.05));
        assertThat(doubt.after(mix(-1, weakest, 0, other), 1e-6).bits())
                .as("the weakest place itself")
                .isLessThan(0.15);
    }

    /** Normal variables of correlation r, read with noise s: scatter left = sqrt(1 - r^2 / (1 + s^2)). */
    @ParameterizedTest
    @CsvSource({"0.9, 0.1", "0.9, 1", "0.6, 0.1", "0.3, 0.5"})
    void scatterLeftIsThatOfNormalVariables(double r, double noise) {
        double[] read = normal(3);
        PassOrFail doubt = new PassOrFail(mix(r, read, Math.sqrt(1 - r * r), normal(4)), 0);
        double expected = Math.sqrt(1 - r * r / (1 + noise * noise));
        assertThat(doubt.after(read, noise).scatter()).isCloseTo(expected, within(0.08));
    }

    /** What was taken for granted cannot tell again. */
    @Test
    void aReadingTakenTellsOnce() {
        double[] read = normal(5);
        PassOrFail doubt = new PassOrFail(mix(0.9, read, Math.sqrt(1 - 0.81), normal(6)), 0);
        double first = doubt.now().bits() - doubt.after(read, 0.2).bits();
        doubt.take(read, 0.2);
        double second = doubt.now().bits() - doubt.after(read, 0.2).bits();
        assertThat(first).isGreaterThan(0.3);
        assertThat(second).isLessThan(0.2 * first);
    }

    @Test
    void whereAllPassNothingIsInDoubt() {
        PassOrFail doubt = new PassOrFail(normal(7), -100);
        assertThat(doubt.meeting()).isEqualTo(1);
        assertThat(doubt.now().bits()).isLessThan(0.01);
    }
}
