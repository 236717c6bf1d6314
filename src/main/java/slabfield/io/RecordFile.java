package slabfield.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import slabfield.quantity.Dimension;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;
import slabfield.safety.Answer;
import slabfield.safety.DraftStep;
import slabfield.safety.DraftTest;
import slabfield.safety.Gate;
import slabfield.safety.GateAnswer;
import slabfield.safety.JobField;
import slabfield.safety.JobRecord;
import slabfield.safety.RadonTest;

/** Reads and writes the job record that stands beside a scenario file, as docs/job-record.md describes it. */
public final class RecordFile {
    /** Version that is written; version 1 had no "job" and is read as one in which nothing is said of it. */
    private static final int VERSION = 2;

    private static final int OLDEST_VERSION = 1;
    private static final int LARGEST_FILE = 1024 * 1024;
    private static final String UNANSWERED = "unanswered";
    private static final Map<String, Optional<Answer>> ANSWERS = answers();
    private static final Map<String, DraftTest.Outcome> OUTCOMES =
            words(DraftTest.Outcome.values(), DraftTest.Outcome::word);
    private static final Map<String, Boolean> RUNNING = Map.of("running", true, "off", false);

    private RecordFile() {}

    private static Map<String, Optional<Answer>> answers() {
        Map<String, Optional<Answer>> all = new LinkedHashMap<>();
        for (Answer a : Answer.values()) all.put(a.word(), Optional.of(a));
        all.put(UNANSWERED, Optional.empty());
        return all;
    }

    private static <T> Map<String, T> words(T[] values, Function<T, String> word) {
        Map<String, T> map = new LinkedHashMap<>();
        for (T value : values) map.put(word.apply(value), value);
        return map;
    }

    /** Where the record of a scenario file stands: house.json has house.record.json. */
    public static Path beside(Path scenario) {
        String name = scenario.getFileName().toString().replaceAll("(?i)\\.json$", "");
        return scenario.resolveSibling(name + ".record.json");
    }

    /**
     * Reads a record.
     *
     * @throws ScenarioProblems where it cannot be read or holds anything wrong, such as a completion with open gates
     */
    public static JobRecord read(Path file) throws ScenarioProblems {
        try {
            if (Files.size(file) > LARGEST_FILE) throw whole(file, "the file is larger than 1 MB, which no record is");
            return read(Files.readString(file), file.toString());
        } catch (IOException e) {
            throw whole(
                    file, "the record cannot be read; check that it is there, is UTF-8 text, and that you may open it");
        }
    }

    private static ScenarioProblems whole(Path file, String message) {
        return new ScenarioProblems(file.toString(), List.of(new FileProblem(file.toString(), 0, "", message)));
    }

    /** Reads the text of a record. */
    public static JobRecord read(String text, String name) throws ScenarioProblems {
        JsonTree tree = JsonTree.parse(text, name);
        FileReading reading = new FileReading(name, tree);
        int version = tree.root().path("slabfieldRecord").asInt();
        if (version > VERSION)
            reading.add(
                    "/slabfieldRecord",
                    "the record is written in version " + version + ", and this program reads up to version " + VERSION
                            + "; get a newer Slabfield");
        else if (version < OLDEST_VERSION)
            reading.add("/slabfieldRecord", "this is no job record of version " + VERSION);
        reading.throwIfAny();
        Optional<JobRecord> made = record(new Entry(reading, "", tree.root(), RecordObject.RECORD));
        reading.throwIfAny();
        return made.orElseThrow();
    }

    private static Optional<JobRecord> record(Entry e) {
        String scenario = e.text("scenario");
        Map<Gate, GateAnswer> gates = gates(e);
        List<DraftTest> tests = e.list("draftTests", RecordObject.DRAFT_TEST, RecordFile::draftTest);
        Optional<LocalDateTime> startUp = moment(e, "startUp"), completed = moment(e, "completed");
        List<RadonTest> radon = e.list("radonTests", RecordObject.RADON_TEST, r -> {
            Optional<LocalDateTime> start = moment(r, "start");
            String result = r.text("result");
            return r.make(() -> new RadonTest(start.orElseThrow(), result));
        });
        Map<JobField, String> details = details(e);
        return e.make(() -> new JobRecord(scenario, gates, tests, startUp, radon, completed, details));
    }

    private static Map<JobField, String> details(Entry e) {
        Map<String, JobField> words = words(JobField.values(), JobField::word);
        Map<JobField, String> out = new EnumMap<>(JobField.class);
        e.members("job", "texts such as { \"address\": \"...\" }").forEach((word, node) -> {
            if (!words.containsKey(word)) e.problem("job", "there is no field \"" + word + "\"");
            else if (!node.isTextual()) e.problem("job", "\"" + word + "\" must be a text");
            else if (!node.asText().isBlank()) out.put(words.get(word), node.asText());
        });
        return out;
    }

