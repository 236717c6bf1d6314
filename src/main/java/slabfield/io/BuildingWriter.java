package slabfield.io;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import slabfield.model.House;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/** Writes the house above the slab for {@link ScenarioWriter}. */
final class BuildingWriter {
    private BuildingWriter() {}

    static void house(ObjectNode node, House house) {
        node.put("indoorTemperature", kelvin(house.indoorTemperature()));
        house.neutralLevel().ifPresent(h -> node.put("neutralLevel", ScenarioWriter.metres(h)));
        house.blowerDoor()
                .ifPresent(door -> node.putObject("blowerDoor")
                        .put("flow", SystemWriter.flow(door.flow()))
                        .put("pressure", SystemWriter.pascals(door.pressure()))
                        .put("exponent", door.exponent()));
        house.naturalFlow().ifPresent(q -> node.put("naturalFlow", SystemWriter.flow(q)));
        ScenarioWriter.list(
                node,
                "exhausts",
                house.exhausts(),
                (each, exhaust) -> each.put("id", exhaust.id()).put("flow", SystemWriter.flow(exhaust.flow())));
        house.designDay()
                .ifPresent(day -> node.putObject("designDay")
                        .put("outdoorTemperature", kelvin(day.outdoorTemperature()))
                        .put("windSpeed", Quantity.exact(day.windSpeed(), Unit.METRE_PER_SECOND))
                        .put("windCoefficient", day.windCoefficient()));
        climate(node.putObject("climate"), house.climate());
        ScenarioWriter.list(
                node,
                "limits",
                house.limits(),
                (each, limit) -> each.put("pressure", SystemWriter.pascals(limit.pressure()))
                        .put("source", limit.source()));
        house.heating()
                .ifPresent(heating -> node.putObject("heating")
                        .put("fuel", heating.fuel())
                        .put("efficiency", heating.efficiency())
                        .put("price", heating.price())
                        .put("fuelUnit", heating.unit())
                        .put("energyPerUnit", Quantity.exact(heating.energyPerUnit(), Unit.JOULE)));
        house.tariff()
                .ifPresent(tariff -> node.putObject("tariff")
                        .put("currency", tariff.currency())
                        .put("electricityPerKwh", tariff.perKilowattHour()));
    }

    private static void climate(ObjectNode node, House.Climate climate) {
        ArrayNode bins = node.putArray("bins");
        climate.bins()
                .forEach(bin -> bins.addArray()
                        .add(kelvin(bin.outdoorTemperature()))
                        .add(Quantity.exact(bin.duration(), Unit.SECOND)));
        climate.degreeDays().ifPresent(d -> node.put("degreeDays", Quantity.exact(d, Unit.KELVIN_SECOND)));
        node.put("balance", kelvin(climate.balance()));
    }

    private static String kelvin(double temperature) {
        return Quantity.exact(temperature, Unit.KELVIN);
    }
}
