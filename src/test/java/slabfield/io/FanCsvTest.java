package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import slabfield.model.FanOffer;

class FanCsvTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "flow cfm,rise inH2O,power W\n0,1.5,40\n60,1.1,44\n120,0,42\n",
                "\ufeffFlow [cfm];Rise [inH2O];Power [W]\r\n0;1,5;40\r\n60;1,1;44\r\n\r\n120;0;42\r\n",
                "power_W,rise_inH2O,flow_cfm\n40,1.5,0\n44,1.1,60\n42,0,120"
            })
    void readsColumnsByTheirHeading(String text) throws ScenarioProblems {
        FanOffer fan = FanCsv.read(text, "f.csv", "f");
        assertThat(fan.id()).isEqualTo("f");
        assertThat(fan.watts()).containsExactly(40.0, 44.0, 42.0);
        assertThat(fan.curve().rises().get(1)).isCloseTo(1.1 * 249.08891, within(1e-9));
        assertThat(fan.curve().flows().get(2)).isCloseTo(120 * 4.719474432e-4, within(1e-12));
        assertThat(fan.invented()).isFalse();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\u0001',
            value = {
                "flow cfm,rise inches\\n0,1\\n | \"rise inches\" is no heading",
                "flow cfm,power W\\n0,1\\n | needs one column of flow and one of rise",
                "flow cfm,rise Pa\\n0,1\\n5\\n | line 3  1 values stand under 2 headings",
                "flow cfm,rise Pa\\n0,x\\n5,1\\n | line 2",
                "flow cfm,rise Pa\\n0,1\\n5,2\\n | the curve must lose pressure as its flow grows",
                "flow cfm,rise Pa\\n | at least two points"
            })
    void saysWhatIsWrong(String text, String message) {
        assertThatThrownBy(() -> FanCsv.read(text.replace("\\n", "\n"), "f.csv", "f"))
                .isInstanceOf(ScenarioProblems.class)
                .hasMessageContaining(message);
    }

    @Test
    void takesItsNameFromTheFile(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("Small fan.csv"), "flow cfm,rise Pa\n0,100\n50,0\n");
        assertThat(FanCsv.read(file).id()).isEqualTo("Small fan");
        assertThatThrownBy(() -> FanCsv.read(folder.resolve("none.csv"))).hasMessageContaining("cannot be read");
    }
}
