package slabfield.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TileFrictionTest {
    private static final double CFM = 4.719474432e-4;
    private static final double MU = 1.81e-5;
    private static final double RHO = 1.204;

    /** Manning's and Darcy's formulas set equal; f worked out here to four decimals. */
    @ParameterizedTest
    @CsvSource({"0.076, 0.016, 0.0753", "0.102, 0.017, 0.0770", "0.1016, 0.015, 0.0601"})
    void frictionFactorFromManning(double diameter, double manning, double friction) {
        assertThat(TileFriction.darcyFrictionFactor(manning, diameter)).isCloseTo(friction, within(5.1e-5));
    }

    /**
     * Loss per metre at 20, 40, 80 and 120 cubic feet per minute, worked out here; n of corrugated pipe after the
     * Corrugated Polyethylene Pipe Association's values as reproduced in a pipe data sheet.
     */
    @ParameterizedTest
    @CsvSource({"0.076, 0.016, 2.581, 10.324, 41.297, 92.918", "0.102, 0.017, 0.6066, 2.4265, 9.7061, 21.839"})
    void lossPerMetre(double diameter, double manning, double at20, double at40, double at80, double at120) {
        TileFriction tile = TileFriction.corrugated(diameter, manning, 1, MU, RHO);
        assertThat(tile.flow(at20)).isCloseTo(20 * CFM, withinPercentage(0.02));
        assertThat(tile.flow(at40)).isCloseTo(40 * CFM, withinPercentage(0.02));
        assertThat(tile.flow(at80)).isCloseTo(80 * CFM, withinPercentage(0.02));
        assertThat(tile.flow(at120)).isCloseTo(120 * CFM, withinPercentage(0.02));
    }

    /** Hagen and Poiseuille, through PipeFriction's own laminar branch: Re is about 14 here. */
    @Test
    void slowFlowIsLaminar() {
        double flow = 1.7e-5;
        double drop = PipeFriction.pressureLoss(flow, 0.1016, 10, 0, 0, 0, MU, RHO);
        TileFriction tile = TileFriction.corrugated(0.1016, 0.017, 10, MU, RHO);
        assertThat(tile.flow(drop)).isCloseTo(flow, within(1e-12 * flow));
    }

    @Test
    void lossIsInProportionToTheLength() {
        TileFriction one = TileFriction.corrugated(0.1016, 0.017, 1, MU, RHO);
        TileFriction ten = TileFriction.corrugated(0.1016, 0.017, 10, MU, RHO);
        assertThat(ten.flow(50) / one.flow(5)).isCloseTo(1, within(1e-12));
        assertThat(ten.flow(1e-6) / one.flow(1e-7)).isCloseTo(1, within(1e-12));
    }
}
