package slabfield.validation;

import java.util.Arrays;
import java.util.Optional;

/** Where the numbers of a case come from. */
public enum Kind {
    /** An exact solution, in closed form or integrated to many digits. */
    ANALYTIC("analytic"),
    /** A table, chart or formula in print, or a figure that is common practice in the trade. */
    PUBLISHED("published"),
    /** Somebody's measurement. */
    MEASURED("measured"),
    /** Another program for the same equations. */
    CROSS_CHECK("cross-check");

    private final String word;

    Kind(String word) {
        this.word = word;
    }

    /** As it is written in a case file. */
    public String word() {
        return word;
    }

    static Optional<Kind> of(String word) {
        return Arrays.stream(values()).filter(k -> k.word.equals(word)).findFirst();
    }
}
