package slabfield.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import slabfield.equipment.FanRanking;
import slabfield.equipment.Sizing;
import slabfield.equipment.WorstDay;
import slabfield.equipment.YearlyCost;
import slabfield.field.Result;
import slabfield.figure.MapFigure;
import slabfield.model.House;
import slabfield.quantity.Unit;
import slabfield.safety.JobField;

/** What is planned and why. Every pressure and flow in it is predicted. */
final class DesignRecord {
    private final Job job;
    private final Result.Solved solved;
    private final Numbers n;

    DesignRecord(Job job, Numbers numbers) {
        this.job = job;
        this.solved = job.result();
        this.n = numbers;
    }

    List<Block> blocks() {
        List<Block> out = new ArrayList<>();
        out.add(new Block.Title("Design record", job.scenario().name()));
        out.add(
                new Block.Notice(
                        "Everything in this record is PREDICTED by a model from what was drawn and assumed. Nothing in it was measured."));
        out.add(new Block.Heading(1, "House"));
        out.add(Parts.details(job.record(), JobField.Part.HOUSE));
        summary(out);
        holes(out);
        air(out);
        states(out);
        job.sizing().ifPresent(s -> fans(out, s));
        out.addAll(Parts.assumptions(job, n));
        out.addAll(Parts.gates(job.record()));
        out.addAll(Parts.cautions());
        out.addAll(Parts.model(job, n));
        return out;
    }

    private void summary(List<Block> out) {
        Result.Coverage c = solved.coverage();
        Map<String, String> facts = new LinkedHashMap<>();
        facts.put("Target", Parts.target(job.scenario(), n));
        facts.put("Predicted to be met under", n.percent(c.meeting()) + " of the slab's area");
        facts.put(
                "Predicted at the weakest place",
                n.pressureText(-c.weakest()) + ", known to a cell of " + n.pipe(c.cell()));
        facts.put(
                "Predicted exhaust",
                n.flowText(solved.flows().exhaust()) + ", "
                        + solved.flows().roomShare().stream()
                                .mapToObj(n::percent)
                                .findFirst()
                                .orElse("an unknown part") + " of it from the room");
        out.add(new Block.Heading(1, "Predicted result"));
        out.add(Parts.fields(facts));
        out.add(new Block.Picture(new MapFigure(solved, Parts.look(n))));
    }

    private void holes(List<Block> out) {
        String unit = n.pressure().symbol();
        List<List<String>> points = solved.suctions().stream()
                .map(s -> List.of(
                        s.id(), n.tape(s.at().x()), n.tape(s.at().y()), n.pressure(s.pressure()), n.flow(s.flow())))
                .toList();
        out.add(new Block.Heading(1, "Suction points and test holes"));
        out.add(new Block.Table(
                "Suction points, predicted",
                List.of(
                        "point",
                        "x on the plan",
                        "y",
                        "pressure, " + unit,
                        "flow, " + n.flow().symbol()),
                List.of(2.0, 1.3, 1.3, 1.2, 1.2),
                List.of(false, true, true, true, true),
                points));
        List<List<String>> rows = solved.holes().stream()
                .map(h -> List.of(
                        h.id(),
                        n.tape(h.at().x()),
                        n.tape(h.at().y()),
                        n.pressure(h.fanOff()),
                        n.pressure(h.fanOn()),
                        meets(h.fanOn())))
                .toList();
        if (!rows.isEmpty())
            out.add(new Block.Table(
                    "Test holes, predicted; negative = soil under vacuum relative to the room",
                    List.of("hole", "x on the plan", "y", "fan off, " + unit, "fan on, " + unit, "target"),
                    List.of(1.4, 1.3, 1.3, 1.2, 1.2, 1.2),
                    List.of(false, true, true, true, true, false),
                    rows));
    }

    private String meets(OptionalDouble pressure) {
        if (pressure.isEmpty()) return "no pressure";
        return -pressure.getAsDouble() >= job.scenario().target().vacuum() ? "held" : "not held";
    }

    private void air(List<Block> out) {
        double exhaust = solved.flows().exhaust();
        List<List<String>> rows = new ArrayList<>();
        solved.flows()
                .bySource()
                .forEach((source, flow) -> rows.add(
                        List.of(source, n.flow(flow), exhaust > 0 ? n.percent(flow / exhaust) : Numbers.NONE)));
        out.add(new Block.Table(
                "Where the air comes from, predicted",
                List.of("source", "flow, " + n.flow().symbol(), "part of the exhaust"),
                List.of(3.0, 1.2, 1.2),
                List.of(false, true, true),
                rows));
    }

