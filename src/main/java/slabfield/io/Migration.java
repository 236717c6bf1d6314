package slabfield.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;

/**
 * Brings scenario files of older versions of the format up to date as they are read; the file itself is not touched. Each
 * step leads from one version to the next.
 */
final class Migration {
    private static final Map<Integer, Consumer<ObjectNode>> STEPS = Map.of(0, Migration::readingsIntoStages);

    private Migration() {}

    /** True where a file of this version can be brought up to date. */
    static boolean knows(int version) {
        return STEPS.containsKey(version);
    }

    /** Changes the tree of an older file step by step, until it is of the version that is read. */
    static void apply(ObjectNode root) {
        for (int version = root.path(KEY).asInt(); version < ScenarioReader.VERSION; version++) {
            STEPS.get(version).accept(root);
            root.put(KEY, version + 1);
        }
    }

    private static final String KEY = "slabfield";

    /**
     * Version 0, the draft of the format: readings stood in one list, each with the name of its stage; and the layer's
     * thickness was called its height.
     */
    private static void readingsIntoStages(ObjectNode root) {
        if (root.path("layer") instanceof ObjectNode layer && layer.has("height"))
            layer.set("thickness", layer.remove("height"));
        if (!(root.remove("readings") instanceof ArrayNode readings)) return;
        Map<String, ArrayNode> stages = new LinkedHashMap<>();
        for (JsonNode reading : readings) {
            if (!(reading instanceof ObjectNode one)) continue;
            JsonNode stage = one.remove("stage");
            String id = stage == null ? "readings" : stage.asText();
            stages.computeIfAbsent(id, s -> JsonNodeFactory.instance.arrayNode())
                    .add(one);
        }
        ArrayNode list = root.putArray("stages");
        stages.forEach((id, own) ->
                list.addObject().put("id", id).put("kind", "communication test").set("readings", own));
    }
}
