package slabfield.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static slabfield.figure.HeatMapTest.field;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.figure.Contours.Isoline;

class ContoursTest {
    @Test
    void aPlaneGivesOneStraightLineFromEdgeToEdge() {
        List<Isoline> lines = Contours.of(field(8, 6, (x, y) -> x), List.of(3.2));
        assertThat(lines).hasSize(1);
        double[] line = lines.get(0).line();
        assertThat(lines.get(0).closed()).isFalse();
        for (int i = 0; i < line.length; i += 2) assertThat(line[i]).isEqualTo(3.2, within(1e-12));
        assertThat(Math.abs(line[1] - line[line.length - 1])).isEqualTo(6, within(1e-12));
    }

    @Test
    void aConeGivesOneClosedCircle() {
        List<Isoline> lines = Contours.of(field(40, 40, (x, y) -> Math.hypot(x - 20.3, y - 19.1)), List.of(11.0));
        assertThat(lines).hasSize(1);
        assertThat(lines.get(0).closed()).isTrue();
        double[] line = lines.get(0).line();
        // a chord across a cell leaves the circle by about cell^2 / (8 r) = 0.011
        for (int i = 0; i < line.length; i += 2)
            assertThat(Math.hypot(line[i] - 20.3, line[i + 1] - 19.1)).isEqualTo(11, within(0.02));
        assertThat(Lines.length(line)).isEqualTo(2 * Math.PI * 11, within(1.0));
    }

    @Test
    void levelsComeInTheirOrderAndMissingOnesGiveNothing() {
        List<Isoline> lines = Contours.of(field(9, 3, (x, y) -> x), List.of(5.0, 99.0, 2.0));
        assertThat(lines).extracting(Isoline::level).containsExactly(5.0, 2.0);
    }

    @Test
    void noLineCrossesCellsWithoutPressure() {
        List<Isoline> lines = Contours.of(field(9, 6, (x, y) -> x > 4 && x < 5 ? Double.NaN : y), List.of(3.3));
        assertThat(lines).hasSize(2);
        for (Isoline line : lines)
            for (int i = 0; i < line.line().length; i += 2)
                assertThat(line.line()[i] <= 4 || line.line()[i] >= 5).isTrue();
    }

    @Test
    void aStairOfCellsWithoutPressureHidesTheStepAcrossIt() {
        List<Isoline> lines = Contours.of(field(9, 9, (x, y) -> x == y ? Double.NaN : x > y ? -10 : 10), List.of(0.0));
        assertThat(lines).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"9.5,true", "8.5,false"})
    void aSaddleIsJoinedByItsMiddle(double farCorner, boolean highCornersJoined) {
        // between the cells 1 and farCorner on one diagonal and -3 on the other stands a quarter with the corners
        // 1, -1, (1 - 3 - 3 + farCorner) / 4, -1, whose middle is above 0 for a far corner above 9
        List<Isoline> lines = Contours.of(field(2, 2, (x, y) -> x != y ? -3 : x < 1 ? 1 : farCorner), List.of(0.0));
        assertThat(lines).hasSize(2);
        for (Isoline line : lines) assertThat(crossesDiagonal(line.line())).isEqualTo(!highCornersJoined);
    }

    private static boolean crossesDiagonal(double[] line) {
        boolean above = false, below = false;
        for (int i = 0; i < line.length; i += 2) {
            above |= line[i + 1] > line[i] + 1e-9;
            below |= line[i + 1] < line[i] - 1e-9;
        }
        return above && below;
    }

    @Test
    void levelsThatHitCellValuesExactlyStillGiveWholeLines() {
        List<Isoline> lines = Contours.of(field(6, 6, (x, y) -> x + y), List.of(6.0));
        assertThat(lines).hasSize(1);
        // in the outer half cells the pressure no longer changes towards the edge, so the line leaves at a right angle
        assertThat(Lines.length(lines.get(0).line())).isEqualTo(5 * Math.sqrt(2) + 1, within(1e-9));
    }

    @Test
    void aFieldWithoutPressureHasNoLines() {
        assertThat(Contours.of(field(3, 3, (x, y) -> Double.NaN), List.of(0.0))).isEmpty();
    }
}
