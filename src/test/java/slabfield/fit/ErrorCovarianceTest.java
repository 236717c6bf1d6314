package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.apache.commons.math3.linear.RealMatrix;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import slabfield.model.Point;
import slabfield.model.Scenario;

/** What the errors of two readings have in common, by hand. */
class ErrorCovarianceTest {
    private static final ErrorCovariance ERRORS =
            new ErrorCovariance(Map.of("1", new Point(0, 0), "2", new Point(3, 4)), 0.8, 2.5);
    private static final Offset<Double> EXACT = Offset.offset(1e-12);

    private static Observation read(String stage, Observation.What what, String place, double value) {
        return new Observation(stage, what, place, value, 1, 2 * Math.abs(value), false);
    }

    private static double common(Observation a, Observation b) {
        RealMatrix c = ERRORS.of(List.of(a, b));
        assertThat(c.getEntry(0, 0)).isCloseTo(1 + a.model() * a.model(), EXACT);
        assertThat(c.getEntry(1, 0)).isEqualTo(c.getEntry(0, 1));
        return c.getEntry(0, 1);
    }

    /** Five metres are two reaches of 2.5 m: e^-4 = 0.0183156389. */
    @Test
    void holesFallWithTheSquareOfTheirDistance() {
        Observation a = read("open", Observation.What.FAN_ON, "1", -3);
        assertThat(common(a, read("open", Observation.What.FAN_ON, "2", -5)))
                .isCloseTo(0.018315638888734 * 6 * 10, EXACT);
        assertThat(common(a, read("closed", Observation.What.FAN_ON, "2", -5)))
                .isCloseTo(0.8 * 0.018315638888734 * 6 * 10, EXACT);
        assertThat(common(a, read("closed", Observation.What.FAN_ON, "1", -5))).isCloseTo(0.8 * 6 * 10, EXACT);
    }

    /** Where one hole is pushed and the other drawn, tight fill brings both nearer to zero. */
    @Test
    void theModelsErrorIsAPartOfThePressureWithItsSign() {
        assertThat(common(
                        read("open", Observation.What.FAN_ON, "1", -3), read("open", Observation.What.FAN_ON, "2", 5)))
                .isCloseTo(-0.018315638888734 * 6 * 10, EXACT);
    }

    @Test
    void whatIsReadOtherwiseIsApart() {
        Observation hole = read("open", Observation.What.FAN_ON, "1", -3);
        assertThat(common(hole, read("open", Observation.What.FAN_OFF, "1", -3)))
                .isZero();
        assertThat(common(hole, read("open", Observation.What.FAN_ON, "not drawn", -3)))
                .isZero();
        Observation flow = read("open", Observation.What.FLOW, "1", 3);
        assertThat(common(flow, read("open", Observation.What.FLOW, "2", 3))).isZero();
        assertThat(common(flow, read("closed", Observation.What.FLOW, "1", 3))).isCloseTo(0.8 * 36, EXACT);
        Observation bound = new Observation("closed", Observation.What.FLOW, "1", 3, 1, 6, true);
        assertThat(common(flow, bound)).isZero();
    }

    @Test
    void ofAHouseTheHolesAreWhereTheyAreDrawn() {
        Scenario house = SyntheticHouses.of(1).drawn();
        double d = house.testHoles()
                .get(0)
                .at()
                .distanceTo(house.testHoles().get(5).at());
        RealMatrix c = ErrorCovariance.of(house)
                .of(List.of(
                        read("open", Observation.What.FAN_ON, "H1", -3),
                        read("open", Observation.What.FAN_ON, "H6", -5)));
        assertThat(c.getEntry(0, 1)).isCloseTo(60 * Math.exp(-d * d / (NoiseModel.REACH * NoiseModel.REACH)), EXACT);
    }
}
