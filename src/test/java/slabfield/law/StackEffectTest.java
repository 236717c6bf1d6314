package slabfield.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StackEffectTest {
    /** Hydrostatics, worked out here: Pa per metre and at three heights of the neutral level. */
    @ParameterizedTest
    @CsvSource({
        "20,   0, 0.86459, 2.161, 3.199, 4.323",
        "20,  10, 0.41703, 1.043, 1.543, 2.085",
        "21, -10, 1.38631, 3.466, 5.129, 6.932",
        "21, -20, 1.90594, 4.765, 7.052, 9.530"
    })
    void columnsOfAir(double indoor, double outdoor, double perMetre, double low, double middle, double high) {
        assertThat(difference(indoor, outdoor, 1)).isCloseTo(perMetre, withinPercentage(0.005));
        assertThat(difference(indoor, outdoor, 2.5)).isCloseTo(low, withinPercentage(0.05));
        assertThat(difference(indoor, outdoor, 3.7)).isCloseTo(middle, withinPercentage(0.05));
        assertThat(difference(indoor, outdoor, 5)).isCloseTo(high, withinPercentage(0.05));
    }

    /**
     * National Research Council, Risk Assessment of Radon in Drinking Water (1999), p. 142: about 3 Pa at a basement
     * for 20 K; a neutral level 3 to 4 m above the floor gives that within 0.5 Pa.
     */
    @ParameterizedTest
    @CsvSource({"3", "4"})
    void usualBasement(double height) {
        assertThat(difference(20, 0, height)).isBetween(2.5, 3.5);
    }

    @Test
    void warmerOutsideTurnsTheSignAndThinnerAirWeighsLess() {
        assertThat(difference(20, 30, 3)).isNegative();
        double above = StackEffect.pressureDifference(293.15, 273.15, 1, 84560);
        assertThat(above).isCloseTo(0.86459 * 84560 / 101325, withinPercentage(0.005));
    }

    private static double difference(double indoorCelsius, double outdoorCelsius, double height) {
        return StackEffect.pressureDifference(
                indoorCelsius + 273.15, outdoorCelsius + 273.15, height, AirProperties.SEA_LEVEL_PRESSURE);
    }
}
