package slabfield.safety;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDateTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import slabfield.model.ImpossibleValue;

class JobRecordTest {
    private static final LocalDateTime MORNING = LocalDateTime.parse("2026-01-20T08:00");
    private static final LocalDateTime NOON = LocalDateTime.parse("2026-01-20T12:00");
    private static final LocalDateTime EVENING = LocalDateTime.parse("2026-01-20T18:00");

    @Test
    void anEmptyRecordHasEveryGateOpenAndTheFanNotStarted() {
        JobRecord empty = JobRecord.empty("house");
        assertThat(empty.openBeforeCompletion())
                .containsExactly(
                        "\"combustion\" is unanswered.",
                        "\"CO alarm\" is unanswered.",
                        "\"utilities\" is unanswered.",
                        "\"structural slab\" is unanswered.",
                        "\"drainage\" is unanswered.",
                        "\"gas on site\" is unanswered.",
                        "\"law and licence\" is unanswered.",
                        "The fan was not started.");
        assertThatThrownBy(() -> empty.complete(NOON))
                .isInstanceOf(Blocked.class)
                .hasMessageContaining("unanswered");
        assertThat(empty.earliestRadonTest()).isEmpty();
    }

    /** Leaving out any one gate that must be answered, or saying no to it, blocks completion; a notice does not. */
    @ParameterizedTest
    @EnumSource
    void eachGateBlocksByItself(Gate gate) throws Blocked {
        JobRecord all = answered().started(NOON);
        assertThat(all.openBeforeCompletion()).isEmpty();
        Map<Gate, GateAnswer> without = new EnumMap<>(all.answers());
        without.remove(gate);
        JobRecord open = new JobRecord("house", without, List.of(), all.startUp(), List.of(), Optional.empty());
        assertThat(open.openBeforeCompletion().isEmpty()).isEqualTo(!gate.mustBeAnswered());
        assertThat(all.with(gate, said(Answer.NO)).openBeforeCompletion().isEmpty())
                .isEqualTo(!gate.mustBeAnswered());
    }

    @Test
    void completeOnlyOnceNothingIsOpenAndOpenAgainAfterAnAnswer() throws Blocked {
        JobRecord done = answered().started(NOON).complete(EVENING);
        assertThat(done.completed()).contains(EVENING);
        assertThat(done.with(Gate.CO_ALARM, said(Answer.YES)).completed()).isEmpty();
        assertThat(done.with(test(false, DraftTest.Outcome.PASSED, MORNING)).completed())
                .isEmpty();
    }

    /** A record that claims completion with something open cannot exist, whoever wrote it. */
    @Test
    void aFalseCompletionIsRefused() {
        assertThatThrownBy(() ->
                        new JobRecord("house", Map.of(), List.of(), Optional.of(NOON), List.of(), Optional.of(EVENING)))
                .isInstanceOf(ImpossibleValue.class)
                .hasMessageContaining("\"utilities\" is unanswered");
    }

