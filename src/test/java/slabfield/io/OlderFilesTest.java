package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.safety.Answer;
import slabfield.safety.Gate;
import slabfield.safety.JobRecord;

/** Files of older versions, kept as they were, are brought up to date as they are read. */
class OlderFilesTest {
    private static final Path OLDER = Path.of("src", "test", "resources", "slabfield", "older");

    @Test
    void aScenarioOfVersion0HasItsReadingsInStages() throws Exception {
        Scenario scenario = ScenarioReader.read(OLDER.resolve("version-0.json"));
        assertThat(scenario.stages()).extracting(Stage::id).containsExactly("before sealing", "joint filled");
        assertThat(scenario.stages().get(0).holes()).hasSize(2);
        assertThat(scenario.stages().get(0).holes().get(0).fanOn()).hasValue(-0.4);
        assertThat(scenario.stages().get(1).holes())
                .singleElement()
                .satisfies(r -> assertThat(r.fanOn()).hasValue(-3.1));
        assertThat(scenario.layer().fill().thickness()).isEqualTo(0.1);
        assertThat(ScenarioReader.read(ScenarioWriter.toJson(scenario), "again"))
                .isEqualTo(scenario);
    }

    @Test
    void theFileItselfIsNotTouched() throws Exception {
        byte[] before = Files.readAllBytes(OLDER.resolve("version-0.json"));
        ScenarioReader.read(OLDER.resolve("version-0.json"));
        assertThat(Files.readAllBytes(OLDER.resolve("version-0.json"))).isEqualTo(before);
    }

    @Test
    void mistakesOfAnOlderFileAreStillFound() throws IOException {
        String text = Files.readString(OLDER.resolve("version-0.json")).replace("\"hole\": \"T2\"", "\"hole\": \"T9\"");
        assertThatThrownBy(() -> ScenarioReader.read(text, "old.json")).hasMessageContaining("T9");
    }

    @Test
    void aRecordOfVersion1SaysNothingOfTheJob() throws Exception {
        JobRecord record = RecordFile.read(OLDER.resolve("record-version-1.json"));
        assertThat(record.details()).isEmpty();
        assertThat(record.answer(Gate.UTILITIES)).map(a -> a.answer()).contains(Answer.YES);
        assertThat(record.radonTests())
                .singleElement()
                .satisfies(t -> assertThat(t.result()).isEqualTo("61 Bq/m3"));
        assertThat(RecordFile.read(RecordFile.toJson(record), "again")).isEqualTo(record);
        assertThat(RecordFile.toJson(record)).contains("\"slabfieldRecord\": 2");
    }

    @Test
    void aRecordOfANewerProgramIsRefused() {
        assertThatThrownBy(() -> RecordFile.read("{ \"slabfieldRecord\": 99, \"scenario\": \"x\" }", "new"))
                .hasMessageContaining("newer Slabfield");
    }
}
