package slabfield.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import slabfield.field.Convergence;
import slabfield.field.Result;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Stage;

/** Writes what a solve gave as JSON. Units stand in the keys; what has no value is null. */
public final class ResultWriter {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private ResultWriter() {}

    /** The text of a result file. A result without a field has an outcome and a reason, and nothing of the field. */
    public static String json(Result result) {
        ObjectNode root = NODES.objectNode();
        root.put(OwnFile.KEY, OwnFile.NAME);
        root.put("scenario", result.scenario().name());
        Convergence c = result.convergence();
        ObjectNode outcome = root.putObject("outcome");
        outcome.put("converged", c.converged());
        outcome.put("ending", c.ending().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        outcome.put("iterations", c.iterations());
        number(outcome, "residual", c.residual());
        if (result instanceof Result.Unsolved unsolved) outcome.put("reason", unsolved.reason());
        number(root, "massBalance_relative", c.massBalance());
        if (result instanceof Result.Solved solved) field(root, solved);
        return JsonText.of(root);
    }

    private static void field(ObjectNode root, Result.Solved solved) {
        ArrayNode holes = root.putArray("testHoles");
        solved.holes().forEach(hole -> hole(holes.addObject(), hole, solved.scenario()));
        ArrayNode suctions = root.putArray("suctionPoints");
        for (Result.Suction suction : solved.suctions()) {
            ObjectNode node = suctions.addObject().put("id", suction.id());
            number(node, "pressure_Pa", suction.pressure());
            number(node, "flow_m3_per_s", suction.flow());
        }
        flows(root.putObject("flows_m3_per_s"), solved.flows());
        Result.Coverage coverage = solved.coverage();
        ObjectNode cover = root.putObject("coverage");
        number(cover, "target_Pa", coverage.target());
        number(cover, "areaMeeting_fraction", coverage.meeting());
        number(cover, "weakest_Pa", coverage.weakest());
        if (Double.isFinite(coverage.weakest())) cover.set("weakestAt_m", place(coverage.weakestAt()));
        else cover.putNull("weakestAt_m");
        number(cover, "cell_m", coverage.cell());
        ArrayNode unreached = root.putArray("unreached");
        for (Result.Unreached part : solved.unreached()) {
            ObjectNode node = unreached.addObject();
            node.set("around_m", place(part.around()));
            number(node, "area_m2", part.area());
        }
        ArrayNode doubts = root.putArray("doubts");
        solved.doubts().forEach(doubts::add);
    }

    private static void hole(ObjectNode node, Result.Hole hole, Scenario scenario) {
        node.put("id", hole.id());
        number(node, "predicted_Pa", hole.fanOn().orElse(Double.NaN));
        number(node, "predictedFanOff_Pa", hole.fanOff().orElse(Double.NaN));
        number(node, "measured_Pa", measured(scenario, hole.id()).orElse(Double.NaN));
    }

    /**
     * Fan-on reading at a hole in the latest stage with readings in which the house stood as drawn; the last one where the
     * hole was read twice [Pa].
     */
    public static OptionalDouble measured(Scenario scenario, String hole) {
        List<Stage> drawn = scenario.stages().stream()
                .filter(s -> s.asDrawn() && !s.holes().isEmpty())
                .toList();
        if (drawn.isEmpty()) return OptionalDouble.empty();
        return drawn.get(drawn.size() - 1).holes().stream()
                .filter(r -> r.hole().equals(hole) && r.fanOn().isPresent())
                .map(Stage.HoleReading::fanOn)
                .reduce(OptionalDouble.empty(), (before, latest) -> latest);
    }

    private static void flows(ObjectNode node, Result.Flows flows) {
        number(node, "exhaust", flows.exhaust());
        number(node, "fromRoom", flows.fromRoom());
        number(node, "fromSoil", flows.fromSoil());
        number(node, "fromOutdoors", flows.fromOutdoors());
        ObjectNode sources = node.putObject("bySource");
        flows.bySource().forEach((source, flow) -> number(sources, source, flow));
    }

    private static ArrayNode place(Point point) {
        return NODES.arrayNode().add(point.x()).add(point.y());
    }

    private static void number(ObjectNode node, String key, double value) {
        if (Double.isFinite(value)) node.put(key, value);
        else node.putNull(key);
    }
}
