package slabfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import slabfield.diagnosis.Cause;

class DiagnoseVerbTest {
    @TempDir
    Path folder;

    @Test
    void causesAreListedWithTheNextCheckAndTheChecklist() throws IOException {
        Ran ran = Ran.of("diagnose", SmallHouse.in(folder), "--checklist");
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out())
                .contains(
                        "Weighed against all readings",
                        "probability",
                        "check",
                        "What cannot be weighed",
                        "STOP.",
                        Page.SIGN);
        assertThat(ran.out().lines()).allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void theNumbersAreWritten() throws IOException {
        JsonNode root = new ObjectMapper()
                .readTree(
                        Ran.of("diagnose", SmallHouse.in(folder), "--json", "-").out());
        double sum = 0;
        for (JsonNode cause : root.path("causes"))
            sum += cause.path("probability").asDouble();
        assertThat(sum).isBetween(0.999999, 1.000001);
        assertThat(root.path("answer").asText()).isIn("told", "as drawn", "cannot tell");
        assertThat(root.path("checklist")).isNotEmpty();
    }

    @Test
    void progressSaysWhichExplanationAndHowFar() throws IOException {
        Ran ran = Ran.of("diagnose", SmallHouse.in(folder), "--progress");
        assertThat(ran.code()).isZero();
        assertThat(ran.err())
                .contains("\r  0 %  fit 1 of ", Cause.AS_DRAWN.words(), Cause.LEAK.words(), "\r100 %")
                .endsWith("\n");
        assertThat(Ran.of("diagnose", SmallHouse.in(folder)).err()).isEmpty();
    }

    @Test
    void aCheckThatWouldSayNothingIsNotRecommended() {
        String out = Ran.of("diagnose", "scenarios/stone-footing.json").out();
        assertThat(out)
                .contains("None of those tried would tell the first two apart.")
                .doesNotContain("errors apart");
    }

    @Test
    void withoutReadingsThereIsNothingToWeigh() throws IOException {
        Ran ran = Ran.of(
                "diagnose",
                SmallHouse.put(
                        folder, "bare.json", SmallHouse.TEXT.replaceAll("(?s),\\s*\"stages\": \\[.*\\] }\\s*$", " }")));
        assertThat(ran.code()).isEqualTo(2);
        assertThat(ran.err()).contains("too little to fit");
    }
}
