package slabfield.desktop.viewmodel.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.desktop.viewmodel.HouseSearch;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Words;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.diagnosis.Diagnoser;
import slabfield.diagnosis.Diagnosis;
import slabfield.diagnosis.NextCheck;
import slabfield.fit.Observation;
import slabfield.model.Scenario;

/** What could be wrong, with odds, and which check would tell. */
final class DiagnosisPage extends Asked<Diagnosis> {
    private static final double WORTH_SHOWING = 0.005;

    DiagnosisPage(Workbench bench, TaskRunner runner) {
        super(
                bench,
                runner,
                new Names(
                        "Diagnosis",
                        "What could be wrong with the house, by the readings of all stages, and the next check that would tell.",
                        "Diagnose",
                        "there is nothing to diagnose"),
                Diagnoser::diagnose,
                new HouseSearch.Phrases(
                        "Each cause is a changed house, fitted to the readings of all stages together; nothing is changed.",
                        "Weighing causes against the readings",
                        "diagnosis",
                        "Diagnose again."),
                d -> Words.count(d.causes().size(), "cause", "causes") + " weighed.");
    }

    @Override
    public List<String> views() {
        return Plans.GLANCES;
    }

    @Override
    Sheet sheet(Diagnosis d) {
        List<String> words = new ArrayList<>();
        d.next().ifPresent(c -> words.add(next(d, c)));
        d.first().speaks().ifPresent(s -> words.add("What speaks most for it: " + speaks(s) + "."));
        d.notes().forEach(n -> words.add(amounts().placed(n)));
        words.add(
                "The odds hold among these causes alone; half of them is given to the house as drawn beforehand (an assumption). Misfit about 1 is what"
                        + " to expect. " + Amounts.SIGN);
        return new Sheet(answer(d), words, List.of(table(d)), List.of());
    }

    private String answer(Diagnosis d) {
        Diagnosis.Weighed first = d.first();
        return switch (d.answer()) {
            case TOLD ->
                "Most likely: " + first.cause().words() + " (" + Words.percent(first.probability()) + "). "
                        + Amounts.capital(amounts().placed(first.explanation().words())) + ": "
                        + first.cause().sign() + ".";
            case AS_DRAWN ->
                "The house as drawn explains the readings. A cause too weak to show in them is not excluded.";
            case CANNOT_TELL ->
                "Can't tell: no cause reaches " + Words.percent(Diagnoser.TOLD)
                        + ", or none fits. Do the next check before anything is built on this.";
        };
    }

    private String next(Diagnosis d, NextCheck c) {
        if (!c.worthDoing()) return "Next check: none of those tried would tell the first two apart.";
        String intro = c.clear() ? "Next check: " : "No single check would tell the first two apart; the best one: ";
        return intro + amounts().placed(c.words()) + " "
                + Amounts.capital(amounts().placed(c.reading())) + ": " + amount(c.first(), c.flow())
                + " if it is "
                + d.causes().get(0).cause().words() + ", " + amount(c.second(), c.flow()) + " if it is "
                + d.causes().get(1).cause().words()
                + " (" + Amounts.decimals(c.separation(), 1) + " standard errors apart).";
    }

    private String amount(double value, boolean flow) {
        return flow ? bench.units().flow(value) : bench.units().pressure(value);
    }

    private String speaks(Diagnosis.Speaks s) {
        Observation o = s.observation();
        return o.what().words() + " at " + o.place() + " in \u201c" + o.stage() + "\u201d, "
                + amounts().reading(o, o.measured()) + " read, " + amounts().reading(o, s.explained())
                + " with the cause, " + amounts().reading(o, s.drawn()) + " at best without it";
    }

    private Sheet.Table table(Diagnosis d) {
        List<Sheet.Column> columns = List.of(
                Sheet.Column.words("Cause", 240),
                Sheet.Column.number("Odds", 65),
                Sheet.Column.number("Misfit", 62),
                Sheet.Column.words("How", 450),
                Sheet.Column.words("The reading that speaks most for it", 420));
        double cell = bench.document().scenario().get().cellSize();
        List<Sheet.Row> rows = d.causes().stream()
                .filter(w -> w.probability() >= WORTH_SHOWING)
                .map(w -> row(w, cell))
                .toList();
        return new Sheet.Table("Causes, the likeliest first", columns, rows, List.of());
    }

    private Sheet.Row row(Diagnosis.Weighed w, double cell) {
        Scenario house = w.fitted().house().withCellSize(cell);
        double misfit = w.fitted().chiSquare() / w.fitted().observations().size();
        return new Sheet.Row(
                List.of(
                        Amounts.capital(w.cause().words()),
                        Words.percent(w.probability()),
                        Amounts.decimals(misfit, 1),
                        amounts().placed(w.explanation().words()),
                        w.speaks().map(this::speaks).orElse(Amounts.NONE)),
                false,
                Optional.of(new Sheet.Subject(
                        w.cause().words() + " ("
                                + amounts().placed(w.explanation().words()) + ")",
                        Optional.of(house),
                        Optional.empty())),
                List.of());
    }

    @Override
    public Optional<Picture> picture(String view, Optional<Glances.Glance> glance) {
        return plans.glance(
                view, glance, search.found().get().isEmpty() ? "" : "Choose a cause to see the house with it.");
    }
}
