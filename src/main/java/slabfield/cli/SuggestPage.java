package slabfield.cli;

import java.util.List;
import java.util.stream.Collectors;
import slabfield.advice.Combinations;
import slabfield.advice.CombinedPlan;
import slabfield.advice.Houses;
import slabfield.advice.Measure;
import slabfield.advice.Range;
import slabfield.advice.Suggestion;
import slabfield.advice.TestCover;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.model.SealState;

/** Measures and what they gain, as text. */
final class SuggestPage {
    private final SuggestVerb.Advice advice;
    private final Scenario scenario;
    private final boolean hasReadings;
    private final Shown shown;

    /**
     * Lays nothing out yet.
     *
     * @param hasReadings true where the scenario holds readings that a band could come from
     */
    SuggestPage(SuggestVerb.Advice advice, boolean hasReadings, Shown shown) {
        this.advice = advice;
        this.scenario = advice.base().scenario();
        this.hasReadings = hasReadings;
        this.shown = shown;
    }

    String text() {
        Page page = new Page().title(scenario.name());
        Result.Coverage now = advice.base().coverage();
        boolean fitted = advice.best().stream()
                .flatMap(s -> s.odds().stream())
                .anyMatch(o -> o.basis() == Houses.Basis.READINGS);
        page.value(
                fitted ? "As fitted" : "As drawn",
                "vacuum " + shown.pressureText(now.weakest()) + " at the weakest place, "
                        + Shown.percent(now.meeting()) + " of the area meets " + shown.givenPressure(now.target())
                        + ", exhaust "
                        + shown.flowText(advice.base().flows().exhaust()));
        if (advice.best().isEmpty())
            page.part("Nothing was found to try: nothing is open, and there is no room for another point.");
        else {
            measures(page);
            odds(page);
        }
        covers(page);
        advice.plans().ifPresent(p -> plans(page, p));
        return page.cautioned();
    }

    private void measures(Page page) {
        Table table = new Table(
                Table.number("#"),
                Table.words("measure"),
                Table.number("weakest vacuum"),
                Table.number("gain"),
                Table.number("area ok"),
                Table.number("exhaust"),
                Table.number("room air saved"),
                Table.number("fan W"));
        int rank = 0;
        for (Suggestion s : advice.best())
            table.row(
                    String.valueOf(++rank),
                    words(s),
                    shown.pressure(s.before().weakest()) + " -> "
                            + shown.pressure(s.after().weakest()),
                    shown.pressure(s.gain()),
                    Shown.percent(s.after().meeting()),
                    shown.flow(s.flowsAfter().exhaust()),
                    shown.flow(s.roomAirSaved()),
                    watts(s.wattsAfter().orElse(Double.NaN)));
        String pressure = shown.pressureUnit().symbol();
        page.part("Best " + advice.best().size() + " of " + advice.tried() + " measures, each by itself; vacuum in "
                        + pressure + ", flow in " + shown.flowUnit().symbol())
                .table(table);
        page.text(
                "Weakest vacuum = at the weakest place, before -> after; positive = soil under vacuum relative to the room."
                        + " Area ok = meets the target. Fan W = power of all fans, where the file gives it.");
        page.text("Sealed is taken to close " + Shown.percent(SealState.SEALED.assumedFraction()) + " of an opening, an"
                + " assumption. A new point draws as \"" + first() + "\" does.");
    }

    private void odds(Page page) {
        List<Suggestion> banded =
                advice.best().stream().filter(s -> s.odds().isPresent()).toList();
        if (banded.isEmpty()) {
            page.text("Without a band: these are numbers of one house, as drawn."
                    + (hasReadings ? " --band readings fits the readings and says how sure they are." : ""));
            return;
        }
        Table table = new Table(
                Table.number("#"),
                Table.words("gain"),
                Table.words("weakest after"),
                Table.words("exhaust"),
                Table.words("room air saved"),
                Table.words("odds to meet the target"));
        for (Suggestion s : banded) {
            Suggestion.Odds o = s.odds().orElseThrow();
            table.row(
                    String.valueOf(advice.best().indexOf(s) + 1),
                    pressures(o.gain()),
                    pressures(o.weakestAfter()),
                    flows(o.exhaust()),
                    flows(o.roomAirSaved()),
                    Shown.percent(o.meetsBefore()) + " -> " + Shown.percent(o.meetsAfter()));
        }
        Suggestion.Odds any = banded.get(0).odds().orElseThrow();
        page.part("Ranges that hold nine times of ten, " + any.basis().words() + " (" + any.houses()
                        + " plausible houses)")
                .table(table);
    }

    private String pressures(Range r) {
        return shown.pressure(r.low()) + " to " + shown.pressure(r.high());
    }

    private String flows(Range r) {
        return shown.flow(r.low()) + " to " + shown.flow(r.high());
    }

    private void covers(Page page) {
        if (advice.covers().isEmpty()) return;
        Table table = new Table(
                Table.words("cover for a test"),
                Table.number("largest gain at a hole"),
                Table.number("exhaust"),
                Table.words("does it tell?"));
        for (TestCover c : advice.covers())
            table.row(
                    c.measure().id(),
                    shown.pressure(c.largestGain()),
                    shown.flow(c.exhaustBefore()) + " -> " + shown.flow(c.exhaustAfter()),
                    c.tells() ? "yes: no change means no leak" : "no: too small to see");
        page.part("What a temporary cover would show if the opening leaks as drawn, in "
                        + shown.pressureUnit().symbol() + " and "
                        + shown.flowUnit().symbol())
                .table(table);
    }

    private void plans(Page page, Combinations plans) {
        Table table = new Table(
                Table.words("plan"),
                Table.number("weakest vacuum"),
                Table.number("area ok"),
                Table.number("room air"),
                Table.number("fan W"));
        for (CombinedPlan p : plans.frontier().best())
            table.row(
                    p.measures().isEmpty()
                            ? p.words()
                            : p.measures().stream().map(this::words).collect(Collectors.joining("; ")),
                    shown.pressure(p.coverage().weakest()),
                    Shown.percent(p.coverage().meeting()),
                    shown.flow(p.flows().fromRoom()),
                    watts(p.watts().orElse(Double.NaN)));
        page.part("Plans that no other beats, from the weakest vacuum to the strongest"
                        + (plans.frontier().byPower() ? "; room air and power count" : "; room air counts"))
                .table(table);
        page.text("Found step by step; there may be better ones.");
    }

    private String watts(double watts) {
        return Double.isNaN(watts) ? "-" : String.valueOf(Math.round(watts));
    }

    private String first() {
        return scenario.suctionPoints().stream().findFirst().map(s -> s.id()).orElse("the first");
    }

    private String words(Suggestion s) {
        boolean nothing = s.doesNothing();
        return words(s.measure()) + (nothing ? ": does nothing here (" + shown.pressureText(s.gain()) + ")" : "");
    }

    private String words(Measure m) {
        return m.words() + m.where().map(p -> " at " + shown.place(p)).orElse("");
    }
}
