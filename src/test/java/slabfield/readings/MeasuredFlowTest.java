package slabfield.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.law.AirState;
import slabfield.model.FlowReading;

class MeasuredFlowTest {
    private static final AirState AIR = AirState.STANDARD;
    private static final double CFM = 4.719474432e-4;
    private static final double THREE_INCH = 3.068 * 0.0254;

    private static FlowReading.InPipe pressures(boolean traverse, Double... shown) {
        return new FlowReading.InPipe(
                List.of(shown), false, THREE_INCH, traverse, OptionalDouble.empty(), OptionalDouble.empty());
    }

    @Test
    void aStatedFlowKeepsItsOwnError() {
        assertThat(MeasuredFlow.of(new FlowReading.Stated(0.02, OptionalDouble.of(0.001)), AIR))
                .isEqualTo(new MeasuredFlow(0.02, 0.001, false));
        assertThat(MeasuredFlow.of(new FlowReading.Stated(0.02, OptionalDouble.empty()), AIR)
                        .standardError())
                .isCloseTo(0.002, within(1e-12));
    }

    /** Sum of squares of an even range from 0 to the bound about its middle. */
    @Test
    void belowTheMeterIsAnEvenRange() {
        MeasuredFlow flow = MeasuredFlow.of(new FlowReading.Below(0.004), AIR);
        assertThat(flow.belowMeter()).isTrue();
        assertThat(flow.flow()).isEqualTo(0.002);
        double squares = 0;
        for (int i = 0; i < 1000; i++) squares += Math.pow((i + 0.5) / 1000 * 0.004 - 0.002, 2) / 1000;
        assertThat(flow.standardError()).isCloseTo(Math.sqrt(squares), within(1e-8));
    }

    /** On the axis the mean is 0.8 to 0.9 of what the tube shows; a traverse has no such doubt. */
    @Test
    void aTraverseIsSurerThanTheCentreLine() {
        MeasuredFlow axis = MeasuredFlow.of(pressures(false, 10.0), AIR);
        MeasuredFlow traverse =
                MeasuredFlow.of(pressures(true, Collections.nCopies(6, 10.0).toArray(Double[]::new)), AIR);
        double full = Math.sqrt(2 * 10 / 1.204) * Math.PI / 4 * THREE_INCH * THREE_INCH;
        assertThat(traverse.flow()).isCloseTo(full, within(1e-9));
        assertThat(axis.flow() / full).isBetween(0.8, 0.9);
        assertThat(axis.standardError() / axis.flow()).isGreaterThan(traverse.standardError() / traverse.flow());
    }

    /** Where the display is fine for what it shows, place and direction of the tube are left: 4 %. */
    @Test
    void aStrongTraverseIsAsSureAsItsPlaces() {
        MeasuredFlow flow =
                MeasuredFlow.of(pressures(true, Collections.nCopies(6, 250.0).toArray(Double[]::new)), AIR);
        assertThat(flow.standardError() / flow.flow()).isCloseTo(0.04, within(1e-5));
    }

    /** 10 cfm in a 3 in pipe is some 0.6 Pa of velocity pressure, 5 cfm 0.15 Pa: one can just be read, the other not. */
    @ParameterizedTest
    @CsvSource({"0.7, false", "0.15, true", "0, true"})
    void whatTheMeterCannotTellIsABound(double pressure, boolean below) {
        MeasuredFlow flow = MeasuredFlow.of(pressures(false, pressure), AIR);
        assertThat(flow.belowMeter()).isEqualTo(below);
        if (below) assertThat(2 * flow.flow() / CFM).isBetween(7.0, 10.0);
    }

    @Test
    void theDensityOfTheReadingGoesBeforeThatOfTheHouse() {
        FlowReading thin = new FlowReading.InPipe(
                List.of(10.0, 10.0), false, THREE_INCH, true, OptionalDouble.empty(), OptionalDouble.of(1.204 / 4));
        assertThat(MeasuredFlow.of(thin, AIR).flow())
                .isCloseTo(2 * MeasuredFlow.of(pressures(true, 10.0, 10.0), AIR).flow(), within(1e-9));
    }

    /** The error is that of the range between half a step down and up, which matters where little is shown. */
    @Test
    void aCoarseDisplayWidensTheError() {
        FlowReading coarse = new FlowReading.InPipe(
                List.of(6.0), false, THREE_INCH, true, OptionalDouble.of(1), OptionalDouble.empty());
        FlowReading fine = new FlowReading.InPipe(
                List.of(6.0), false, THREE_INCH, true, OptionalDouble.of(0.1), OptionalDouble.empty());
        assertThat(MeasuredFlow.of(coarse, AIR).standardError())
                .isGreaterThan(1.1 * MeasuredFlow.of(fine, AIR).standardError());
    }
}
