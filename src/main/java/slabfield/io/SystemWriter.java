package slabfield.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.OptionalDouble;
import java.util.TreeMap;
import slabfield.model.FlowReading;
import slabfield.model.Source;
import slabfield.model.Stage;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/** Writes suction points, test holes and stages for {@link ScenarioWriter}. */
final class SystemWriter {
    private final ScenarioWriter plan;

    SystemWriter(ScenarioWriter plan) {
        this.plan = plan;
    }

    void suctionPoint(ObjectNode node, SuctionPoint point) {
        node.put("id", point.id()).set("at", plan.point(point.at()));
        point.tile().ifPresent(tile -> node.put("tile", tile));
        node.putObject("pit").put("radius", ScenarioWriter.metres(point.pit().radius()));
        source(node.putObject("source"), point.source());
        node.put("whenOff", point.openWhenOff() ? "open" : "shut");
    }

    private void source(ObjectNode node, Source source) {
        if (source instanceof Source.Pressure held) node.put("pressure", pascals(held.pressure()));
        else if (source instanceof Source.Flow drawn) node.put("flow", flow(drawn.flow()));
        else if (source instanceof Source.Fan fan) {
            EquipmentWriter.curve(node.putArray("fan"), fan.curve());
            EquipmentWriter.run(node, fan.run());
            node.put("discharge", pascals(fan.discharge()));
        } else if (source instanceof Source.Branch branch) {
            node.put("riser", branch.riser());
            EquipmentWriter.run(node, branch.run());
        }
    }

    void testHole(ObjectNode node, TestHole hole) {
        node.put("id", hole.id()).set("at", plan.point(hole.at()));
        node.put("found", hole.found());
    }

    void stage(ObjectNode node, Stage stage) {
        node.put("id", stage.id()).put("kind", stage.kind().words());
        ObjectNode openings = node.putObject("openings"), sources = node.putObject("sources");
        new TreeMap<>(stage.seals()).forEach((id, seal) -> plan.seal(openings.putObject(id), seal));
        new TreeMap<>(stage.sources()).forEach((id, source) -> source(sources.putObject(id), source));
        ScenarioWriter.list(node, "readings", stage.holes(), this::holeReading);
        ScenarioWriter.list(node, "system", stage.systems(), this::systemReading);
        node.put("time", stage.time()).put("notes", stage.notes());
    }

    private void holeReading(ObjectNode node, Stage.HoleReading reading) {
        node.put("hole", reading.hole());
        pressure(node, "fanOff", reading.fanOff());
        pressure(node, "fanOn", reading.fanOn());
        pressure(node, "spread", reading.spread());
        reading.count().ifPresent(n -> node.put("count", n));
        pressure(node, "meterStep", reading.meterStep());
        reading.waited().ifPresent(t -> node.put("waited", Quantity.exact(t, Unit.SECOND)));
        node.put("time", reading.time());
    }

    private void systemReading(ObjectNode node, Stage.SystemReading reading) {
        node.put("suctionPoint", reading.suctionPoint());
        reading.flowReading().ifPresent(read -> flowReading(node, read));
        pressure(node, "riser", reading.riser());
        pressure(node, "pit", reading.pit());
        pressure(node, "spread", reading.spread());
        pressure(node, "meterStep", reading.meterStep());
        node.put("time", reading.time());
    }

    private static void flowReading(ObjectNode node, FlowReading read) {
        if (read instanceof FlowReading.Stated stated) {
            node.put("flow", flow(stated.flow()));
            stated.uncertainty().ifPresent(u -> node.put("flowUncertainty", flow(u)));
        } else if (read instanceof FlowReading.Below below) node.put("flowBelow", flow(below.bound()));
        else if (read instanceof FlowReading.InPipe pipe) inPipe(node.putObject("inPipe"), pipe);
    }

    private static void inPipe(ObjectNode node, FlowReading.InPipe pipe) {
        Unit unit = pipe.velocity() ? Unit.METRE_PER_SECOND : Unit.PASCAL;
        node.put("diameter", ScenarioWriter.metres(pipe.diameter()));
        ArrayNode shown = node.putArray(pipe.velocity() ? "velocity" : "velocityPressure");
        pipe.shown().forEach(v -> shown.add(Quantity.exact(v, unit)));
        node.put("position", pipe.traverse() ? "traverse" : "centre line");
        pipe.meterStep()
                .ifPresent(s -> node.put(pipe.velocity() ? "velocityStep" : "pressureStep", Quantity.exact(s, unit)));
        pipe.density().ifPresent(d -> node.put("density", Quantity.exact(d, Unit.KILOGRAM_PER_CUBIC_METRE)));
    }

    private static void pressure(ObjectNode node, String key, OptionalDouble value) {
        value.ifPresent(p -> node.put(key, pascals(p)));
    }

    static String pascals(double pressure) {
        return Quantity.exact(pressure, Unit.PASCAL);
    }

    static String flow(double flow) {
        return Quantity.exact(flow, Unit.CUBIC_METRE_PER_SECOND);
    }
}
