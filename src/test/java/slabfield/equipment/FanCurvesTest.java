package slabfield.equipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import slabfield.model.FanOffer;
import slabfield.model.Source.FanCurve;

/** Fan laws as every handbook has them, and fans joined. */
class FanCurvesTest {
    private static final FanCurve CURVE = new FanCurve(List.of(0.0, 0.04, 0.08), List.of(300.0, 240.0, 20.0));
    private static final FanCurve OTHER = new FanCurve(List.of(0.0, 0.05), List.of(200.0, 0.0));

    @ParameterizedTest
    @CsvSource({"0.02,270", "0.04,240", "0.06,130", "-0.01,315", "0.09,-35"})
    void straightLinesWithTheLastSlopeBeyond(double flow, double rise) {
        assertThat(FanCurves.rise(CURVE, flow)).isCloseTo(rise, within(1e-9));
        assertThat(FanCurves.flow(CURVE, rise)).isCloseTo(flow, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.02, 0.03, 0.05})
    void atHalfSpeedHalfTheFlowAtAQuarterOfThePressure(double flow) {
        FanCurve slow = FanCurves.atSpeed(CURVE, 0.5);
        assertThat(FanCurves.rise(slow, flow / 2)).isCloseTo(FanCurves.rise(CURVE, flow) / 4, within(1e-9));
    }

    /** Density at 1500 m over that at sea level, US Standard Atmosphere 1976: 1.0581/1.2250. */
    @Test
    void thinAirCostsPressureAndPowerNotFlow() {
        FanCurve thin = FanCurves.atDensity(CURVE, 1.2250, 1.0581);
        assertThat(thin.flows()).isEqualTo(CURVE.flows());
        assertThat(thin.rises().get(0)).isCloseTo(259.13, within(0.01));
        FanOffer offer = offer(FanOffer.Arrangement.SINGLE);
        assertThat(InstalledFan.of(offer, 0.5 * offer.density()).power(0.04)).hasValue(32.0);
    }

    /** Of two equal ones in parallel each carries half, in series each lifts half; the power is that of both. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.01, 0.03, 0.05, 0.07})
    void twoEqualFans(double flow) {
        assertThat(FanCurves.rise(FanCurves.parallel(CURVE, CURVE), 2 * flow))
                .isCloseTo(FanCurves.rise(CURVE, flow), within(1e-9));
        assertThat(FanCurves.rise(FanCurves.series(CURVE, CURVE), flow))
                .isCloseTo(2 * FanCurves.rise(CURVE, flow), within(1e-9));
        InstalledFan one = InstalledFan.of(offer(FanOffer.Arrangement.SINGLE), 1.204);
        InstalledFan side = InstalledFan.of(offer(FanOffer.Arrangement.TWO_IN_PARALLEL), 1.204);
        InstalledFan behind = InstalledFan.of(offer(FanOffer.Arrangement.TWO_IN_SERIES), 1.204);
        double watts = one.power(flow).orElseThrow();
        assertThat(side.power(2 * flow).orElseThrow()).isCloseTo(2 * watts, within(1e-9));
        assertThat(behind.power(flow).orElseThrow()).isCloseTo(2 * watts, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(doubles = {20, 100, 150, 190})
    void flowsOfUnequalFansInParallelAdd(double rise) {
        FanCurve both = FanCurves.parallel(CURVE, OTHER);
        assertThat(FanCurves.flow(both, rise))
                .isCloseTo(FanCurves.flow(CURVE, rise) + FanCurves.flow(OTHER, rise), within(1e-12));
    }

    @Test
    void unequalFansInSeriesAdd() {
        assertThat(FanCurves.rise(FanCurves.series(CURVE, OTHER), 0.03)).isCloseTo(255 + 80, within(1e-9));
    }

    @Test
    void warnsAtTheEndOfTheCurveAndBelowTheSteadyFlow() {
        InstalledFan fan = InstalledFan.of(offer(FanOffer.Arrangement.SINGLE), 1.204);
        assertThat(fan.warnings(0.05)).isEmpty();
        assertThat(fan.warnings(0.075)).singleElement().asString().contains("end of its curve");
        assertThat(fan.warnings(0.085)).singleElement().asString().contains("beyond the last point");
        assertThat(fan.warnings(0.005)).singleElement().asString().contains("may stall");
    }

    @Test
    void everyInventedFanSaysSo() {
        assertThat(FanClasses.INVENTED).hasSize(4).allSatisfy(f -> {
            assertThat(f.invented()).isTrue();
            assertThat(f.id()).contains("(invented)");
        });
        assertThat(FanClasses.TEST_VACUUM.invented()).isTrue();
    }

    private static FanOffer offer(FanOffer.Arrangement arrangement) {
        return new FanOffer("A", CURVE, List.of(60.0, 64.0, 50.0), 1.204, OptionalDouble.of(0.01), arrangement, false);
    }
}
