package slabfield.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PipeFrictionTest {
    private static final double CFM = 4.719474432e-4;
    private static final double INCH = 0.0254;
    private static final double FOOT = 0.3048;
    private static final double INCH_OF_WATER = 249.08891;
    private static final double MU = 1.81e-5;
    private static final double RHO = 1.204;
    private static final double SMOOTH_PLASTIC = 1.5e-6;

    /** Colebrook's formula (1939), solved here by another method, to seven digits. */
    @ParameterizedTest
    @CsvSource({
        "4000,    0,       0.03990701",
        "10000,   0,       0.03088295",
        "10000,   0.0001,  0.03103721",
        "40000,   0,       0.02196999",
        "40000,   0.00045, 0.02332713",
        "100000,  0.0001,  0.01851387",
        "1000000, 0.0001,  0.01344144"
    })
    void colebrook(double reynolds, double roughness, double friction) {
        assertThat(PipeFriction.colebrook(reynolds, roughness)).isCloseTo(friction, within(1e-8));
        assertThat(PipeFriction.frictionFactor(reynolds, roughness)).isCloseTo(friction, within(1e-8));
    }

    @ParameterizedTest
    @CsvSource({"4000, 0", "4000, 0.05", "1e5, 1e-3", "1e8, 0", "1e8, 0.5", "2300, 0.5"})
    void colebrookSolvesItsFormula(double reynolds, double roughness) {
        double root = Math.sqrt(PipeFriction.colebrook(reynolds, roughness));
        double expected = -2 * Math.log10(roughness / 3.7 + 2.51 / (reynolds * root));
        assertThat(1 / root).isCloseTo(expected, within(1e-12 * expected));
    }

    /** Explicit formulas of Haaland (1983) and of Swamee and Jain (1976): within 2 % of Colebrook's in this range. */
    @ParameterizedTest
    @CsvSource({"4000, 0", "10000, 0.0001", "40000, 0.00045", "100000, 0.001", "1000000, 0.0001"})
    void explicitFormulasAgree(double reynolds, double e) {
        double haaland = Math.pow(-1.8 * Math.log10(Math.pow(e / 3.7, 1.11) + 6.9 / reynolds), -2);
        double swameeJain = 0.25 / Math.pow(Math.log10(e / 3.7 + 5.74 / Math.pow(reynolds, 0.9)), 2);
        assertThat(PipeFriction.frictionFactor(reynolds, e)).isCloseTo(haaland, withinPercentage(2));
        assertThat(PipeFriction.frictionFactor(reynolds, e)).isCloseTo(swameeJain, withinPercentage(2));
    }

    @Test
    void laminarThenAStraightLine() {
        assertThat(PipeFriction.frictionFactor(2300, 0)).isCloseTo(64.0 / 2300, within(1e-15));
        assertThat(PipeFriction.frictionFactor(1000, 0.01)).isCloseTo(0.064, within(1e-15));
        double middle = (64.0 / 2300 + 0.03990701) / 2;
        assertThat(PipeFriction.frictionFactor(3150, 0)).isCloseTo(middle, within(1e-8));
        assertThat(PipeFriction.frictionFactor(3999.9999, 0)).isCloseTo(0.03990701, within(2e-8));
    }

    @Test
    void colebrookRefusesLaminarFlow() {
        assertThatThrownBy(() -> PipeFriction.colebrook(2000, 0)).hasMessageContaining("2300");
    }

    /**
     * Straight pipe of schedule 40 (inside diameters from memory), worked out here: Pa per metre with a roughness of
     * 1.5 um, then inches of water per 100 ft with 1.5 um, smooth, and 1.5e-4 ft, four decimals each.
     */
    @ParameterizedTest
    @CsvSource({
        "3.068,  20,  0.9290, 0.1137, 0.1136, 0.1169",
        "3.068,  40,  3.1182, 0.3816, 0.3809, 0.3995",
        "3.068,  80, 10.6042, 1.2976, 1.2939, 1.3983",
        "3.068, 100, 15.7663, 1.9293, 1.9227, 2.1045",
        "3.068, 120, 21.8201, 2.6700, 2.6596, 2.9452",
        "4.026,  20,  0.2567, 0.0314, 0.0314, 0.0320",
        "4.026,  40,  0.8567, 0.1048, 0.1047, 0.1079",
        "4.026,  80,  2.8983, 0.3547, 0.3540, 0.3722",
        "4.026, 100,  4.3022, 0.5264, 0.5253, 0.5571",
        "4.026, 120,  5.9464, 0.7276, 0.7259, 0.7759",
        "4.026, 200, 14.7875, 1.8095, 1.8030, 1.9819",
        "6.065, 120,  0.8408, 0.1029, 0.1028, 0.1063"
    })
    void straightPipe(double inches, double cfm, double perMetre, double plastic, double smooth, double rough) {
        double diameter = inches * INCH;
        double flow = cfm * CFM;
        double fourDecimals = 6e-5;
        assertThat(straight(flow, diameter, 1, SMOOTH_PLASTIC)).isCloseTo(perMetre, within(fourDecimals));
        double length = 100 * FOOT;
        assertThat(straight(flow, diameter, length, SMOOTH_PLASTIC) / INCH_OF_WATER)
                .isCloseTo(plastic, within(fourDecimals));
        assertThat(straight(flow, diameter, length, 0) / INCH_OF_WATER).isCloseTo(smooth, within(fourDecimals));
        assertThat(straight(flow, diameter, length, 1.5e-4 * FOOT) / INCH_OF_WATER)
                .isCloseTo(rough, within(fourDecimals));
    }

    /** 30 ft of 4 in pipe at 100 cfm, four bends, sharp entrance 0.5 and exit 1.0; worked out here. */
    @Test
    void workedExampleOfASuctionPipe() {
        double loss = PipeFriction.pressureLoss(100 * CFM, 4.026 * INCH, 30 * FOOT, 4, 1.5, SMOOTH_PLASTIC, MU, RHO);
        assertThat(loss).isCloseTo(121.9, within(0.06));
        assertThat(loss / INCH_OF_WATER).isCloseTo(0.4895, within(1e-4));
    }

    @Test
    void slowFlowFollowsHagenAndPoiseuille() {
        double flow = 1e-5;
        double expected = 128 * MU * 20 * flow / (Math.PI * Math.pow(0.1, 4));
        assertThat(straight(flow, 0.1, 20, SMOOTH_PLASTIC)).isCloseTo(expected, within(1e-13 * expected));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-9, 1e-3, 3.5e-3, 0.02, 0.5})
    void lossTurnsItsSignWithTheFlow(double flow) {
        assertThat(loss(-flow)).isEqualTo(-loss(flow)).isNegative();
    }

    /** Re is about 0, 70, 1400, 2200, 2900, 3800, 7000 and 7e5; the differences are good to about 1e-9. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 1e-4, -2e-3, 3.1e-3, 4.2e-3, 5.5e-3, 1e-2, 1})
    void slopeIsTheDerivativeOfTheLoss(double flow) {
        double h = 1e-5 * Math.max(Math.abs(flow), 1e-4);
        double expected = (loss(flow + h) - loss(flow - h)) / (2 * h);
        double slope = PipeFriction.pressureLossSlope(flow, 0.1, 9, 4, 1.5, 1e-4, MU, RHO);
        assertThat(slope).isPositive();
        assertThat(slope / expected).isCloseTo(1, within(1e-6));
    }

    @Test
    void noPipeHasNoLoss() {
        assertThat(PipeFriction.pressureLoss(0.1, 1, 0, 0, 0, 0, MU, RHO)).isZero();
        assertThat(PipeFriction.pressureLossSlope(0.1, 1, 0, 0, 0, 0, MU, RHO)).isZero();
    }

    private static double loss(double flow) {
        return PipeFriction.pressureLoss(flow, 0.1, 9, 4, 1.5, 1e-4, MU, RHO);
    }

    private static double straight(double flow, double diameter, double length, double roughness) {
        return PipeFriction.pressureLoss(flow, diameter, length, 0, 0, roughness, MU, RHO);
    }
}
