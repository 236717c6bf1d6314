package slabfield.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What people write, read to the last digit. */
class QuantityTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\u0001',
            value = {
                "4 in | LENGTH | 0.1016",
                "7 ft | LENGTH | 2.1336",
                "12 ft 6 1/2 in | LENGTH | 3.8227",
                "12'6 1/2\" | LENGTH | 3.8227",
                "12'-6 1/2\" | LENGTH | 3.8227",
                "12\u20196\u00bd\u201d | LENGTH | 3.8227",
                "12\u2032 6\u2033 | LENGTH | 3.81",
                "12 FT 6 IN | LENGTH | 3.81",
                "-1 ft 6 in | LENGTH | -0.4572",
                "6 1/2 in | LENGTH | 0.1651",
                "1/2 in | LENGTH | 0.0127",
                "63.5\" | LENGTH | 1.6129",
                "3,82 m | LENGTH | 3.82",
                "0,250 m | LENGTH | 0.25",
                "1,250.5 m | LENGTH | 1250.5",
                "1.250,5 m | LENGTH | 1250.5",
                "1,250,000 mm | LENGTH | 1250",
                "1\u00a0250 mm | LENGTH | 1.25",
                "10\u00a0cm | LENGTH | 0.1",
                "10cm | LENGTH | 0.1",
                "-5 Pa | PRESSURE | -5",
                "\u22125 Pa | PRESSURE | -5",
                "+5 Pa | PRESSURE | 5",
                "1 inH2O | PRESSURE | 249.08891",
                "1 in. w.c. | PRESSURE | 249.08891",
                "1 inwc | PRESSURE | 249.08891",
                "1 in w.c. | PRESSURE | 249.08891",
                "1 inH\u2082O | PRESSURE | 249.08891",
                "25.4 mmH2O | PRESSURE | 249.08891",
                "1.5 mbar | PRESSURE | 150",
                "1.5 hPa | PRESSURE | 150",
                "2 kPa | PRESSURE | 2000",
                "100 CFM | FLOW | 0.0471947443200",
                "36 m3/h | FLOW | 0.01",
                "36 m\u00b3/h | FLOW | 0.01",
                "38 l/s | FLOW | 0.038",
                "60 L/min | FLOW | 0.001",
                "40 in2 | AREA | 0.0258064",
                "1 ft3 | VOLUME | 0.028316846592",
                "1 gal | VOLUME | 0.003785411784",
                "2e-8 m2 | PERMEABILITY | 2e-8",
                "1,5E-8 m2 | PERMEABILITY | 1.5e-8",
                "101325 darcy | PERMEABILITY | 1e-7",
                "0 1/m | PER_LENGTH | 0",
                "1641 1/m | PER_LENGTH | 1641",
                "20 cm2/m | AREA_PER_LENGTH | 0.002",
                "1 in2/ft | AREA_PER_LENGTH | 0.0021166666666666667",
                "1e-7 m/s/Pa | LEAKANCE | 1e-7",
                "1e-7 m/(s Pa) | LEAKANCE | 1e-7",
                "1e-4 m3/s/Pa/m | CONDUCTANCE_PER_LENGTH | 1e-4",
                "1e-3 m4/s/Pa | CONDUCTANCE_TIMES_LENGTH | 1e-3",
                "1e-3 m3/s/Pa | CONDUCTANCE | 1e-3",
                "36 m3/h/Pa^n | LEAK_COEFFICIENT | 0.01",
                "20 C | TEMPERATURE | 293.15",
                "20 \u00b0C | TEMPERATURE | 293.15",
                "68 F | TEMPERATURE | 293.15",
                "-40 F | TEMPERATURE | 233.15",
                "800 fpm | SPEED | 4.064",
                "60 W | POWER | 60",
                "95 % | FRACTION | 0.95"
            })
    void readsWhatPeopleWrite(String text, Dimension dimension, double expected) {
        assertThat(Quantity.parse(text, dimension)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\u0001',
            value = {
                "4 | LENGTH | \"4\" has no unit; a length needs its unit, for instance \"4 in\" or \"0.1 m\"",
                "12 1/2 | LENGTH | \"12 1/2\" has no unit; a length needs its unit, for instance \"4 in\" or \"0.1 m\"",
                "4 Pa | LENGTH | \"4 Pa\" is a pressure, but a length is wanted, for instance \"4 in\" or \"0.1 m\"",
                "4 in | PRESSURE | \"4 in\" is a length, but a pressure is wanted, for instance \"-250 Pa\" or \"-1 inH2O\"",
                "80 cfn | FLOW | \"80 cfn\" has the unknown unit \"cfn\" for a flow; did you mean \"cfm\"?",
                "80 furlong | FLOW | \"80 furlong\" has the unknown unit \"furlong\" for a flow; there are \"m3/s\", \"m3/h\", \"L/s\", \"L/min\", \"cfm\"",
                "1,250 m | LENGTH | \"1,250 m\" can mean two things: write \"1250\" or \"1.250\" for its number",
                "-1,250 m | LENGTH | \"-1,250 m\" can mean two things: write \"1250\" or \"1.250\" for its number",
                "1.2.3 m | LENGTH | \"1.2.3 m\" holds the number \"1.2.3\", which cannot be read",
                "1/0 in | LENGTH | \"1/0 in\" divides by zero",
                "12 ft 6 | LENGTH | \"12 ft 6\" ends without a unit; say what the last number is, for instance \"12 ft 6 in\"",
                "1 250 m | LENGTH | \"1 250 m\" holds two numbers; write one number without spaces in it, for instance \"4 in\" or \"0.1 m\"",
                "four inches | LENGTH | \"four inches\" is not a length; write a number and its unit, for instance \"4 in\" or \"0.1 m\"",
                "1e400 m | LENGTH | \"1e400 m\" is too large a number"
            })
    void refusesWithTheRemedy(String text, Dimension dimension, String message) {
        assertThatThrownBy(() -> Quantity.parse(text, dimension))
                .isInstanceOf(NotAQuantity.class)
                .hasMessage(message);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "-", "NaN m", "Infinity m", "1e99999999 m", "0x10 m", "m", "--5 m", ", m"})
    void neverReadsNonsense(String text) {
        assertThatThrownBy(() -> Quantity.parse(text, Dimension.LENGTH)).isInstanceOf(NotAQuantity.class);
    }

    @Test
    void refusesEndlessText() {
        assertThatThrownBy(() -> Quantity.parse("1".repeat(100_000) + " m", Dimension.LENGTH))
                .hasMessage("\"11111111111111111111...\" is too long for a length");
    }

    @ParameterizedTest
    @CsvSource({
        "0.1016, INCH, 3, 4 in",
        "0.0377557954, CFM, 4, 80 cfm",
        "-0.04, PASCAL, 1, -0.04 Pa",
        "0, PASCAL, 3, 0 Pa",
        "-0.0, PASCAL, 3, 0 Pa",
        "2e-8, SQUARE_METRE_OF_PERMEABILITY, 3, 2e-8 m2",
        "1.23456e9, PASCAL, 3, 1.23e9 Pa",
        "1234567, PASCAL, 3, 1230000 Pa",
        "293.15, FAHRENHEIT, 4, 68 F",
        "NaN, PASCAL, 3, no value"
    })
    void writesSignificantDigits(double value, Unit unit, int digits, String text) {
        assertThat(Quantity.format(value, unit, digits)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({
        "-0.449, PASCAL, 1, -0.4 Pa",
        "2, PASCAL, 1, 2.0 Pa",
        "12.5, PASCAL, 0, 13 Pa",
        "NaN, PASCAL, 1, no value"
    })
    void writesDecimals(double value, Unit unit, int decimals, String text) {
        assertThat(Quantity.formatDecimals(value, unit, decimals)).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({
        "3.8227, 12 ft 6 1/2 in",
        "3.6576, 12 ft",
        "0.1524, 6 in",
        "0.003175, 1/8 in",
        "0.00635, 1/4 in",
        "0.028575, 1 1/8 in",
        "0, 0 in",
        "0.001, 0 in",
        "-0.001, 0 in",
        "-0.4572, -1 ft 6 in",
        "0.30479, 1 ft",
        "NaN, no value"
    })
    void writesFeetAndInches(double metres, String text) {
        assertThat(Quantity.feetInches(metres)).isEqualTo(text);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 1.0 / 3, -2.5e-13, 1.185e-7, 1641, 6.02e23, 0, Double.MIN_VALUE})
    void exactTextReadsBackToTheSameNumber(double value) {
        String text = Quantity.exact(value, Unit.METRE);
        assertThat(Quantity.parse(text, Dimension.LENGTH)).isEqualTo(value);
    }

    @ParameterizedTest
    @EnumSource
    void everyUnitReadsItsOwnSymbolAndAliasesAndGoesBack(Unit unit) {
        assertThat(Unit.find(unit.symbol(), unit.dimension())).contains(unit);
        for (String alias : unit.aliases())
            assertThat(Unit.find(alias, unit.dimension())).contains(unit);
        for (double number : new double[] {-12.75, 0, 1, 0.1, 1e-9, 12345.678})
            assertThat(unit.fromSi(unit.toSi(number))).isCloseTo(number, within(1e-12 * (1000 + Math.abs(number))));
        assertThat(unit.toSi(Double.NaN)).isNaN();
    }

    @ParameterizedTest
    @EnumSource
    void everyKindReadsItsExamples(Dimension dimension) {
        assertThat(dimension.examples()).allSatisfy(e -> Quantity.parse(e, dimension));
        assertThat(Unit.of(dimension)).isNotEmpty();
    }

    @Test
    void whatIsTooSmallForADoubleIsZeroWithoutASign() {
        assertThat(Quantity.parse("-21e-400 Pa", Dimension.PRESSURE)).isEqualTo(0.0);
        assertThat(Double.doubleToRawLongBits(Quantity.parse("-21e-400 Pa", Dimension.PRESSURE)))
                .isZero();
    }
}
