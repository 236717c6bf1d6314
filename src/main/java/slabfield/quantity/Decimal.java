package slabfield.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a number with a decimal point or comma, or a fraction of whole numbers, without a sign. */
final class Decimal {
    /** Digits with points and commas, and an exponent of at most three digits. */
    static final String NUMBER = "(?:\\d[\\d.,]*|[.,]\\d+)(?:[eE][+-]?\\d{1,3}(?!\\d))?";
    /** A fraction, with a whole number before it or not; or a plain number. */
    static final String AMOUNT = "(?:(?:\\d+\\s+)?\\d+/\\d+|" + NUMBER + ")";

    private static final Pattern FRACTION = Pattern.compile("(?:(\\d+)\\s+)?(\\d+)/(\\d+)");
    private static final Pattern THOUSANDS_OR_DECIMAL = Pattern.compile("[1-9]\\d{0,2},\\d{3}");

    private Decimal() {}

    /**
     * @param amount text that matches {@link #AMOUNT}
     * @param whole the user's whole text, for messages
     */
    static BigDecimal read(String amount, String whole) {
        Matcher fraction = FRACTION.matcher(amount);
        if (fraction.matches()) return fraction(fraction, whole);
        if (THOUSANDS_OR_DECIMAL.matcher(amount).matches()) {
            throw new NotAQuantity(
                    whole,
                    "can mean two things: write \"" + amount.replace(",", "") + "\" or \"" + amount.replace(',', '.')
                            + "\" for its number");
        }
        try {
            return new BigDecimal(withPoint(amount));
        } catch (NumberFormatException e) {
            throw new NotAQuantity(whole, "holds the number \"" + amount + "\", which cannot be read");
        }
    }

    private static BigDecimal fraction(Matcher parts, String whole) {
        BigDecimal below = new BigDecimal(parts.group(3));
        if (below.signum() == 0) throw new NotAQuantity(whole, "divides by zero");
        BigDecimal part = new BigDecimal(parts.group(2)).divide(below, MathContext.DECIMAL128);
        return parts.group(1) == null ? part : part.add(new BigDecimal(parts.group(1)));
    }

    /** Takes separators of thousands away and makes the decimal sign a point. */
    private static String withPoint(String number) {
        int point = number.lastIndexOf('.'), comma = number.lastIndexOf(',');
        if (comma < 0) return number;
        if (point >= 0) {
            char thousands = point > comma ? ',' : '.', decimal = point > comma ? '.' : ',';
            boolean grouped = number.matches("\\d{1,3}(?:\\" + thousands + "\\d{3})+\\" + decimal + "\\d+(?:[eE].*)?");
            return grouped ? number.replace(String.valueOf(thousands), "").replace(decimal, '.') : number;
        }
        if (number.matches("[1-9]\\d{0,2}(?:,\\d{3}){2,}")) return number.replace(",", "");
        return number.replace(',', '.');
    }
}
