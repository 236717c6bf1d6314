package slabfield.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class LogLinearTraverseTest {
    /**
     * A profile ln(y/R) + B over a round pipe has the mean B - 3/2 (integral of ln(1 - r) 2 r dr). Velocity over shear
     * velocity at Re of some 20,000: 2.5 ln(y/R) + 20, mean 16.25.
     */
    @ParameterizedTest
    @EnumSource
    void placesAverageALogarithmicProfile(LogLinearTraverse rule) {
        double mean = rule.fractions().stream()
                .mapToDouble(f -> 2.5 * Math.log(2 * Math.min(f, 1 - f)) + 20)
                .average()
                .orElseThrow();
        assertThat(mean).isCloseTo(16.25, Percentage.withPercentage(0.5));
    }

    @ParameterizedTest
    @EnumSource
    void placesAreSymmetric(LogLinearTraverse rule) {
        int n = rule.fractions().size();
        for (int i = 0; i < n; i++)
            assertThat(rule.fractions().get(i) + rule.fractions().get(n - 1 - i))
                    .isCloseTo(1, within(1e-12));
        assertThat(rule.places(0.1).get(0)).isCloseTo(0.1 * rule.fractions().get(0), within(1e-15));
    }
}
