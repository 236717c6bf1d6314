package slabfield.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import slabfield.figure.Canvas;
import slabfield.figure.Canvas.Anchor;
import slabfield.figure.Canvas.Lettering;
import slabfield.figure.Canvas.Pen;
import slabfield.figure.Figures;
import slabfield.figure.Words;

/** Lays blocks on pages, from the top down; a block that does not fit begins the next page, a table goes on there. */
final class Layout {
    static final int DARK = 0xFF18222E;
    static final int SOFT = 0xFF56616D;
    private static final double BODY = 9.2;
    private static final double SMALL = 7.8;
    private static final double STEP = 1.38;
    private static final double PAD = 3;

    /**
     * Something drawn, at a place of a page's text area that is known.
     *
     * @param own whether it is drawn on a canvas of its own, as wide as the text and from its top down, and not on the page's
     */
    record Piece(Tag tag, double top, double height, boolean own, Consumer<Canvas> drawing) {}

    /** A heading that a bookmark leads to. */
    record Mark(int level, String text, int page, double top) {}

    private final double width;
    private final double height;
    private final Canvas measure = Figures.scrap();
    private final List<List<Piece>> pages = new ArrayList<>();
    private final List<Mark> marks = new ArrayList<>();
    private double y;

    /**
     * @param width of the text area [points]
     * @param height of the text area [points]
     */
    Layout(double width, double height) {
        this.width = width;
        this.height = height;
    }

    List<List<Piece>> pages() {
        return pages;
    }

    List<Mark> marks() {
        return marks;
    }

    void add(List<Block> blocks) {
        for (int i = 0; i < blocks.size(); i++) {
            if (blocks.get(i) instanceof Block.Heading && i + 1 < blocks.size()) keepWith(blocks.get(i + 1));
            add(blocks.get(i));
        }
    }

    /** A heading moves to the next page where what follows would not begin below it. */
    private void keepWith(Block next) {
        double least = next instanceof Block.Picture p ? pictureHeight(p) + 20 : next instanceof Block.Table ? 90 : 60;
        if (!pages.isEmpty() && y + 28 + least > height) newPage();
    }

    private void add(Block block) {
        if (block instanceof Block.Title title) title(title);
        else if (block instanceof Block.Heading h) heading(h);
        else if (block instanceof Block.Paragraph p)
            paragraph(Tag.of("P"), p.text(), p.small() ? SMALL : BODY, p.small() ? SOFT : DARK, 0, 5);
        else if (block instanceof Block.Large l) paragraph(Tag.of("P"), l.text(), 11, DARK, 0, 6);
        else if (block instanceof Block.Notice n) notice(n);
        else if (block instanceof Block.Bullets b) bullets(b);
        else if (block instanceof Block.Fields f) fields(f);
        else if (block instanceof Block.Table t) table(t);
        else if (block instanceof Block.Picture p) picture(p);
    }

    private void newPage() {
        pages.add(new ArrayList<>());
        y = 0;
    }

    /** Room for something so high, on this page or the next. */
    private void need(double room) {
        if (pages.isEmpty() || y + room > height && y > 0) newPage();
    }

    private void put(Tag tag, double room, Consumer<Canvas> drawing) {
        pages.get(pages.size() - 1).add(new Piece(tag, y, room, false, drawing));
    }

    private void title(Block.Title title) {
        newPage();
        var large = new Lettering(19, true, DARK, 0);
        marks.add(new Mark(0, title.text(), pages.size() - 1, 0));
        double at = y + 16;
        put(Tag.of("H1"), 20, c -> c.text(title.text(), 0, at, Anchor.START, 0, large));
        y += 24;
        paragraph(Tag.of("P"), title.below(), 10, SOFT, 0, 4);
        double rule = y;
        put(Tag.of("Artifact"), 1, c -> c.line(new double[] {0, rule, width, rule}, false, Pen.solid(DARK, 1.4)));
        y += 10;
    }

