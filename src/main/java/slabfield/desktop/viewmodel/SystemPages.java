package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import slabfield.desktop.viewmodel.SystemPart.Column;
import slabfield.desktop.viewmodel.SystemPart.Row;
import slabfield.equipment.FanRanking;
import slabfield.equipment.Held;
import slabfield.equipment.HousePressure;
import slabfield.equipment.PipeComparison;
import slabfield.equipment.PipeLosses;
import slabfield.equipment.Sizing;
import slabfield.equipment.WorstDay;
import slabfield.model.House;
import slabfield.model.NominalPipe;
import slabfield.quantity.Unit;

/** A sizing as text: fans, pipes, worst day, seasons, house pressure, year. */
final class SystemPages {
    static final String NONE = "\u2013";

    private final Sizing sizing;
    private final Units units;
    private final String pressureUnit;
    private final String flowUnit;
    private final double target;

    SystemPages(Sizing sizing, Units units) {
        this.sizing = sizing;
        this.units = units;
        this.pressureUnit = "\n[" + units.pressure().get().symbol() + "]";
        this.flowUnit = "\n[" + units.flow().get().symbol() + "]";
        this.target = sizing.scenario().target().vacuum();
    }

    List<SystemPart> parts() {
        if (sizing.chosen().isEmpty()) return List.of();
        return List.of(fans(), pipes(), worstDay(), seasons(), housePressure(), new YearPage(sizing, units).part());
    }

    private SystemPart fans() {
        List<Column> columns = List.of(
                text("Fan", 170),
                text("Target", 112),
                number("Vacuum as\ndrawn" + pressureUnit.replace('\n', ' '), 108),
                number("Vacuum on\nworst day" + pressureUnit.replace('\n', ' '), 128),
                number("Margin" + pressureUnit, 76),
                number("Exhaust" + flowUnit, 76),
                number("Room air" + flowUnit, 80),
                number("Power\n[W]", 64),
                number("A year\n[kWh]", 66));
        List<Row> rows = sizing.ranking().fans().stream().map(this::fan).toList();
        FanRanking.Ranked best = sizing.chosen().orElseThrow();
        String where = best.drawn()
                .hole()
                .map(h -> "the weakest test hole, here " + h)
                .orElse("the weakest place under the slab");
        return new SystemPart(
                "Fans",
                List.of("Target " + units.exactPressure(target) + " ("
                        + sizing.scenario().target().choice() + "), judged at " + where
                        + ". Best first: those that hold it, by least power."),
                columns,
                rows,
                fanNotes());
    }

    private Row fan(FanRanking.Ranked r) {
        return new Row(
                List.of(
                        r.fan().offer().id(),
                        standing(r),
                        pressure(r.drawn().vacuum()),
                        r.worstDay().map(h -> pressure(h.vacuum())).orElse(NONE),
                        pressure(r.margin()),
                        flow(r.solved().flows().exhaust()),
                        flow(r.solved().flows().fromRoom()),
                        whole(r.watts()),
                        kilowattHours(r.yearlyEnergy())),
                !r.meets());
    }

    private String standing(FanRanking.Ranked r) {
        if (!r.drawn().meets(target)) return "not held";
        return r.worstDay().isPresent() && r.meets() ? "held" : "as drawn only";
    }

    private List<String> fanNotes() {
        List<String> notes = new ArrayList<>();
        sizing.ranking()
                .fans()
                .forEach(
                        r -> r.warnings().forEach(w -> notes.add(r.fan().offer().id() + ": " + w)));
        sizing.ranking().fans().stream()
                .filter(r -> r.fan().offer().invented() && !r.fan().offer().id().contains("(invented)"))
                .forEach(r -> notes.add(r.fan().offer().id() + " is invented: no real fan stands behind it."));
        sizing.ranking().unsolved().forEach(u -> notes.add(u + ": its solve did not settle; it is not ranked."));
        if (sizing.inventedOnly())
            notes.add("These classes are invented and only give an idea. "
                    + key("fans", "equipment", "with your own fans"));
        if (!sizing.inventedOnly() && sizing.scenario().equipment().fans().isEmpty())
            notes.add("Only the fan that is drawn was tried. " + key("fans", "equipment", "to have others ranked"));
        if (sizing.ranking().fans().stream().anyMatch(r -> r.watts().isEmpty()))
            notes.add("A fan without \"power\" has no watts here; give it one value for each point of its curve.");
        if (!sizing.missing().isEmpty()) notes.add("The worst day is not worked out: see that part.");
        if (!sizing.withoutPipe().isEmpty())
            notes.add("No pipe is given for " + String.join(", ", sizing.withoutPipe())
                    + ": its loss is left out. Give \"pipe\" there, or \"plannedPipes\" under \"equipment\".");
        return notes;
    }

