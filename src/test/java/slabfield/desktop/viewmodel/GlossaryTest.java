package slabfield.desktop.viewmodel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class GlossaryTest {
    private final Glossary small = new Glossary("""
            # Words

            | word | in plain language | term elsewhere |
            | --- | --- | --- |
            | pit | hollow below the core hole | suction pit |
            | suction point | place where air is drawn | - |
            | point | one place | - |
            """);

    private static List<String> words(Glossary glossary, String text) {
        return glossary.in(text).stream().map(Glossary.Word::word).toList();
    }

    @Test
    void wholeWordsAreFoundWhateverTheirCaseAndNumber() {
        assertThat(words(small, "Pit S1")).containsExactly("pit");
        assertThat(words(small, "Both pits:")).containsExactly("pit");
        assertThat(words(small, "pitch of a spitfire")).isEmpty();
    }

    @Test
    void aWordWithinALongerOneIsLeftOut() {
        assertThat(words(small, "Suction points")).containsExactly("suction point");
        assertThat(words(small, "suction point or another point")).containsExactly("suction point", "point");
    }

    @Test
    void aLineSaysWordTermAndMeaning() {
        assertThat(small.explain("the pit")).isEqualTo("pit (suction pit): hollow below the core hole");
        assertThat(small.explain("a point")).isEqualTo("point: one place");
        assertThat(small.explain("the weather")).isEmpty();
    }

    @Test
    void theProgramsOwnWordsExplainTheFirstNumbers() {
        Glossary own = Glossary.ofProgram();
        assertThat(words(own, "Exhaust")).contains("exhaust");
        assertThat(words(own, "Pit S1")).contains("pit");
        assertThat(words(own, "\u00b1 Band [Pa]")).contains("band");
    }
}
