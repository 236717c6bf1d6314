package slabfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import slabfield.diagnosis.Cause;
import slabfield.diagnosis.Diagnoser;
import slabfield.diagnosis.Diagnosis;
import slabfield.diagnosis.NextCheck;
import slabfield.field.Progress;
import slabfield.io.ScenarioReader;
import slabfield.model.Scenario;
import slabfield.quantity.Unit;

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

    private String page(double separation) throws Exception {
        Scenario house = ScenarioReader.read(SmallHouse.TEXT, "house");
        Diagnosis found = Diagnoser.diagnose(house, Progress.NONE);
        var check = new NextCheck(NextCheck.Effort.READ_FLOW, "Read it.", "flow there", -4, -5, false, separation);
        return new DiagnosePage(
                        house,
                        new Diagnosis(found.answer(), found.causes(), Optional.of(check), found.notes()),
                        false,
                        new Shown(Unit.PASCAL, Unit.LITRE_PER_SECOND, Unit.METRE))
                .text();
    }

    @Test
    void aCheckThatWouldSayNothingIsNotRecommended() throws Exception {
        assertThat(page(0.4))
                .contains("None of those tried would tell the first two apart.")
                .doesNotContain("Read it.");
        assertThat(page(2)).contains("No single check", "Read it.", "(2.0 standard");
        assertThat(page(4)).contains("Read it.").doesNotContain("No single check");
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