    private SystemPart pipes() {
        if (sizing.pipes().stream().allMatch(p -> p.runs().isEmpty()))
            return sentence(
                    "Pipes",
                    "No pipe is drawn, so there is none to compare. Give \"pipe\" to a suction point's source, or"
                            + " \"plannedPipes\" under \"equipment\".");
        List<Column> columns = List.of(
                text("All pipes in", 100), number("Vacuum where\njudged" + pressureUnit.replace('\n', ' '), 120),
                number("Weakest\nplace" + pressureUnit.replace('\n', ' '), 100),
                        number("Lost to\npipe" + pressureUnit.replace('\n', ' '), 90),
                number("Exhaust" + flowUnit, 84),
                        number("Fastest air\n[" + units.speedUnit().symbol() + "]", 96),
                number("Largest loss\nof a run" + pressureUnit.replace('\n', ' '), 120), text("Target", 90));
        List<String> notes = new ArrayList<>();
        for (PipeComparison p : sizing.pipes())
            p.runs()
                    .forEach((run, stretches) -> stretches.stream()
                            .map(PipeLosses::advice)
                            .flatMap(List::stream)
                            .distinct()
                            .forEach(a -> notes.add(size(p) + ", " + run + ": " + a)));
        notes.add(
                "Sizes are schedule 40 with their true inside diameters, from memory. \u201cLost to pipe\u201d is the vacuum that"
                        + " pipes without any loss would add where it is judged.");
        return new SystemPart(
                "Pipes",
                List.of("Each size is solved with the whole network and the fan \u201c"
                        + sizing.chosen().orElseThrow().fan().offer().id()
                        + "\u201d, as drawn, without the worst day."),
                columns,
                sizing.pipes().stream().map(this::pipe).toList(),
                notes);
    }

    private Row pipe(PipeComparison p) {
        return new Row(
                List.of(
                        size(p),
                        pressure(p.held().vacuum()),
                        pressure(p.solved().coverage().weakest()),
                        pressure(p.lost()),
                        flow(p.solved().flows().exhaust()),
                        units.speedNumber(p.fastest()),
                        pressure(p.largestLoss()),
                        held(p.held())),
                !p.held().meets(target));
    }

    private static String size(PipeComparison p) {
        return p.size().map(NominalPipe::word).orElse("as drawn");
    }

    private SystemPart worstDay() {
        if (sizing.worstDay().isEmpty())
            return sentence(
                    "Worst day",
                    "Not worked out: the scenario file lacks " + quoted(sizing.missing())
                            + " under \"house\". Save the house, type it into its file with its unit, and open the file again.");
        HousePressure day = sizing.worstDay().get();
        House.DesignDay design = sizing.scenario().house().designDay().orElseThrow();
        List<Column> columns =
                List.of(text("Outdoors above the room, at floor level", 300), number("Pressure" + pressureUnit, 110));
        List<Row> rows = List.of(
                row("Stack at " + units.temperature(design.outdoorTemperature()), pressure(day.stack())),
                row("Wind", pressure(day.wind())),
                row("Exhausts and system", pressure(day.exhaust())),
                row("Together", pressure(day.total())));
        List<String> after = new ArrayList<>(List.of("They are added up, which errs towards the worst."));
        if (sizing.scenario().house().blowerDoor().isEmpty())
            after.add("Exhausts and system count nothing here: " + key("blowerDoor", "house", "to have them counted"));
        List<String> before = sizing.heldDownTo()
                .map(h -> List.of("With \u201c"
                        + sizing.chosen().orElseThrow().fan().offer().id() + "\u201d the target " + down(h, units)
                        + "."))
                .orElse(List.of());
        return new SystemPart("Worst day", before, columns, rows, after);
    }

    /** How cold it may become, as the end of a sentence about the target. */
    static String down(WorstDay.HeldDownTo held, Units units) {
        if (held instanceof WorstDay.HeldDownTo.Temperature t)
            return "holds down to " + units.temperature(t.temperature()) + ", with the worst day's wind and exhausts";
        if (held instanceof WorstDay.HeldDownTo.AnyTried)
            return "holds at " + units.temperature(WorstDay.COLDEST) + ", the coldest that was tried";
        if (held instanceof WorstDay.HeldDownTo.NotAtAll)
            return "is not held with the worst day's wind and exhausts, not even when it is warm";
        return "cannot be judged: a solve did not settle";
    }

