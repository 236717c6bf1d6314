package slabfield.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PitotTest {
    private static final double INCH_OF_WATER = 249.08891;
    private static final double FOOT_PER_MINUTE = 0.00508;
    /** 0.075 lb/ft3 [kg/m3]. */
    private static final double STANDARD_DENSITY = 1.2014;

    /** The trade's V = 4005 sqrt(VP), in ft/min and inches of water at 0.075 lb/ft3; itself rounded by 0.1 %. */
    @ParameterizedTest
    @CsvSource({"0.01, 400.5", "0.05, 895.5", "0.1, 1266.5", "0.25, 2002.5", "1, 4005"})
    void tradeConstant(double inches, double feetPerMinute) {
        assertThat(Pitot.velocity(inches * INCH_OF_WATER, STANDARD_DENSITY) / FOOT_PER_MINUTE)
                .isCloseTo(feetPerMinute, withinPercentage(0.2));
    }

    /** At 1500 m in the standard atmosphere the same pressure means 7.6 % more velocity; worked out here. */
    @Test
    void thinnerAirIsFaster() {
        double atSea = Pitot.velocity(50, AirState.of(288.15, 0).density());
        double above = Pitot.velocity(50, AirState.of(278.40, 1500).density());
        assertThat(above / atSea).isCloseTo(1.076, within(5e-4));
    }

    @Test
    void flowIsVelocityTimesArea() {
        assertThat(Pitot.flow(20, 0.008, 1.6)).isCloseTo(0.04, within(1e-15));
    }
}
