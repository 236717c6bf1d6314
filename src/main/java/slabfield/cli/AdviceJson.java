package slabfield.cli;

import static slabfield.cli.JsonPages.number;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import slabfield.advice.CombinedPlan;
import slabfield.advice.Measure;
import slabfield.advice.Range;
import slabfield.advice.Suggestion;
import slabfield.advice.TestCover;
import slabfield.field.Grid;
import slabfield.field.Result;
import slabfield.io.JsonText;
import slabfield.io.OwnFile;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.siting.HoleLayout;
import slabfield.siting.LeakMap;
import slabfield.siting.NextHole;

/** Advice as JSON, in SI with the unit in each name. */
final class AdviceJson {
    private AdviceJson() {}

    private static ObjectNode page(Scenario scenario) {
        return JsonNodeFactory.instance
                .objectNode()
                .put(OwnFile.KEY, OwnFile.NAME)
                .put("scenario", scenario.name());
    }

    static String suggestions(SuggestVerb.Advice advice) {
        ObjectNode root = page(advice.base().scenario());
        ArrayNode list = root.putArray("suggestions");
        for (Suggestion s : advice.best()) {
            ObjectNode node = list.addObject();
            measure(node, s.measure());
            state(node.putObject("before"), s.before(), s.flowsBefore());
            number(node.withObject("/before"), "fans_W", s.wattsBefore());
            state(node.putObject("after"), s.after(), s.flowsAfter());
            number(node.withObject("/after"), "fans_W", s.wattsAfter());
            number(node, "gain_Pa", s.gain());
            number(node, "roomAirSaved_m3_per_s", s.roomAirSaved());
            node.put("doesNothing", s.doesNothing());
            s.odds().ifPresent(o -> odds(node.putObject("odds"), o));
        }
        if (!advice.covers().isEmpty()) covers(root.putArray("covers"), advice.covers());
        advice.plans().ifPresent(p -> {
            root.put("powerCounts", p.frontier().byPower());
            plans(root.putArray("frontier"), p.frontier().best());
            plans(root.putArray("strongest"), p.strongest());
            plans(root.putArray("thriftiest"), p.thriftiest());
        });
        return JsonText.of(root);
    }

    private static void measure(ObjectNode node, Measure m) {
        node.put("measure", m.words()).put("kind", m.kind().words());
        m.where().ifPresent(p -> place(node, p));
    }

    private static void place(ObjectNode node, Point p) {
        node.putArray("at_m").add(p.x()).add(p.y());
    }

    private static void state(ObjectNode node, Result.Coverage coverage, Result.Flows flows) {
        number(node, "weakest_Pa", coverage.weakest());
        number(node, "areaMeeting_fraction", coverage.meeting());
        number(node, "exhaust_m3_per_s", flows.exhaust());
        number(node, "fromRoom_m3_per_s", flows.fromRoom());
    }

    private static void odds(ObjectNode node, Suggestion.Odds o) {
        node.put("basis", o.basis().words()).put("houses", o.houses());
        range(node.putObject("weakestBefore_Pa"), o.weakestBefore());
        range(node.putObject("weakestAfter_Pa"), o.weakestAfter());
        range(node.putObject("gain_Pa"), o.gain());
        range(node.putObject("exhaust_m3_per_s"), o.exhaust());
        range(node.putObject("roomAirSaved_m3_per_s"), o.roomAirSaved());
        number(node, "meetsBefore_probability", o.meetsBefore());
        number(node, "meetsAfter_probability", o.meetsAfter());
    }

    private static void range(ObjectNode node, Range r) {
        number(node, "low", r.low());
        number(node, "middle", r.middle());
        number(node, "high", r.high());
    }

    private static void covers(ArrayNode list, List<TestCover> covers) {
        for (TestCover c : covers) {
            ObjectNode node = list.addObject().put("cover", c.measure().id()).put("tells", c.tells());
            number(node, "exhaustBefore_m3_per_s", c.exhaustBefore());
            number(node, "exhaustAfter_m3_per_s", c.exhaustAfter());
            ArrayNode holes = node.putArray("testHoles");
            for (TestCover.Change h : c.holes()) {
                ObjectNode hole = holes.addObject().put("id", h.hole());
                number(hole, "before_Pa", h.before());
                number(hole, "after_Pa", h.after());
            }
        }
    }

    private static void plans(ArrayNode list, List<CombinedPlan> plans) {
        for (CombinedPlan p : plans) {
            ObjectNode node = list.addObject();
            ArrayNode measures = node.putArray("measures");
            p.measures().forEach(m -> measure(measures.addObject(), m));
            state(node, p.coverage(), p.flows());
            number(node, "fans_W", p.watts());
        }
    }

    static String nextHole(Scenario scenario, NextHole next) {
        ObjectNode root = page(scenario);
        root.put("basis", next.basis().words()).put("houses", next.houses());
        number(root, "meets_probability", next.meets());
        number(root, "doubt_bit", next.doubtNow());
        number(root, "scatterOfWeakest_Pa", next.scatterNow());
        root.put("settled", next.settled()).put("tellsNothing", next.tellsNothing());
        ArrayNode places = root.putArray("places");
        for (NextHole.Place p : next.places()) {
            ObjectNode node = places.addObject();
            place(node, p.at());
            number(node, "doubtLeft_bit", p.doubtLeft());
            number(node, "scatterLeft_Pa", p.scatterLeft());
            range(node.putObject("expectedPressure_Pa"), p.pressure());
            ArrayNode mends = node.putArray("mends");
            p.mends().forEach(m -> mends.add(m.words()));
        }
        ArrayNode lacking = root.putArray("layoutLacks");
        for (HoleLayout.Shortfall s : next.shortfalls()) {
            ObjectNode node = lacking.addObject().put("rule", s.rule().name()).put("words", s.words());
            s.around().ifPresent(p -> place(node, p));
        }
        return JsonText.of(root);
    }

    static String leakMap(Scenario scenario, LeakMap map) {
        ObjectNode root = page(scenario);
        root.put("readings", map.readings()).put("readingsSay", map.readingsSay());
        number(root, "bestGain_nat", map.bestGain());
        number(root, "leastGain_nat", LeakMap.LEAST);
        number(root, "regionHolding90Percent_m2", map.region());
        number(root, "area_m2", map.area());
        ArrayNode places = root.putArray("places");
        for (LeakMap.Place p : map.places()) {
            ObjectNode node = places.addObject();
            place(node, p.at());
            number(node, "gain_nat", p.gain());
            number(node, "leak_m3_per_s", p.flow());
            number(node, "conductance_m3_per_s_Pa", p.conductance());
            p.nearest().ifPresent(o -> node.put("nearOpening", o));
        }
        Grid g = map.grid();
        ObjectNode grid = root.putObject("grid");
        grid.put("left_m", g.left())
                .put("bottom_m", g.bottom())
                .put("cellWidth_m", g.width())
                .put("cellHeight_m", g.height());
        grid.put("columns", g.columns()).put("rows", g.rows());
        cells(root.putArray("gain_nat_byCell"), map.gain());
        cells(root.putArray("share_byCell"), map.share());
        return JsonText.of(root);
    }

    private static void cells(ArrayNode to, double[] values) {
        for (double v : values) {
            if (Double.isNaN(v)) to.addNull();
            else to.add(v);
        }
    }
}
