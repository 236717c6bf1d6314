package slabfield.io;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.model.House;
import slabfield.quantity.Dimension;

/** Reads the house above the slab. */
final class BuildingReader {
    private BuildingReader() {}

    static Optional<House> house(Entry e) {
        double indoor = e.quantity("indoorTemperature", Dimension.TEMPERATURE, House.USUAL_TEMPERATURE);
        OptionalDouble neutral = e.optional("neutralLevel", Dimension.LENGTH);
        Optional<House.BlowerDoor> door =
                e.has("blowerDoor") ? blowerDoor(e.entry("blowerDoor", FileObject.BLOWER_DOOR)) : Optional.empty();
        OptionalDouble natural = e.optional("naturalFlow", Dimension.FLOW);
        List<House.Exhaust> exhausts = e.list("exhausts", FileObject.EXHAUST, BuildingReader::exhaust);
        Optional<House.DesignDay> day =
                e.has("designDay") ? designDay(e.entry("designDay", FileObject.DESIGN_DAY)) : Optional.empty();
        Optional<House.Climate> climate = climate(e.entry("climate", FileObject.CLIMATE));
        List<House.Limit> limits = e.list("limits", FileObject.LIMIT, BuildingReader::limit);
        Optional<House.Heating> heating =
                e.has("heating") ? heating(e.entry("heating", FileObject.HEATING)) : Optional.empty();
        Optional<House.Tariff> tariff =
                e.has("tariff") ? tariff(e.entry("tariff", FileObject.TARIFF)) : Optional.empty();
        return e.make(() -> new House(
                indoor, neutral, door, natural, exhausts, day, climate.orElseThrow(), limits, heating, tariff));
    }

    private static Optional<House.BlowerDoor> blowerDoor(Entry e) {
        double flow = e.quantity("flow", Dimension.FLOW);
        double pressure = e.quantity("pressure", Dimension.PRESSURE, House.BlowerDoor.USUAL_PRESSURE);
        double exponent = e.number("exponent", House.BlowerDoor.USUAL_EXPONENT);
        return e.make(() -> new House.BlowerDoor(flow, pressure, exponent));
    }

    private static Optional<House.Exhaust> exhaust(Entry e) {
        String id = e.text("id");
        double flow = e.quantity("flow", Dimension.FLOW);
        return e.make(() -> new House.Exhaust(id, flow));
    }

    private static Optional<House.DesignDay> designDay(Entry e) {
        double outdoor = e.quantity("outdoorTemperature", Dimension.TEMPERATURE);
        double wind = e.quantity("windSpeed", Dimension.SPEED, 0);
        double coefficient = e.number("windCoefficient", House.DesignDay.USUAL_COEFFICIENT);
        return e.make(() -> new House.DesignDay(outdoor, wind, coefficient));
    }

    private static Optional<House.Climate> climate(Entry e) {
        List<double[]> pairs = e.pairs("bins", Dimension.TEMPERATURE, Dimension.DURATION);
        OptionalDouble degreeDays = e.optional("degreeDays", Dimension.DEGREE_DAYS);
        double balance = e.quantity("balance", Dimension.TEMPERATURE, House.Climate.USUAL_BALANCE);
        return e.make(() -> new House.Climate(
                pairs.stream().map(p -> new House.Bin(p[0], p[1])).toList(), degreeDays, balance));
    }

    private static Optional<House.Limit> limit(Entry e) {
        double pressure = e.quantity("pressure", Dimension.PRESSURE);
        String source = e.text("source");
        return e.make(() -> new House.Limit(pressure, source));
    }

    private static Optional<House.Heating> heating(Entry e) {
        String fuel = e.text("fuel"), unit = e.text("fuelUnit");
        double efficiency = e.fraction("efficiency"), price = e.number("price", Double.NaN);
        double energy = e.quantity("energyPerUnit", Dimension.ENERGY);
        return e.make(() -> new House.Heating(fuel, efficiency, price, unit, energy));
    }

    private static Optional<House.Tariff> tariff(Entry e) {
        String currency = e.text("currency");
        double price = e.number("electricityPerKwh", Double.NaN);
        return e.make(() -> new House.Tariff(currency, price));
    }
}
