package slabfield.io;

import java.util.regex.Pattern;

/**
 * A user's text as one cell of a table in CSV, after RFC 4180: between quotes where it holds a separator, a quote or a line
 * end.
 *
 * <p>A spreadsheet takes a cell that begins with =, +, -, @, a tab or a line end for a formula and runs it. Such a text
 * gets an apostrophe in front, which spreadsheets show as plain text, unless it is a number. Common practice.
 */
public final class CsvCell {
    private static final Pattern FORMULA =
            Pattern.compile("(?s)\\s*[=+\\-@\uff1d\uff0b\uff0d\uff20].*|(?s)[\\t\\r\\n].*");
    private static final Pattern NUMBER = Pattern.compile("[+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d{1,3})?");
    private static final Pattern NEEDS_QUOTES = Pattern.compile("(?s).*[,;\"\\r\\n\\t].*|\\s.*|.*\\s");

    private CsvCell() {}

    /** The cell as it stands in the file. */
    public static String of(String text) {
        boolean formula =
                FORMULA.matcher(text).matches() && !NUMBER.matcher(text).matches();
        String plain = formula ? "'" + text : text;
        return NEEDS_QUOTES.matcher(plain).matches() ? '"' + plain.replace("\"", "\"\"") + '"' : plain;
    }
}
