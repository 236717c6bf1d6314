package slabfield.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuadraticResistanceTest {
    private static final double MU = 1.81e-5;
    private static final double RHO = 1.204;

    /**
     * Law after Baker, Sharples and Ward (Building and Environment 22, 1987), constants from memory; the numbers were
     * worked out here, to five digits, for a slab of 0.1 m and one metre of crack.
     */
    @ParameterizedTest
    @CsvSource({
        "0.25, 10, 7.1938e-6, 7.1933e-6",
        "0.5,   4, 2.3020e-5, 2.3009e-5",
        "0.5,  10, 5.7551e-5, 5.7482e-5",
        "1,     4, 1.8416e-4, 1.8277e-4",
        "1,    10, 4.6041e-4, 4.5191e-4",
        "2,    10, 3.6832e-3, 2.9565e-3",
        "3,    10, 1.2431e-2, 6.7493e-3"
    })
    void crackFlow(double widthMillimetres, double difference, double viscousOnly, double both) {
        QuadraticResistance crack = QuadraticResistance.crack(widthMillimetres / 1000, 0.1, 1, 0, MU, RHO);
        assertThat(crack.flow(difference)).isCloseTo(both, withinPercentage(0.01));
        assertThat(new QuadraticResistance(crack.linear(), 0).flow(difference))
                .isCloseTo(viscousOnly, withinPercentage(0.01));
    }

    @Test
    void flowIsInProportionToTheLength() {
        double oneMetre = QuadraticResistance.crack(1e-3, 0.1, 1, 0, MU, RHO).flow(10);
        double joint = QuadraticResistance.crack(1e-3, 0.1, 36, 0, MU, RHO).flow(10);
        assertThat(joint / oneMetre).isCloseTo(36, within(1e-9));
    }

    @Test
    void eachBendCostsOneVelocityHead() {
        double straight = QuadraticResistance.crack(1e-3, 0.1, 1, 0, MU, RHO).quadratic();
        double bent = QuadraticResistance.crack(1e-3, 0.1, 1, 2, MU, RHO).quadratic();
        assertThat(bent / straight).isCloseTo(3.5 / 1.5, within(1e-12));
    }

    @Test
    void resistanceInSeriesAddsToTheLinearPart() {
        assertThat(new QuadraticResistance(100, 7e5).behind(20)).isEqualTo(new QuadraticResistance(120, 7e5));
    }
}
