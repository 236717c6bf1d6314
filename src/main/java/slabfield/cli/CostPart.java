package slabfield.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.equipment.Sizing;
import slabfield.equipment.YearlyCost;
import slabfield.model.House;

/** Energy and cost of a year as a part of a page. */
final class CostPart {
    private final House house;
    private final YearlyCost now;
    private final Optional<YearlyCost> sealed;
    private final Shown shown;

    CostPart(Sizing sizing, Shown shown) {
        house = sizing.scenario().house();
        now = sizing.cost().orElseThrow();
        sealed = sizing.costSealed();
        this.shown = shown;
    }

    void add(Page page) {
        String currency = house.tariff().map(House.Tariff::currency).orElse("no tariff");
        page.part("A year of 365 days");
        Table table = new Table(
                Table.words(""),
                Table.number("kWh"),
                Table.number("fuel"),
                Table.number(currency),
                Table.number("kWh, all sealed"),
                Table.number(currency + ", all sealed"));
        row(table, "fans", YearlyCost::fanEnergy, YearlyCost::fanCost, false);
        row(table, "heat, at least (quadrature)", YearlyCost::heatLeast, YearlyCost::heatCostLeast, true);
        row(table, "heat, at most (all of it)", YearlyCost::heatMost, YearlyCost::heatCostMost, true);
        row(table, "together, at least", c -> OptionalDouble.empty(), YearlyCost::least, false);
        row(table, "together, at most", c -> OptionalDouble.empty(), YearlyCost::most, false);
        page.table(table);
        house.heating()
                .ifPresent(h -> page.text("Fuel in " + h.unit() + " of " + h.fuel() + ", efficiency "
                        + Shown.percent(h.efficiency()) + "."));
        page.text("Heat is for " + shown.flowText(now.roomAir()) + " of room air drawn out"
                + sealed.map(s -> ", " + shown.flowText(s.roomAir()) + " once everything open is sealed")
                        .orElse("")
                + ". Cooling and drying are left out.");
        page.list(lacking());
    }

    private void row(Table table, String name, Value energy, Value cost, boolean fuel) {
        table.row(
                name,
                Shown.kilowattHours(energy.of(now)),
                fuel ? Shown.plain(YearlyCost.fuel(house, energy.of(now)).orElse(Double.NaN), 0) : "-",
                money(cost.of(now)),
                Shown.kilowattHours(sealed.map(energy::of).orElse(OptionalDouble.empty())),
                money(sealed.map(cost::of).orElse(OptionalDouble.empty())));
    }

    private static String money(OptionalDouble value) {
        return Shown.plain(value.orElse(Double.NaN), 2);
    }

    private List<String> lacking() {
        List<String> out = new ArrayList<>();
        if (now.fanEnergy().isEmpty()) out.add("No power is given for this fan (\"power\").");
        if (house.tariff().isEmpty()) out.add("No cost without your \"tariff\" under \"house\"; none is assumed.");
        if (house.heating().isEmpty()) out.add("No heating cost without your \"heating\" under \"house\".");
        if (now.heatMost().isEmpty())
            out.add("No heat without \"degreeDays\" or \"bins\" under \"house\".\"climate\".");
        if (now.addedLeast().isEmpty()) out.add("No lower bound of the heat without \"naturalFlow\" under \"house\".");
        return out;
    }

    /** One number of a year. */
    private interface Value {
        OptionalDouble of(YearlyCost cost);
    }
}
