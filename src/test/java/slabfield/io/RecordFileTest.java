package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.safety.Answer;
import slabfield.safety.Blocked;
import slabfield.safety.DraftStep;
import slabfield.safety.DraftTest;
import slabfield.safety.Gate;
import slabfield.safety.GateAnswer;
import slabfield.safety.JobRecord;
import slabfield.safety.RadonTest;

class RecordFileTest {
    private static final LocalDateTime TIME = LocalDateTime.parse("2026-01-20T14:05");
    private static final String SHORT = "{ \"slabfieldRecord\": 1, \"scenario\": \"House\" }";

    private static JobRecord full() throws Blocked {
        DraftTest test = new DraftTest(
                "water heater",
                true,
                DraftTest.Outcome.PASSED,
                Map.of(DraftStep.SHUT, Answer.YES, DraftStep.RADON_FAN, Answer.NOT_PRESENT),
                OptionalDouble.of(-3.5),
                OptionalDouble.of(-2),
                OptionalDouble.of(20),
                OptionalDouble.of(15.5),
                "B",
                TIME,
                "windy");
        return JobRecord.empty("House")
                .with(Gate.UTILITIES, new GateAnswer(Answer.YES, "A", TIME, "marked in red"))
                .with(Gate.STRUCTURAL_SLAB, new GateAnswer(Answer.NOT_PRESENT, "", TIME, ""))
                .with(Gate.DUST, new GateAnswer(Answer.NO, "", TIME, ""))
                .with(test)
                .started(TIME)
                .with(new RadonTest(TIME.plusDays(2), "1.2 pCi/L"));
    }

    @Test
    void isWrittenAndReadBackEqual(@TempDir Path folder) throws Exception {
        Path file = RecordFile.beside(folder.resolve("house.json"));
        assertThat(file).hasFileName("house.record.json");
        RecordFile.write(file, full());
        assertThat(RecordFile.read(file)).isEqualTo(full());
    }

    @Test
    void unansweredIsWrittenAsUnanswered() throws Exception {
        String text = RecordFile.toJson(JobRecord.empty("House"));
        assertThat(text.split("\"answer\": \"unanswered\"")).hasSize(8);
        assertThat(RecordFile.read(text, "r")).isEqualTo(JobRecord.empty("House"));
        assertThat(RecordFile.toJson(full())).contains("\"weather\": \"unanswered\"");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\u0001',
            value = {
                "\"slabfieldRecord\": 1 | \"slabfieldRecord\": 0 | this is no job record of version 2",
                "\"scenario\": \"House\" | \"scenario\": \"House\", \"startup\": \"2026-01-20T14:05\" | did you mean \"startUp\"?",
                "\"scenario\": \"House\" | \"scenario\": \"House\", \"startUp\": \"20 Jan\" | must be a local time such as 2026-01-20T14:05",
                "\"scenario\": \"House\" | \"scenario\": \"House\", \"completed\": \"2026-01-20T14:05\" | cannot be said yet: \"combustion\" is unanswered.",
                "\"scenario\": \"House\" | \"scenario\": \"House\", \"gates\": { \"fire\": {} } | there is no gate \"fire\"",
                "\"scenario\": \"House\" | \"scenario\": \"House\", \"gates\": { \"utilities\": { \"answer\": \"yes\" } } | an answer needs its \"time\"",
                "\"scenario\": \"House\" | \"scenario\": \"House\", \"gates\": { \"utilities\": { \"answer\": \"maybe\" } } | is not one of the words for \"answer\"",
                "\"scenario\": \"House\" | \"scenario\": \"House\", \"gates\": { \"CO alarm\": { \"answer\": \"not present\", \"time\": \"2026-01-20T14:05\" } } | answer \"yes\" or \"no\"",
                "\"scenario\": \"House\" | \"scenario\": \"House\", \"radonTests\": [{ \"start\": \"2026-01-20T14:05\" }] | the fan was not started"
            })
    void saysWhatIsWrong(String good, String bad, String message) {
        assertThatThrownBy(() -> RecordFile.read(SHORT.replace(good, bad), "r.json"))
                .isInstanceOf(ScenarioProblems.class)
                .hasMessageContaining(message);
    }

    @Test
    void aMissingFileIsSaidPlainly(@TempDir Path folder) throws IOException {
        assertThatThrownBy(() -> RecordFile.read(folder.resolve("none.json")))
                .hasMessageContaining("the record cannot be read");
    }
}
