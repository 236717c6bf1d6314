package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import slabfield.model.Scenario;

/** The files of scenarios/, against the reader, the schema and the writer; and the schema against the reader. */
class ScenarioFilesTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    static List<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("scenarios"))) {
            return files.filter(f -> f.toString().endsWith(".json")).sorted().toList();
        }
    }

    static JsonNode schemaTree() throws IOException {
        try (InputStream in = ScenarioReader.class.getResourceAsStream("/slabfield/scenario.schema.json")) {
            return MAPPER.readTree(in);
        }
    }

    static List<String> schemaErrors(JsonNode tree) throws IOException {
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(schemaTree());
        return schema.validate(tree).stream().map(Error::toString).toList();
    }

    @Test
    void thereAreFiles() throws IOException {
        assertThat(files()).hasSizeGreaterThanOrEqualTo(5);
    }

    @ParameterizedTest
    @MethodSource("files")
    void everyFileReadsAndTeaches(Path file) throws ScenarioProblems {
        assertThat(ScenarioReader.read(file).teaches()).isNotBlank();
    }

    @ParameterizedTest
    @MethodSource("files")
    void everyFileKeepsToTheSchema(Path file) throws IOException {
        assertThat(schemaErrors(MAPPER.readTree(Files.readString(file)))).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("files")
    void everyFileIsWrittenAndReadBackEqual(Path file) throws ScenarioProblems, IOException {
        Scenario scenario = ScenarioReader.read(file);
        String text = ScenarioWriter.toJson(scenario);
        assertThat(ScenarioReader.read(text, "again")).isEqualTo(scenario);
        assertThat(schemaErrors(MAPPER.readTree(text))).isEmpty();
    }

    @Test
    void theSchemaHasTheReadersKeys() throws IOException {
        JsonNode schema = schemaTree();
        for (FileObject each : FileObject.values()) {
            JsonNode object =
                    each == FileObject.SCENARIO ? schema : schema.path("$defs").path(each.schemaName());
            assertThat(names(object.path("properties")))
                    .as(each.schemaName())
                    .containsExactlyInAnyOrderElementsOf(ScenarioReader.keys().get(each.schemaName()));
            List<String> required = new ArrayList<>();
            object.path("required").forEach(r -> required.add(r.asText()));
            assertThat(required).as(each.schemaName()).containsExactlyInAnyOrderElementsOf(each.required());
            assertThat(object.path("additionalProperties").asBoolean(true))
                    .as(each.schemaName())
                    .isFalse();
        }
        long objects = schema.path("$defs").properties().stream()
                .filter(d -> d.getValue().has("properties"))
                .count();
        assertThat(objects + 1).as("objects that only the schema knows").isEqualTo(FileObject.values().length);
    }

    @Test
    void theSchemaDescribesEveryKey() throws IOException {
        JsonNode schema = schemaTree();
        for (FileObject each : FileObject.values()) {
            JsonNode object =
                    each == FileObject.SCENARIO ? schema : schema.path("$defs").path(each.schemaName());
            object.path("properties")
                    .properties()
                    .forEach(p -> assertThat(p.getValue().path("description").asText())
                            .as(each.schemaName() + "." + p.getKey())
                            .isNotBlank());
        }
    }

    @Test
    void theSchemaHasTheReadersWords() throws IOException {
        JsonNode defs = schemaTree().path("$defs");
        assertThat(words(defs, "layer", "fill")).containsExactlyElementsOf(Words.FILLS.keySet());
        assertThat(words(defs, "opening", "kind")).containsExactlyElementsOf(Words.OPENINGS.keySet());
        assertThat(words(defs, "opening", "state")).containsExactlyElementsOf(Words.STATES.keySet());
        assertThat(words(defs, "stage", "kind")).containsExactlyElementsOf(Words.STAGES.keySet());
        assertThat(words(defs, "display", "pressure"))
                .containsExactlyElementsOf(
                        Words.units(slabfield.quantity.Dimension.PRESSURE).keySet());
        assertThat(words(defs, "display", "flow"))
                .containsExactlyElementsOf(
                        Words.units(slabfield.quantity.Dimension.FLOW).keySet());
        assertThat(words(defs, "display", "length"))
                .containsExactlyElementsOf(
                        Words.units(slabfield.quantity.Dimension.LENGTH).keySet());
    }

    private static List<String> words(JsonNode defs, String object, String key) {
        List<String> words = new ArrayList<>();
        defs.path(object).path("properties").path(key).path("enum").forEach(w -> words.add(w.asText()));
        return words;
    }

    private static List<String> names(JsonNode object) {
        return object.properties().stream().map(java.util.Map.Entry::getKey).toList();
    }
}
