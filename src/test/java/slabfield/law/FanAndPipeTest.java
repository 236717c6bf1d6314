package slabfield.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FanAndPipeTest {
    private static final double MU = 1.81e-5;
    private static final double RHO = 1.204;
    private static final double[] FLOWS = {0.01, 0.03, 0.06};
    private static final double[] RISES = {300, 260, 50};

    private final FanAndPipe bare = new FanAndPipe(FLOWS, RISES, 1, 0, 0, 0, 0, MU, RHO);

    @ParameterizedTest
    @CsvSource({
        "0.01, 300",
        "0.03, 260",
        "0.06, 50", // the points
        "0.02, 280",
        "0.045, 155", // between
        "0, 320",
        "-0.005, 330", // before the first
        "0.07, -20" // beyond the last
    })
    void riseFollowsStraightLines(double flow, double rise) {
        assertThat(bare.riseAt(flow)).isCloseTo(rise, within(1e-10));
        assertThat(bare.flow(-rise)).isCloseTo(flow, within(1e-14));
    }

    @Test
    void noFlowAtTheSuctionOfTheClosedFan() {
        FanAndPipe piped = new FanAndPipe(FLOWS, RISES, 0.1, 10, 4, 1.5, 1.5e-6, MU, RHO);
        assertThat(piped.flow(-320)).isCloseTo(0, within(1e-15));
        assertThat(piped.flow(-321)).isNegative();
        assertThat(piped.flow(-319)).isPositive();
    }

    @Test
    void lossIsThatOfThePipe() {
        FanAndPipe piped = new FanAndPipe(FLOWS, RISES, 0.1, 10, 4, 1.5, 1.5e-6, MU, RHO);
        assertThat(piped.lossAt(0.03)).isEqualTo(PipeFriction.pressureLoss(0.03, 0.1, 10, 4, 1.5, 1.5e-6, MU, RHO));
        assertThat(piped.lossAt(-0.03)).isEqualTo(-piped.lossAt(0.03));
        assertThat(piped.flow(0)).isBetween(0.0, bare.flow(0));
        assertThat(bare.lossAt(0.03)).isZero();
    }

    /**
     * Operating point of a fan with rise 350 (1 - (q/0.09)^2) Pa behind 10 m of 4 in pipe with four bends, entrance and
     * exit, on a layer that lets 7.660018e-5 m3/(s Pa) through; worked out here. Straight lines over 1/1000 m3/s lie
     * up to 0.01 Pa below the curve.
     */
    @Test
    void operatingPoint() {
        double[] flows =
                IntStream.rangeClosed(0, 90).mapToDouble(i -> i / 1000.0).toArray();
        double[] rises =
                Arrays.stream(flows).map(q -> 350 * (1 - q * q / 0.0081)).toArray();
        FanAndPipe fan = new FanAndPipe(flows, rises, 4.026 * 0.0254, 10, 4, 1.5, 1.5e-6, MU, RHO);
        double flow = fan.flow(-294.969);
        assertThat(flow).isCloseTo(2.259464e-2, withinPercentage(0.02));
        assertThat(flow / 7.660018e-5).isCloseTo(294.969, withinPercentage(0.02));
        assertThat(fan.riseAt(flow)).isCloseTo(327.941, within(0.02));
        assertThat(fan.lossAt(flow)).isCloseTo(32.972, within(0.02));
    }
}
