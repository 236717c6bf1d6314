package slabfield.model;

import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.List;

/** Guards used by the constructors of the model's records. */
final class Check {
    private static final int LONGEST_NAME = 200;

    private Check() {}

    static double finite(String part, double value) {
        if (!Double.isFinite(value)) throw new ImpossibleValue(part, "must be a finite number");
        return value;
    }

    static double positive(String part, double value) {
        finite(part, value);
        if (value <= 0) throw new ImpossibleValue(part, "must be above 0");
        return value;
    }

    static double notNegative(String part, double value) {
        finite(part, value);
        if (value < 0) throw new ImpossibleValue(part, "must not be below 0");
        return value;
    }

    static double fraction(String part, double value) {
        finite(part, value);
        if (value < 0 || value > 1) throw new ImpossibleValue(part, "must lie between 0 and 1 (0 % and 100 %)");
        return value;
    }

    /** A temperature of outdoor or indoor air [K]. */
    static double temperature(String part, double value) {
        finite(part, value);
        if (value < 213.15 || value > 333.15) throw new ImpossibleValue(part, "must lie between -60 C and 60 C");
        return value;
    }

    static String text(String part, String value) {
        if (value == null) throw new ImpossibleValue(part, "is missing");
        return value;
    }

    static String words(String part, String value) {
        if (value == null || value.isBlank()) throw new ImpossibleValue(part, "must not be empty");
        return value;
    }

    static String name(String part, String value) {
        words(part, value);
        if (value.length() > LONGEST_NAME)
            throw new ImpossibleValue(part, "must not be longer than " + LONGEST_NAME + " characters");
        return value;
    }

    /** A day or a moment as ISO 8601 writes it, or nothing. */
    static String time(String part, String value) {
        if (text(part, value).isEmpty()) return value;
        try {
            DateTimeFormatter.ofPattern("yyyy-MM-dd['T'HH:mm[:ss][XXX]]").parse(value);
            return value;
        } catch (DateTimeParseException e) {
            throw new ImpossibleValue(part, "must be a day or a moment, such as 2026-01-20 or 2026-01-20T14:05");
        }
    }

    static <T> T present(String part, T value) {
        if (value == null) throw new ImpossibleValue(part, "is missing");
        return value;
    }

    static <T> List<T> list(String part, List<T> value) {
        return List.copyOf(present(part, value));
    }
}
