package slabfield.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import slabfield.model.NoDrillArea;
import slabfield.model.Plan;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.safety.DraftTest;
import slabfield.safety.Gate;
import slabfield.safety.GateAnswer;
import slabfield.safety.JobField;
import slabfield.safety.JobRecord;

/**
 * A job without names and addresses: the name of the house, all notes, who answered or tested, the picture that the plan was
 * traced from, and every field of the job that may tell who or where somebody is are taken out. Plan, readings, answers and results stay. Names that the user gave to holes
 * or openings are not changed, since readings refer to them; those that hold a word that was taken out are reported.
 *
 * @param scenario without personal text
 * @param record without personal text
 * @param left texts that still hold a word of what was taken out; empty where there is none
 */
public record Redaction(Scenario scenario, JobRecord record, List<String> left) {
    /** Stands for the name of the house. */
    public static final String NAME = "House (redacted)";

    private static final int SHORTEST = 4;

    public Redaction {
        left = List.copyOf(left);
    }

    /** Takes it out. */
    public static Redaction of(Scenario scenario, JobRecord record) {
        Scenario blank = blank(scenario);
        JobRecord clean = blank(record);
        Set<String> words = words(record);
        List<String> left = new ArrayList<>();
        for (String text : texts(ScenarioWriter.toJson(blank))) if (holds(text, words)) left.add(text);
        for (String text : texts(RecordFile.toJson(clean))) if (holds(text, words)) left.add(text);
        return new Redaction(blank, clean, left);
    }

    private static Scenario blank(Scenario s) {
        List<Stage> stages = s.stages().stream()
                .map(g -> new Stage(g.id(), g.kind(), g.seals(), g.sources(), g.holes(), g.systems(), g.time(), ""))
                .toList();
        List<NoDrillArea> areas = s.plan().noDrillAreas().stream()
                .map(a -> new NoDrillArea(a.id(), a.outline(), ""))
                .toList();
        Plan plan = s.plan().withNoDrillAreas(areas).withUnderlay(Optional.empty());
        return s.withName(NAME).withNotes("").withStages(stages).withPlan(plan);
    }

    private static JobRecord blank(JobRecord r) {
        Map<Gate, GateAnswer> answers = new EnumMap<>(Gate.class);
        r.answers().forEach((gate, a) -> answers.put(gate, new GateAnswer(a.answer(), "", a.time(), "")));
        List<DraftTest> tests = r.draftTests().stream()
                .map(t -> new DraftTest(
                        t.appliance(),
                        t.fanRunning(),
                        t.outcome(),
                        t.steps(),
                        t.housePressure(),
                        t.draft(),
                        t.spillage(),
                        t.carbonMonoxide(),
                        "",
                        t.time(),
                        ""))
                .toList();
        Map<JobField, String> details = new EnumMap<>(JobField.class);
        r.details().forEach((field, said) -> {
            if (!field.personal()) details.put(field, said);
        });
        return new JobRecord(NAME, answers, tests, r.startUp(), r.radonTests(), r.completed(), details);
    }

    /** Words of names and addresses long enough to tell somebody by. */
    private static Set<String> words(JobRecord record) {
        Set<String> words = new LinkedHashSet<>();
        record.details().forEach((field, said) -> {
            if (field.personal() && field != JobField.NOTES && field != JobField.PAPERS) add(words, said);
        });
        record.answers().values().forEach(a -> add(words, a.by()));
        record.draftTests().forEach(t -> add(words, t.by()));
        return words;
    }

    private static void add(Set<String> words, String said) {
        for (String word : said.split("[^\\p{L}\\p{N}]+")) if (word.length() >= SHORTEST) words.add(word);
    }

    private static boolean holds(String text, Set<String> words) {
        return words.stream()
                .anyMatch(w -> Pattern.compile(
                                "(?<![\\p{L}\\p{N}])" + Pattern.quote(w) + "(?![\\p{L}\\p{N}])",
                                Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE)
                        .matcher(text)
                        .find());
    }

    /** Texts of a file that its user chose, each once: values, not keys. */
    private static Set<String> texts(String json) {
        Set<String> out = new LinkedHashSet<>();
        try {
            collect(new ObjectMapper().readTree(json), out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        out.remove(NAME);
        return out;
    }

    private static void collect(JsonNode node, Set<String> out) {
        if (node.isTextual()) out.add(node.asText());
        node.forEach(child -> collect(child, out));
    }
}