    private static Map<Gate, GateAnswer> gates(Entry e) {
        Map<String, Gate> words = words(Gate.values(), Gate::word);
        Map<Gate, GateAnswer> out = new EnumMap<>(Gate.class);
        e.members("gates", "an answer such as { \"answer\": \"yes\" }").forEach((word, node) -> {
            if (!words.containsKey(word)) {
                e.problem("gates", "there is no gate \"" + word + "\"");
                return;
            }
            Entry one = e.member("gates", word, node, RecordObject.GATE);
            Optional<Answer> answer = one.word("answer", ANSWERS, Optional.empty());
            if (answer.isPresent() && !one.has("time"))
                one.problemHere("gate \"" + word + "\": an answer needs its \"time\"");
            Optional<LocalDateTime> time = moment(one, "time");
            String by = one.text("by"), note = one.text("note");
            if (answer.isPresent())
                one.make(() -> new GateAnswer(answer.get(), by, time.orElseThrow(), note))
                        .ifPresent(a -> out.put(words.get(word), a));
        });
        return out;
    }

    private static Optional<DraftTest> draftTest(Entry e) {
        String appliance = e.text("appliance"), by = e.text("by"), note = e.text("note");
        boolean running = e.word("radonFan", RUNNING, false);
        DraftTest.Outcome outcome = e.word("outcome", OUTCOMES, DraftTest.Outcome.FAILED);
        Map<DraftStep, Answer> steps = steps(e);
        OptionalDouble house = e.optional("housePressure", Dimension.PRESSURE),
                draft = e.optional("draft", Dimension.PRESSURE);
        OptionalDouble spillage = e.optional("spillage", Dimension.DURATION);
        double ppm = e.number("carbonMonoxide_ppm", Double.NaN);
        OptionalDouble monoxide = Double.isNaN(ppm) ? OptionalDouble.empty() : OptionalDouble.of(ppm);
        Optional<LocalDateTime> time = moment(e, "time");
        return e.make(() -> new DraftTest(
                appliance, running, outcome, steps, house, draft, spillage, monoxide, by, time.orElseThrow(), note));
    }

    private static Map<DraftStep, Answer> steps(Entry e) {
        Map<String, DraftStep> words = words(DraftStep.values(), DraftStep::word);
        Map<DraftStep, Answer> out = new EnumMap<>(DraftStep.class);
        e.members("steps", "an answer such as { \"weather\": \"yes\" }").forEach((word, node) -> {
            if (!words.containsKey(word)) e.problem("steps", "there is no step \"" + word + "\"");
            else if (!ANSWERS.containsKey(node.asText()))
                e.problem("steps", "step \"" + word + "\": write yes, no or not present");
            else ANSWERS.get(node.asText()).ifPresent(a -> out.put(words.get(word), a));
        });
        return out;
    }

    private static Optional<LocalDateTime> moment(Entry e, String key) {
        if (!e.has(key)) return Optional.empty();
        try {
            return Optional.of(LocalDateTime.parse(e.text(key)));
        } catch (DateTimeParseException problem) {
            e.problem(key, Entry.shown(e.get(key)) + " must be a local time such as 2026-01-20T14:05");
            return Optional.empty();
        }
    }

    /** The text of a record that is read back as an equal record; gates without an answer are named as unanswered. */
    public static String toJson(JobRecord record) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("slabfieldRecord", VERSION).put("scenario", record.scenario());
        ObjectNode gates = root.putObject("gates");
        for (Gate gate : Gate.values()) {
            Optional<GateAnswer> given = record.answer(gate);
            if (given.isEmpty() && !gate.mustBeAnswered()) continue;
            ObjectNode node = gates.putObject(gate.word());
            node.put("answer", given.map(g -> g.answer().word()).orElse(UNANSWERED));
            given.ifPresent(
                    g -> node.put("by", g.by()).put("time", g.time().toString()).put("note", g.note()));
        }
        ScenarioWriter.list(root, "draftTests", record.draftTests(), RecordFile::draftTest);
        record.startUp().ifPresent(t -> root.put("startUp", t.toString()));
        ArrayNode radon = root.putArray("radonTests");
        record.radonTests()
                .forEach(t ->
                        radon.addObject().put("start", t.start().toString()).put("result", t.result()));
        record.completed().ifPresent(t -> root.put("completed", t.toString()));
        ObjectNode job = root.putObject("job");
        for (JobField field : JobField.values()) record.detail(field).ifPresent(said -> job.put(field.word(), said));
        return JsonText.of(root);
    }

    private static void draftTest(ObjectNode node, DraftTest test) {
        node.put("appliance", test.appliance()).put("radonFan", test.fanRunning() ? "running" : "off");
        node.put("outcome", test.outcome().word()).put("time", test.time().toString());
        ObjectNode steps = node.putObject("steps");
        for (DraftStep step : DraftStep.values())
            steps.put(
                    step.word(),
                    Optional.ofNullable(test.steps().get(step))
                            .map(Answer::word)
                            .orElse(UNANSWERED));
        quantity(node, "housePressure", test.housePressure(), Unit.PASCAL);
        quantity(node, "draft", test.draft(), Unit.PASCAL);
        quantity(node, "spillage", test.spillage(), Unit.SECOND);
        test.carbonMonoxide().ifPresent(v -> node.put("carbonMonoxide_ppm", v));
        node.put("by", test.by()).put("note", test.note());
    }

    private static void quantity(ObjectNode node, String key, OptionalDouble value, Unit unit) {
        value.ifPresent(v -> node.put(key, Quantity.exact(v, unit)));
    }

    /** Writes a record so that after a crash either the old or the new one is there; the last ones are kept beside it. */
    public static void write(Path file, JobRecord record) throws IOException {
        SafeFile.writeKeepingVersions(file, toJson(record).getBytes(StandardCharsets.UTF_8));
    }
}