    private void heading(Block.Heading h) {
        double size = h.level() == 1 ? 12.5 : 10;
        y += h.level() == 1 ? 9 : 5;
        need(size * STEP + 12);
        marks.add(new Mark(h.level(), h.text(), pages.size() - 1, y));
        double at = y + size;
        put(
                Tag.of("H" + (h.level() + 1)),
                size * STEP,
                c -> c.text(h.text(), 0, at, Anchor.START, 0, new Lettering(size, true, DARK, 0)));
        y += size * STEP + 2;
    }

    private void paragraph(Tag tag, String text, double size, int colour, double indent, double after) {
        var lettering = new Lettering(size, false, colour, 0);
        for (String line : lines(text, width - indent, lettering)) {
            need(size * STEP);
            double at = y + size;
            put(tag, size * STEP, c -> c.text(line, indent, at, Anchor.START, 0, lettering));
            y += size * STEP;
        }
        y += after;
    }

    /** Lines that fit; a word that is wider than a line is broken. */
    private List<String> lines(String text, double room, Lettering lettering) {
        StringBuilder broken = new StringBuilder();
        for (String word : text.split(" ")) {
            String rest = word;
            while (rest.length() > 1 && measure.textWidth(rest, lettering) > room) {
                int n = rest.length() - 1;
                while (n > 1 && measure.textWidth(rest.substring(0, n), lettering) > room) n--;
                broken.append(rest, 0, n).append(' ');
                rest = rest.substring(n);
            }
            broken.append(rest).append(' ');
        }
        return Words.wrap(measure, broken.toString(), room, lettering);
    }

    private void notice(Block.Notice notice) {
        var lettering = new Lettering(BODY, true, DARK, 0);
        List<String> lines = lines(notice.text(), width - 20, lettering);
        double tall = lines.size() * BODY * STEP + 9;
        need(tall + 6);
        double top = y;
        put(Tag.of("P"), tall, c -> {
            c.line(
                    new double[] {0.6, top, width - 0.6, top, width - 0.6, top + tall, 0.6, top + tall},
                    true,
                    Pen.solid(DARK, 1));
            c.fill(List.of(new double[] {0, top, 4, top, 4, top + tall, 0, top + tall}), DARK);
            for (int i = 0; i < lines.size(); i++)
                c.text(lines.get(i), 12, top + 3 + BODY + i * BODY * STEP, Anchor.START, 0, lettering);
        });
        y += tall + 7;
    }

    private void bullets(Block.Bullets bullets) {
        Tag list = Tag.of("L");
        for (String item : bullets.items()) {
            Tag body = list.child("LI").child("LBody");
            need(BODY * STEP);
            double dot = y + 0.62 * BODY;
            put(
                    body,
                    1,
                    c -> c.fill(
                            List.of(new double[] {2, dot - 1.3, 4.6, dot - 1.3, 4.6, dot + 1.3, 2, dot + 1.3}), DARK));
            paragraph(body, item, BODY, DARK, 11, 1.5);
        }
        y += 4;
    }

    private void fields(Block.Fields block) {
        List<List<String>> rows =
                block.fields().stream().map(f -> List.of(f.label(), f.value())).toList();
        rows(Tag.of("Table"), rows, new double[] {0.34 * width, 0.66 * width}, List.of(false, false), true);
        y += 6;
    }

