package slabfield.cli;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import slabfield.safety.DraftStep;
import slabfield.safety.DraftTest;
import slabfield.safety.Gate;
import slabfield.safety.JobRecord;

/** A job record as text. */
final class ChecklistPage {
    private final JobRecord record;
    private final Shown shown;

    ChecklistPage(JobRecord record, Shown shown) {
        this.record = record;
        this.shown = shown;
    }

    String text() {
        Page page = new Page().title(record.scenario());
        page.value("Record", record.completed().map(t -> "marked complete " + t).orElse("open"));
        List<String> start = record.openBeforeStartUp();
        page.value(
                "Fan",
                start.isEmpty()
                        ? record.startUp().map(t -> "started " + t).orElse("not started")
                        : record.startUp().isPresent() ? "must be off" : "start blocked");
        page.value(
                "Radon test",
                record.earliestRadonTest().map(t -> "not before " + t).orElse("not before 24 h after start-up")
                        + ", house shut from 12 h before; again at least every two years and after changes");
        page.list(start);
        gates(page);
        if (!record.draftTests().isEmpty()) drafts(page);
        else steps(page);
        notices(page);
        List<String> open = record.openBeforeCompletion();
        page.part(open.isEmpty() ? "Nothing is open in this record" : "Open before the record can be complete")
                .list(open);
        return page.cautioned();
    }

    private void gates(Page page) {
        Table table = new Table(
                Table.words("gate"), Table.words("answer"), Table.words("\"yes\" says"), Table.words("by, when, note"));
        for (Gate gate : Gate.values())
            if (gate.mustBeAnswered())
                table.row(
                        gate.word(),
                        record.answer(gate).map(a -> a.answer().word()).orElse("unanswered"),
                        gate.question(),
                        record.answer(gate)
                                .map(a -> (a.by() + " " + a.time() + " " + a.note()).strip())
                                .orElse("-"));
        page.part("Gates").table(table);
    }

    private void drafts(Page page) {
        Table table = new Table(
                Table.words("appliance"),
                Table.words("radon fan"),
                Table.words("outcome"),
                Table.number("house, " + shown.pressureUnit().symbol()),
                Table.number("draft"),
                Table.number("spillage, s"),
                Table.number("CO, ppm"),
                Table.words("when, by"));
        for (DraftTest t : record.draftTests())
            table.row(
                    t.appliance(),
                    t.fanRunning() ? "running" : "off",
                    t.outcome().word(),
                    shown.pressure(t.housePressure()),
                    shown.pressure(t.draft()),
                    number(t.spillage()),
                    number(t.carbonMonoxide()),
                    (t.time() + " " + t.by()).strip());
        page.part("Draft tests under worst-case exhaust").table(table);
        DraftTest last = record.draftTests().get(record.draftTests().size() - 1);
        if (!last.open().isEmpty())
            page.text("Steps of the last that are not answered with yes: "
                    + String.join(
                            ", ", last.open().stream().map(DraftStep::word).toList()) + ".");
    }

    private static String number(OptionalDouble value) {
        return Shown.plain(value.orElse(Double.NaN), 0);
    }

    private static void steps(Page page) {
        page.part("Draft test under worst-case exhaust: none is recorded. Its steps:");
        page.list(Arrays.stream(DraftStep.values())
                .map(s -> s.word() + ": " + s.text())
                .toList());
    }

    private void notices(Page page) {
        page.part("Notices");
        page.list(Arrays.stream(Gate.values())
                .filter(g -> !g.mustBeAnswered())
                .map(g -> g.word() + ": " + g.question()
                        + record.answer(g)
                                .map(a -> " (" + a.answer().word() + ")")
                                .orElse(""))
                .toList());
    }
}
