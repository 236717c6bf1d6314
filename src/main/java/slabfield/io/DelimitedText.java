package slabfield.io;

import java.util.ArrayList;
import java.util.List;

/**
 * A table in text after RFC 4180, with commas, semicolons or tabs between its cells, as programs save tables and as a
 * spreadsheet puts them on the clipboard.
 *
 * @param separator between cells
 * @param rows that hold anything, in order
 */
record DelimitedText(char separator, List<Row> rows) {
    /** One row, and the line of the text on which it begins, from 1. */
    record Row(int line, List<String> cells) {}

    /** Reads a text. A quote that is never closed runs to the end. */
    static DelimitedText read(String text) {
        String plain = text.replace("\ufeff", "");
        char separator =
                separator(plain.lines().filter(l -> !l.isBlank()).findFirst().orElse(""));
        List<Row> rows = new ArrayList<>();
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        int line = 1, began = 1;
        for (int i = 0; i <= plain.length(); i++) {
            char c = i < plain.length() ? plain.charAt(i) : '\n';
            if (quoted && c == '"' && i + 1 < plain.length() && plain.charAt(i + 1) == '"') {
                cell.append('"');
                i++;
            } else if (c == '"' && (quoted || cell.toString().isBlank())) {
                quoted = !quoted;
                if (quoted) cell.setLength(0);
            } else if (i < plain.length() && (quoted || c != separator && c != '\n')) {
                if (c != '\r' || quoted) cell.append(c);
            } else {
                cells.add(cell.toString().strip());
                cell.setLength(0);
                if (c != separator) {
                    if (cells.stream().anyMatch(s -> !s.isEmpty())) rows.add(new Row(began, List.copyOf(cells)));
                    cells.clear();
                    began = line + 1;
                }
            }
            if (c == '\n') line++;
        }
        return new DelimitedText(separator, rows);
    }

    private static char separator(String heading) {
        return heading.indexOf('\t') >= 0 ? '\t' : heading.indexOf(';') >= 0 ? ';' : ',';
    }
}
