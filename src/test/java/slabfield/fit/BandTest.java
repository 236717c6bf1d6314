package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BandTest {
    /** Of 1 to n, the values at ranks (n+1)/20, (n+1)/2 and 19(n+1)/20. */
    @ParameterizedTest
    @CsvSource({"19, 1, 10, 19", "39, 2, 20, 38", "29, 1.5, 15, 28.5", "5, 1, 3, 5", "1, 1, 1, 1"})
    void standsAtRanks(int n, double low, double middle, double high) {
        Band b = Band.of(IntStream.rangeClosed(1, n).mapToDouble(i -> n + 1 - i).toArray());
        assertThat(b.interval(0.9).low()).isCloseTo(low, within(1e-9));
        assertThat(b.median()).isCloseTo(middle, within(1e-9));
        assertThat(b.interval(0.9).high()).isCloseTo(high, within(1e-9));
    }

    /** The standard error of the share is 0.2 %; ranks i - 1/2 of n would hold 87.8 %. */
    @Test
    void fortyMembersHoldAFurtherOneNineTimesOfTen() {
        Random random = new Random(3);
        int trials = 20000, held = 0;
        for (int k = 0; k < trials; k++) {
            Band b = Band.of(random.doubles(40).toArray());
            if (b.interval(0.9).holds(random.nextDouble())) held++;
        }
        assertThat((double) held / trials).isCloseTo(0.9, within(0.0065));
    }

    @Test
    void chanceCountsTheValueItself() {
        assertThat(Band.of(new double[] {1, 2, 3, 4}).chanceOf(3)).isEqualTo(0.5);
    }
}
