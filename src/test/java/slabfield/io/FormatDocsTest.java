package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import slabfield.quantity.Dimension;
import slabfield.quantity.Unit;

/**
 * The tables of docs/scenario-format.md and docs/units.md are those of the schema and of the list of units. Run with
 * {@code -Dslabfield.rewriteDocs=true} to write them anew.
 */
class FormatDocsTest {
    private static final Path FORMAT = Path.of("docs/scenario-format.md");
    private static final Path UNITS = Path.of("docs/units.md");

    @Test
    void theTablesOfKeysAreThoseOfTheSchema() throws IOException {
        JsonNode schema = ScenarioFilesTest.schemaTree();
        StringBuilder text = new StringBuilder();
        for (FileObject each : FileObject.values()) {
            JsonNode object =
                    each == FileObject.SCENARIO ? schema : schema.path("$defs").path(each.schemaName());
            text.append("### ")
                    .append(each.schemaName())
                    .append('\n')
                    .append(object.path("description").asText());
            text.append("\n\n| key | value | default | meaning |\n| --- | --- | --- | --- |\n");
            object.path("properties")
                    .properties()
                    .forEach(p -> text.append("| `")
                            .append(p.getKey())
                            .append('`')
                            .append(each.required().contains(p.getKey()) ? "" : " ?")
                            .append(" | ")
                            .append(value(p.getValue()))
                            .append(" | ")
                            .append(fallback(p.getValue()))
                            .append(" | ")
                            .append(p.getValue().path("description").asText().replace("|", "\\|"))
                            .append(" |\n"));
            text.append('\n');
        }
        check(FORMAT, "keys", text.toString());
    }

    private static String value(JsonNode property) {
        if (property.has("$ref")) return name(property.path("$ref").asText());
        if (property.has("const")) return "`" + property.path("const").asText() + "`";
        if (property.has("enum")) {
            List<String> words = new ArrayList<>();
            property.path("enum").forEach(w -> words.add("`" + w.asText() + "`"));
            return String.join(", ", words);
        }
        JsonNode items = property.path("items");
        if (items.has("$ref")) return "list of " + name(items.path("$ref").asText());
        if (items.has("prefixItems")) {
            List<String> pair = new ArrayList<>();
            items.path("prefixItems").forEach(i -> pair.add(name(i.path("$ref").asText())));
            return "list of [" + String.join(", ", pair) + "]";
        }
        return property.has("additionalProperties")
                ? "object by name"
                : property.path("type").asText();
    }

    private static String name(String ref) {
        return ref.substring(ref.lastIndexOf('/') + 1);
    }

    private static String fallback(JsonNode property) {
        JsonNode value = property.path("default");
        if (value.isMissingNode()
                || value.isTextual() && value.asText().isEmpty()
                || value.isContainerNode() && value.isEmpty()) return "";
        return "`" + value + "`";
    }

    @Test
    void theTableOfUnitsIsThatOfTheProgram() throws IOException {
        StringBuilder text = new StringBuilder("| quantity | units | also read |\n| --- | --- | --- |\n");
        for (Dimension each : Dimension.values()) {
            List<String> symbols = new ArrayList<>(), aliases = new ArrayList<>();
            for (Unit unit : Unit.of(each)) {
                symbols.add("`" + unit.symbol() + "`");
                unit.aliases().forEach(a -> aliases.add("`" + a + "`"));
            }
            text.append("| ")
                    .append(each.name().toLowerCase(Locale.ROOT).replace('_', ' '))
                    .append(" | ")
                    .append(String.join(" ", symbols))
                    .append(" | ")
                    .append(String.join(" ", aliases))
                    .append(" |\n");
        }
        check(UNITS, "units", text.toString());
    }

    @Test
    void theShortestFileOfTheManualReads() throws IOException, ScenarioProblems {
        String manual = Files.readString(FORMAT);
        int from = manual.indexOf("```json\n") + 8;
        assertThat(ScenarioReader.read(manual.substring(from, manual.indexOf("```", from)), FORMAT.toString())
                        .name())
                .isEqualTo("House");
    }

    private static void check(Path file, String what, String table) throws IOException {
        String begin = "<!-- " + what + ": begin -->\n", end = "<!-- " + what + ": end -->";
        String page = Files.readString(file);
        int from = page.indexOf(begin) + begin.length(), to = page.indexOf(end);
        if (Boolean.getBoolean("slabfield.rewriteDocs"))
            Files.writeString(file, page.substring(0, from) + table + page.substring(to));
        else
            assertThat(page.substring(from, to))
                    .as("run with -Dslabfield.rewriteDocs=true to renew " + file)
                    .isEqualTo(table);
    }
}
