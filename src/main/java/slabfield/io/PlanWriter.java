package slabfield.io;

import com.fasterxml.jackson.databind.node.ObjectNode;
import slabfield.model.Plan;

/** Writes what a drawing carries beside the house for {@link ScenarioWriter}. */
final class PlanWriter {
    private final ScenarioWriter writer;

    PlanWriter(ScenarioWriter writer) {
        this.writer = writer;
    }

    void plan(ObjectNode node, Plan plan) {
        node.put("north", plan.north());
        ScenarioWriter.list(node, "noDrillAreas", plan.noDrillAreas(), (each, area) -> {
            each.put("id", area.id()).set("outline", writer.points(area.outline()));
            each.put("reason", area.reason());
        });
        plan.underlay().ifPresent(underlay -> {
            ObjectNode each = node.putObject("underlay").put("picture", underlay.picture());
            each.set("corner", writer.point(underlay.corner()));
            each.put("pixel", ScenarioWriter.metres(underlay.pixel())).put("turned", underlay.turned());
        });
    }
}
