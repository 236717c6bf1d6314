package slabfield.desktop.viewmodel.work;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class KeypadTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "4.2|4.2|1",
                "-4,2|-4.2|1",
                "4-2|-42|0",
                ",5|0.5|1",
                "1.2.5|1.25|2",
                "-0.0|0|1",
                "\u22127|-7|0",
                "12abc|12|0"
            })
    void keysMakeANumber(String typed, double value, int decimals) {
        Keypad keypad = new Keypad();
        for (char c : typed.toCharArray()) keypad.type(c);
        assertThat(keypad.value()).hasValue(value);
        assertThat(keypad.decimals()).isEqualTo(decimals);
    }

    @Test
    void itIsShownWithTheMarkChosenAndTakenBackKeyByKey() {
        Keypad keypad = new Keypad();
        keypad.start(true);
        assertThat(keypad.value()).isEmpty();
        assertThat(keypad.shown(',')).isEqualTo("\u2212");
        for (char c : "3.5".toCharArray()) keypad.type(c);
        assertThat(keypad.shown(',')).isEqualTo("\u22123,5");
        for (int i = 0; i < 3; i++) keypad.back();
        assertThat(keypad.isEmpty()).isTrue();
        keypad.back();
        assertThat(keypad.shown('.')).isEmpty();
    }

    @Test
    void aNumberDoesNotGrowWithoutEnd() {
        Keypad keypad = new Keypad();
        for (int i = 0; i < 40; i++) keypad.digit(9);
        assertThat(keypad.value().orElseThrow()).isLessThan(1e10);
    }
}
