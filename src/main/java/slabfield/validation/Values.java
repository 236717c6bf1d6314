package slabfield.validation;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.io.JsonText;
import slabfield.io.ScenarioProblems;
import slabfield.io.ScenarioReader;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver;

/**
 * Works out the values of a case, all in SI. A value is a number, a quantity such as "4 in", a number of a solved scenario
 * (such as {@code {"hole": "T1", "in": "house"}}), a law by name with its arguments, or some of these put together by
 * {@code sum}, {@code difference}, {@code product}, {@code ratio}, {@code negative}, {@code root}, {@code log} or
 * {@code largest}.
 */
final class Values {
    private final JsonNode tree;
    private final double cellFactor;
    private final Map<String, Result.Solved> solved = new LinkedHashMap<>();

    /**
     * @param tree of the case
     * @param cellFactor by which each scenario's cells are larger than it says
     */
    Values(JsonNode tree, double cellFactor) {
        this.tree = tree;
        this.cellFactor = cellFactor;
    }

    /** Largest imbalance of all scenarios solved so far, relative to the flow through each. */
    double imbalance() {
        return solved.values().stream()
                .mapToDouble(s -> Math.abs(s.convergence().massBalance()))
                .max()
                .orElse(0);
    }

    /** Scenarios solved so far, by name. */
    Map<String, Result.Solved> solved() {
        return solved;
    }

    /** Whether a value comes from a solved scenario. */
    static boolean isSolved(JsonNode value) {
        for (String key : new String[] {"hole", "holeOff", "pit", "drawn", "source", "total", "found"})
            if (value.has(key)) return true;
        for (JsonNode child : value) if (isSolved(child)) return true;
        return false;
    }

    double of(JsonNode value) throws CaseProblem {
        if (value.isNumber()) return value.asDouble();
        if (value.isTextual()) return Amounts.of(value.asText());
        if (value.has("law")) return law(value);
        if (isSolved(value) && !isCombined(value))
            return read(solved(value.path("in").asText("house")), value);
        return combined(value);
    }

    private static boolean isCombined(JsonNode value) {
        return value.size() == 1 && value.elements().next().isContainerNode();
    }

    private double law(JsonNode value) throws CaseProblem {
        Map<String, Double> arguments = new LinkedHashMap<>();
        var fields = value.path("of").fields();
        while (fields.hasNext()) {
            var field = fields.next();
            arguments.put(field.getKey(), of(field.getValue()));
        }
        return NamedLaws.call(value.path("law").asText(), arguments);
    }

    private double combined(JsonNode value) throws CaseProblem {
        if (value.size() != 1) throw new CaseProblem("this is no value: " + value);
        String how = value.fieldNames().next();
        JsonNode parts = value.get(how);
        double[] of = new double[parts.isArray() ? parts.size() : 1];
        for (int i = 0; i < of.length; i++) of[i] = of(parts.isArray() ? parts.get(i) : parts);
        double out = of[0];
        for (int i = 1; i < of.length; i++)
            out = switch (how) {
                case "sum" -> out + of[i];
                case "difference" -> out - of[i];
                case "product" -> out * of[i];
                case "ratio" -> out / of[i];
                case "largest" -> Math.max(out, of[i]);
                default -> throw new CaseProblem("values cannot be put together by \"" + how + "\"");
            };
        return switch (how) {
            case "negative" -> -out;
            case "root" -> Math.sqrt(out);
            case "log" -> Math.log(out);
            default -> out;
        };
    }

    private Result.Solved solved(String name) throws CaseProblem {
        Result.Solved known = solved.get(name);
        if (known != null) return known;
        Scenario drawn = scenario(name);
        Scenario scenario = cellFactor == 1 ? drawn : drawn.withCellSize(drawn.cellSize() * cellFactor);
        boolean off = tree.path("claims").findValue("holeOff") != null;
        SlabSolver.Extent extent = off ? SlabSolver.Extent.FULL : SlabSolver.Extent.FAN_ON_ONLY;
        Result result = SlabSolver.solve(scenario, extent, Progress.NONE);
        if (result instanceof Result.Unsolved no) throw new CaseProblem("scenario \"" + name + "\": " + no.reason());
        solved.put(name, (Result.Solved) result);
        return (Result.Solved) result;
    }

    private Scenario scenario(String name) throws CaseProblem {
        try {
            return ScenarioReader.read(JsonText.of(drawing(name)), "scenario \"" + name + "\"");
        } catch (ScenarioProblems e) {
            throw new CaseProblem(e.getMessage());
        }
    }

    /** A scenario as it is written, or another one with changes. */
    private JsonNode drawing(String name) throws CaseProblem {
        JsonNode drawn = tree.path("scenarios").get(name);
        if (drawn == null) throw new CaseProblem("there is no scenario \"" + name + "\"");
        return drawn.has("like") ? Edits.apply(drawing(drawn.get("like").asText()), drawn.get("edits")) : drawn;
    }

    private static double read(Result.Solved s, JsonNode value) throws CaseProblem {
        String key = value.fieldNames().next(), name = value.get(key).asText();
        return switch (key) {
            case "hole" -> number(s.hole(name).map(Result.Hole::fanOn), name);
            case "holeOff" -> number(s.hole(name).map(Result.Hole::fanOff), name);
            case "pit" -> s.suction(name).orElseThrow(() -> missing(name)).pressure();
            case "drawn" -> s.suction(name).orElseThrow(() -> missing(name)).flow();
            case "source" -> {
                Double flow = s.flows().bySource().get(name);
                if (flow == null) throw missing(name);
                yield flow;
            }
            case "total" ->
                switch (name) {
                    case "exhaust" -> s.flows().exhaust();
                    case "from room" -> s.flows().fromRoom();
                    case "from soil" -> s.flows().fromSoil();
                    case "from outdoors" -> s.flows().fromOutdoors();
                    default -> throw missing(name);
                };
            case "found" ->
                switch (name) {
                    case "weakest vacuum" -> s.coverage().weakest();
                    case "part meeting the target" -> s.coverage().meeting();
                    case "unreached area" ->
                        s.unreached().stream()
                                .mapToDouble(Result.Unreached::area)
                                .sum();
                    case "largest inertial share" -> largest(s.inertialShare());
                    default -> throw missing(name);
                };
            default -> throw new CaseProblem("this is no value: " + value);
        };
    }

    private static double largest(double[] values) {
        double largest = 0;
        for (double v : values) if (v > largest) largest = v;
        return largest;
    }

    private static double number(java.util.Optional<OptionalDouble> pressure, String name) throws CaseProblem {
        return pressure.orElseThrow(() -> missing(name)).orElseThrow(() -> missing(name));
    }

    private static CaseProblem missing(String name) {
        return new CaseProblem("the solved scenario has no \"" + name + "\"");
    }
}
