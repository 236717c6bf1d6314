package slabfield.desktop.viewmodel.find;

import java.util.List;
import java.util.Optional;
import slabfield.model.Point;
import slabfield.model.Scenario;

/**
 * What a page says, as text in the units shown.
 *
 * @param headline the answer in a sentence or two; empty before there is one
 * @param words sentences to know with it
 * @param tables in their order
 * @param acts what can be done with all of it
 */
public record Sheet(String headline, List<String> words, List<Table> tables, List<Act> acts) {
    /** A page that has nothing to say yet. */
    public static final Sheet EMPTY = new Sheet("", List.of(), List.of(), List.of());

    /**
     * A table.
     *
     * @param after sentences below it
     */
    public record Table(String title, List<Column> columns, List<Row> rows, List<String> after) {
        public Table {
            columns = List.copyOf(columns);
            rows = List.copyOf(rows);
            after = List.copyOf(after);
        }
    }

    /**
     * A column.
     *
     * @param title may hold a line break
     * @param width wanted, in pixels of usual type
     * @param number true where it stands to the right
     */
    public record Column(String title, int width, boolean number) {
        static Column words(String title, int width) {
            return new Column(title, width, false);
        }

        static Column number(String title, int width) {
            return new Column(title, width, true);
        }
    }

    /**
     * A row.
     *
     * @param cells one for each column
     * @param off true where it stands out
     * @param subject what the map shows while somebody points at the row
     * @param acts what can be done with it, the usual one first
     */
    public record Row(List<String> cells, boolean off, Optional<Subject> subject, List<Act> acts) {
        public Row {
            cells = List.copyOf(cells);
            acts = List.copyOf(acts);
        }

        static Row of(String... cells) {
            return new Row(List.of(cells), false, Optional.empty(), List.of());
        }
    }

    /**
     * A house to look at.
     *
     * @param words what it is
     * @param house to be solved; empty where only a place is pointed at
     * @param at a place to mark
     */
    public record Subject(String words, Optional<Scenario> house, Optional<Point> at) {}

    /**
     * Something that can be done with one press.
     *
     * @param words on the button
     * @param spoken for those who do not see what it stands beside
     * @param chosen where it is one of several of which one is chosen: whether it is that one
     */
    public record Act(String words, String spoken, Runnable run, Optional<Boolean> chosen) {
        Act(String words, String spoken, Runnable run) {
            this(words, spoken, run, Optional.empty());
        }
    }

    public Sheet {
        words = List.copyOf(words);
        tables = List.copyOf(tables);
        acts = List.copyOf(acts);
    }
}