    private SystemPart seasons() {
        if (sizing.season().isEmpty()) {
            House house = sizing.scenario().house();
            List<String> lacks = new ArrayList<>();
            if (house.neutralLevel().isEmpty()) lacks.add("house.neutralLevel");
            if (house.climate().bins().isEmpty()) lacks.add("house.climate.bins");
            return sentence(
                    "Seasons",
                    lacks.isEmpty()
                            ? "No solve of a season settled."
                            : "Not worked out: the scenario file lacks " + quoted(lacks)
                                    + " under \"house\". Bins say how many hours of the year it is how cold, such as [\"-10 C\", \"300 h\"].");
        }
        List<Column> columns = List.of(
                number("Outdoors", 90),
                number("Hours\na year", 80),
                number("Outdoors above\nroom" + pressureUnit.replace('\n', ' '), 130),
                number("Vacuum" + pressureUnit, 90),
                number("Exhaust" + flowUnit, 90),
                text("Target", 110));
        return new SystemPart(
                "Seasons",
                List.of("Calm air, exhausts off; the house's stack alone presses."),
                columns,
                sizing.season().stream()
                        .map(p -> new Row(
                                List.of(
                                        units.temperature(p.bin().outdoorTemperature()),
                                        String.valueOf(Math.round(p.bin().duration() / 3600)),
                                        pressure(p.outdoorPressure()),
                                        pressure(p.held().vacuum()),
                                        flow(p.exhaust()),
                                        held(p.held())),
                                !p.held().meets(target)))
                        .toList(),
                List.of());
    }

    private SystemPart housePressure() {
        String test = "A calculation replaces no draft test: see the Checklist tab.";
        House house = sizing.scenario().house();
        if (sizing.limits().isEmpty()) {
            List<String> lacks = new ArrayList<>();
            if (house.blowerDoor().isEmpty()) lacks.add("house.blowerDoor");
            if (house.limits().isEmpty()) lacks.add("house.limits");
            return sentence(
                    "House pressure",
                    "Not worked out: the scenario file lacks " + quoted(lacks)
                            + " under \"house\". A limit is your own, with its \"pressure\" and its \"source\"; none is assumed.",
                    test);
        }
        List<Column> columns = List.of(
                text("Limit from", 260),
                number("Limit" + pressureUnit, 84),
                number("Without\nsystem" + pressureUnit.replace('\n', ' '), 110),
                number("With\nsystem" + pressureUnit.replace('\n', ' '), 110),
                text("Calculated", 190));
        List<Row> rows = sizing.limits().stream()
                .map(l -> new Row(
                        List.of(
                                l.limit().source(),
                                pressure(l.limit().pressure()),
                                pressure(l.withoutSystem()),
                                pressure(l.withSystem()),
                                l.exceeded() ? "above the limit" : "below; test all the same"),
                        l.exceeded()))
                .toList();
        List<String> after = house.exhausts().isEmpty()
                ? List.of(
                        "No exhaust is listed. " + key("exhausts", "house", "where there are fans, a dryer or a hood"),
                        test)
                : List.of(test);
        return new SystemPart(
                "House pressure",
                List.of("By how much fans alone lower the house below outdoors, against your limits."),
                columns,
                rows,
                after);
    }

    /** What to add to the scenario file, and under what. */
    static String key(String key, String under, String why) {
        return "Add \"" + key + "\" under \"" + under + "\" in the scenario file " + why + ".";
    }

    private static String quoted(List<String> keys) {
        return String.join(
                ", ",
                keys.stream()
                        .map(k -> "\"" + k.replaceFirst("^house\\.", "").replace(".", "\".\"") + "\"")
                        .toList());
    }

    private static SystemPart sentence(String title, String... sentences) {
        return new SystemPart(title, List.of(sentences), List.of(), List.of(), List.of());
    }

    private static Row row(String... cells) {
        return new Row(List.of(cells), false);
    }

    static Column text(String title, int width) {
        return new Column(title, width, false);
    }

    static Column number(String title, int width) {
        return new Column(title, width, true);
    }

    private String held(Held held) {
        return held.meets(target) ? "held" : "not held";
    }

    private String pressure(double si) {
        return units.pressureNumber(si);
    }

    private String flow(double si) {
        return units.shown().get().flow(si);
    }

    static String whole(OptionalDouble value) {
        return value.isPresent() ? String.valueOf(Math.round(value.getAsDouble())) : NONE;
    }

    static String kilowattHours(OptionalDouble joules) {
        return joules.isPresent() ? whole(OptionalDouble.of(Unit.KILOWATT_HOUR.fromSi(joules.getAsDouble()))) : NONE;
    }
}
