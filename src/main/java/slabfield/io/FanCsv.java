package slabfield.io;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import slabfield.model.FanOffer;
import slabfield.model.ImpossibleValue;
import slabfield.model.Source;
import slabfield.quantity.Dimension;
import slabfield.quantity.NotAQuantity;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/**
 * Reads a fan curve from a table with a heading such as {@code flow cfm, rise inH2O, power W}; the power may be missing.
 * Columns stand between commas, or between semicolons where numbers have decimal commas.
 */
public final class FanCsv {
    private static final int LARGEST_FILE = 1024 * 1024;
    private static final int MOST_ROWS = 1000;
    private static final int LONGEST_HEADING = 200;
    private static final Pattern HEADING =
            Pattern.compile("(flow|rise|power)[\\s_\\[(]+([^\\])]+)[\\])]?", Pattern.CASE_INSENSITIVE);
    private static final Map<String, Dimension> COLUMNS =
            Map.of("flow", Dimension.FLOW, "rise", Dimension.PRESSURE, "power", Dimension.POWER);

    private FanCsv() {}

    /** One column: what it holds, and its unit. */
    private record Column(String name, Unit unit) {}

    /**
     * Reads a file; the fan has the file's name.
     *
     * @throws ScenarioProblems where it cannot be read or holds anything wrong
     */
    public static FanOffer read(Path file) throws ScenarioProblems {
        try {
            if (Files.size(file) > LARGEST_FILE) throw new IOException();
            return read(
                    Files.readString(file),
                    file.toString(),
                    file.getFileName().toString().replaceAll("(?i)\\.csv$", ""));
        } catch (IOException e) {
            throw new ScenarioProblems(
                    file.toString(),
                    List.of(new FileProblem(
                            file.toString(),
                            0,
                            "",
                            "the table cannot be read; check that it is there, is UTF-8 text and below 1 MB")));
        }
    }

    /**
     * Reads a table.
     *
     * @param name of the file, for messages
     * @param id of the fan
     */
    static FanOffer read(String text, String name, String id) throws ScenarioProblems {
        List<FileProblem> problems = new ArrayList<>();
        List<String> lines = text.lines().toList();
        String separator = !lines.isEmpty() && lines.get(0).contains(";") ? ";" : ",";
        List<Column> columns = heading(lines.isEmpty() ? "" : lines.get(0), separator, name, problems);
        Map<String, List<Double>> values = new LinkedHashMap<>();
        for (String column : COLUMNS.keySet()) values.put(column, new ArrayList<>());
        if (lines.size() > MOST_ROWS)
            problems.add(new FileProblem(
                    name, 0, "", "the table has more than " + MOST_ROWS + " rows, which no fan curve needs"));
        if (problems.isEmpty())
            for (int i = 1; i < lines.size(); i++)
                if (!lines.get(i).isBlank())
                    row(lines.get(i).split(separator, -1), i + 1, columns, values, name, problems);
        if (problems.isEmpty()) {
            try {
                return new FanOffer(
                        id,
                        new Source.FanCurve(values.get("flow"), values.get("rise")),
                        values.get("power"),
                        FanOffer.STANDARD_DENSITY,
                        OptionalDouble.empty(),
                        FanOffer.Arrangement.SINGLE,
                        false);
            } catch (ImpossibleValue e) {
                problems.add(new FileProblem(name, 0, "", "the curve " + e.reason()));
            }
        }
        throw new ScenarioProblems(name, problems);
    }

    private static List<Column> heading(String line, String separator, String name, List<FileProblem> problems) {
        List<Column> columns = new ArrayList<>();
        if (line.length() > LONGEST_HEADING) {
            problems.add(new FileProblem(
                    name, 1, "", "the first row is no heading; write for instance: flow cfm, rise inH2O, power W"));
            return columns;
        }
        for (String word : line.replace("\ufeff", "").split(separator, -1)) {
            Matcher parts = HEADING.matcher(word.strip());
            boolean known = parts.matches();
            Optional<Unit> unit = known
                    ? Unit.find(parts.group(2), COLUMNS.get(parts.group(1).toLowerCase(Locale.ROOT)))
                    : Optional.empty();
            if (unit.isPresent()) columns.add(new Column(parts.group(1).toLowerCase(Locale.ROOT), unit.get()));
            else
                problems.add(new FileProblem(
                        name,
                        1,
                        "",
                        "\"" + word.strip() + "\" is no heading; write for instance: flow cfm" + separator
                                + " rise inH2O" + separator + " power W"));
        }
        List<String> names = columns.stream().map(Column::name).toList();
        if (problems.isEmpty()
                && (!names.contains("flow")
                        || !names.contains("rise")
                        || names.stream().distinct().count() < names.size()))
            problems.add(new FileProblem(name, 1, "", "the table needs one column of flow and one of rise"));
        return columns;
    }

    private static void row(
            String[] cells,
            int line,
            List<Column> columns,
            Map<String, List<Double>> values,
            String name,
            List<FileProblem> problems) {
        if (cells.length != columns.size()) {
            problems.add(new FileProblem(
                    name, line, "", cells.length + " values stand under " + columns.size() + " headings"));
            return;
        }
        for (int i = 0; i < cells.length; i++) {
            Column column = columns.get(i);
            try {
                String quantity = cells[i].strip() + " " + column.unit().symbol();
                values.get(column.name())
                        .add(Quantity.parse(quantity, column.unit().dimension()));
            } catch (NotAQuantity e) {
                problems.add(new FileProblem(name, line, "", e.getMessage()));
            }
        }
    }
}
