package slabfield.desktop.viewmodel;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** What the words of the window mean, from the program's page of words. */
public final class Glossary {
    private static final String PAGE = "/slabfield/glossary.md";
    private static final String NO_TERM = "-";

    /**
     * One word.
     *
     * @param meaning in plain language
     * @param term of the trade or of the field; empty where it has none
     */
    public record Word(String word, String meaning, String term) {
        private String line() {
            return word + (term.isEmpty() ? "" : " (" + term + ")") + ": " + meaning;
        }
    }

    private final List<Word> words = new ArrayList<>();

    /** Reads a table whose rows are word, meaning, term. */
    Glossary(String page) {
        List<String> rows = page.lines().filter(l -> l.startsWith("| ")).skip(2).toList();
        for (String row : rows) {
            String[] cells = row.substring(1).split("\\|");
            String term = cells[2].strip();
            words.add(new Word(cells[0].strip(), cells[1].strip(), term.equals(NO_TERM) ? "" : term));
        }
        words.sort(Comparator.comparingInt((Word w) -> -w.word().length()));
    }

    /** The program's own. */
    public static Glossary ofProgram() {
        try (InputStream in = Glossary.class.getResourceAsStream(PAGE)) {
            if (in == null) throw new IllegalStateException(PAGE + " is missing from the program");
            return new Glossary(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The words that stand in a text, alone or in the plural, the longer ones first; one within a longer one is left out. */
    public List<Word> in(String text) {
        String rest = " " + text.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", " ") + " ";
        List<Word> found = new ArrayList<>();
        for (Word each : words) {
            String name = each.word().toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", " ");
            String taken = rest.replace(" " + name + " ", " \n ").replace(" " + name + "s ", " \n ");
            if (!taken.equals(rest)) found.add(each);
            rest = taken;
        }
        return List.copyOf(found);
    }

    /** What the words of a text mean, a line each; empty where it has none that needs it. */
    public String explain(String text) {
        return String.join("\n", in(text).stream().map(Word::line).toList());
    }
}
