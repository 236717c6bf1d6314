package slabfield.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AirPropertiesTest {
    /** Sutherland's formula of the US Standard Atmosphere (1976), constants from memory; values worked out here. */
    @ParameterizedTest
    @CsvSource({
        "-20, 1.61533e-5, 1.39436",
        "0,   1.71608e-5, 1.29226",
        "10,  1.76515e-5, 1.24662",
        "15,  1.78938e-5, 1.22499",
        "20,  1.81341e-5, 1.20410",
        "25,  1.83723e-5, 1.18390"
    })
    void viscosityAndDensityAtSeaLevel(double celsius, double viscosity, double density) {
        AirState air = AirState.of(celsius + 273.15, 0);
        assertThat(air.viscosity()).isCloseTo(viscosity, withinPercentage(0.001));
        assertThat(air.density()).isCloseTo(density, withinPercentage(0.001));
    }

    /** US Standard Atmosphere (1976), from memory; density at the standard's own temperature, 6.5 K less each km. */
    @ParameterizedTest
    @CsvSource({
        "0,    101325, 1.2250",
        "500,   95461, 1.1673",
        "1000,  89876, 1.1117",
        "1500,  84560, 1.0581",
        "1600,  83528, 1.0476",
        "2000,  79501, 1.0066",
        "3000,  70121, 0.9093"
    })
    void standardAtmosphere(double altitude, double pressure, double density) {
        assertThat(AirProperties.pressureAtAltitude(altitude)).isCloseTo(pressure, within(1.0));
        double temperature = 288.15 - 0.0065 * altitude;
        assertThat(AirState.of(temperature, altitude).density()).isCloseTo(density, withinPercentage(0.02));
    }

    /** The rounded convention lies within 0.2 % of the formulas. */
    @Test
    void standardAirIsAirOf20Celsius() {
        AirState formulas = AirState.of(293.15, 0);
        assertThat(AirState.STANDARD).isEqualTo(new AirState(1.81e-5, 1.204));
        assertThat(AirState.STANDARD.viscosity()).isCloseTo(formulas.viscosity(), withinPercentage(0.2));
        assertThat(AirState.STANDARD.density()).isCloseTo(formulas.density(), withinPercentage(0.2));
    }
}
