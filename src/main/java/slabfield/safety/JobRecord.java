package slabfield.safety;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import slabfield.model.ImpossibleValue;

/**
 * What was asked and answered about one job's dangers, kept beside its scenario. Immutable; an answer makes another. It
 * never says that a house is without danger: it says what was asked, by whom, and what is still open.
 *
 * @param scenario name of the house
 * @param answers to gates; what was not answered is not in it
 * @param draftTests in the order in which they were recorded
 * @param startUp when the fan was started
 * @param radonTests after start-up
 * @param completed when the record was closed
 * @param details of the job in the user's words; what was not said is not in it
 * @see "JobRecordTest"
 */
public record JobRecord(
        String scenario,
        Map<Gate, GateAnswer> answers,
        List<DraftTest> draftTests,
        Optional<LocalDateTime> startUp,
        List<RadonTest> radonTests,
        Optional<LocalDateTime> completed,
        Map<JobField, String> details) {
    /** Running before a radon test may start: 24 h, after published measurement protocol. */
    public static final Duration BEFORE_RADON_TEST = Duration.ofHours(24);

    /** Without details of the job. */
    public JobRecord(
            String scenario,
            Map<Gate, GateAnswer> answers,
            List<DraftTest> draftTests,
            Optional<LocalDateTime> startUp,
            List<RadonTest> radonTests,
            Optional<LocalDateTime> completed) {
        this(scenario, answers, draftTests, startUp, radonTests, completed, Map.of());
    }

    public JobRecord {
        if (scenario == null || scenario.isBlank()) throw new ImpossibleValue("scenario", "must not be empty");
        answers = Map.copyOf(answers);
        answers.forEach((gate, given) -> {
            if (given.answer() == Answer.NOT_PRESENT && !gate.mayBeAbsent())
                throw new ImpossibleValue(
                        gate.word(), "cannot be answered with \"not present\"; answer \"yes\" or \"no\"");
        });
        draftTests = List.copyOf(draftTests);
        radonTests = List.copyOf(radonTests);
        details = Map.copyOf(details);
        details.forEach((field, said) -> {
            if (said.isBlank())
                throw new ImpossibleValue(field.word(), "must not be empty; leave it out where nothing is to be said");
        });
        for (RadonTest test : radonTests)
            if (startUp.isEmpty() || test.start().isBefore(startUp.get().plus(BEFORE_RADON_TEST)))
                throw new ImpossibleValue(
                        "radonTests",
                        "hold a test from " + test.start() + "; a radon test starts 24 h after start-up at the"
                                + " earliest"
                                + startUp.map(s -> ", here at " + s.plus(BEFORE_RADON_TEST))
                                        .orElse(", and the fan was not started"));
        if (completed.isPresent()
                && !openBeforeCompletion(answers, draftTests, startUp).isEmpty())
            throw new ImpossibleValue(
                    "completed",
                    "cannot be said yet: " + String.join(" ", openBeforeCompletion(answers, draftTests, startUp)));
    }

    /** A record in which nothing has been answered. */
    public static JobRecord empty(String scenario) {
        return new JobRecord(scenario, Map.of(), List.of(), Optional.empty(), List.of(), Optional.empty());
    }

    public Optional<GateAnswer> answer(Gate gate) {
        return Optional.ofNullable(answers.get(gate));
    }

    /** An answer opens a completed record again. */
    public JobRecord with(Gate gate, GateAnswer given) {
        Map<Gate, GateAnswer> all = new EnumMap<>(Gate.class);
        all.putAll(answers);
        all.put(gate, given);
        return new JobRecord(scenario, all, draftTests, startUp, radonTests, Optional.empty(), details);
    }

    /** With an answer taken back: the gate is unanswered, and a completed record is open again. */
    public JobRecord without(Gate gate) {
        Map<Gate, GateAnswer> rest = new EnumMap<>(Gate.class);
        rest.putAll(answers);
        rest.remove(gate);
        return new JobRecord(scenario, rest, draftTests, startUp, radonTests, Optional.empty(), details);
    }

    /** With something said about the job; nothing where the text is blank. Does not open a completed record. */
    public JobRecord with(JobField field, String said) {
        Map<JobField, String> all = new EnumMap<>(JobField.class);
        all.putAll(details);
        if (said.isBlank()) all.remove(field);
        else all.put(field, said.strip());
        return new JobRecord(scenario, answers, draftTests, startUp, radonTests, completed, all);
    }

    public Optional<String> detail(JobField field) {
        return Optional.ofNullable(details.get(field));
    }

    /** A test opens a completed record again. */
    public JobRecord with(DraftTest test) {
        List<DraftTest> all = new ArrayList<>(draftTests);
        all.add(test);
        return new JobRecord(scenario, answers, all, startUp, radonTests, Optional.empty(), details);
    }

    /** With a radon test that starts at least 24 h after start-up. */
    public JobRecord with(RadonTest test) {
        List<RadonTest> all = new ArrayList<>(radonTests);
        all.add(test);
        return new JobRecord(scenario, answers, draftTests, startUp, all, completed, details);
    }

    /**
     * With the fan started.
     *
     * @throws Blocked while a draft test has failed and no later one cleared it: one passed with the radon fan running, or,
     *     where it failed without the fan, any passed one
     */
    public JobRecord started(LocalDateTime time) throws Blocked {
        List<String> reasons = openBeforeStartUp();
        if (!reasons.isEmpty()) throw new Blocked("The fan cannot be started in this record:", reasons);
        return new JobRecord(scenario, answers, draftTests, Optional.of(time), radonTests, Optional.empty(), details);
    }

    /**
     * Marked complete.
     *
     * @throws Blocked while anything is open
     */
    public JobRecord complete(LocalDateTime time) throws Blocked {
        List<String> reasons = openBeforeCompletion();
        if (!reasons.isEmpty()) throw new Blocked("The record cannot be marked complete:", reasons);
        return new JobRecord(scenario, answers, draftTests, startUp, radonTests, Optional.of(time), details);
    }

    /** Why the fan may not be started, or must be off where it was; empty where the record does not block it. */
    public List<String> openBeforeStartUp() {
        return failed(draftTests);
    }

    /** What is still open; empty where the record can be marked complete. */
    public List<String> openBeforeCompletion() {
        return openBeforeCompletion(answers, draftTests, startUp);
    }

    /** When a radon test may start at the earliest; empty before start-up. */
    public Optional<LocalDateTime> earliestRadonTest() {
        return startUp.map(s -> s.plus(BEFORE_RADON_TEST));
    }

    private static List<String> openBeforeCompletion(
            Map<Gate, GateAnswer> answers, List<DraftTest> tests, Optional<LocalDateTime> startUp) {
        List<String> out = new ArrayList<>();
        for (Gate gate : Gate.values()) {
            if (!gate.mustBeAnswered()) continue;
            if (!answers.containsKey(gate)) out.add("\"" + gate.word() + "\" is unanswered.");
            else if (answers.get(gate).answer() == Answer.NO) out.add("\"" + gate.word() + "\" was answered with no.");
        }
        out.addAll(failed(tests));
        if (startUp.isEmpty()) out.add("The fan was not started.");
        Optional<Answer> combustion =
                Optional.ofNullable(answers.get(Gate.COMBUSTION)).map(GateAnswer::answer);
        if (combustion.equals(Optional.of(Answer.YES)) && tests.isEmpty())
            out.add("\"combustion\" was answered with yes, but no draft test is recorded.");
        if (combustion.equals(Optional.of(Answer.NOT_PRESENT)) && !tests.isEmpty())
            out.add("\"combustion\" was answered with not present, but a draft test is recorded.");
        byAppliance(tests)
                .forEach(
                        (appliance, own) -> missing(own, startUp).forEach(m -> out.add("\"" + appliance + "\": " + m)));
        return out;
    }

    private static List<String> missing(List<DraftTest> tests, Optional<LocalDateTime> startUp) {
        List<String> out = new ArrayList<>();
        DraftTest latest = tests.get(tests.size() - 1);
        if (tests.stream().noneMatch(t -> before(t, startUp)))
            out.add("no draft test from before start-up is recorded.");
        if (tests.stream().noneMatch(t -> t.fanRunning() && startUp.isPresent() && !before(t, startUp)))
            out.add("no draft test with the radon fan running is recorded after start-up.");
        if (!latest.open().isEmpty())
            out.add("steps of its last draft test are open: "
                    + String.join(
                            ", ", latest.open().stream().map(DraftStep::word).toList()) + ".");
        return out;
    }

    private static boolean before(DraftTest test, Optional<LocalDateTime> startUp) {
        return startUp.isEmpty() || test.time().isBefore(startUp.get());
    }

    private static List<String> failed(List<DraftTest> tests) {
        List<String> out = new ArrayList<>();
        byAppliance(tests)
                .forEach(
                        (appliance, own) -> lastUncleared(own)
                                .ifPresent(
                                        test -> out.add(
                                                "A draft test of \"" + appliance + "\" failed (" + test.time()
                                                        + ") and no later one cleared it: fan off, air the house, get a qualified person, then test again.")));
        return out;
    }

    /** The last failed test after which none was passed under the same or a harder condition. */
    private static Optional<DraftTest> lastUncleared(List<DraftTest> own) {
        for (int i = own.size() - 1; i >= 0; i--) {
            DraftTest test = own.get(i);
            if (test.outcome() == DraftTest.Outcome.PASSED) continue;
            boolean cleared = own.subList(i + 1, own.size()).stream()
                    .anyMatch(t -> t.outcome() == DraftTest.Outcome.PASSED && (t.fanRunning() || !test.fanRunning()));
            if (!cleared) return Optional.of(test);
        }
        return Optional.empty();
    }

    /** Tests of each appliance by rising time; of two at one moment the one recorded later comes later. */
    private static Map<String, List<DraftTest>> byAppliance(List<DraftTest> tests) {
        Map<String, List<DraftTest>> out = new LinkedHashMap<>();
        tests.stream()
                .sorted(Comparator.comparing(DraftTest::time))
                .forEach(t -> out.computeIfAbsent(t.appliance(), name -> new ArrayList<>())
                        .add(t));
        return out;
    }
}
