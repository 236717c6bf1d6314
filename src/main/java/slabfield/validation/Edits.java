package slabfield.validation;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Changes to a tree: each has a place {@code at}, a JSON pointer in which * stands for every entry that has the rest of it,
 * and one of {@code set} (another value), {@code times} (a factor on a number, or on the number of a quantity such as
 * "2e-8 m2") and {@code remove}.
 */
final class Edits {
    private static final Pattern AMOUNT = Pattern.compile("([+-]?[0-9.]+(?:[eE][+-]?[0-9]+)?)(.*)");
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private Edits() {}

    /** The tree with the changes; the given one is left as it is. */
    static JsonNode apply(JsonNode tree, JsonNode edits) throws CaseProblem {
        JsonNode changed = tree.deepCopy();
        for (JsonNode edit : edits) {
            String at = edit.path("at").asText();
            List<String> keys = List.of(at.substring(Math.min(1, at.length())).split("/"));
            if (change(changed, keys, edit, !keys.contains("*")) == 0)
                throw new CaseProblem("nothing stands at " + at + " to be changed");
        }
        return changed;
    }

    /**
     * Number of places that were changed.
     *
     * @param mayAdd whether a key that is not there may be set
     */
    private static int change(JsonNode node, List<String> keys, JsonNode edit, boolean mayAdd) throws CaseProblem {
        String key = keys.get(0);
        int changed = 0;
        for (String each : "*".equals(key) ? keysOf(node) : List.of(key)) {
            if (keys.size() > 1) {
                JsonNode child = child(node, each);
                if (child != null) changed += change(child, keys.subList(1, keys.size()), edit, mayAdd);
            } else if (child(node, each) != null || mayAdd && edit.has("set")) {
                put(node, each, edit);
                changed++;
            }
        }
        return changed;
    }

    private static List<String> keysOf(JsonNode node) {
        List<String> keys = new ArrayList<>();
        if (node.isArray()) for (int i = 0; i < node.size(); i++) keys.add(Integer.toString(i));
        else node.fieldNames().forEachRemaining(keys::add);
        return keys;
    }

    private static JsonNode child(JsonNode node, String key) {
        return node.isArray() ? node.get(Integer.parseInt(key)) : node.get(key);
    }

    private static void put(JsonNode parent, String key, JsonNode edit) throws CaseProblem {
        JsonNode value =
                edit.has("times") ? times(child(parent, key), edit.get("times").asDouble()) : edit.get("set");
        if (parent instanceof ArrayNode array) {
            int i = Integer.parseInt(key);
            if (value == null) array.remove(i);
            else array.set(i, value);
        } else if (parent instanceof ObjectNode object) {
            if (value == null) object.remove(key);
            else object.set(key, value);
        }
    }

    private static JsonNode times(JsonNode value, double factor) throws CaseProblem {
        if (value.isNumber()) return NODES.numberNode(value.asDouble() * factor);
        Matcher parts = AMOUNT.matcher(value.asText());
        if (!parts.matches()) throw new CaseProblem("\"" + value.asText() + "\" is no number that could be multiplied");
        return NODES.textNode(Double.parseDouble(parts.group(1)) * factor + parts.group(2));
    }
}
