package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.equipment.Sizing;
import slabfield.equipment.YearlyCost;
import slabfield.model.House;

/** Energy of a year, and its cost where the scenario gives prices. */
final class YearPage {
    private final House house;
    private final YearlyCost now;
    private final Optional<YearlyCost> sealed;
    private final Units units;

    YearPage(Sizing sizing, Units units) {
        this.house = sizing.scenario().house();
        this.now = sizing.cost().orElseThrow();
        this.sealed = sizing.costSealed();
        this.units = units;
    }

    SystemPart part() {
        List<SystemPart.Column> columns = new ArrayList<>(List.of(
                SystemPages.text("A year of 365 days", 220),
                SystemPages.number("Energy\n[kWh]", 90),
                SystemPages.number("Energy, all\nsealed [kWh]", 110)));
        house.heating().ifPresent(h -> columns.add(SystemPages.number("Fuel\n[" + h.unit() + "]", 90)));
        house.tariff().ifPresent(t -> {
            columns.add(SystemPages.number("Cost\n[" + t.currency() + "]", 100));
            columns.add(SystemPages.number("Cost, all\nsealed [" + t.currency() + "]", 110));
        });
        List<SystemPart.Row> rows = new ArrayList<>(List.of(
                row("Fans", YearlyCost::fanEnergy, YearlyCost::fanCost, false),
                row("Heat, at least (quadrature)", YearlyCost::heatLeast, YearlyCost::heatCostLeast, true),
                row("Heat, at most (all of it)", YearlyCost::heatMost, YearlyCost::heatCostMost, true)));
        if (house.tariff().isPresent()) {
            rows.add(row("Together, at least", c -> OptionalDouble.empty(), YearlyCost::least, false));
            rows.add(row("Together, at most", c -> OptionalDouble.empty(), YearlyCost::most, false));
        }
        return new SystemPart("Year", before(), columns, rows, lacking());
    }

    private SystemPart.Row row(String name, Value energy, Value cost, boolean fuel) {
        List<String> cells = new ArrayList<>(List.of(
                name,
                SystemPages.kilowattHours(energy.of(now)),
                SystemPages.kilowattHours(sealed.map(energy::of).orElse(OptionalDouble.empty()))));
        if (house.heating().isPresent())
            cells.add(fuel ? SystemPages.whole(YearlyCost.fuel(house, energy.of(now))) : SystemPages.NONE);
        if (house.tariff().isPresent()) {
            cells.add(money(cost.of(now)));
            cells.add(money(sealed.map(cost::of).orElse(OptionalDouble.empty())));
        }
        return new SystemPart.Row(cells, false);
    }

    private static String money(OptionalDouble value) {
        return value.isPresent() ? String.format(Locale.ROOT, "%.2f", value.getAsDouble()) : SystemPages.NONE;
    }

    private List<String> before() {
        String air = "Heat is for " + units.flow(now.roomAir()) + " of room air drawn out"
                + sealed.map(s -> ", " + units.flow(s.roomAir()) + " once everything open is sealed")
                        .orElse("")
                + ". Cooling and drying are left out.";
        String fuel = house.heating()
                .map(h -> " Fuel: " + h.fuel() + ", efficiency " + Words.percent(h.efficiency()) + ".")
                .orElse("");
        return List.of(air + fuel);
    }

    private List<String> lacking() {
        List<String> out = new ArrayList<>();
        if (now.fanEnergy().isEmpty())
            out.add(
                    "This fan has no \"power\", so its energy is not known. Add it beside its curve in the scenario file.");
        if (house.tariff().isEmpty())
            out.add("No cost: no price is assumed. "
                    + SystemPages.key("tariff", "house", "with your \"currency\" and \"electricityPerKwh\""));
        if (house.heating().isEmpty())
            out.add("No heating cost. "
                    + SystemPages.key(
                            "heating",
                            "house",
                            "with \"fuel\", \"efficiency\", \"price\", \"fuelUnit\" and \"energyPerUnit\""));
        if (now.heatMost().isEmpty())
            out.add("No heat. " + SystemPages.key("degreeDays", "house\", \"climate", "or \"bins\""));
        if (now.addedLeast().isEmpty())
            out.add("No lower bound of the heat. "
                    + SystemPages.key("naturalFlow", "house", "with the air that leaks in by itself"));
        return out;
    }

    /** One number of a year. */
    private interface Value {
        OptionalDouble of(YearlyCost cost);
    }
}
