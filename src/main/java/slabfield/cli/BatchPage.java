package slabfield.cli;

import java.util.ArrayList;
import java.util.List;
import slabfield.io.BatchFile.Row;
import slabfield.io.BatchFile.Status;

/** The summary of a batch, as text. */
final class BatchPage {
    private final List<Row> rows;
    private final long kept;

    BatchPage(List<Row> rows, long kept) {
        this.rows = rows;
        this.kept = kept;
    }

    String text() {
        Page page = new Page().title("Batch of " + rows.size() + (rows.size() == 1 ? " house" : " houses"));
        page.value("Done now", String.valueOf(rows.size() - kept));
        page.value("Kept from before", String.valueOf(kept));
        Table table = new Table(
                Table.words("house"),
                Table.words("status"),
                Table.number("weakest vacuum, Pa"),
                Table.number("area that meets"),
                Table.number("exhaust, L/s"),
                Table.number("holes that meet"));
        List<String> notes = new ArrayList<>();
        for (Row r : rows) {
            boolean solved = r.status() == Status.SOLVED;
            table.row(
                    r.name(),
                    r.status().words(),
                    Shown.plain(r.weakest(), 1),
                    Shown.percent(r.meeting()),
                    Shown.plain(1000 * r.exhaust(), 1),
                    solved ? r.holesMeeting() + " of " + r.holes() : "-");
            if (!r.reason().isEmpty())
                notes.add(r.name() + ": " + r.reason().lines().findFirst().orElse(""));
            if (!r.fit().isEmpty()) notes.add(r.name() + ": " + r.fit());
        }
        page.part("Predicted").table(table).list(notes);
        return page.cautioned();
    }
}
