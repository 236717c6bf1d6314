package slabfield.wording;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds the word that somebody most likely meant. */
public final class Nearest {
    /** Nobody means a known word by a longer one, and a file may hold very long ones. */
    private static final int LONGEST = 60;

    private static final int MOST_KNOWN = 200;

    private Nearest() {}

    /**
     * The known word with the fewest letters to change, add or take away, capitals apart.
     *
     * @return empty where even the nearest differs in more than a third of its letters (two, for short words)
     */
    public static Optional<String> to(String word, Collection<String> known) {
        if (word.length() > LONGEST) return Optional.empty();
        return known.stream()
                .filter(k -> k.length() <= LONGEST)
                .limit(MOST_KNOWN)
                .min(Comparator.comparingInt((String k) -> changes(word, k)).thenComparing(k -> k))
                .filter(k -> changes(word, k) <= Math.max(k.length() < 4 ? 1 : 2, k.length() / 3));
    }

    /** The end of a message: the nearest word where there is one, else all of them. */
    public static String hint(String word, Collection<String> known) {
        if (known.isEmpty()) return "there is none yet";
        return to(word, known)
                .map(k -> "did you mean \"" + k + "\"?")
                .orElseGet(() -> "there " + (known.size() == 1 ? "is" : "are") + " "
                        + String.join(
                                ", ",
                                known.stream().map(k -> '"' + k + '"').limit(30).toList()));
    }

    /** Levenshtein distance: single letters changed, added or taken away. */
    private static int changes(String a, String b) {
        String from = a.toLowerCase(Locale.ROOT), to = b.toLowerCase(Locale.ROOT);
        int[] row = new int[to.length() + 1];
        for (int j = 0; j < row.length; j++) row[j] = j;
        for (int i = 1; i <= from.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                int change = diagonal + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[to.length()];
    }
}
