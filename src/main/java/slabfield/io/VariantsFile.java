package slabfield.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.model.Scenario;

/**
 * Reads and writes the variants of one house, which stand beside its scenario file: house.json has house.variants.json.
 * Each variant is a whole scenario in the format of scenario files.
 */
public final class VariantsFile {
    private static final int VERSION = 1;
    private static final int LARGEST_FILE = 64 * 1024 * 1024;

    /**
     * One variant.
     *
     * @param name unique among its kind
     * @param parent name of the variant that it branched from; empty for the first
     */
    public record Variant(String name, Optional<String> parent, Scenario scenario) {}

    /**
     * All variants of a house.
     *
     * @param current name of the one that the scenario file holds
     */
    public record Variants(List<Variant> all, String current) {
        public Variants {
            all = List.copyOf(all);
        }
    }

    private VariantsFile() {}

    /** Where the variants of a scenario file stand. */
    public static Path beside(Path scenario) {
        return scenario.resolveSibling(
                scenario.getFileName().toString().replaceAll("(?i)\\.json$", "") + ".variants.json");
    }

    /**
     * Reads a file.
     *
     * @throws ScenarioProblems where it cannot be read or holds anything wrong
     */
    public static Variants read(Path file) throws ScenarioProblems {
        try {
            if (Files.size(file) > LARGEST_FILE)
                throw wrong(file.toString(), "the file is larger than 64 MB, which no file of variants is");
            return read(Files.readString(file), file.toString());
        } catch (IOException e) {
            throw wrong(
                    file.toString(),
                    "the variants cannot be read; check that the file is there, is UTF-8 text, and that you may open it");
        }
    }

    private static ScenarioProblems wrong(String name, String message) {
        return new ScenarioProblems(name, List.of(new FileProblem(name, 0, "", message)));
    }

    /** Reads the text of a file. */
    public static Variants read(String text, String name) throws ScenarioProblems {
        JsonNode root = JsonTree.parse(text, name).root();
        if (root.path("slabfieldVariants").asInt() != VERSION)
            throw wrong(name, "this is no file of variants of version " + VERSION);
        List<Variant> all = new ArrayList<>();
        for (JsonNode node : root.path("variants")) all.add(variant(node, name, all));
        String current = root.path("current").asText();
        if (all.stream().noneMatch(v -> v.name().equals(current)))
            throw wrong(name, "\"current\" names no variant of the file");
        return new Variants(all, current);
    }

    private static Variant variant(JsonNode node, String file, List<Variant> before) throws ScenarioProblems {
        String name = node.path("name").asText();
        if (name.isBlank()) throw wrong(file, "a variant has no \"name\"");
        if (before.stream().anyMatch(v -> v.name().equals(name)))
            throw wrong(file, "two variants are called \"" + name + "\"");
        Optional<String> parent = Optional.of(node.path("parent").asText()).filter(p -> !p.isBlank());
        if (parent.isPresent() && before.stream().noneMatch(v -> parent.get().equals(v.name())))
            throw wrong(
                    file,
                    "variant \"" + name + "\" branches from \"" + parent.get() + "\", which does not stand before it");
        Scenario scenario =
                ScenarioReader.read(JsonText.of(node.path("scenario")), file + ", variant \"" + name + "\"");
        return new Variant(name, parent, scenario);
    }

    /** The text of a file that is read back as equal variants. */
    public static String toJson(Variants variants) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("slabfieldVariants", VERSION).put("current", variants.current());
        ArrayNode list = root.putArray("variants");
        for (Variant v : variants.all()) {
            ObjectNode node = list.addObject()
                    .put("name", v.name())
                    .put("parent", v.parent().orElse(""));
            node.set("scenario", ScenarioWriter.tree(v.scenario()));
        }
        return JsonText.of(root);
    }

    /** Writes a file so that after a crash either the old or the new one is there. */
    public static void write(Path file, Variants variants) throws IOException {
        SafeFile.write(file, toJson(variants).getBytes(StandardCharsets.UTF_8));
    }
}
