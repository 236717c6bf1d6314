package slabfield.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.equipment.FanRanking;
import slabfield.equipment.Held;
import slabfield.equipment.HousePressure;
import slabfield.equipment.PipeComparison;
import slabfield.equipment.PipeLosses;
import slabfield.equipment.Sizing;
import slabfield.equipment.TestScaling;
import slabfield.equipment.WorstDay;
import slabfield.equipment.YearlyCost;
import slabfield.io.JsonText;
import slabfield.model.NominalPipe;

/** A sizing as JSON, in SI with the unit in the key; vacuums are positive, what has no value is null. */
final class SizeJson {
    private SizeJson() {}

    static String text(Sizing sizing) {
        ObjectNode root = JsonNodeFactory.instance
                .objectNode()
                .put("scenario", sizing.scenario().name());
        number(root, "target_Pa", sizing.scenario().target().vacuum());
        root.put("fansInvented", sizing.inventedOnly());
        ArrayNode fans = root.putArray("fans");
        sizing.ranking().fans().forEach(r -> fan(fans.addObject(), r));
        ArrayNode unsolved = root.putArray("unsolved");
        sizing.ranking().unsolved().forEach(unsolved::add);
        root.put("chosen", sizing.chosen().map(r -> r.fan().offer().id()).orElse(null));
        ArrayNode bare = root.putArray("withoutPipe");
        sizing.withoutPipe().forEach(bare::add);
        ArrayNode pipes = root.putArray("pipes");
        sizing.pipes().forEach(p -> pipe(pipes.addObject(), p));
        worstDay(root.putObject("worstDay"), sizing);
        ArrayNode season = root.putArray("season");
        sizing.season().forEach(p -> season(season.addObject(), p));
        year(root.putObject("year"), sizing.cost());
        year(root.putObject("yearAllSealed"), sizing.costSealed());
        root.put(
                "currency",
                sizing.scenario().house().tariff().map(t -> t.currency()).orElse(null));
        ArrayNode limits = root.putArray("limits");
        for (HousePressure.AgainstLimit l : sizing.limits()) {
            ObjectNode node = limits.addObject().put("source", l.limit().source());
            number(node, "limit_Pa", l.limit().pressure());
            number(node, "withoutSystem_Pa", l.withoutSystem());
            number(node, "withSystem_Pa", l.withSystem());
            node.put("exceeded", l.exceeded());
        }
        ArrayNode tests = root.putArray("scaledTests");
        sizing.scaled().forEach(s -> scaled(tests.addObject(), s));
        return JsonText.of(root);
    }

    private static void fan(ObjectNode node, FanRanking.Ranked r) {
        node.put("id", r.fan().offer().id()).put("invented", r.fan().offer().invented());
        node.put("arrangement", r.fan().offer().arrangement().words()).put("holdsTarget", r.meets());
        held(node.putObject("asDrawn"), r.drawn());
        if (r.worstDay().isPresent())
            held(node.putObject("worstDay"), r.worstDay().get());
        else node.putNull("worstDay");
        number(node, "margin_Pa", r.margin());
        number(node, "exhaust_m3_per_s", r.solved().flows().exhaust());
        number(node, "fromRoom_m3_per_s", r.solved().flows().fromRoom());
        ObjectNode flows = node.putObject("flowByPlace_m3_per_s");
        r.flows().forEach((place, flow) -> number(flows, place, flow));
        number(node, "power_W", r.watts());
        number(node, "yearlyEnergy_J", r.yearlyEnergy());
        ArrayNode warnings = node.putArray("warnings");
        r.warnings().forEach(warnings::add);
    }

    private static void held(ObjectNode node, Held held) {
        number(node, "vacuum_Pa", held.vacuum());
        node.put("hole", held.hole().orElse(null));
    }

    private static void pipe(ObjectNode node, PipeComparison p) {
        node.put("nominal", p.size().map(NominalPipe::word).orElse(null));
        held(node, p.held());
        number(node, "lostToPipe_Pa", p.lost());
        number(node, "exhaust_m3_per_s", p.solved().flows().exhaust());
        number(node, "fastest_m_per_s", p.fastest());
        ArrayNode runs = node.putArray("stretches");
        p.runs()
                .forEach((run, stretches) ->
                        stretches.forEach(l -> stretch(runs.addObject().put("run", run), l)));
    }