    private void table(Block.Table table) {
        double sum = table.widths().stream().mapToDouble(Double::doubleValue).sum();
        double[] widths =
                table.widths().stream().mapToDouble(w -> w / sum * width).toArray();
        if (!table.name().isEmpty()) {
            need(4 * BODY * STEP);
            double at = y + BODY;
            put(
                    Tag.of("P"),
                    BODY * STEP,
                    c -> c.text(table.name(), 0, at, Anchor.START, 0, new Lettering(BODY, true, DARK, 0)));
            y += BODY * STEP + 1;
        }
        Tag tag = Tag.of("Table");
        double headTall = rowHeight(table.heads(), widths, new Lettering(SMALL, true, DARK, 0));
        need(headTall + 2 * SMALL * STEP + 8);
        head(tag, table, widths, headTall);
        for (List<String> row : table.rows()) {
            double tall = rowHeight(row, widths, new Lettering(BODY, false, DARK, 0));
            if (y + tall > height && y > 0) {
                newPage();
                head(tag, table, widths, headTall);
            }
            row(tag.child("TR"), "TD", row, widths, table.numbers(), tall, new Lettering(BODY, false, DARK, 0));
            rule(0.3);
        }
        y += 7;
    }

    private void head(Tag table, Block.Table block, double[] widths, double tall) {
        double top = y;
        put(
                Tag.of("Artifact"),
                tall,
                c -> c.fill(List.of(new double[] {0, top, width, top, width, top + tall, 0, top + tall}), 0xFFE9ECEF));
        row(table.child("TR"), "TH", block.heads(), widths, block.numbers(), tall, new Lettering(SMALL, true, DARK, 0));
        rule(0.9);
    }

    private void rule(double thick) {
        double at = y;
        put(Tag.of("Artifact"), 1, c -> c.line(new double[] {0, at, width, at}, false, Pen.solid(0xFF8A9199, thick)));
    }

    private void rows(Tag table, List<List<String>> rows, double[] widths, List<Boolean> numbers, boolean firstIsHead) {
        for (List<String> row : rows) {
            var lettering = new Lettering(BODY, false, DARK, 0);
            double tall = rowHeight(row, widths, lettering);
            need(tall);
            Tag line = table.child("TR");
            double left = 0;
            for (int i = 0; i < row.size(); i++) {
                boolean head = firstIsHead && i == 0;
                cell(
                        line.child(head ? "TH" : "TD"),
                        row.get(i),
                        left,
                        widths[i],
                        numbers.get(i),
                        tall,
                        new Lettering(BODY, false, head ? SOFT : DARK, 0));
                left += widths[i];
            }
            y += tall;
            rule(0.25);
        }
    }

    private void row(
            Tag line,
            String type,
            List<String> cells,
            double[] widths,
            List<Boolean> numbers,
            double tall,
            Lettering lettering) {
        double left = 0;
        for (int i = 0; i < cells.size(); i++) {
            cell(line.child(type), cells.get(i), left, widths[i], numbers.get(i), tall, lettering);
            left += widths[i];
        }
        y += tall;
    }

    private void cell(
            Tag tag, String text, double left, double wide, boolean number, double tall, Lettering lettering) {
        double top = y;
        List<String> lines = lines(text, wide - 2 * PAD, lettering);
        put(tag, tall, c -> {
            for (int i = 0; i < lines.size(); i++) {
                double at = top + 2 + lettering.size() + i * lettering.size() * STEP;
                if (number) c.text(lines.get(i), left + wide - PAD, at, Anchor.END, 0, lettering);
                else c.text(lines.get(i), left + PAD, at, Anchor.START, 0, lettering);
            }
        });
    }

    private double rowHeight(List<String> cells, double[] widths, Lettering lettering) {
        int most = 1;
        for (int i = 0; i < cells.size(); i++)
            most = Math.max(
                    most, lines(cells.get(i), widths[i] - 2 * PAD, lettering).size());
        return most * lettering.size() * STEP + 3;
    }

    private double pictureHeight(Block.Picture picture) {
        return Math.min(picture.figure().height(measure, width), height);
    }

    private void picture(Block.Picture picture) {
        double tall = pictureHeight(picture);
        need(tall);
        pages.get(pages.size() - 1)
                .add(new Piece(Tag.figure(picture.figure().description()), y, tall, true, picture.figure()::draw));
        y += tall + 6;
    }

    /** How far down the last page is filled [points]. */
    double bottom() {
        return y;
    }
}
