package slabfield.io;

import java.util.List;
import java.util.stream.Stream;

/** The kinds of object in a job record and the keys that each may have. */
enum RecordObject implements ObjectKind {
    RECORD(
            "the record",
            List.of("slabfieldRecord", "scenario"),
            List.of("gates", "draftTests", "startUp", "radonTests", "completed", "job")),
    GATE("gate", List.of("answer"), List.of("by", "time", "note")),
    DRAFT_TEST(
            "draft test",
            List.of("appliance", "radonFan", "outcome", "time"),
            List.of("steps", "housePressure", "draft", "spillage", "carbonMonoxide_ppm", "by", "note")),
    RADON_TEST("radon test", List.of("start"), List.of("result"));

    private final String noun;
    private final List<String> required;
    private final List<String> optional;

    RecordObject(String noun, List<String> required, List<String> optional) {
        this.noun = noun;
        this.required = required;
        this.optional = optional;
    }

    @Override
    public String noun() {
        return noun;
    }

    @Override
    public List<String> required() {
        return required;
    }

    @Override
    public List<String> keys() {
        return Stream.concat(required.stream(), optional.stream()).toList();
    }
}
