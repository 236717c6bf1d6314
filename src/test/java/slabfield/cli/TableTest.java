package slabfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class TableTest {
    @Test
    void wordsStandLeftAndNumbersRight() {
        Table table = new Table(Table.words("hole"), Table.number("Pa"))
                .row("T1", "-44.0")
                .row("north-east", "0.4");
        assertThat(table.lines())
                .containsExactly("hole           Pa", "----------  -----", "T1          -44.0", "north-east    0.4");
    }

    @Test
    void longWordsAreBrokenSoThatAPageIsKept() {
        Table table = new Table(Table.words("source"), Table.number("cfm"))
                .row("joint ".repeat(30) + "x".repeat(250), "1.0")
                .row("soil", "2.0");
        List<String> lines = table.lines();
        assertThat(lines).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(Table.WIDTH));
        assertThat(String.join("", lines).replace(" ", "")).contains("x".repeat(250));
        assertThat(lines.get(lines.size() - 1))
                .startsWith("soil ")
                .endsWith("  2.0")
                .hasSize(Table.WIDTH);
    }

    @Test
    void whatWouldSteerATerminalIsShownAsAQuestionMark() {
        assertThat(new Table(Table.words("id")).row("a\u001b[31mb\u0007\nc").lines())
                .last()
                .isEqualTo("a?[31mb? c");
    }
}
