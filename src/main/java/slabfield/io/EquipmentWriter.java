package slabfield.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import slabfield.model.Equipment;
import slabfield.model.FanOffer;
import slabfield.model.Riser;
import slabfield.model.Source;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/** Writes pipes, fans and risers for {@link ScenarioWriter}. */
final class EquipmentWriter {
    private EquipmentWriter() {}

    static void equipment(ObjectNode node, Equipment equipment) {
        ScenarioWriter.list(node, "risers", equipment.risers(), EquipmentWriter::riser);
        ScenarioWriter.list(node, "fans", equipment.fans(), EquipmentWriter::offer);
        ScenarioWriter.list(node, "plannedPipes", equipment.plannedRun(), EquipmentWriter::pipe);
    }

    private static void riser(ObjectNode node, Riser riser) {
        node.put("id", riser.id());
        curve(node.putArray("fan"), riser.curve());
        run(node, riser.run());
        node.put("discharge", SystemWriter.pascals(riser.discharge()));
    }

    private static void offer(ObjectNode node, FanOffer fan) {
        node.put("id", fan.id());
        curve(node.putArray("curve"), fan.curve());
        ArrayNode power = node.putArray("power");
        fan.watts().forEach(w -> power.add(Quantity.exact(w, Unit.WATT)));
        node.put("density", Quantity.exact(fan.density(), Unit.KILOGRAM_PER_CUBIC_METRE));
        fan.steadyFrom().ifPresent(q -> node.put("steadyFrom", SystemWriter.flow(q)));
        node.put("arrangement", fan.arrangement().words()).put("invented", fan.invented());
    }

    static void curve(ArrayNode list, Source.FanCurve curve) {
        for (int i = 0; i < curve.flows().size(); i++)
            list.addArray()
                    .add(SystemWriter.flow(curve.flows().get(i)))
                    .add(SystemWriter.pascals(curve.rises().get(i)));
    }

    static void run(ObjectNode node, List<Source.Pipe> run) {
        if (run.size() == 1) pipe(node.putObject("pipe"), run.get(0));
        else if (!run.isEmpty()) ScenarioWriter.list(node, "pipes", run, EquipmentWriter::pipe);
    }

    private static void pipe(ObjectNode node, Source.Pipe pipe) {
        node.put("diameter", ScenarioWriter.metres(pipe.diameter()))
                .put("length", ScenarioWriter.metres(pipe.length()));
        node.put("ells", pipe.ells()).put("halfElls", pipe.turns().halfElls());
        node.put("teesThrough", pipe.turns().teesThrough())
                .put("teesByBranch", pipe.turns().teesByBranch());
        node.put("fittings", pipe.fittings()).put("valve", pipe.valve());
        node.put("roughness", ScenarioWriter.metres(pipe.roughness())).put("rise", ScenarioWriter.metres(pipe.rise()));
    }
}
