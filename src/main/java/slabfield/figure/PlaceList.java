package slabfield.figure;

import java.util.ArrayList;
import java.util.List;
import slabfield.model.Scenario;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;

/** Where suction points and holes stand, by two tapes; the runs of pipe; what the signs mean. */
final class PlaceList {
    private static final double ROW = 12.5;

    private final Canvas canvas;
    private final PlanSheets sheets;
    private final Scenario scenario;
    private final Box room;
    private final Ink ink = new Ink(1);

    PlaceList(Canvas canvas, PlanSheets sheets, Box room) {
        this.canvas = canvas;
        this.sheets = sheets;
        this.scenario = sheets.scenario();
        this.room = room;
    }

    void draw() {
        TapeDistances tapes = new TapeDistances(scenario);
        double[] columns = {0, 92, 170, 248};
        double y = room.top() + 12;
        canvas.text(
                "Places by two tapes from the corners A, B ... of the plan",
                room.left(),
                y,
                Canvas.Anchor.START,
                0,
                new Canvas.Lettering(11, true, Ink.DARK, 0));
        y += 18;
        row(columns, y, true, "what", "first corner", "second corner", "found below");
        List<String[]> rows = new ArrayList<>();
        for (SuctionPoint p : scenario.suctionPoints())
            rows.add(cells(
                    "suction point " + p.id(),
                    tapes.to(p.at()),
                    p.tile().map(t -> "teed into " + t).orElse("pit")));
        for (TestHole h : scenario.testHoles()) rows.add(cells("test hole " + h.id(), tapes.to(h.at()), h.found()));
        int most = (int) ((room.bottom() - y - 90) / ROW);
        for (String[] cells : rows.subList(0, Math.min(rows.size(), most))) row(columns, y += ROW, false, cells);
        if (rows.size() > most)
            row(columns, y += ROW, false, "and " + (rows.size() - most) + " more, in the CSV of places");
        y += 2 * ROW;
        canvas.text("Pipes, whose route is not drawn", room.left(), y, Canvas.Anchor.START, 0, ink.bold(Ink.DARK));
        List<String> runs = sheets.pipes().isEmpty() ? List.of("No pipe is given.") : sheets.pipes();
        for (String run : runs)
            for (String line : Words.wrap(canvas, run, room.width() * 0.6, ink.text(Ink.DARK)))
                if (y + ROW < room.bottom())
                    canvas.text(line, room.left(), y += ROW, Canvas.Anchor.START, 0, ink.text(Ink.DARK));
        key();
    }

    private String[] cells(String what, TapeDistances.Tape tape, String found) {
        return new String[] {
            what,
            tape.first().name() + "  " + sheets.tape().apply(tape.firstLength()),
            tape.second().name() + "  " + sheets.tape().apply(tape.secondLength()),
            found
        };
    }

    private void row(double[] columns, double y, boolean head, String... cells) {
        for (int i = 0; i < cells.length; i++) {
            double wide = i + 1 < columns.length ? columns[i + 1] - columns[i] - 6 : 0.62 * room.width() - columns[i];
            var lettering = head ? ink.bold(Ink.DARK) : ink.text(Ink.DARK);
            String text = cells.length == 1 ? cells[i] : Words.cut(canvas, cells[i], wide, lettering);
            canvas.text(text, room.left() + columns[i], y, Canvas.Anchor.START, 0, lettering);
        }
        canvas.line(
                new double[] {room.left(), y + 3.5, room.left() + 0.62 * room.width(), y + 3.5},
                false,
                ink.solid(Ink.NO_DATA, head ? 0.9 : 0.3));
    }

    private void key() {
        double left = room.left() + 0.66 * room.width();
        double[] y = {room.top() + 12};
        canvas.text("Signs", left, y[0], Canvas.Anchor.START, 0, new Canvas.Lettering(11, true, Ink.DARK, 0));
        new LegendKey(canvas, scenario.withStages(List.of()), false, "", ink).entries((sample, text) -> {
            y[0] += 17;
            sample.paint(left + 13, y[0] - 3, 13);
            canvas.text(
                    Words.cut(canvas, text, room.right() - left - 34, ink.fine(Ink.DARK)),
                    left + 34,
                    y[0],
                    Canvas.Anchor.START,
                    0,
                    ink.fine(Ink.DARK));
        });
    }
}
