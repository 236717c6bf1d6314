package slabfield.cli;

import java.util.ArrayList;
import java.util.List;
import slabfield.equipment.FanRanking;
import slabfield.equipment.Held;
import slabfield.equipment.HousePressure;
import slabfield.equipment.PipeComparison;
import slabfield.equipment.PipeLosses;
import slabfield.equipment.Sizing;
import slabfield.equipment.TestScaling;
import slabfield.equipment.WorstDay;
import slabfield.model.House;
import slabfield.model.NominalPipe;

/** Fans, pipes, worst day, season and cost, as text. */
final class SizePage {
    private final Sizing sizing;
    private final FanRanking.Ranked chosen;
    private final Shown shown;
    private final String pressure;

    SizePage(Sizing sizing, Shown shown) {
        this.sizing = sizing;
        this.chosen = sizing.chosen().orElseThrow();
        this.shown = shown;
        this.pressure = shown.pressureUnit().symbol();
    }

    String text() {
        Page page = new Page().title(sizing.scenario().name());
        headline(page);
        fans(page);
        pipes(page);
        worstDay(page);
        if (!sizing.season().isEmpty()) season(page);
        new CostPart(sizing, shown).add(page);
        limits(page);
        sizing.scaled().forEach(stage -> scaled(page, stage));
        return page.cautioned();
    }

    private void headline(Page page) {
        page.value(
                "Target",
                shown.givenPressure(sizing.scenario().target().vacuum()) + " of vacuum ("
                        + sizing.scenario().target().choice() + ")");
        page.value(
                "Fan gone on with",
                chosen.fan().offer().id() + (chosen.meets() ? "" : ": it does not hold the target"));
        page.value(
                "Judged at",
                chosen.drawn().hole().map(h -> "the weakest test hole, " + h).orElse("the weakest place"));
    }

    private void fans(Page page) {
        page.part("Fans in the whole network, vacuum in " + pressure + (sizing.inventedOnly() ? "; all invented" : ""));
        Table table = new Table(
                Table.words("fan"),
                Table.words("holds"),
                Table.number("as drawn"),
                Table.number("worst day"),
                Table.number("margin"),
                Table.number("exhaust, " + shown.flowUnit().symbol()),
                Table.number("of room air"),
                Table.number("W"),
                Table.number("kWh/a"));
        for (FanRanking.Ranked r : sizing.ranking().fans())
            table.row(
                    r.fan().offer().id(),
                    r.meets() ? "yes" : "no",
                    shown.pressure(r.drawn().vacuum()),
                    shown.pressure(r.worstDay().map(Held::vacuum).orElse(Double.NaN)),
                    shown.pressure(r.margin()),
                    shown.flow(r.solved().flows().exhaust()),
                    shown.flow(r.solved().flows().fromRoom()),
                    Shown.plain(r.watts().orElse(Double.NaN), 0),
                    Shown.kilowattHours(r.yearlyEnergy()));
        page.table(table);
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
            notes.add("These classes are invented and only give an idea; list real fans under \"equipment\".\"fans\".");
        if (!sizing.withoutPipe().isEmpty())
            notes.add("No pipe is given for " + String.join(", ", sizing.withoutPipe())
                    + ": its loss is left out. Give \"pipe\", or \"plannedPipes\" under \"equipment\".");
        page.list(notes);
    }

    private void pipes(Page page) {
        if (sizing.pipes().stream().allMatch(p -> p.runs().isEmpty())) return;
        page.part("Pipes: all stretches in one size, each solved with the whole network, vacuum in " + pressure);
        Table table = new Table(
                Table.words("pipe"),
                Table.number("at the slab"),
                Table.number("lost to pipe"),
                Table.number("exhaust, " + shown.flowUnit().symbol()),
                Table.number("fastest, " + shown.speedUnit().symbol()),
                Table.number("largest loss of a run"));
        for (PipeComparison p : sizing.pipes())
            table.row(
                    p.size().map(NominalPipe::word).orElse("as drawn"),
                    shown.pressure(p.held().vacuum()),
                    shown.pressure(p.lost()),
                    shown.flow(p.solved().flows().exhaust()),
                    shown.speed(p.fastest()),
                    shown.pressure(p.largestLoss()));
        page.table(table);
        page.text(
                "Sizes are schedule 40 with their true inside diameters, from memory. \"Lost to pipe\" is the vacuum that"
                        + " pipes without any loss would add at the slab.");
        stretches(page, sizing.pipes().get(0));
    }

