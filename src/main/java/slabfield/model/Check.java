package slabfield.model;

import java.util.List;

/** Guards used by the constructors of the model's records. */
final class Check {
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

    static String text(String part, String value) {
        if (value == null) throw new ImpossibleValue(part, "is missing");
        return value;
    }

    static String name(String part, String value) {
        if (value == null || value.isBlank()) throw new ImpossibleValue(part, "must not be empty");
        return value;
    }

    static <T> T present(String part, T value) {
        if (value == null) throw new ImpossibleValue(part, "is missing");
        return value;
    }

    static <T> List<T> list(String part, List<T> value) {
        return List.copyOf(present(part, value));
    }
}
