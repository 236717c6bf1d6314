package slabfield.io;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.exc.StreamReadException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** JSON text as a tree that knows the line of each of its parts. */
final class JsonTree {
    /** The format itself needs seven. */
    private static final int DEEPEST = 20;

    private static final int MOST_VALUES = 200_000;
    private static final int LONGEST_TEXT = 200_000;
    private static final int LONGEST_KEY = 1000;
    private static final int LONGEST_NUMBER = 100;
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final JsonFactory FACTORY = JsonFactory.builder()
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(DEEPEST + 5)
                    .maxStringLength(LONGEST_TEXT)
                    .maxNameLength(LONGEST_KEY)
                    .maxNumberLength(LONGEST_NUMBER)
                    .build())
            .build();

    private final Map<String, Integer> lines = new HashMap<>();
    private final String text;
    private final String file;
    private JsonNode root;

    private JsonTree(String text, String file) {
        this.text = text;
        this.file = file;
    }

    /**
     * @throws ScenarioProblems where the text is not JSON, names a key twice, or is too deep or too large
     */
    static JsonTree parse(String text, String file) throws ScenarioProblems {
        JsonTree tree = new JsonTree(text, file);
        try (JsonParser parser = FACTORY.createParser(text)) {
            if (parser.nextToken() == null) throw tree.broken(1, "", "the file is empty");
            tree.root = tree.value(parser, "", 0);
            if (parser.nextToken() != null)
                throw tree.broken(line(parser), "", "something follows after the end of the scenario; delete it");
            return tree;
        } catch (StreamReadException e) {
            int line = e.getLocation().getLineNr(), column = e.getLocation().getColumnNr();
            throw tree.broken(line, "", "column " + column + ": this is not JSON; " + tree.cause(e, line, column));
        } catch (StreamConstraintsException e) {
            throw tree.broken(
                    e.getLocation() == null ? 0 : e.getLocation().getLineNr(),
                    "",
                    "a text is longer than " + LONGEST_TEXT + " characters, a key than " + LONGEST_KEY
                            + " or a number than " + LONGEST_NUMBER + ", which no file needs");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    JsonNode root() {
        return root;
    }

    /** Line of a place, or of the nearest thing around it. */
    int line(String pointer) {
        String at = pointer;
        while (!lines.containsKey(at) && !at.isEmpty()) at = at.substring(0, at.lastIndexOf('/'));
        return lines.getOrDefault(at, 1);
    }

    /** A key as a part of a pointer. */
    static String escaped(String key) {
        return key.replace("~", "~0").replace("/", "~1");
    }

    private JsonNode value(JsonParser parser, String pointer, int depth) throws IOException, ScenarioProblems {
        lines.putIfAbsent(pointer, line(parser));
        if (depth > DEEPEST)
            throw broken(line(parser), "", "brackets are nested deeper than " + DEEPEST + ", which no scenario needs");
        if (lines.size() > MOST_VALUES)
            throw broken(
                    line(parser),
                    "",
                    "there are more than " + MOST_VALUES + " values, which is more than this program takes");
        return switch (parser.currentToken()) {
            case START_OBJECT -> object(parser, pointer, depth);
            case START_ARRAY -> array(parser, pointer, depth);
            case VALUE_STRING -> NODES.textNode(parser.getText());
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> number(parser);
            case VALUE_TRUE -> NODES.booleanNode(true);
            case VALUE_FALSE -> NODES.booleanNode(false);
            default -> NODES.nullNode();
        };
    }

    private static JsonNode number(JsonParser parser) throws IOException {
        double value = parser.getDoubleValue();
        return value == Math.rint(value) && Math.abs(value) < 1e9
                ? NODES.numberNode((int) value)
                : NODES.numberNode(value);
    }

    private JsonNode object(JsonParser parser, String pointer, int depth) throws IOException, ScenarioProblems {
        ObjectNode node = NODES.objectNode();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String key = parser.currentName(), place = pointer + "/" + escaped(key);
            if (node.has(key))
                throw broken(
                        line(parser),
                        place,
                        "the key \"" + key + "\" stands twice here, first on line " + line(place) + "; delete one");
            lines.put(place, line(parser));
            parser.nextToken();
            node.set(key, value(parser, place, depth + 1));
        }
        return node;
    }

    private JsonNode array(JsonParser parser, String pointer, int depth) throws IOException, ScenarioProblems {
        ArrayNode node = NODES.arrayNode();
        while (parser.nextToken() != JsonToken.END_ARRAY)
            node.add(value(parser, pointer + "/" + node.size(), depth + 1));
        return node;
    }

    private static int line(JsonParser parser) {
        return parser.currentTokenLocation().getLineNr();
    }

    private ScenarioProblems broken(int line, String pointer, String message) {
        return new ScenarioProblems(file, List.of(new FileProblem(file, line, pointer, message)));
    }

    /** What most likely went wrong at a place that is not JSON. */
    private String cause(StreamReadException error, int line, int column) {
        if (error instanceof JsonEOFException)
            return "the file ends before everything that was opened is closed; a quote or a bracket ] or } is missing";
        if (error.getOriginalMessage().contains("CTRL-CHAR"))
            return "a text ends on the line on which it begins; close its quote, or write \\n for a new line";
        String row = text.lines().skip(line - 1L).findFirst().orElse("");
        String here = row.substring(Math.min(row.length(), Math.max(0, column - 2)));
        char found =
                here.isEmpty() ? ' ' : here.charAt(here.length() > 1 && Character.isWhitespace(here.charAt(0)) ? 1 : 0);
        if (found == '/' || found == '#') return "it has no comments; put remarks into \"notes\"";
        if (found == ',' || found == ']' || found == '}')
            return "there is a comma too many, or a value missing, before \"" + found + "\"";
        if (found == '"' || found == '{' || found == '[') return "a comma is missing before it";
        if (found == '\'' || found == '\u201c' || found == '\u201d')
            return "texts stand between straight double quotes, as in \"sand\"";
        if (Character.isLetter(found)) return "words stand between double quotes, as in \"sand\"";
        if (Character.isDigit(found) || found == '-')
            return "a comma or a colon is missing before it, or it is a number with a 0 too many in front";
        return "it cannot be read from here on";
    }
}