    private static void stretch(ObjectNode node, PipeLosses l) {
        number(node, "insideDiameter_m", l.pipe().diameter());
        number(node, "flow_m3_per_s", l.flow());
        number(node, "velocity_m_per_s", l.velocity());
        number(node, "friction_Pa_per_m", l.frictionPerLength());
        number(node, "friction_Pa", l.friction());
        number(node, "fittings_Pa", l.fittings());
        number(node, "least_Pa", l.least());
        number(node, "most_Pa", l.most());
        number(node, "condensateFall_m", l.condensateFall());
    }

    private static void worstDay(ObjectNode node, Sizing sizing) {
        ArrayNode missing = node.putArray("missing");
        sizing.missing().forEach(missing::add);
        number(node, "stack_Pa", sizing.worstDay().map(HousePressure::stack));
        number(node, "wind_Pa", sizing.worstDay().map(HousePressure::wind));
        number(node, "exhaust_Pa", sizing.worstDay().map(HousePressure::exhaust));
        number(node, "total_Pa", sizing.worstDay().map(HousePressure::total));
        node.put("held", sizing.heldDownTo().map(SizeJson::words).orElse(null));
        number(
                node,
                "heldDownTo_K",
                sizing.heldDownTo()
                        .flatMap(h -> h instanceof WorstDay.HeldDownTo.Temperature t
                                ? Optional.of(t.temperature())
                                : Optional.empty()));
    }

    private static String words(WorstDay.HeldDownTo held) {
        if (held instanceof WorstDay.HeldDownTo.Temperature) return "down to a temperature";
        if (held instanceof WorstDay.HeldDownTo.AnyTried) return "at the coldest tried";
        return held instanceof WorstDay.HeldDownTo.NotAtAll ? "not at all" : "unknown";
    }

    private static void season(ObjectNode node, WorstDay.SeasonPoint p) {
        number(node, "outdoor_K", p.bin().outdoorTemperature());
        number(node, "duration_s", p.bin().duration());
        number(node, "outdoorPressure_Pa", p.outdoorPressure());
        held(node, p.held());
        number(node, "exhaust_m3_per_s", p.exhaust());
    }

    private static void year(ObjectNode node, Optional<YearlyCost> cost) {
        number(node, "roomAir_m3_per_s", cost.map(YearlyCost::roomAir));
        number(node, "addedAtLeast_m3_per_s", of(cost.map(YearlyCost::addedLeast)));
        number(node, "fanEnergy_J", of(cost.map(YearlyCost::fanEnergy)));
        number(node, "heatAtLeast_J", of(cost.map(YearlyCost::heatLeast)));
        number(node, "heatAtMost_J", of(cost.map(YearlyCost::heatMost)));
        number(node, "fanCost", of(cost.map(YearlyCost::fanCost)));
        number(node, "heatCostAtLeast", of(cost.map(YearlyCost::heatCostLeast)));
        number(node, "heatCostAtMost", of(cost.map(YearlyCost::heatCostMost)));
    }

    private static OptionalDouble of(Optional<OptionalDouble> value) {
        return value.orElse(OptionalDouble.empty());
    }

    private static void scaled(ObjectNode node, Sizing.ScaledStage stage) {
        ArrayNode holes = node.put("stage", stage.stage()).putArray("testHoles");
        for (TestScaling t : stage.holes()) {
            ObjectNode hole = holes.addObject().put("id", t.hole());
            number(hole, "measuredDifference_Pa", t.measured());
            number(hole, "factor", t.factor());
            number(hole, "expectedDifference_Pa", t.expected());
        }
    }

    private static void number(ObjectNode node, String key, Optional<Double> value) {
        number(node, key, value.orElse(Double.NaN));
    }

    private static void number(ObjectNode node, String key, OptionalDouble value) {
        number(node, key, value.orElse(Double.NaN));
    }

    private static void number(ObjectNode node, String key, double value) {
        if (Double.isFinite(value)) node.put(key, value);
        else node.putNull(key);
    }
}
