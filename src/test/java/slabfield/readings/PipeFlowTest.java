package slabfield.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.law.AirProperties;
import slabfield.law.AirState;
import slabfield.law.Pitot;
import slabfield.model.NominalPipe;

class PipeFlowTest {
    private static final double INCH_OF_WATER = 249.08891;
    private static final double CFM = 4.719474432e-4;
    private static final double FPM = 0.00508;
    private static final double POUNDS = 16.01846337;

    /** The trade's rule V = 4005 sqrt(VP), VP in inches of water, V in ft/min, for air of 0.075 lb/ft3. */
    @ParameterizedTest
    @CsvSource({"0.01,400.5", "0.05,895.5", "0.1,1266.5", "0.25,2002.5", "1,4005"})
    void rule4005(double inches, double feetPerMinute) {
        double velocity = Pitot.velocity(inches * INCH_OF_WATER, 0.075 * POUNDS);
        assertThat(velocity / FPM).isCloseTo(feetPerMinute, Percentage.withPercentage(0.2));
    }

    /** Its correction sqrt(0.075/rho): 7.6 % at 1500 m (US Standard Atmosphere 1976, 1.0581 against 1.2250 kg/m3). */
    @Test
    void densityCorrection() {
        AirState high = AirState.of(278.40, 1500), low = AirState.of(288.15, 0);
        assertThat(AirProperties.pressureAtAltitude(1500)).isCloseTo(84560, within(10.0));
        double ratio = Pitot.velocity(10, high.density()) / Pitot.velocity(10, low.density());
        assertThat(ratio).isCloseTo(Math.sqrt(1.2250 / 1.0581), within(0.001)).isCloseTo(1.076, within(0.001));
    }

    /** A handbook's worked example: 0.16, 0.25 and 0.36 in make 2002 ft/min, not the 2026 of their mean pressure. */
    @Test
    void velocitiesAreAveragedNotPressures() {
        List<Double> pressures = List.of(0.16 * INCH_OF_WATER, 0.25 * INCH_OF_WATER, 0.36 * INCH_OF_WATER);
        AirState air = new AirState(1.81e-5, 0.075 * POUNDS);
        assertThat(PipeFlow.fromTraverse(pressures, 1, air) / FPM).isCloseTo(2002.5, Percentage.withPercentage(0.2));
    }

    /** Long smooth pipe: 0.81 to 0.84 of the centre at Re 1e4 to 4e4 by the logarithmic profile; a half when laminar. */
    @ParameterizedTest
    @CsvSource({"10000,0.811", "40000,0.836", "2000,0.5"})
    void centreLineFactor(double reynolds, double factor) {
        assertThat(PipeFlow.developedFactor(reynolds)).isCloseTo(factor, within(0.002));
    }

    @Test
    void centreReadingHasBothFactorsAsItsBounds() {
        double diameter = NominalPipe.FOUR_INCH.insideDiameter(), area = Math.PI / 4 * diameter * diameter;
        PipeFlow flow = PipeFlow.fromCentre(5, diameter, AirState.STANDARD);
        assertThat(flow.most()).isCloseTo(0.9 * 5 * area, within(1e-12));
        double reynolds = 1.204 * flow.least() / area * diameter / 1.81e-5;
        assertThat(flow.least()).isCloseTo(PipeFlow.developedFactor(reynolds) * 5 * area, within(1e-9));
        assertThat(flow.flow()).isBetween(flow.least(), flow.most());
        PipeFlow coarse = PipeFlow.fromCentrePressure(1.204 * 25 / 2, 2, diameter, AirState.STANDARD);
        assertThat(coarse.flow()).isCloseTo(flow.flow(), within(1e-12));
        assertThat(coarse.least()).isLessThan(flow.least());
        assertThat(coarse.most()).isGreaterThan(flow.most());
    }

    /** 10 cfm in 3 in pipe makes but 0.6 Pa, 5 cfm 0.15 Pa; in 2 in pipe 5 cfm make 0.7 Pa. */
    @ParameterizedTest
    @CsvSource({"THREE_INCH,10,0.59", "THREE_INCH,5,0.147", "TWO_INCH,5,0.715"})
    void whatTheMeterSees(NominalPipe size, double cfm, double pascals) {
        assertThat(PipeFlow.velocityPressure(cfm * CFM, size.insideDiameter(), AirState.STANDARD))
                .isCloseTo(pascals, within(0.01));
    }

    @Test
    void suggestsTheWidestTestPipeThatCanBeRead() {
        assertThat(PipeFlow.testPipe(5 * CFM, 0.1, AirState.STANDARD)).contains(NominalPipe.TWO_INCH);
        assertThat(PipeFlow.testPipe(100 * CFM, 0.1, AirState.STANDARD)).contains(NominalPipe.SIX_INCH);
        assertThat(PipeFlow.testPipe(2 * CFM, 0.1, AirState.STANDARD)).isEmpty();
    }
}
