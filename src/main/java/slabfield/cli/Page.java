package slabfield.cli;

import java.util.ArrayList;
import java.util.List;

/** The text that a verb prints: title, named values, tables and sentences, and at its end the standing caution. */
final class Page {
    /** Said below every table of pressures. */
    static final String SIGN = "Pressures: negative = soil under vacuum relative to the room.";

    /** Said at the end of every page. */
    static final String CAUTION =
            "Caution: this is an aid, not a design approval, and it cannot judge combustion safety:"
                    + " test for backdrafting after start-up. A radon test alone shows success. Locate utilities and tensioned"
                    + " cables before coring.";

    private static final int NAMES = 22;

    private final List<String> lines = new ArrayList<>();

    /** The first line. */
    Page title(String text) {
        lines.addAll(Table.wrap(text, Table.WIDTH));
        return this;
    }

    /** The heading of a part, after an empty line. */
    Page part(String heading) {
        lines.add("");
        lines.addAll(Table.wrap(heading, Table.WIDTH));
        return this;
    }

    /** A value with its name. */
    Page value(String name, String value) {
        List<String> broken = Table.wrap(value, Table.WIDTH - NAMES - 2);
        for (int i = 0; i < broken.size(); i++)
            lines.add(String.format("  %-" + NAMES + "s", i == 0 ? name : "") + broken.get(i));
        return this;
    }

    Page table(Table table) {
        lines.addAll(table.lines());
        return this;
    }

    /** A sentence. */
    Page text(String text) {
        lines.addAll(Table.wrap(text, Table.WIDTH));
        return this;
    }

    /** Sentences, each marked as one of a list. */
    Page list(List<String> sentences) {
        for (String sentence : sentences) {
            List<String> broken = Table.wrap(sentence, Table.WIDTH - 2);
            for (int i = 0; i < broken.size(); i++) lines.add((i == 0 ? "- " : "  ") + broken.get(i));
        }
        return this;
    }

    /** All lines and the caution, each with its line end. */
    String cautioned() {
        List<String> all = new ArrayList<>(lines);
        all.add("");
        all.addAll(Table.wrap(CAUTION, Table.WIDTH));
        return String.join("\n", all) + "\n";
    }
}
