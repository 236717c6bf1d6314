package slabfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.quantity.Dimension;
import slabfield.quantity.Unit;

class ShownTest {
    private static Shown with(String pressure, String flow, String length) {
        return new Shown(
                Unit.find(pressure, Dimension.PRESSURE).orElseThrow(),
                Unit.find(flow, Dimension.FLOW).orElseThrow(),
                Unit.find(length, Dimension.LENGTH).orElseThrow());
    }

    @ParameterizedTest
    @CsvSource({
        "-5, Pa, -5.0",
        "-5.06, Pa, -5.1",
        "-0.04, Pa, 0.0",
        "-249.08891, inH2O, -1.0000",
        "-0.1, inH2O, -0.0004",
        "-5, kPa, -0.0050",
        "NaN, Pa, -"
    })
    void pressuresGoDownToATenthOfAPascal(double si, String unit, String text) {
        assertThat(with(unit, "L/s", "m").pressure(si)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({"0.0377557, cfm, 80.0", "0.038, L/s, 38.00", "0.01, m3/h, 36.0"})
    void flowsGoDownToATenthOfACfm(double si, String unit, String text) {
        assertThat(with("Pa", unit, "m").flow(si)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({"0, 0.0 %", "1, 100.0 %", "0.0001, <0.1 %", "0.9999, >99.9 %", "0.5, 50.0 %", "NaN, -", "-0.25, -25.0 %"
    })
    void nothingAndAllAreSaidOnlyWhereTheyAreMeant(double part, String text) {
        assertThat(Shown.percent(part)).isEqualTo(text);
    }
}