    private void states(List<Block> out) {
        List<List<String>> rows = new ArrayList<>();
        job.scenario()
                .openings()
                .forEach(o -> rows.add(
                        List.of(o.id(), o.kind().word(), o.seal().state().word())));
        job.scenario()
                .blockWalls()
                .forEach(w -> rows.add(
                        List.of(w.id(), "block wall tops", w.tops().state().word())));
        job.scenario()
                .barriers()
                .forEach(b -> rows.add(List.of(b.id(), "footing or barrier", b.known() ? "known" : "suspected")));
        if (rows.isEmpty()) return;
        out.add(new Block.Table(
                "Openings, walls and barriers as drawn",
                List.of("name", "kind", "state"),
                List.of(2.4, 1.6, 1.0),
                List.of(false, false, false),
                rows));
        List<String> pipes = PipeWords.of(job.scenario(), n::pipe, n::tape);
        if (!pipes.isEmpty()) {
            out.add(new Block.Heading(2, "Pipes"));
            out.add(new Block.Bullets(pipes));
        }
    }

    private void fans(List<Block> out, Sizing sizing) {
        out.add(new Block.Heading(1, "Fan, worst day and cost"));
        List<List<String>> rows =
                sizing.ranking().fans().stream().map(this::fan).toList();
        String unit = n.pressure().symbol();
        out.add(new Block.Table(
                "Fans tried in the whole house, predicted vacuum at the weakest hole in " + unit
                        + (sizing.inventedOnly() ? "; all of them invented" : ""),
                List.of(
                        "fan",
                        "target",
                        "as drawn",
                        "worst day",
                        "exhaust, " + n.flow().symbol(),
                        "W",
                        "kWh a year"),
                List.of(2.0, 1.0, 1.0, 1.0, 1.2, 0.7, 1.1),
                List.of(false, false, true, true, true, true, true),
                rows));
        Curves.system(sizing, Parts.look(n)).ifPresent(f -> out.add(new Block.Picture(f)));
        sizing.worstDay()
                .ifPresentOrElse(
                        day -> out.add(Block.text("Worst day: outdoors " + n.pressureText(day.total())
                                + " above the room at the floor (stack "
                                + n.pressureText(day.stack()) + ", wind " + n.pressureText(day.wind()) + ", exhausts "
                                + n.pressureText(day.exhaust())
                                + "). " + sizing.heldDownTo().map(this::down).orElse(""))),
                        () -> out.add(Block.text("The worst day was not worked out: the scenario lacks "
                                + String.join(", ", sizing.missing()) + ".")));
        Curves.season(sizing, n.degrees(), Parts.look(n)).ifPresent(f -> out.add(new Block.Picture(f)));
        sizing.cost().ifPresent(c -> out.add(Block.text(cost(sizing.scenario().house(), c))));
    }

    private List<String> fan(FanRanking.Ranked r) {
        return List.of(
                r.fan().offer().id(),
                r.meets() ? "held" : "not held",
                n.pressure(r.drawn().vacuum()),
                n.pressure(r.worstDay().map(h -> h.vacuum()).orElse(Double.NaN)),
                n.flow(r.solved().flows().exhaust()),
                n.plain(r.watts(), 0),
                kilowattHours(n, r.yearlyEnergy()));
    }

    private String down(WorstDay.HeldDownTo held) {
        if (held instanceof WorstDay.HeldDownTo.Temperature t)
            return "The target is held down to " + n.temperature(t.temperature()) + ".";
        if (held instanceof WorstDay.HeldDownTo.AnyTried) return "The target is held at the coldest that was tried.";
        return held instanceof WorstDay.HeldDownTo.NotAtAll
                ? "The target is not held with that wind and those exhausts."
                : "";
    }

    static String kilowattHours(Numbers n, OptionalDouble joules) {
        return joules.isPresent() ? n.plain(Unit.KILOWATT_HOUR.fromSi(joules.getAsDouble()), 0) : Numbers.NONE;
    }

    /** Energy and, where the user gave prices, money. */
    private String cost(House house, YearlyCost cost) {
        String energy = (cost.fanEnergy().isPresent()
                        ? "A year: fans use " + kilowattHours(n, cost.fanEnergy()) + " kWh. "
                        : "No power of the fan is given, so its energy in a year was not worked out. ")
                + (cost.heatMost().isPresent()
                        ? "Heat for the room air drawn out: at most " + kilowattHours(n, cost.heatMost())
                                + " kWh a year."
                        : "Heat for the room air drawn out was not worked out: the climate has neither degree days nor bins.");
        if (house.tariff().isEmpty() || cost.fanCost().isEmpty()) return energy + " No price is given, so no cost.";
        return energy + " Fans cost " + n.plain(cost.fanCost(), 2) + " "
                + house.tariff().get().currency() + " a year at the price given.";
    }
}
