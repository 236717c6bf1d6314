package slabfield.desktop.drawing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import slabfield.quantity.Unit;

class TypedTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "12'6 1/2\"     | 3.8227",
                "12' 6.5        | 3.8227",
                "12-6.5         | 3.8227",
                "12-6 1/2       | 3.8227",
                "12 ft 6 1/2 in | 3.8227",
                "3.82 m         | 3.82",
                "3,82 m         | 3.82",
                "382 cm         | 3.82",
                "10             | 3.048",
                "10.5           | 3.2004",
                "7 1/2          | 2.286",
                "1'+6\"         | 0.4572",
                "2 m + 10       | 5.048",
                "\u221210       | -3.048",
                "12\u20196\u201d | 3.81"
            })
    void lengthsAsTheyAreTyped(String text, double metres) {
        assertThat(Typed.length(text, Unit.FOOT)).isCloseTo(metres, within(1e-9));
    }

    @Test
    void aNumberAloneHasTheUnitShown() {
        assertThat(Typed.length("3.2", Unit.METRE)).isEqualTo(3.2);
        assertThat(Typed.length("3.2 ft", Unit.METRE)).isCloseTo(0.97536, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "abc", "3 Pa", "1,250", "3++4"})
    void whatIsNoLengthIsSaidInWords(String text) {
        assertThatThrownBy(() -> Typed.length(text, Unit.FOOT))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("\"");
    }

    @Test
    void anglesAreDegrees() {
        assertThat(Typed.angle("90")).isCloseTo(Math.PI / 2, within(1e-12));
        assertThat(Typed.angle("-45\u00b0")).isCloseTo(-Math.PI / 4, within(1e-12));
        assertThatThrownBy(() -> Typed.angle("north")).hasMessageContaining("is not an angle");
    }
}
