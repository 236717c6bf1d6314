package slabfield.cli;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import slabfield.wording.Nearest;

/** Words that stand for the values of an enum. */
final class Words {
    private Words() {}

    /** The value that a word names, in any case. */
    static <T extends Enum<T>> T of(String where, String given, T[] values) throws Refusal {
        List<String> words = Arrays.stream(values).map(Words::word).toList();
        int at = words.indexOf(given.strip().toLowerCase(Locale.ROOT));
        if (at < 0)
            throw new Refusal(
                    Exit.WRONG_INPUT, where + ": there is no \"" + given + "\"; " + Nearest.hint(given, words));
        return values[at];
    }

    /** The word of a value, such as "start-up" of START_UP. */
    static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
