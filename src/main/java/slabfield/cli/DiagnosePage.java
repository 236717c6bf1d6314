package slabfield.cli;

import slabfield.diagnosis.Checklist;
import slabfield.diagnosis.Diagnoser;
import slabfield.diagnosis.Diagnosis;
import slabfield.diagnosis.NextCheck;
import slabfield.fit.Observation;
import slabfield.model.Scenario;

/** What could be wrong, as text. */
final class DiagnosePage {
    private static final double WORTH_SHOWING = 0.005;

    private final Scenario scenario;
    private final Diagnosis diagnosis;
    private final boolean checklist;
    private final Shown shown;

    DiagnosePage(Scenario scenario, Diagnosis diagnosis, boolean checklist, Shown shown) {
        this.scenario = scenario;
        this.diagnosis = diagnosis;
        this.checklist = checklist;
        this.shown = shown;
    }

    String text() {
        Page page = new Page().title(scenario.name()).text(answer());
        Table table = new Table(
                Table.words("cause"), Table.number("probability"), Table.number("misfit"), Table.words("how"));
        for (Diagnosis.Weighed w : diagnosis.causes())
            if (w.probability() >= WORTH_SHOWING)
                table.row(
                        w.cause().words(),
                        Shown.percent(w.probability()),
                        misfit(w),
                        w.explanation().words());
        page.part("Weighed against all readings").table(table);
        diagnosis.first().speaks().ifPresent(s -> page.text(speaks(s)));
        diagnosis.next().ifPresent(c -> next(page, c));
        if (!diagnosis.notes().isEmpty()) page.part("To know").list(diagnosis.notes());
        page.text(
                "Misfit: mean square of the readings' residuals in standard errors of meter and model; about 1 is what to"
                        + " expect. The probabilities hold among these causes alone; half of it is given to the house as drawn"
                        + " beforehand (an assumption).");
        page.part(Page.SIGN);
        if (checklist) checklist(page);
        return page.cautioned();
    }

    private String answer() {
        Diagnosis.Weighed first = diagnosis.first();
        return switch (diagnosis.answer()) {
            case TOLD ->
                "Most likely: " + first.cause().words() + " (" + Shown.percent(first.probability()) + "). "
                        + capital(first.explanation().words()) + ": "
                        + first.cause().sign() + ".";
            case AS_DRAWN ->
                "The house as drawn explains the readings. A cause too weak to show in them is not excluded.";
            case CANNOT_TELL ->
                "Can't tell: no cause reaches " + Shown.percent(Diagnoser.TOLD)
                        + ", or none fits. Do the next check before anything is built on this.";
        };
    }

    private static String misfit(Diagnosis.Weighed w) {
        return Shown.plain(w.fitted().chiSquare() / w.fitted().observations().size(), 1);
    }

    private String speaks(Diagnosis.Speaks s) {
        Observation o = s.observation();
        boolean flow = o.what() == Observation.What.FLOW;
        return "What speaks most for it: " + o.what().words() + " at \"" + o.place() + "\" in stage \"" + o.stage()
                + "\", "
                + amount(o.measured(), flow) + " read, " + amount(s.explained(), flow) + " with the cause, "
                + amount(s.drawn(), flow) + " at best without it.";
    }

    private void next(Page page, NextCheck c) {
        if (!c.worthDoing()) {
            page.part("Next check").text("None of those tried would tell the first two apart.");
            return;
        }
        page.part(c.clear() ? "Next check" : "No single check would tell the first two apart; the best one")
                .text(c.words() + " " + capital(c.reading()) + ": " + amount(c.first(), c.flow()) + " if it is "
                        + diagnosis.causes().get(0).cause().words() + ", " + amount(c.second(), c.flow()) + " if it is "
                        + diagnosis.causes().get(1).cause().words() + " (" + Shown.plain(c.separation(), 1)
                        + " standard errors apart).");
    }

    private static void checklist(Page page) {
        page.part("What cannot be weighed");
        for (Checklist row : Checklist.all())
            page.text((row.stop() ? "STOP. " : "") + row.pattern())
                    .text("    " + row.cause() + " " + row.check() + " (" + row.reason() + ")");
    }

    private String amount(double value, boolean flow) {
        return flow ? shown.flowText(value) : shown.pressureText(value);
    }

    private static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
