package slabfield.cli;

import java.util.List;
import java.util.Optional;
import slabfield.advice.Measure;
import slabfield.advice.Suggestion;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.model.SealState;

/** Measures and what they gain, as text. */
final class SuggestPage {
    private final Scenario scenario;
    private final Result.Solved base;
    private final List<Suggestion> best;
    private final int tried;
    private final Shown shown;

    /**
     * Lays nothing out yet.
     *
     * @param base the house as drawn
     * @param best those to list, best first
     * @param tried how many there are in all
     */
    SuggestPage(Scenario scenario, Result.Solved base, List<Suggestion> best, int tried, Shown shown) {
        this.scenario = scenario;
        this.base = base;
        this.best = best;
        this.tried = tried;
        this.shown = shown;
    }

    String text() {
        Page page = new Page().title(scenario.name());
        page.value("As drawn", "vacuum " + shown.pressureText(base.coverage().weakest()) + " at the weakest place, "
                + Shown.percent(base.coverage().meeting()) + " of the area meets "
                + shown.givenPressure(base.coverage().target()) + ", exhaust "
                + shown.flowText(base.flows().exhaust()));
        if (best.isEmpty()) page.part("Nothing was found to try: nothing is open, and there is no room for another point.");
        else measures(page);
        return page.cautioned();
    }

    private void measures(Page page) {
        Table table = new Table(
                Table.number("#"), Table.words("measure"), Table.number("weakest vacuum"), Table.number("gain"),
                Table.number("area ok"), Table.number("exhaust"), Table.number("room air saved"));
        int rank = 0;
        for (Suggestion s : best)
            table.row(
                    String.valueOf(++rank), words(s),
                    shown.pressure(s.before().weakest()) + " -> " + shown.pressure(s.after().weakest()), shown.pressure(s.gain()),
                    Shown.percent(s.after().meeting()), shown.flow(s.flowsAfter().exhaust()), shown.flow(s.roomAirSaved()));
        String pressure = shown.pressureUnit().symbol();
        page.part("Best " + best.size() + " of " + tried + " measures, each by itself; vacuum in " + pressure + ", flow in "
                        + shown.flowUnit().symbol())
                .table(table);
        page.text("Weakest vacuum = at the weakest place, before -> after; positive = soil under vacuum relative to the room."
                + " Area ok = meets the target.");
        page.text("Sealed is taken to close " + Shown.percent(SealState.SEALED.assumedFraction()) + " of an opening, an"
                + " assumption. A new point draws as \"" + first().orElse("the first") + "\" does.");
    }

    private Optional<String> first() {
        return scenario.suctionPoints().stream().findFirst().map(s -> s.id());
    }

    private String words(Suggestion s) {
        String place = s.measure() instanceof Measure.AddSuction add ? " at " + shown.place(add.at()) : "";
        return s.measure().words() + place + (s.doesNothing() ? ": does nothing here" : "");
    }
}