    @Test
    void aFailedDraftTestBlocksTheStartUntilOneAsHardIsPassed() throws Blocked {
        JobRecord failed = answered().with(test(false, DraftTest.Outcome.FAILED, MORNING));
        assertThatThrownBy(() -> failed.started(NOON))
                .isInstanceOf(Blocked.class)
                .hasMessageContaining("\"water heater\" failed");
        assertThat(failed.with(test(false, DraftTest.Outcome.PASSED, NOON))
                        .started(NOON)
                        .startUp())
                .contains(NOON);
        JobRecord other = failed.with(new DraftTest(
                "furnace",
                true,
                DraftTest.Outcome.PASSED,
                Map.of(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "",
                NOON,
                ""));
        assertThat(other.openBeforeStartUp())
                .as("another appliance clears nothing")
                .hasSize(1);
    }

    /** Failed with the fan running, then passed with it off: that says nothing of the fan. */
    @Test
    void aTestWithoutTheFanDoesNotClearOneWithIt() throws Blocked {
        JobRecord failed = answered().started(NOON).with(test(true, DraftTest.Outcome.FAILED, NOON.plusHours(1)));
        JobRecord off = failed.with(test(false, DraftTest.Outcome.PASSED, EVENING));
        assertThat(off.openBeforeStartUp()).hasSize(1);
        assertThat(off.with(test(true, DraftTest.Outcome.PASSED, EVENING.plusHours(1)))
                        .openBeforeStartUp())
                .isEmpty();
    }

    /** Recorded later but taken earlier: the time of the test counts. */
    @Test
    void theTimeOfATestCountsNotTheOrderOfWriting() {
        JobRecord record = JobRecord.empty("house")
                .with(test(false, DraftTest.Outcome.FAILED, NOON))
                .with(test(false, DraftTest.Outcome.PASSED, MORNING));
        assertThat(record.openBeforeStartUp()).hasSize(1);
    }

    @Test
    void appliancesNeedATestBeforeAndAfterStartUpWithAllSteps() throws Blocked {
        JobRecord record = answered().with(Gate.COMBUSTION, said(Answer.YES)).started(NOON);
        assertThat(record.openBeforeCompletion()).singleElement().asString().contains("no draft test is recorded");
        JobRecord before = record.with(test(false, DraftTest.Outcome.PASSED, MORNING));
        assertThat(before.openBeforeCompletion())
                .singleElement()
                .asString()
                .contains("fan running is recorded after start-up");
        JobRecord after = record.with(test(true, DraftTest.Outcome.PASSED, EVENING));
        assertThat(after.openBeforeCompletion()).singleElement().asString().contains("from before start-up");
        assertThat(before.with(test(true, DraftTest.Outcome.PASSED, EVENING)).openBeforeCompletion())
                .isEmpty();
        DraftTest hasty = new DraftTest(
                "water heater",
                true,
                DraftTest.Outcome.PASSED,
                Map.of(DraftStep.SHUT, Answer.YES, DraftStep.DRAFT, Answer.NO),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "",
                EVENING,
                "");
        assertThat(hasty.open()).hasSize(12).contains(DraftStep.DRAFT).doesNotContain(DraftStep.SHUT);
        assertThat(before.with(hasty).openBeforeCompletion())
                .singleElement()
                .asString()
                .contains("steps of its last draft test are open");
    }

    @Test
    void notPresentIsNoAnswerToAnAlarm() {
        assertThatThrownBy(() -> JobRecord.empty("house").with(Gate.CO_ALARM, said(Answer.NOT_PRESENT)))
                .isInstanceOf(ImpossibleValue.class);
        JobRecord contradiction = answered().with(test(false, DraftTest.Outcome.PASSED, MORNING));
        assertThat(contradiction.openBeforeCompletion()).anyMatch(s -> s.contains("not present, but a draft test"));
    }

    /** Published protocol: not before 24 h of running. */
    @Test
    void aRadonTestStartsADayAfterTheFan() throws Blocked {
        JobRecord running = answered().started(NOON);
        assertThat(running.earliestRadonTest()).contains(NOON.plusHours(24));
        assertThatThrownBy(() -> running.with(new RadonTest(NOON.plusHours(23), "")))
                .hasMessageContaining("24 h after start-up");
        assertThatThrownBy(() -> answered().with(new RadonTest(EVENING, ""))).hasMessageContaining("not started");
        assertThat(running.with(new RadonTest(NOON.plusHours(24), "")).radonTests())
                .hasSize(1);
    }

    /** No text of this package calls anything safe. */
    @Test
    void nothingIsCalledSafe() {
        for (Gate gate : Gate.values()) assertThat(gate.question()).doesNotContainPattern("(?i)\\bsafe");
        for (DraftStep step : DraftStep.values()) assertThat(step.text()).doesNotContainPattern("(?i)\\bsafe");
        assertThat(JobRecord.empty("x").openBeforeCompletion())
                .noneMatch(s -> s.toLowerCase(java.util.Locale.ROOT).contains("safe"));
    }

    /** Every gate answered, without any appliance. */
    private static JobRecord answered() {
        JobRecord record = JobRecord.empty("house");
        for (Gate gate : Gate.values())
            record = record.with(gate, said(gate == Gate.COMBUSTION ? Answer.NOT_PRESENT : Answer.YES));
        return record;
    }

    private static GateAnswer said(Answer answer) {
        return new GateAnswer(answer, "A", MORNING, "");
    }

    private static DraftTest test(boolean running, DraftTest.Outcome outcome, LocalDateTime time) {
        Map<DraftStep, Answer> steps = new EnumMap<>(DraftStep.class);
        for (DraftStep step : DraftStep.values()) steps.put(step, Answer.YES);
        return new DraftTest(
                "water heater",
                running,
                outcome,
                steps,
                OptionalDouble.of(-3),
                OptionalDouble.of(-2),
                OptionalDouble.of(20),
                OptionalDouble.of(15),
                "A",
                time,
                "");
    }
}
