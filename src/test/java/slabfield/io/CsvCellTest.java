package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A text of a stranger's cannot become a formula in a spreadsheet, and comes back as it was. */
class CsvCellTest {
    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '`',
            delimiter = '|',
            value = {
                "sump|sump",
                "near door, left|\"near door, left\"",
                "3\" pipe|\"3\"\" pipe\"",
                "a;b|\"a;b\"",
                "-5.5|-5.5",
                "+1e-3|+1e-3",
                "=1+1|'=1+1",
                "+1+1|'+1+1",
                "-cmd|'-cmd",
                "@SUM(A1)|'@SUM(A1)",
                "=A1,B1|\"'=A1,B1\"",
                "-1e5000|'-1e5000",
                "\uff1dA1|'\uff1dA1"
            })
    void isQuotedWhereItMustBeAndNeverAFormula(String text, String cell) {
        assertThat(CsvCell.of(text)).isEqualTo(cell);
    }

    @Test
    void spacesAndLineEndsHideNoFormula() {
        assertThat(CsvCell.of(" =A1")).isEqualTo("' =A1");
        assertThat(CsvCell.of("\t=A1")).isEqualTo("\"'\t=A1\"");
        assertThat(CsvCell.of("\r=A1")).isEqualTo("\"'\r=A1\"");
        assertThat(CsvCell.of("two\nlines")).isEqualTo("\"two\nlines\"");
        assertThat(CsvCell.of("")).isEmpty();
    }
}
