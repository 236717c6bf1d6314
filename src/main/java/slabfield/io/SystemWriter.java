package slabfield.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.OptionalDouble;
import java.util.TreeMap;
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
            ArrayNode curve = node.putArray("fan");
            for (int i = 0; i < fan.curve().flows().size(); i++)
                curve.addArray().add(flow(fan.curve().flows().get(i))).add(pascals(fan.curve().rises().get(i)));
            if (!fan.pipe().equals(Source.Pipe.NONE)) pipe(node.putObject("pipe"), fan.pipe());
            node.put("discharge", pascals(fan.discharge()));
        }
    }

    private void pipe(ObjectNode node, Source.Pipe pipe) {
        node.put("diameter", ScenarioWriter.metres(pipe.diameter())).put("length", ScenarioWriter.metres(pipe.length()));
        node.put("ells", pipe.ells()).put("fittings", pipe.fittings());
        node.put("roughness", ScenarioWriter.metres(pipe.roughness()));
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
        pressure(node, "meterStep", reading.meterStep());
        node.put("time", reading.time());
    }

    private void systemReading(ObjectNode node, Stage.SystemReading reading) {
        node.put("suctionPoint", reading.suctionPoint());
        reading.flow().ifPresent(flow -> node.put("flow", flow(flow)));
        pressure(node, "riser", reading.riser());
        node.put("time", reading.time());
    }

    private static void pressure(ObjectNode node, String key, OptionalDouble value) {
        value.ifPresent(p -> node.put(key, pascals(p)));
    }

    private static String pascals(double pressure) {
        return Quantity.exact(pressure, Unit.PASCAL);
    }

    private static String flow(double flow) {
        return Quantity.exact(flow, Unit.CUBIC_METRE_PER_SECOND);
    }
}
