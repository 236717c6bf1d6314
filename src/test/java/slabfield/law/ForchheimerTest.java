package slabfield.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ForchheimerTest {
    private static final double MU = 1.81e-5;
    private static final double RHO = 1.204;

    /** The law integrated between impermeable discs; worked out here to six digits, linear and quadratic part apart. */
    @ParameterizedTest
    @CsvSource({
        "1e-7,    0, 0.05, 0.02,  26.53227, 0",
        "1e-8,    0, 0.05, 0.02, 265.32269, 0",
        "1e-7, 1000, 0.15, 0.02,  20.2027,  7.88873",
        "1e-7, 1000, 0.15, 0.05,  50.5068, 49.3046",
        "2e-8, 3000, 0.15, 0.01,  50.5068,  5.91655"
    })
    void radialDrop(double permeability, double inertial, double inner, double flow, double linear, double quadratic) {
        double darcy = Forchheimer.radialPressureDrop(flow, inner, 5, 0.1, permeability, 0, MU, RHO);
        double both = Forchheimer.radialPressureDrop(flow, inner, 5, 0.1, permeability, inertial, MU, RHO);
        assertThat(darcy).isCloseTo(linear, withinPercentage(0.001));
        assertThat(both - darcy).isCloseTo(quadratic, within(1e-5 * both));
        assertThat(both).isCloseTo(linear + quadratic, withinPercentage(0.001));
    }

    /** Profile of the third case above, p(r) - p(0.15 m); worked out here to four decimals. */
    @ParameterizedTest
    @CsvSource({"0.3, 8.0599", "0.5, 12.6295", "1, 17.8429", "2, 22.4463", "3, 24.9857", "4, 26.7448", "5, 28.0914"})
    void radialProfile(double radius, double drop) {
        assertThat(Forchheimer.radialPressureDrop(0.02, 0.15, radius, 0.1, 1e-7, 1000, MU, RHO))
                .isCloseTo(drop, within(6e-5));
    }

    /** Half the thickness doubles the linear part and quadruples the quadratic one. */
    @Test
    void thinnerLayer() {
        double darcy = Forchheimer.radialPressureDrop(0.02, 0.15, 5, 0.05, 1e-7, 0, MU, RHO);
        double both = Forchheimer.radialPressureDrop(0.02, 0.15, 5, 0.05, 1e-7, 1000, MU, RHO);
        assertThat(darcy).isCloseTo(2 * 20.2027, withinPercentage(0.001));
        assertThat(both - darcy).isCloseTo(4 * 7.88873, withinPercentage(0.001));
    }

    /** A strip 8 m wide and 0.1 m thick, 10 m long, with 0.04 m3/s: 120.6 Pa; worked out here. */
    @Test
    void strip() {
        double gradient = 120.6 / 10;
        double velocity = 1e-7 / MU * Forchheimer.mobilityRatio(gradient, 1e-7, 1000, MU, RHO) * gradient;
        assertThat(velocity * 8 * 0.1).isCloseTo(0.04, withinPercentage(0.001));
    }

    @ParameterizedTest
    @CsvSource({
        "1e-9, 1e-7, 1000",
        "1e-3, 1e-7, 1000",
        "0.05, 1e-7, 1000",
        "1, 1e-7, 1000",
        "0.05, 5e-10, 0",
        "20, 1e-6, 500"
    })
    void mobilityRatioInvertsTheLaw(double velocity, double permeability, double inertial) {
        double gradient = MU / permeability * velocity + inertial * RHO * velocity * velocity;
        double ratio = Forchheimer.mobilityRatio(gradient, permeability, inertial, MU, RHO);
        assertThat(permeability / MU * ratio * gradient / velocity).isCloseTo(1, within(1e-13));
    }

    @ParameterizedTest
    @CsvSource({"1e-2, 1e-7, 1000", "1, 1e-7, 1000", "100, 1e-6, 500", "1e4, 1e-6, 500"})
    void mobilityRatioSlope(double gradient, double permeability, double inertial) {
        double h = 1e-4 * gradient;
        double expected = (Forchheimer.mobilityRatio(gradient + h, permeability, inertial, MU, RHO)
                        - Forchheimer.mobilityRatio(gradient - h, permeability, inertial, MU, RHO))
                / (2 * h);
        double slope = Forchheimer.mobilityRatioSlope(gradient, permeability, inertial, MU, RHO);
        assertThat(slope / expected).isCloseTo(1, within(1e-7));
    }

    @Test
    void withoutInertiaOrGradientDarcysLawIsLeft() {
        assertThat(Forchheimer.mobilityRatio(1e3, 1e-7, 0, MU, RHO)).isEqualTo(1);
        assertThat(Forchheimer.mobilityRatioSlope(1e3, 1e-7, 0, MU, RHO)).isZero();
        assertThat(Forchheimer.mobilityRatio(0, 1e-7, 1000, MU, RHO)).isEqualTo(1);
    }

    /** Ergun (Chemical Engineering Progress 48, 1952), constants from memory; values worked out here as printed. */
    @ParameterizedTest
    @CsvSource({
        " 2, 0.40, 4.74e-9,  8203,  2.6, 0.05",
        " 5, 0.40, 2.96e-8,  3281,  6.5, 0.1",
        "10, 0.40, 1.185e-7, 1641, 12.9, 0.05",
        "20, 0.38, 3.81e-7,   989,   25, 0.5",
        "20, 0.40, 4.74e-7,   820,   26, 0.5",
        "20, 0.45, 8.03e-7,   528,   28, 0.5",
        "30, 0.40, 1.07e-6,   547,   39, 0.5"
    })
    void ergun(double millimetres, double porosity, double permeability, double inertial, double c, double lastDigit) {
        double k = Forchheimer.ergunPermeability(millimetres / 1000, porosity);
        double beta = Forchheimer.ergunInertial(millimetres / 1000, porosity);
        assertThat(k).isCloseTo(permeability, withinPercentage(0.5));
        assertThat(beta).isCloseTo(inertial, within(0.6));
        assertThat(beta * RHO * k / MU).isCloseTo(c, within(lastDigit));
    }

    /** Ward (1964), constant from memory: 0.55 over the square root of the permeability, here of 1e-4 m. */
    @Test
    void ward() {
        assertThat(Forchheimer.wardInertial(1e-8)).isCloseTo(5500, within(1e-9));
    }
}
