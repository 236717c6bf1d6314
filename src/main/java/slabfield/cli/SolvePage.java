package slabfield.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.field.Convergence;
import slabfield.field.Result;
import slabfield.io.ResultWriter;
import slabfield.model.Stage;

/** What a solve found, as text. */
final class SolvePage {
    private final Result.Solved solved;
    private final Optional<Stage> stage;
    private final Shown shown;

    /**
     * Lays nothing out yet.
     *
     * @param stage at which the house was solved; empty for the house as drawn
     */
    SolvePage(Result.Solved solved, Optional<Stage> stage, Shown shown) {
        this.solved = solved;
        this.stage = stage;
        this.shown = shown;
    }

    String text() {
        Page page = new Page().title(solved.scenario().name());
        headline(page);
        if (!solved.holes().isEmpty()) holes(page);
        if (!solved.suctions().isEmpty()) suctions(page);
        if (!solved.holes().isEmpty() || !solved.suctions().isEmpty()) page.text(Page.SIGN);
        sources(page);
        doubts(page);
        return page.cautioned();
    }

    private void headline(Page page) {
        Convergence c = solved.convergence();
        page.value(
                "House",
                stage.map(s -> "as at stage \"" + s.id() + "\" (" + s.kind().words() + ")")
                        .orElse("as drawn"));
        page.value(
                "Converged",
                String.format(
                        Locale.ROOT,
                        "yes, in %d steps to a residual of %.1e of the flow",
                        c.iterations(),
                        c.residual()));
        Result.Coverage cover = solved.coverage();
        page.value(
                "Weakest place",
                Double.isFinite(cover.weakest())
                        ? "vacuum " + shown.pressureText(cover.weakest()) + " at " + shown.place(cover.weakestAt())
                                + ", to a cell of " + shown.size(cover.cell())
                        : "none: no part of the slab has a pressure");
        page.value(
                "Weakest test hole",
                solved.weakestHole()
                        .map(h -> "vacuum " + shown.pressureText(-h.fanOn().getAsDouble()) + " at " + h.id())
                        .orElse("none is drawn"));
        page.value(
                "Area meeting target",
                Shown.percent(cover.meeting()) + " has " + shown.givenPressure(cover.target()) + " of vacuum or more ("
                        + solved.scenario().target().choice() + ")");
        page.value("Exhaust", shown.flowText(solved.flows().exhaust()));
        page.value(
                "Share from the room", Shown.percent(solved.flows().roomShare().orElse(Double.NaN)));
    }

    private void holes(Page page) {
        Table table = new Table(
                Table.words("hole"),
                Table.number("fan on"),
                Table.number("fan off"),
                Table.number("on - off"),
                Table.number("measured on"),
                Table.number("measured - predicted"));
        for (Result.Hole hole : solved.holes()) {
            OptionalDouble on = hole.fanOn(), off = hole.fanOff();
            OptionalDouble read = ResultWriter.measured(solved.scenario(), hole.id());
            table.row(
                    hole.id(),
                    shown.pressure(on),
                    shown.pressure(off),
                    shown.pressure(minus(on, off)),
                    shown.pressure(read),
                    shown.pressure(minus(read, on)));
        }
        page.part("Test holes, pressure in " + shown.pressureUnit().symbol()).table(table);
    }

    private static OptionalDouble minus(OptionalDouble a, OptionalDouble b) {
        return a.isPresent() && b.isPresent()
                ? OptionalDouble.of(a.getAsDouble() - b.getAsDouble())
                : OptionalDouble.empty();
    }

    private void suctions(Page page) {
        Table table = new Table(
                Table.words("suction point"),
                Table.words("place"),
                Table.number("pressure in pit or tile, " + shown.pressureUnit().symbol()),
                Table.number("flow, " + shown.flowUnit().symbol()));
        for (Result.Suction s : solved.suctions())
            table.row(s.id(), shown.place(s.at()), shown.pressure(s.pressure()), shown.flow(s.flow()));
        page.part("Suction points").table(table);
    }

    private void sources(Page page) {
        Result.Flows flows = solved.flows();
        Table table =
                new Table(Table.words("source"), Table.number(shown.flowUnit().symbol()), Table.number("of exhaust"));
        flows.bySource().forEach((name, flow) -> share(table, name, flow));
        share(table, "all from the room", flows.fromRoom());
        share(table, "all from soil", flows.fromSoil());
        share(table, "all from outdoors through walls", flows.fromOutdoors());
        share(table, "exhaust", flows.exhaust());
        page.part("Air by source, positive into the layer, flow in "
                        + shown.flowUnit().symbol())
                .table(table);
        page.text(String.format(
                Locale.ROOT,
                "Mass balance: in less out is %.1e of the flow through the network.",
                solved.convergence().massBalance()));
    }

    private void share(Table table, String name, double flow) {
        double exhaust = solved.flows().exhaust();
        table.row(name, shown.flow(flow), Shown.percent(exhaust > 0 ? flow / exhaust : Double.NaN));
    }

    private void doubts(Page page) {
        List<String> unreached = solved.unreached().stream()
                .map(u -> "No opening, wall or soil reaches " + shown.area(u.area()) + " of the layer around "
                        + shown.place(u.around()) + ": it has no pressure.")
                .toList();
        if (!unreached.isEmpty()) page.part("Parts that nothing reaches").list(unreached);
        if (!solved.doubts().isEmpty()) page.part("What this rests on").list(solved.doubts());
    }
}
