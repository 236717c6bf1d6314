package slabfield.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** A table in plain characters: aligned columns, no wider than a page; where it would be, the words are broken. */
final class Table {
    /** Most characters on a line. */
    static final int WIDTH = 100;

    private static final String GAP = "  ";
    private static final int NARROWEST = 8;

    private final List<Column> columns;
    private final List<List<String>> rows = new ArrayList<>();

    /** A column with its heading; numbers stand to the right. */
    record Column(String head, boolean number) {}

    Table(Column... columns) {
        this.columns = List.of(columns);
    }

    static Column words(String head) {
        return new Column(head, false);
    }

    static Column number(String head) {
        return new Column(head, true);
    }

    /** Adds a row with one cell for each column. */
    Table row(String... cells) {
        if (cells.length != columns.size())
            throw new IllegalArgumentException(cells.length + " cells for " + columns.size() + " columns");
        rows.add(Arrays.stream(cells).map(Table::plain).toList());
        return this;
    }

    /** Heading, rule and rows, without line ends. */
    List<String> lines() {
        int[] widths = widths();
        List<String> out =
                new ArrayList<>(broken(columns.stream().map(Column::head).toList(), widths));
        out.add(String.join(GAP, Arrays.stream(widths).mapToObj("-"::repeat).toList()));
        rows.forEach(row -> out.addAll(broken(row, widths)));
        return out;
    }

    private int[] widths() {
        int[] widths = IntStream.range(0, columns.size()).map(this::widest).toArray();
        for (int over = total(widths) - WIDTH; over > 0; over--) {
            int shrunk = IntStream.range(0, widths.length)
                    .filter(i -> !columns.get(i).number() && widths[i] > NARROWEST)
                    .reduce(-1, (a, b) -> a < 0 || widths[b] > widths[a] ? b : a);
            if (shrunk < 0) break;
            widths[shrunk]--;
        }
        return widths;
    }

    private int widest(int column) {
        int head = length(columns.get(column).head());
        return rows.stream().mapToInt(row -> length(row.get(column))).reduce(head, Math::max);
    }

    private static int total(int[] widths) {
        return Arrays.stream(widths).sum() + GAP.length() * (widths.length - 1);
    }

    private List<String> broken(List<String> cells, int[] widths) {
        List<List<String>> parts = IntStream.range(0, widths.length)
                .mapToObj(i -> wrap(cells.get(i), widths[i]))
                .toList();
        int height = parts.stream().mapToInt(List::size).max().orElse(1);
        List<String> out = new ArrayList<>();
        for (int line = 0; line < height; line++) {
            List<String> padded = new ArrayList<>();
            for (int i = 0; i < widths.length; i++) {
                String part = line < parts.get(i).size() ? parts.get(i).get(line) : "";
                String space = " ".repeat(Math.max(0, widths[i] - length(part)));
                padded.add(columns.get(i).number() ? space + part : part + space);
            }
            out.add(String.join(GAP, padded).stripTrailing());
        }
        return out;
    }

    /** Text in lines of at most a width, broken at spaces, and within a word only where it alone is wider. */
    static List<String> wrap(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : plain(text).strip().split(" +")) {
            if (!line.isEmpty() && length(line.toString()) + 1 + length(word) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            if (!line.isEmpty()) line.append(' ');
            String rest = word;
            while (length(rest) > width) {
                int cut = rest.offsetByCodePoints(0, width);
                lines.add(rest.substring(0, cut));
                rest = rest.substring(cut);
            }
            line.append(rest);
        }
        lines.add(line.toString());
        return lines;
    }

    /** Text without characters that would steer a terminal. */
    static String plain(String text) {
        return text.replaceAll("[\\n\\r\\t]+", " ").replaceAll("\\p{Cc}", "?");
    }

    private static int length(String text) {
        return text.codePointCount(0, text.length());
    }
}
