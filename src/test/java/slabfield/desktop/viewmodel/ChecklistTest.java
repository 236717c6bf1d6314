package slabfield.desktop.viewmodel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.io.RecordFile;
import slabfield.io.ScenarioProblems;
import slabfield.safety.Answer;
import slabfield.safety.DraftStep;
import slabfield.safety.DraftTest;
import slabfield.safety.Gate;
import slabfield.safety.GateAnswer;
import slabfield.safety.JobRecord;

class ChecklistTest {
    private static final LocalDateTime NOON = LocalDateTime.of(2026, 1, 20, 12, 0);

    @TempDir
    Path folder;

    private final Document document = new Document(Bench.house());
    private final List<Workbench.Trouble> troubles = new ArrayList<>();
    private LocalDateTime now = NOON;
    private final Checklist checklist = new Checklist(document, troubles::add, () -> now);
    private Path file;
    private Path place;

    @BeforeEach
    void places() {
        file = folder.resolve("house.json");
        place = folder.resolve("house.record.json");
    }

    private void saved() {
        document.savedTo(file);
    }

    private JobRecord record() {
        return checklist.record().get().orElseThrow();
    }

    private JobRecord onDisk() throws ScenarioProblems {
        return RecordFile.read(place);
    }

    private void enter(DraftTest.Outcome outcome, boolean running) {
        checklist.draft().appliance().set("water heater");
        checklist.draft().fanRunning().set(Optional.of(running));
        checklist.draft().outcome().set(Optional.of(outcome));
        for (DraftStep step : DraftStep.values()) checklist.draft().step(step).set(Optional.of(Answer.YES));
        checklist.recordDraft();
    }

    @Test
    void anUnsavedHouseHasNoRecordAndSaysSo() {
        assertThat(checklist.record().get()).isEmpty();
        assertThat(checklist.note().get()).contains("save it first");
        checklist.answer(Gate.CO_ALARM, Answer.YES, "");
        assertThat(troubles).hasSize(1);
        saved();
        assertThat(record()).isEqualTo(JobRecord.empty("test house"));
        assertThat(place).doesNotExist();
    }

    @Test
    void everyAnswerIsWrittenAtOnceAsTheVerbReadsIt() throws ScenarioProblems {
        saved();
        checklist.by().set(" A. B. ");
        checklist.answer(Gate.UTILITIES, Answer.YES, " marked ");
        assertThat(onDisk().answer(Gate.UTILITIES)).contains(new GateAnswer(Answer.YES, "A. B.", NOON, "marked"));
        assertThat(onDisk()).isEqualTo(record());
        assertThat(RecordWords.answer(record(), Gate.UTILITIES)).isEqualTo("yes, A. B., 2026-01-20 12:00");
        assertThat(RecordWords.answer(record(), Gate.CO_ALARM)).isEqualTo("UNANSWERED");
        assertThat(RecordWords.unanswered(record())).isEqualTo("6 of 7 unanswered");
    }

    @Test
    void theSameAnswerAgainKeepsItsTimeAndAnAnswerCanBeTakenBack() {
        saved();
        checklist.answer(Gate.CO_ALARM, Answer.YES, "");
        now = NOON.plusHours(1);
        checklist.answer(Gate.CO_ALARM, Answer.YES, "");
        assertThat(record().answer(Gate.CO_ALARM).orElseThrow().time()).isEqualTo(NOON);
        checklist.takeBack(Gate.CO_ALARM);
        assertThat(record().answer(Gate.CO_ALARM)).isEmpty();
    }

    @Test
    void whatAnotherProgramWroteMeanwhileIsKept() throws IOException, ScenarioProblems {
        saved();
        checklist.answer(Gate.CO_ALARM, Answer.YES, "");
        RecordFile.write(place, onDisk().with(Gate.LAW, new GateAnswer(Answer.NO, "C. D.", NOON, "")));
        checklist.answer(Gate.UTILITIES, Answer.NO, "");
        assertThat(onDisk().answers()).containsOnlyKeys(Gate.CO_ALARM, Gate.LAW, Gate.UTILITIES);
    }

    @Test
    void aRecordThatCannotBeReadIsLeftAsItIs() throws IOException {
        Files.writeString(place, "{ broken");
        saved();
        assertThat(checklist.record().get()).isEmpty();
        assertThat(checklist.note().get()).contains("cannot be read");
        checklist.answer(Gate.CO_ALARM, Answer.YES, "");
        assertThat(troubles).hasSize(1);
        assertThat(place).hasContent("{ broken");
    }

    @Test
    void aFailedDraftTestBlocksTheStartInTheRecord() throws ScenarioProblems {
        saved();
        enter(DraftTest.Outcome.FAILED, false);
        assertThat(RecordWords.fan(record())).isEqualTo("start blocked");
        checklist.start();
        assertThat(onDisk().startUp()).isEmpty();
        assertThat(troubles).hasSize(1);
        assertThat(troubles.get(0).text()).contains("water heater");
        now = NOON.plusHours(1);
        enter(DraftTest.Outcome.PASSED, false);
        checklist.start();
        assertThat(onDisk().startUp()).contains(now);
        assertThat(RecordWords.fan(record())).isEqualTo("started 2026-01-20 13:00");
    }

