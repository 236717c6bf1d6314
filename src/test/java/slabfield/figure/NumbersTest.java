package slabfield.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumbersTest {
    @ParameterizedTest
    @CsvSource({
        "-120,−120",
        "38.42,38.4",
        "-4.234,−4.2",
        "9.97,10.0",
        "0.4,0.40",
        "-0.01712,−0.017",
        "0.00123,0.0012",
        "0.00001,≈0",
        "-0.00001,≈0",
        "0,≈0",
        "NaN,none",
        "1234.5,1234"
    })
    void computedNumbersShowTheDigitsTheyCanBear(double value, String text) {
        assertThat(UnitsShown.number(value)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({"5,5", "-100,−100", "0.02007,0.02", "12.5,12.5", "0,0", "1e-3,0.001", "-0.5,−0.5"})
    void roundNumbersHaveNoZerosThatAddNothing(double value, String text) {
        assertThat(UnitsShown.trimmed(value)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({"0,0 %", "0.001,less than 1 %", "0.42,42 %", "0.998,more than 99 %", "1,100 %", "NaN,an unknown part"})
    void percentsSayAllAndNoneOnlyWhereMeant(double part, String text) {
        assertThat(Legend.percent(part)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({"1,1,1", "1.1,2,1", "2,2,2", "4.9,5,2", "7,10,5", "0.03,0.05,0.02", "1000,1000,1000"})
    void theSeriesBracketsAValue(double value, double above, double below) {
        assertThat(Steps.atLeast(value)).isEqualTo(above, within(1e-9 * above));
        assertThat(Steps.atMost(value)).isEqualTo(below, within(1e-9 * below));
    }

    @Test
    void theSeriesBetweenTwoValuesHoldsItsEnds() {
        assertThat(Steps.between(0.5, 20)).containsExactly(0.5, 1.0, 2.0, 5.0, 10.0, 20.0);
        assertThat(Steps.multiples(2, -3, 4)).containsExactly(-2.0, 0.0, 2.0, 4.0);
    }

    @Test
    void aWideFieldHasTheSeriesAndANarrowOneEvenSteps() {
        var wide = Levels.of(HeatMapTest.field(50, 1, (x, y) -> -100 * Math.exp(-x / 8)), 5, 1);
        assertThat(wide)
                .extracting(Levels.Level::pressure)
                .containsExactlyInAnyOrder(-50.0, -20.0, -10.0, -2.0, -1.0, -0.5);
        assertThat(wide)
                .filteredOn(Levels.Level::index)
                .extracting(Levels.Level::pressure)
                .containsExactlyInAnyOrder(-50.0, -10.0, -1.0, -0.5);
        var narrow = Levels.of(HeatMapTest.field(50, 1, (x, y) -> -30 - x / 10), 5, 1);
        assertThat(narrow).extracting(Levels.Level::pressure).containsExactly(-31.0, -32.0, -33.0, -34.0);
    }

    @Test
    void aFieldOfBothSignsHasItsZeroLine() {
        assertThat(Levels.of(HeatMapTest.field(50, 1, (x, y) -> x - 40), 5, 1)).contains(new Levels.Level(0, true));
    }
}
