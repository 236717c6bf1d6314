package slabfield.validation;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads the claims of a case. A claim with {@code rows} ("all", or a list of row names) stands for one claim for each of
 * these rows of the reference table; in its texts, $column stands for the row's cell.
 */
final class ClaimReader {
    private static final Pattern COLUMN = Pattern.compile("\\$([A-Za-z0-9_]+)");
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final ReferenceTable table;
    private final List<String> problems = new ArrayList<>();

    ClaimReader(ReferenceTable table) {
        this.table = table;
    }

    List<Claim> claims(JsonNode list, Path folder) throws CaseProblem {
        List<Claim> claims = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (JsonNode each : list)
            for (JsonNode filled : each.has("rows") ? rows(each) : List.of(each)) claim(filled, claims);
        for (Claim c : claims) if (!names.add(c.name())) problems.add("two claims are called \"" + c.name() + "\"");
        if (!problems.isEmpty()) throw new CaseProblem(folder, problems);
        return claims;
    }

    private List<JsonNode> rows(JsonNode template) {
        List<JsonNode> filled = new ArrayList<>();
        List<String> wanted = new ArrayList<>();
        if (template.path("rows").isArray()) template.path("rows").forEach(r -> wanted.add(r.asText()));
        else wanted.addAll(table.rows().keySet());
        for (String name : wanted) {
            Map<String, String> row = table.rows().get(name);
            if (row == null) problems.add("reference.csv has no row \"" + name + "\"");
            else filled.add(fill(template, row));
        }
        return filled;
    }

    private JsonNode fill(JsonNode node, Map<String, String> row) {
        if (node.isTextual()) return text(node.asText(), row);
        if (node.isArray()) {
            ArrayNode copy = NODES.arrayNode();
            node.forEach(child -> copy.add(fill(child, row)));
            return copy;
        }
        if (node.isObject()) {
            ObjectNode copy = NODES.objectNode();
            node.fields().forEachRemaining(e -> copy.set(e.getKey(), fill(e.getValue(), row)));
            return copy;
        }
        return node;
    }

    /** A text whose columns are filled in; one that is a column and nothing else becomes a number where it can. */
    private JsonNode text(String text, Map<String, String> row) {
        Matcher m = COLUMN.matcher(text);
        StringBuilder out = new StringBuilder();
        while (m.find()) {
            String cell = row.get(m.group(1));
            if (cell == null) problems.add("reference.csv has no column \"" + m.group(1) + "\"");
            m.appendReplacement(out, Matcher.quoteReplacement(cell == null ? "" : cell));
        }
        m.appendTail(out);
        String filled = out.toString();
        if (filled.equals(text) || !COLUMN.matcher(text).matches()) return NODES.textNode(filled);
        try {
            return NODES.numberNode(Double.parseDouble(filled));
        } catch (NumberFormatException e) {
            return NODES.textNode(filled);
        }
    }

    private void claim(JsonNode node, List<Claim> claims) {
        String name = node.path("name").asText();
        String tolerance = node.path("tolerance").asText(),
                why = node.path("why").asText();
        try {
            if (name.isBlank() || name.contains(",")) throw new CaseProblem("a claim has no name, or one with a comma");
            if (why.isBlank()) throw new CaseProblem("it does not say why its tolerance is what it is");
            if (!node.has("value")) throw new CaseProblem("it does not say how our value is had");
            double size = node.has("unitSize")
                    ? Amounts.of(node.get("unitSize"))
                    : Amounts.unit(node.path("unit").asText("-"));
            OptionalDouble x = node.has("x") ? OptionalDouble.of(number(node.get("x"))) : OptionalDouble.empty();
            double low, high;
            OptionalDouble reference = OptionalDouble.empty();
            if (node.has("between")) {
                low = number(node.path("between").path(0));
                high = number(node.path("between").path(1));
                tolerance = "the source's range";
            } else {
                double ref = number(node.path("reference")), half = half(tolerance, ref);
                reference = OptionalDouble.of(ref);
                low = ref - half;
                high = ref + half;
            }
            String unit = node.path("unit").asText("-");
            claims.add(new Claim(name, unit, size, node.get("value"), low, high, reference, tolerance, why, x));
        } catch (CaseProblem e) {
            problems.add("claim \"" + name + "\": " + e.getMessage());
        }
    }

    private double number(JsonNode node) throws CaseProblem {
        if (node.isNumber()) return node.asDouble();
        if ("inf".equals(node.asText())) return Double.POSITIVE_INFINITY;
        return table.number(node.asText())
                .orElseThrow(() -> new CaseProblem("\"" + node.asText() + "\" is no number of reference.csv"));
    }

    /** Half the width of a tolerance: "0.5 %" of the reference, or "+-0.02" in the claim's unit. */
    private static double half(String tolerance, double reference) throws CaseProblem {
        try {
            if (tolerance.endsWith("%"))
                return Math.abs(reference)
                        * Double.parseDouble(
                                tolerance.substring(0, tolerance.length() - 1).strip())
                        / 100;
            if (tolerance.startsWith("+-"))
                return Double.parseDouble(tolerance.substring(2).strip());
        } catch (NumberFormatException e) {
            // said below
        }
        throw new CaseProblem("its tolerance \"" + tolerance + "\" is neither like \"0.5 %\" nor like \"+-0.02\"");
    }
}
