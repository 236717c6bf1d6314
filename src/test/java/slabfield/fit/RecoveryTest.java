package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;

/**
 * Fill and soil found again from exact readings: a pit in a leaky rectangle with closed edges, pressures by the sum of
 * images of K0 (Hantush and Jacob 1955), worked out here.
 */
class RecoveryTest {
    private static final double K = 2e-8, SOIL = 6.906077e-6, FLOW = 0.012;
    private static final double[][] EXACT = {
        {4.5, 3, 27.178},
        {7.5, 3, 13.625},
        {2.5, 6, 23.325},
        {5, 4, 21.863},
        {0, 0, 33.039},
        {10, 0, 11.480},
        {10, 8, 9.993},
        {0, 8, 20.965},
        {9.5, 7.5, 10.072}
    };

    static Point place(int hole) {
        return new Point(EXACT[hole][0], EXACT[hole][1]);
    }

    static Scenario leakyRectangle(double timesFill, double timesSoil, double cell) {
        return MadeHouses.plain(10, 8, K * timesFill, SOIL * timesSoil, new Point(2.5, 3), new Source.Flow(FLOW), cell);
    }

    static Scenario read(double timesFill, double timesSoil, double spread, int... which) {
        List<Point> places = Arrays.stream(which).mapToObj(RecoveryTest::place).toList();
        List<Double> readings = Arrays.stream(which).mapToObj(i -> -EXACT[i][2]).toList();
        return MadeHouses.read(leakyRectangle(timesFill, timesSoil, 0.1), places, readings, spread);
    }

    @Test
    void exactReadingsGiveFillAndSoilToOnePercent() throws NotFitted {
        Scenario house = read(0.2, 8, 0.02, 0, 1, 2, 3, 4, 5, 6, 7, 8);
        NoiseModel meterOnly = NoiseModel.METER_ONLY;
        Fitted fitted = HouseFit.fit(house, Unknowns.of(house), meterOnly, Progress.NONE);
        assertThat(fitted.converged()).isTrue();
        assertThat(fitted.value(fitted.indexOf("fill"))).isCloseTo(K, Percentage.withPercentage(1));
        assertThat(fitted.value(fitted.indexOf("soil"))).isCloseTo(SOIL, Percentage.withPercentage(1));
    }
}
