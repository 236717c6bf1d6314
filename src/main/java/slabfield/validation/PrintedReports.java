package slabfield.validation;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The index and the reports that came with this copy of the program, as the last run of the cases wrote them. */
public final class PrintedReports {
    private static final String FOLDER = "/slabfield/validation/";
    private static final Pattern LINK = Pattern.compile("\\[(.+)]\\((.+)\\)");
    private static final Pattern STRONG = Pattern.compile("\\*\\*(.+?)\\*\\*");
    private static final int INDEX_COLUMNS = 7;
    private static final int CLAIM_COLUMNS = 8;

    private PrintedReports() {}

    /**
     * The index.
     *
     * @param summary how many cases and numbers there are and how many are green
     * @param cases in the index's order
     */
    public record Index(String summary, List<Line> cases) {}

    /**
     * A line of the index, in its words.
     *
     * @param report name of the report for {@link #report}
     * @param worst largest error in parts of its tolerance
     */
    public record Line(
            String title,
            String report,
            String kind,
            String verdict,
            String worst,
            String source,
            String control,
            String covers) {
        public boolean isGreen() {
            return verdict.equals(Outcome.Verdict.GREEN.word());
        }
    }

    /**
     * A report.
     *
     * @param question asked
     * @param missed why it is missed; empty where it is not
     * @param claims its numbers
     * @param doesNotShow what it leaves open
     */
    public record Report(String question, Optional<String> missed, List<ClaimLine> claims, String doesNotShow) {}

    /** A number of a report, in its words. */
    public record ClaimLine(
            String name, String unit, String source, String ours, String error, String tolerance, String verdict) {
        public boolean agrees() {
            return verdict.equals("agrees");
        }
    }

    /** The index that came with the program. */
    public static Index index() {
        return index(resource("README.md"));
    }

    /** The report that a line of the index names. */
    public static Report report(Line line) {
        return report(resource(line.report()));
    }

    static Index index(String text) {
        String summary = text.lines()
                .filter(l -> l.startsWith("Written by"))
                .findFirst()
                .map(l -> l.substring(l.indexOf("do not edit.") + "do not edit.".length())
                        .strip())
                .orElse("");
        List<Line> lines = new ArrayList<>();
        for (List<String> c : rows(text, INDEX_COLUMNS)) {
            Matcher link = LINK.matcher(c.get(0));
            if (link.matches())
                lines.add(new Line(
                        link.group(1), link.group(2), c.get(1), c.get(2), c.get(3), c.get(4), c.get(5), c.get(6)));
        }
        return new Index(summary, List.copyOf(lines));
    }

    static Report report(String text) {
        List<ClaimLine> claims = rows(text, CLAIM_COLUMNS).stream()
                .map(c -> new ClaimLine(c.get(0), c.get(1), c.get(2), c.get(3), c.get(4), c.get(5), plain(c.get(6))))
                .toList();
        int shows = text.indexOf("## What this does not show");
        return new Report(
                paragraph(text, "**Question.**").orElse(""),
                paragraph(text, "**Missed, and known to be:**").or(() -> paragraph(text, "**Cannot be run:**")),
                claims,
                shows < 0 ? "" : text.substring(text.indexOf('\n', shows)).strip());
    }

    private static Optional<String> paragraph(String text, String start) {
        return text.lines()
                .filter(l -> l.startsWith(start))
                .findFirst()
                .map(l -> l.substring(start.length()).strip());
    }

    /** Cells of the first table with that many columns, without its head. */
    private static List<List<String>> rows(String text, int columns) {
        return text.lines()
                .filter(l -> l.startsWith("| ") && l.endsWith(" |"))
                .map(l -> Arrays.stream(l.substring(1, l.length() - 1).split("(?<= )\\|(?= )", -1))
                        .map(String::strip)
                        .toList())
                .filter(cells -> cells.size() == columns && !cells.get(0).equals("---"))
                .skip(1)
                .toList();
    }

    private static String plain(String cell) {
        return STRONG.matcher(cell).replaceAll("$1");
    }

    private static String resource(String name) {
        try (InputStream in = PrintedReports.class.getResourceAsStream(FOLDER + name)) {
            if (in == null) throw new IllegalStateException(FOLDER + name + " is missing from the program");
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
