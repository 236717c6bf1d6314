package slabfield.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.OptionalDouble;
import slabfield.field.Result;
import slabfield.io.JsonText;
import slabfield.io.OwnFile;
import slabfield.model.Scenario;
import slabfield.readings.Comparison;
import slabfield.readings.MeasuredFlow;

/**
 * Comparisons and suggestions as JSON, in SI with the unit in the key; what has no value is null. As in a result file,
 * {@code weakest_Pa} is a vacuum, and every other pressure is negative under vacuum.
 */
final class JsonPages {
    private JsonPages() {}

    static String comparisons(Scenario scenario, List<CompareVerb.Compared> stages) {
        ObjectNode root = JsonNodeFactory.instance
                .objectNode()
                .put(OwnFile.KEY, OwnFile.NAME)
                .put("scenario", scenario.name());
        ArrayNode list = root.putArray("stages");
        for (CompareVerb.Compared one : stages) {
            ObjectNode node = list.addObject()
                    .put("stage", one.stage().id())
                    .put("kind", one.stage().kind().words())
                    .put("converged", one.result().convergence().converged());
            if (one.result() instanceof Result.Unsolved unsolved) node.put("reason", unsolved.reason());
            one.comparison().ifPresent(c -> comparison(node, c));
        }
        return JsonText.of(root);
    }

    private static void comparison(ObjectNode node, Comparison c) {
        ArrayNode holes = node.putArray("testHoles");
        for (Comparison.HoleComparison h : c.holes()) {
            ObjectNode hole = holes.addObject().put("id", h.hole());
            number(hole, "measured_Pa", h.measured());
            number(hole, "predicted_Pa", h.predicted());
            hole.put("comparedByPair", h.byPair());
            number(hole, "found_Pa", h.found());
            number(hole, "expected_Pa", h.expected());
            number(hole, "difference_Pa", h.difference());
            number(hole, "band_Pa", h.band());
            number(hole, "measuredFanOff_Pa", h.measuredOff());
            number(hole, "predictedFanOff_Pa", h.predictedOff());
            hole.put("verdict", h.verdict().words());
        }
        ArrayNode systems = node.putArray("suctionPoints");
        for (Comparison.SystemComparison s : c.systems()) {
            ObjectNode system = systems.addObject().put("id", s.suctionPoint());
            number(system, "measuredFlow_m3_per_s", s.measuredFlow());
            number(
                    system,
                    "measuredFlowError_m3_per_s",
                    s.flowRead().map(MeasuredFlow::standardError).orElse(Double.NaN));
            number(system, "predictedFlow_m3_per_s", s.predictedFlow());
            number(system, "flowBand_m3_per_s", s.flowBand());
            system.put("flowVerdict", s.flowVerdict().words());
            number(system, "measuredPressure_Pa", s.measuredPressure());
            number(system, "predictedPressure_Pa", s.predictedPressure());
            number(system, "pressureBand_Pa", s.pressureBand());
            system.put("pressureVerdict", s.pressureVerdict().words());
        }
        number(node, "bias_Pa", c.bias());
        number(node, "scatter_Pa", c.scatter());
        number(node, "chiSquarePerReading", c.fit().chiSquare());
        ArrayNode remarks = node.putArray("remarks");
        c.remarks().forEach(remarks::add);
    }

    static void number(ObjectNode node, String key, OptionalDouble value) {
        number(node, key, value.orElse(Double.NaN));
    }

    static void number(ObjectNode node, String key, double value) {
        if (Double.isFinite(value)) node.put(key, value);
        else node.putNull(key);
    }
}
