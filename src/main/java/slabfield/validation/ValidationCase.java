package slabfield.validation;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.StreamSupport;

/**
 * One folder of the validation set, as read.
 *
 * @param folder where it lies; its name begins with four digits
 * @param tree of its case.json
 * @param table of its reference.csv
 * @param kind of its source
 */
public record ValidationCase(Path folder, JsonNode tree, ReferenceTable table, Kind kind) {
    private static final List<String> TEXTS = List.of("title", "question", "source", "doesNotShow");

    /**
     * Reads a folder.
     *
     * @throws CaseProblem where a file is missing or something is wrong in one
     */
    public static ValidationCase read(Path folder) throws CaseProblem {
        List<String> problems = new ArrayList<>();
        for (String file : List.of("case.json", "SOURCE.md", "reference.csv"))
            if (!Files.isRegularFile(folder.resolve(file))) problems.add("there is no " + file);
        if (!problems.isEmpty()) throw new CaseProblem(folder, problems);
        try {
            JsonNode tree = new JsonMapper().readTree(Files.readAllBytes(folder.resolve("case.json")));
            ReferenceTable table = ReferenceTable.read(folder.resolve("reference.csv"));
            for (String text : TEXTS)
                if (tree.path(text).asText().isBlank()) problems.add("\"" + text + "\" is missing");
            if (tree.path("claims").isEmpty()) problems.add("it claims nothing");
            if (tree.path("control").path("edits").isEmpty()) problems.add("it has no control");
            Optional<Kind> kind = Kind.of(tree.path("kind").asText());
            if (kind.isEmpty()) problems.add("its kind is none of those that are known");
            if (!problems.isEmpty()) throw new CaseProblem(folder, problems);
            ValidationCase read = new ValidationCase(folder, tree, table, kind.orElseThrow());
            read.claims();
            return read;
        } catch (IOException e) {
            throw new CaseProblem(folder, List.of("cannot be read: " + e.getMessage()));
        }
    }

    /** Name of the folder. */
    public String id() {
        return folder.getFileName().toString();
    }

    public String title() {
        return tree.path("title").asText();
    }

    /** Author, year and place of the source, in short. */
    public String source() {
        return tree.path("source").asText();
    }

    /** The perturbation that must turn the case red. */
    public String control() {
        return tree.path("control").path("name").asText();
    }

    /** Why it is red, where that is known; it stays in the set until it agrees. */
    public Optional<String> missed() {
        return Optional.ofNullable(tree.path("missed").asText(null));
    }

    /** Laws and devices that it says something of. */
    public List<String> covers() {
        return StreamSupport.stream(tree.path("covers").spliterator(), false)
                .map(JsonNode::asText)
                .toList();
    }

    /** Whether a layer is solved in it. */
    public boolean solves() {
        return tree.has("scenarios");
    }

    /** What it claims, each row of a template being a claim of its own. */
    public List<Claim> claims() throws CaseProblem {
        return new ClaimReader(table).claims(tree.path("claims"), folder);
    }

    /** The same case with its control's change made to it; sources and tolerances stay. */
    ValidationCase perturbed() throws CaseProblem {
        return new ValidationCase(folder, Edits.apply(tree, tree.path("control").path("edits")), table, kind);
    }
}
