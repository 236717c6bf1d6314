package slabfield.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RangeTest {
    /** Of 1 to n, the values at ranks (n+1)/20, (n+1)/2 and 19(n+1)/20. */
    @ParameterizedTest
    @CsvSource({"19, 1, 10, 19", "39, 2, 20, 38", "59, 3, 30, 57", "29, 1.5, 15, 28.5", "5, 1, 3, 5"})
    void standsAtRanks(int n, double low, double middle, double high) {
        Range r =
                Range.of(IntStream.rangeClosed(1, n).mapToDouble(i -> n + 1 - i).toArray());
        assertThat(r.low()).isCloseTo(low, within(1e-9));
        assertThat(r.middle()).isCloseTo(middle, within(1e-9));
        assertThat(r.high()).isCloseTo(high, within(1e-9));
    }

    @Test
    void leavesOutWhatIsNotANumber() {
        assertThat(Range.of(new double[] {3, Double.NaN, 1}).middle()).isEqualTo(2);
        assertThat(Range.of(new double[] {Double.NaN}).middle()).isNaN();
    }

    /** A further value of the same kind lies within nine times of ten, however few there are, from 19. */
    @ParameterizedTest
    @CsvSource({"19", "39"})
    void holdsAFurtherValueNineTimesOfTen(int n) {
        Random random = new Random(7);
        int trials = 20000, held = 0;
        for (int k = 0; k < trials; k++) {
            Range r = Range.of(IntStream.range(0, n)
                    .mapToDouble(i -> Math.exp(random.nextGaussian()))
                    .toArray());
            if (r.holds(Math.exp(random.nextGaussian()))) held++;
        }
        double standardError = Math.sqrt(0.09 / trials);
        assertThat((double) held / trials).isCloseTo(0.9, within(3 * standardError));
    }
}