    @Test
    void completeOnlyWhenAllIsAnswered() throws ScenarioProblems {
        saved();
        checklist.complete();
        assertThat(onDiskOrEmpty().completed()).isEmpty();
        assertThat(troubles.get(0).text()).contains("unanswered");
        for (Gate gate : Gate.values()) if (gate.mustBeAnswered()) checklist.answer(gate, Answer.YES, "");
        enter(DraftTest.Outcome.PASSED, false);
        now = NOON.plusHours(1);
        checklist.start();
        enter(DraftTest.Outcome.PASSED, true);
        assertThat(RecordWords.state(record())).isEqualTo("nothing is open; not marked complete");
        checklist.complete();
        assertThat(onDisk().completed()).contains(now);
        checklist.takeBack(Gate.LAW);
        assertThat(onDisk().completed()).isEmpty();
        assertThat(RecordWords.state(record())).isEqualTo("open");
    }

    private JobRecord onDiskOrEmpty() throws ScenarioProblems {
        return Files.exists(place) ? onDisk() : JobRecord.empty("test house");
    }

    @Test
    void anEntryThatIsWrongTellsAllThatIsAndIsNotLost() {
        saved();
        checklist.draft().housePressure().set("-3");
        checklist.draft().carbonMonoxide().set("much");
        checklist.recordDraft();
        assertThat(troubles.get(0).text())
                .contains("Appliance", "Radon fan", "Outcome", "House pressure", "Carbon monoxide");
        assertThat(checklist.draft().isBegun()).isTrue();
        assertThat(checklist.draft().housePressure().get()).isEqualTo("-3");
        assertThat(record().draftTests()).isEmpty();
    }

    @Test
    void readingsOfATestAreTakenWithTheirUnits() {
        saved();
        checklist.draft().housePressure().set("-0.01 inH2O");
        checklist.draft().draft().set("-5 Pa");
        checklist.draft().spillage().set("40 s");
        checklist.draft().carbonMonoxide().set("12 ppm");
        enter(DraftTest.Outcome.PASSED, true);
        DraftTest test = record().draftTests().get(0);
        assertThat(test.housePressure()).hasValue(-2.4908891);
        assertThat(test.draft()).hasValue(-5);
        assertThat(test.spillage()).hasValue(40);
        assertThat(test.carbonMonoxide()).hasValue(12);
        assertThat(RecordWords.openSteps(test)).isEqualTo("none");
        assertThat(checklist.draft().isBegun()).isFalse();
    }

    @ParameterizedTest
    @CsvSource({"2026-01-19T08:30, true", "2026-01-19 08:30, true", "yesterday, false"})
    void aTimeCanBeGiven(String given, boolean taken) {
        saved();
        checklist.time().set(given);
        checklist.answer(Gate.CO_ALARM, Answer.YES, "");
        assertThat(record().answer(Gate.CO_ALARM).isPresent()).isEqualTo(taken);
        if (taken)
            assertThat(record().answer(Gate.CO_ALARM).orElseThrow().time())
                    .isEqualTo(LocalDateTime.of(2026, 1, 19, 8, 30));
        else assertThat(troubles.get(0).text()).contains("yesterday");
    }

    @Test
    void aRadonTestThatStartsTooSoonIsRefused() {
        saved();
        checklist.start();
        now = NOON.plusHours(23);
        assertThat(checklist.radonTest("")).isFalse();
        assertThat(troubles.get(0).text()).contains("24 h");
        now = NOON.plusHours(24);
        assertThat(checklist.radonTest("running")).isTrue();
        assertThat(record().radonTests()).hasSize(1);
    }

    @Test
    void anotherNameStartsWithoutAnswersAndTellsWhereTheyStay() {
        saved();
        checklist.answer(Gate.CO_ALARM, Answer.YES, "");
        document.savedTo(folder.resolve("copy.json"));
        assertThat(record().answers()).isEmpty();
        assertThat(checklist.note().get()).contains("house.record.json");
        assertThat(place).exists();
    }

    @Test
    void anotherHouseShowsItsOwnRecordAndDropsTheEntry() throws IOException {
        RecordFile.write(folder.resolve("other.record.json"), JobRecord.empty("elsewhere"));
        saved();
        checklist.draft().appliance().set("stove");
        document.open(Bench.house(), Optional.of(folder.resolve("other.json")));
        assertThat(record().scenario()).isEqualTo("elsewhere");
        assertThat(checklist.note().get()).contains("elsewhere", "belongs");
        assertThat(checklist.draft().isBegun()).isFalse();
    }

    @Test
    void noRecordIsEverCalledSafe() {
        saved();
        for (Gate gate : Gate.values()) if (gate.mustBeAnswered()) checklist.answer(gate, Answer.YES, "");
        enter(DraftTest.Outcome.PASSED, false);
        now = NOON.plusHours(1);
        checklist.start();
        enter(DraftTest.Outcome.PASSED, true);
        checklist.complete();
        assertThat(record().completed()).isPresent();
        List<String> said = new ArrayList<>(List.of(
                RecordWords.state(record()),
                RecordWords.fan(record()),
                RecordWords.radonTest(record()),
                RecordWords.unanswered(record()),
                checklist.note().get()));
        for (Gate gate : Gate.values()) {
            said.add(gate.question());
            said.add(RecordWords.answer(record(), gate));
        }
        for (DraftStep step : DraftStep.values()) said.add(step.text());
        assertThat(said).noneMatch(s -> s.toLowerCase(Locale.ROOT).matches(".*\\bsafe(ly)?\\b.*"));
    }
}
