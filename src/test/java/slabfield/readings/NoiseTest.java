package slabfield.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import slabfield.model.Stage;

class NoiseTest {
    private static Stage.HoleReading reading(double spread, int count, double step) {
        return new Stage.HoleReading(
                "T1",
                OptionalDouble.of(0),
                OptionalDouble.of(-5),
                OptionalDouble.of(spread),
                OptionalInt.of(count),
                OptionalDouble.of(step),
                OptionalDouble.empty(),
                "");
    }

    /** Against means that are drawn, rounded as a display rounds, and looked at. */
    @Test
    void theStandardErrorIsThatOfSimulatedMeans() {
        Random random = new Random(11);
        double spread = 0.4, step = 0.5, squares = 0;
        int count = 4, draws = 40_000;
        for (int k = 0; k < draws; k++) {
            double truth = -5 + random.nextDouble(), mean = 0;
            for (int i = 0; i < count; i++) mean += (truth + spread * random.nextGaussian()) / count;
            double error = Math.rint(mean / step) * step - truth;
            squares += error * error;
        }
        assertThat(Noise.of(reading(spread, count, step))).isCloseTo(Math.sqrt(squares / draws), within(0.005));
    }

    @Test
    void aDifferenceHasTheNoiseOfBothItsValues() {
        Stage.HoleReading r = reading(0.6, 9, 0.1);
        assertThat(Noise.ofChange(r)).isCloseTo(Math.sqrt(2 * (0.01 / 12 + 0.36 / 9)), within(1e-12));
    }

    @Test
    void aRiserSaysLessOfThePitThanThePitItself() {
        OptionalDouble none = OptionalDouble.empty(), held = OptionalDouble.of(-200);
        var riser = new Stage.SystemReading("S1", java.util.Optional.empty(), held, none, none, none, "");
        var pit = new Stage.SystemReading("S1", java.util.Optional.empty(), none, held, none, none, "");
        assertThat(Noise.ofSuction(riser)).isGreaterThan(4 * Noise.ofSuction(pit));
        assertThat(Noise.ofSuction(pit)).isGreaterThan(2);
    }
}
