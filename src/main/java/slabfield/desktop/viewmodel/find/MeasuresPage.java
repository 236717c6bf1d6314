package slabfield.desktop.viewmodel.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.advice.Advisor;
import slabfield.advice.Houses;
import slabfield.advice.Measure;
import slabfield.advice.Suggestion;
import slabfield.desktop.viewmodel.Advising;
import slabfield.desktop.viewmodel.HouseSearch;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Words;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.field.Progress;
import slabfield.fit.NotFitted;
import slabfield.model.Scenario;
import slabfield.model.SealState;

/** Measures one by one with what they gain, the range of it and the odds of meeting the target. */
final class MeasuresPage extends Asked<List<Suggestion>> {
    private static final int BANDED = 10;
    private static final double PREPARE = 0.35;

    MeasuresPage(Workbench bench, Explained explained, TaskRunner runner) {
        super(
                bench,
                runner,
                new Names(
                        "Measures",
                        "What each measure would change, with its range and the odds of meeting the target; apply one with one press.",
                        "Try measures",
                        "there is nothing to improve on"),
                (house, progress) -> find(explained, house, progress),
                new HouseSearch.Phrases(
                        "Tries each measure by solving the house with it, and the best in plausible houses; nothing is changed.",
                        "Trying measures in plausible houses",
                        "search",
                        "Search again."),
                all -> Words.count(all.size(), "measure", "measures") + " tried, best first, each by itself.");
    }

    private static List<Suggestion> find(Explained explained, Scenario house, Progress progress) throws NotFitted {
        Houses houses = explained.houses(house, Advisor.USUAL_HOUSES, Phases.part(progress, 0, PREPARE));
        return Advisor.suggest(houses, BANDED, Phases.part(progress, PREPARE, 1));
    }

    @Override
    public List<String> views() {
        return Plans.GLANCES;
    }

    @Override
    Sheet sheet(List<Suggestion> all) {
        return new Sheet(
                headline(all),
                        List.of(
                                basis(all),
                                "Sealed is taken to close " + Words.percent(SealState.SEALED.assumedFraction())
                                        + " of an opening, an assumption. Gains of measures"
                                        + " do not add up. Whether a place can be cored is for you to judge. "
                                        + Amounts.SIGN),
                List.of(measures(all)), List.of());
    }

    private String headline(List<Suggestion> all) {
        if (all.isEmpty()) return "Nothing was found to try: nothing is open, and there is no room for another point.";
        Suggestion best = all.get(0);
        return "Best by itself: " + Advising.words(best.measure(), bench.units()) + " \u2013 weakest place "
                + bench.units().pressure(-best.before().weakest())
                + " \u2192 " + bench.units().pressure(-best.after().weakest())
                + best.odds()
                        .map(o -> ", odds of meeting the target " + Amounts.percents(o.meetsBefore(), o.meetsAfter()))
                        .orElse("")
                + ".";
    }

    private static String basis(List<Suggestion> all) {
        return all.stream()
                .flatMap(s -> s.odds().stream())
                .findFirst()
                .map(o -> (o.basis() == Houses.Basis.READINGS
                                ? "Numbers are of the house fitted to the readings; the map shows the measure in the house as drawn. "
                                : "")
                        + "Ranges hold nine times of ten, " + o.basis().words() + " (" + o.houses()
                        + " plausible houses); they stand for the best " + BANDED + ".")
                .orElse("Without ranges: these are numbers of one house.");
    }

    private Sheet.Table measures(List<Suggestion> all) {
        Amounts a = amounts();
        List<Sheet.Column> columns = List.of(
                Sheet.Column.words("Measure", 262),
                Sheet.Column.words("Outcome", 200),
                Sheet.Column.number(a.inPressure("Weakest\nplace"), 85),
                Sheet.Column.number(a.inPressure("The same,\n9 of 10"), 150),
                Sheet.Column.number("Odds of\ntarget", 80),
                Sheet.Column.number("Area on\ntarget", 80),
                Sheet.Column.number(a.inFlow("Exhaust"), 80),
                Sheet.Column.number(a.inFlow("Room air saved\n(9 of 10)"), 195));
        List<Sheet.Row> rows =
                new ArrayList<>(all.stream().limit(1).map(this::now).toList());
        all.forEach(s -> rows.add(row(s)));
        return new Sheet.Table("Measures, best first, each by itself", columns, rows, List.of());
    }

    /** The house without any measure, which all are held against. */
    private Sheet.Row now(Suggestion s) {
        Amounts a = amounts();
        return Sheet.Row.of(
                "Now, without any",
                "",
                a.weakest(s.before().weakest()),
                s.odds().map(o -> a.weakest(o.weakestBefore())).orElse(Amounts.NONE),
                s.odds().map(o -> Words.percent(o.meetsBefore())).orElse(Amounts.NONE),
                Words.percent(s.before().meeting()),
                a.flow(s.flowsBefore().exhaust()),
                Amounts.NONE);
    }

    private Sheet.Row row(Suggestion s) {
        Amounts a = amounts();
        Optional<Suggestion.Odds> odds = s.odds();
        String words = Advising.words(s.measure(), bench.units());
        return new Sheet.Row(
                List.of(
                        words,
                        outcome(s),
                        a.weakest(s.after().weakest()),
                        odds.map(o -> a.weakest(o.weakestAfter())).orElse(Amounts.NONE),
                        odds.map(o -> Words.percent(o.meetsAfter())).orElse(Amounts.NONE),
                        Words.percent(s.after().meeting()),
                        a.flow(s.flowsAfter().exhaust()),
                        a.flow(s.roomAirSaved())
                                + odds.map(o -> " (" + a.flow(o.roomAirSaved()) + ")")
                                        .orElse("")),
                false,
                Optional.of(new Sheet.Subject(
                        words,
                        Optional.of(
                                s.measure().apply(bench.document().scenario().get())),
                        s.measure().where())),
                List.of(new Sheet.Act(
                        "Apply", "Apply: " + words, () -> bench.advising().apply(s.measure()))));
    }

    /** What a measure comes to, plainly. */
    static String outcome(Suggestion s) {
        if (s.doesNothing())
            return s.measure().kind() == Measure.Kind.SEAL ? "sealing this does nothing here" : "does nothing here";
        if (s.after().meeting() >= 1 && s.before().meeting() < 1) return "all on target";
        return s.gain() >= Suggestion.NOTICEABLE
                        || s.after().meeting() > s.before().meeting()
                ? "helps"
                : "worse";
    }

    @Override
    public Optional<Picture> picture(String view, Optional<Glances.Glance> glance) {
        return plans.glance(
                view, glance, search.found().get().isEmpty() ? "" : "Point at a measure to see the house with it.");
    }
}