    private void stretches(Page page, PipeComparison drawn) {
        page.part("Stretches as drawn, losses in " + pressure);
        Table table = new Table(
                Table.words("run"),
                Table.number("inside"),
                Table.number("flow, " + shown.flowUnit().symbol()),
                Table.number("speed, " + shown.speedUnit().symbol()),
                Table.number("friction"),
                Table.number("fittings"),
                Table.number("total"),
                Table.number("fall"));
        List<String> advice = new ArrayList<>();
        drawn.runs().forEach((run, stretches) -> {
            for (PipeLosses l : stretches) {
                table.row(
                        run,
                        shown.smallLength(l.pipe().diameter()),
                        shown.flow(l.flow()),
                        shown.speed(l.velocity()),
                        shown.pressure(l.friction()),
                        shown.pressure(l.fittings()),
                        shown.pressure(l.least()) + " to " + shown.pressure(l.most()),
                        shown.smallLength(l.condensateFall()));
                l.advice().stream()
                        .map(a -> run + ": " + a)
                        .filter(a -> !advice.contains(a))
                        .forEach(advice::add);
            }
        });
        page.table(table).list(advice);
        page.text(
                "Total: fittings differ by some 30 % between handbooks. Fall: how much what is not vertical must fall towards the pit, at 1/8 in to the foot.");
    }

    private void worstDay(Page page) {
        page.part("Worst day, outdoors above the room at floor level");
        if (sizing.worstDay().isEmpty()) {
            page.text("Not worked out: the scenario lacks " + String.join(", ", sizing.missing()) + ".");
            return;
        }
        HousePressure day = sizing.worstDay().get();
        House.DesignDay design = sizing.scenario().house().designDay().orElseThrow();
        page.value("Stack at " + shown.temperature(design.outdoorTemperature()), shown.pressureText(day.stack()));
        page.value("Wind", shown.pressureText(day.wind()));
        page.value("Exhausts and system", shown.pressureText(day.exhaust()));
        page.value("Together", shown.pressureText(day.total()) + "; added up, which errs towards the worst");
        sizing.heldDownTo().ifPresent(h -> page.value("Target", down(h)));
    }

    private String down(WorstDay.HeldDownTo held) {
        if (held instanceof WorstDay.HeldDownTo.Temperature t)
            return "holds down to " + shown.temperature(t.temperature()) + ", with the worst day's wind and exhausts";
        if (held instanceof WorstDay.HeldDownTo.AnyTried)
            return "holds at " + shown.temperature(WorstDay.COLDEST) + ", the coldest that was tried";
        if (held instanceof WorstDay.HeldDownTo.NotAtAll)
            return "is not held with the worst day's wind and exhausts, not even when it is warm";
        return "not found: a solve did not settle";
    }

    private void season(Page page) {
        page.part("Through the year, calm and with exhausts off, vacuum in " + pressure);
        Table table = new Table(
                Table.number("outdoors"),
                Table.number("hours"),
                Table.number("outdoors above room"),
                Table.number("vacuum"),
                Table.words("target"));
        double target = sizing.scenario().target().vacuum();
        for (WorstDay.SeasonPoint p : sizing.season())
            table.row(
                    shown.temperature(p.bin().outdoorTemperature()),
                    Shown.plain(p.bin().duration() / 3600, 0),
                    shown.pressure(p.outdoorPressure()),
                    shown.pressure(p.held().vacuum()),
                    p.held().meets(target) ? "held" : "not held");
        page.table(table);
    }

    private void limits(Page page) {
        page.part("House lower than outdoors by fans alone, against your limits");
        if (sizing.limits().isEmpty()) {
            page.text(
                    "Not worked out: it needs \"blowerDoor\", \"exhausts\" and your own \"limits\" with their source, under \"house\".");
        } else {
            Table table = new Table(
                    Table.words("limit from"),
                    Table.number("limit, " + pressure),
                    Table.number("without system"),
                    Table.number("with system"),
                    Table.words("calculated"));
            for (HousePressure.AgainstLimit l : sizing.limits())
                table.row(
                        l.limit().source(),
                        shown.pressure(l.limit().pressure()),
                        shown.pressure(l.withoutSystem()),
                        shown.pressure(l.withSystem()),
                        l.exceeded() ? "above the limit" : "below; test all the same");
            page.table(table);
        }
        page.text("A calculation replaces no draft test: see slabfield checklist.");
    }

    private void scaled(Page page, Sizing.ScaledStage stage) {
        page.part("Readings of \"" + stage.stage() + "\", on less off, scaled to "
                + chosen.fan().offer().id() + ", in " + pressure);
        Table table = new Table(
                Table.words("hole"), Table.number("measured"), Table.number("factor"), Table.number("expected"));
        for (TestScaling t : stage.holes())
            table.row(t.hole(), shown.pressure(t.measured()), Shown.plain(t.factor(), 3), shown.pressure(t.expected()));
        page.table(table);
    }
}
