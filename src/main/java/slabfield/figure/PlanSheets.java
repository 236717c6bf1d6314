package slabfield.figure;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import slabfield.model.Scenario;

/**
 * The house as drawn, true to scale, on as many sheets as it takes. Neighbouring sheets overlap and carry the same match line
 * with the same crosses; every sheet has a ruler to check the printer by. A last sheet lists where things stand, by two tapes.
 *
 * @param tape writes a length as people read it off a tape
 * @param pipes one line of text for each run of pipe, whose route is not drawn
 */
public record PlanSheets(
        Scenario scenario,
        PlanScale scale,
        Paper paper,
        UnitsShown units,
        DoubleFunction<String> tape,
        List<String> pipes) {
    private static final double MARGIN = 10 * Paper.MILLIMETRE;
    private static final double STRIP = 26 * Paper.MILLIMETRE;
    /** Paper that two neighbouring sheets both show on each side of their match line. */
    private static final double OVERLAP = 6 * Paper.MILLIMETRE;
    /** Room around the house for names of corners and lengths of walls. */
    private static final double AROUND = 12 * Paper.MILLIMETRE;

    /** One sheet: its row and column from the upper left, and how it sees the plan. */
    record Tile(int row, int column, PlanView view, Box room) {
        String name() {
            return TapeDistances.letters(row) + (column + 1);
        }
    }

    /** The part of a sheet that shows the plan. */
    private Box room() {
        return new Box(MARGIN, MARGIN, paper.width() - MARGIN, paper.height() - MARGIN - STRIP);
    }

    private double stepX() {
        return room().width() - 2 * OVERLAP;
    }

    private double stepY() {
        return room().height() - 2 * OVERLAP;
    }

    private static int count(double needed, double room, double step) {
        return needed <= room ? 1 : (int) Math.ceil(needed / step - 1e-9);
    }

    int columns() {
        return count(Bounds.of(scenario).width() * scale.pointsPerMetre() + 2 * AROUND, room().width(), stepX());
    }

    int rows() {
        return count(Bounds.of(scenario).height() * scale.pointsPerMetre() + 2 * AROUND, room().height(), stepY());
    }

    /** All sheets of the plan, row by row; with one alone the house stands in its middle. */
    List<Tile> tiles() {
        Bounds all = Bounds.of(scenario);
        double s = scale.pointsPerMetre();
        Box room = room();
        double wide = columns() == 1 ? room.width() : columns() * stepX(),
                high = rows() == 1 ? room.height() : rows() * stepY();
        double left = (wide - all.width() * s) / 2, top = (high - all.height() * s) / 2;
        List<Tile> out = new ArrayList<>();
        for (int row = 0; row < rows(); row++)
            for (int column = 0; column < columns(); column++) {
                double x = room.left() + (columns() == 1 ? 0 : OVERLAP) + left - column * stepX();
                double y = room.top() + (rows() == 1 ? 0 : OVERLAP) + top - row * stepY();
                out.add(new Tile(row, column, new PlanView(s, x - all.left() * s, y + all.top() * s), room));
            }
        return out;
    }

    /** The sheets as a PDF. */
    public byte[] pdf() {
        try (PDDocument document = new PDDocument()) {
            PdfFile.describe(document, "Plan: " + scenario.name(), "Plan to scale, " + scale.words());
            PdfLetters letters = new PdfLetters(document);
            List<Tile> tiles = tiles();
            int last = tiles.size() + 1;
            for (int i = 0; i < tiles.size(); i++) {
                Tile tile = tiles.get(i);
                int number = i + 1;
                sheet(document, letters, canvas -> {
                    new ScaledPlan(canvas, this, tile).draw();
                    foot(canvas, "sheet " + tile.name() + ", " + number + " of " + last);
                });
            }
            sheet(document, letters, canvas -> {
                new PlaceList(canvas, this, room()).draw();
                foot(canvas, "list of places, " + last + " of " + last);
            });
            return PdfFile.bytes(document);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private interface Drawing {
        void on(Canvas canvas);
    }

    private void sheet(PDDocument document, PdfLetters letters, Drawing drawing) throws IOException {
        PDPage page = new PDPage(new PDRectangle((float) paper.width(), (float) paper.height()));
        document.addPage(page);
        try (PDPageContentStream content = new PDPageContentStream(document, page)) {
            drawing.on(new PdfCanvas(letters, content, paper.height(), new Box(0, 0, paper.width(), paper.height())));
        }
    }

    private boolean imperial() {
        return scale == PlanScale.QUARTER_INCH || scale == PlanScale.EIGHTH_INCH;
    }

    /** Title, scale and check ruler below the plan. */
    private void foot(Canvas canvas, String sheet) {
        Ink ink = new Ink(1);
        double top = paper.height() - MARGIN - STRIP + 5 * Paper.MILLIMETRE,
                left = MARGIN,
                right = paper.width() - MARGIN;
        canvas.line(new double[] {left, top, right, top}, false, ink.solid(Ink.DARK, 0.8));
        var large = new Canvas.Lettering(11, true, Ink.DARK, 0);
        double half = right - left - 130 * Paper.MILLIMETRE;
        canvas.text(Words.cut(canvas, scenario.name(), half, large), left, top + 14, Canvas.Anchor.START, 0, large);
        canvas.text(
                "Scale " + scale.words() + ", " + paper.words() + ", " + sheet,
                left,
                top + 27,
                Canvas.Anchor.START,
                0,
                ink.bold(Ink.DARK));
        double y = top + 28;
        for (String line : Words.wrap(
                canvas,
                "Print at 100 %, without \"fit to page\", and check the ruler before you measure. As drawn by"
                        + " the user, not surveyed. Locate utilities before you drill; drawings may be wrong.",
                half,
                ink.fine(Ink.SOFT))) canvas.text(line, left, y += 9.5, Canvas.Anchor.START, 0, ink.fine(Ink.SOFT));
        ruler(canvas, right, top + 22, ink);
    }

    /** 100 mm, or 4 in where the scale is in inches, by tens of a millimetre or by halves of an inch. */
    private void ruler(Canvas canvas, double right, double y, Ink ink) {
        double unit = imperial() ? 36 : 10 * Paper.MILLIMETRE, length = imperial() ? 4 * 72 : 100 * Paper.MILLIMETRE;
        double left = right - length - 6 * Paper.MILLIMETRE;
        canvas.line(new double[] {left, y, left + length, y}, false, ink.solid(Ink.DARK, 1));
        for (int i = 0; i * unit <= length + 1e-6; i++) {
            double x = left + i * unit, up = imperial() && i % 2 == 1 ? 5 : 8;
            canvas.line(new double[] {x, y, x, y - up}, false, ink.solid(Ink.DARK, 0.8));
            String text = imperial() ? i % 2 == 0 ? String.valueOf(i / 2) : "" : String.valueOf(10 * i);
            canvas.text(text, x, y - 10, Canvas.Anchor.MIDDLE, 0, ink.fine(Ink.DARK));
        }
        String name = imperial() ? "check ruler: 4 in on paper" : "check ruler: 100 mm on paper";
        canvas.text(name, left + length / 2, y + 11, Canvas.Anchor.MIDDLE, 0, ink.fine(Ink.DARK));
    }
}
