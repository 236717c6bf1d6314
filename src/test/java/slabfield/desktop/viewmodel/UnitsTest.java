package slabfield.desktop.viewmodel;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.model.Display;
import slabfield.model.Point;
import slabfield.quantity.Unit;

class UnitsTest {
    private final Units units = new Units();

    @ParameterizedTest
    @CsvSource({
        "PASCAL, -249.08891, '−249 Pa'",
        "INCH_OF_WATER, -249.08891, '−1.0 inH2O'",
        "INCH_OF_WATER, -5, '−0.020 inH2O'",
        "PASCAL, 0.36, '0.36 Pa'"
    })
    void pressure(Unit unit, double si, String text) {
        units.pressure().set(unit);
        assertThat(units.pressure(si)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({
        "CFM, 0.0377557955, 80.0 cfm",
        "LITRE_PER_SECOND, 0.02, 20.0 L/s",
        "CUBIC_METRE_PER_HOUR, 0.01, 36.0 m3/h"
    })
    void flow(Unit unit, double si, String text) {
        units.flow().set(unit);
        assertThat(units.flow(si)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({"FOOT, 3.8227, '12 ft 6 1/2 in'", "METRE, 3.8227, 3.82 m"})
    void length(Unit unit, double si, String text) {
        units.length().set(unit);
        assertThat(units.length(si)).isEqualTo(text);
    }

    @Test
    void theProbeShowsBothUnitsOfPressureWhateverIsChosen() {
        units.pressure().set(Unit.INCH_OF_WATER);
        assertThat(units.bothPressures(-24.908891)).isEqualTo("−24.9 Pa = −0.10 inH2O");
    }

    @Test
    void aPressureThatIsNotThereIsSaidSo() {
        assertThat(units.pressure(Double.NaN)).isEqualTo("no pressure");
    }

    @Test
    void aScenarioBringsItsUnitsAndAnUnknownOneIsPassedOver() {
        units.take(new Display("inH2O", "cfm", "cubit"));
        assertThat(units.pressure().get()).isEqualTo(Unit.INCH_OF_WATER);
        assertThat(units.flow().get()).isEqualTo(Unit.CFM);
        assertThat(units.length().get()).isEqualTo(Unit.METRE);
        assertThat(units.place(new Point(1, 2))).isEqualTo("x 1.00 m, y 2.00 m");
    }

    @Test
    void theRasterIsHalfAnInchOrACentimetre() {
        assertThat(units.step()).isEqualTo(0.01);
        units.length().set(Unit.FOOT);
        assertThat(units.step()).isEqualTo(0.0127);
    }
}
