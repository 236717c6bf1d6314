package slabfield.validation;

import java.util.Locale;

/** Numbers as a report writes them. */
final class Numbers {
    /** What is below this is rounding, and differs from one computer to the next. */
    private static final double ROUNDING = 1e-9;

    private Numbers() {}

    /** A value with its leading digits. */
    static String value(double number, int digits) {
        if (Double.isNaN(number)) return "";
        if (Double.isInfinite(number)) return "any";
        String text = String.format(Locale.ROOT, "%." + digits + "g", number);
        int e = text.indexOf('e');
        String mantissa = e < 0 ? text : text.substring(0, e), exponent = e < 0 ? "" : text.substring(e);
        if (mantissa.contains(".")) mantissa = mantissa.replaceAll("0+$", "").replaceAll("\\.$", "");
        return mantissa + exponent;
    }

    /** A relative difference in percent. */
    static String percent(double fraction) {
        if (Double.isNaN(fraction)) return "";
        if (Math.abs(fraction) < ROUNDING) return "below 1e-7 %";
        return String.format(Locale.ROOT, "%+.3g %%", 100 * fraction);
    }

    /** A mass imbalance. */
    static String imbalance(double fraction) {
        return fraction < ROUNDING ? "below 1e-9" : String.format(Locale.ROOT, "%.1e", fraction);
    }
}
