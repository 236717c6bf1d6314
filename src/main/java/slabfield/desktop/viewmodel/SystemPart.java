package slabfield.desktop.viewmodel;

import java.util.List;

/**
 * One part of what is said about a system, as text in the units shown.
 *
 * @param title short
 * @param before sentences above the table
 * @param columns of the table; none where there is no table
 * @param rows of the table
 * @param after sentences below the table
 */
public record SystemPart(String title, List<String> before, List<Column> columns, List<Row> rows, List<String> after) {
    /**
     * A column.
     *
     * @param title may hold a line break
     * @param width wanted, in pixels of usual type
     * @param number true where it stands to the right
     */
    public record Column(String title, int width, boolean number) {}

    /**
     * A row.
     *
     * @param cells one for each column
     * @param off true where it misses what is wanted
     */
    public record Row(List<String> cells, boolean off) {}

    public SystemPart {
        before = List.copyOf(before);
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
        after = List.copyOf(after);
    }
}
