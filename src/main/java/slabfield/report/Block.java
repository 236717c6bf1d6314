package slabfield.report;

import java.util.List;
import slabfield.figure.Figure;

/** A part of a report, from top to bottom. */
sealed interface Block {
    /** The name of a document, which begins a page. */
    record Title(String text, String below) implements Block {}

    /** A heading; level 1 or 2. */
    record Heading(int level, String text) implements Block {}

    record Paragraph(String text, boolean small) implements Block {}

    /** A paragraph in large letters, for the householder. */
    record Large(String text) implements Block {}

    /** A warning in a frame. */
    record Notice(String text) implements Block {}

    record Bullets(List<String> items) implements Block {}

    /** What is asked and what is said. */
    record Fields(List<Field> fields) implements Block {}

    record Field(String label, String value) {}

    /**
     * A table.
     *
     * @param name above it; empty for none
     * @param heads one for each column
     * @param widths of the columns, in parts of the whole
     * @param numbers whether a column holds numbers, which stand at its right
     */
    record Table(String name, List<String> heads, List<Double> widths, List<Boolean> numbers, List<List<String>> rows)
            implements Block {
        public Table {
            if (heads.size() != widths.size() || heads.size() != numbers.size())
                throw new IllegalArgumentException("a table needs a width and a kind for each head");
            for (List<String> row : rows)
                if (row.size() != heads.size())
                    throw new IllegalArgumentException("a row needs a cell for each head: " + row);
        }
    }

    record Picture(Figure figure) implements Block {}

    static Paragraph text(String text) {
        return new Paragraph(text, false);
    }

    static Paragraph small(String text) {
        return new Paragraph(text, true);
    }
}
