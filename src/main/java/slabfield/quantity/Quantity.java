package slabfield.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import slabfield.wording.Nearest;

/**
 * Quantities as people write them, and back. Point and comma both mark decimals; a comma that could as well mark
 * thousands is asked back; a non-breaking space between groups of three digits marks thousands.
 */
public final class Quantity {
    private static final int LONGEST = 100;
    private static final Pattern ONE = Pattern.compile("([+-]?)\\s*(" + Decimal.AMOUNT + ")\\s*(.*)");
    private static final Pattern FEET_AND_INCHES = Pattern.compile(
            "([+-]?)\\s*(" + Decimal.AMOUNT + ")\\s*(?:ft\\.?|feet|foot|')\\s*-?\\s*(" + Decimal.AMOUNT
                    + ")\\s*(?:in\\.?|inch|inches|\")",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern FEET_AND_BARE =
            Pattern.compile(".*\\d\\s*(?:ft\\.?|feet|foot|')\\s*-?\\s*" + Decimal.AMOUNT, Pattern.CASE_INSENSITIVE);

    private Quantity() {}

    /**
     * Reads a quantity of one kind, such as "12 ft 6 1/2 in" or "-5 Pa".
     *
     * @return its value in SI, finite; what is too small for a double is 0, never -0
     * @throws NotAQuantity where there is no unit, one of another kind or an unknown one, or no clear number
     */
    public static double parse(String text, Dimension wanted) {
        if (text.length() > LONGEST)
            throw new NotAQuantity(text.substring(0, 20) + "...", "is too long for " + wanted.words());
        String plain = plain(text);
        double value =
                wanted == Dimension.LENGTH && FEET_AND_INCHES.matcher(plain).matches()
                        ? feetAndInches(plain, text)
                        : single(plain, text, wanted);
        if (!Double.isFinite(value)) throw new NotAQuantity(text, "is too large a number");
        return value + 0.0;
    }

    private static double single(String plain, String text, Dimension wanted) {
        Matcher parts = ONE.matcher(plain);
        if (!parts.matches())
            throw new NotAQuantity(
                    text, "is not " + wanted.words() + "; write a number and its unit, " + wanted.instance());
        String unitText = parts.group(3);
        if (unitText.isEmpty())
            throw new NotAQuantity(text, "has no unit; " + wanted.words() + " needs its unit, " + wanted.instance());
        if (wanted == Dimension.LENGTH && FEET_AND_BARE.matcher(plain).matches())
            throw new NotAQuantity(
                    text, "ends without a unit; say what the last number is, for instance \"12 ft 6 in\"");
        Unit unit = Unit.find(unitText, wanted).orElseThrow(() -> wrongUnit(text, unitText, wanted));
        BigDecimal number = Decimal.read(parts.group(2), text);
        return unit.toSi(parts.group(1).equals("-") ? number.negate() : number);
    }

    private static double feetAndInches(String plain, String text) {
        Matcher parts = FEET_AND_INCHES.matcher(plain);
        if (!parts.matches()) throw new IllegalArgumentException(plain);
        BigDecimal feet = Decimal.read(parts.group(2), text), inches = Decimal.read(parts.group(3), text);
        BigDecimal all = feet.multiply(BigDecimal.valueOf(12)).add(inches);
        return Unit.INCH.toSi(parts.group(1).equals("-") ? all.negate() : all);
    }

    private static NotAQuantity wrongUnit(String text, String unitText, Dimension wanted) {
        Optional<Dimension> given = Arrays.stream(Dimension.values())
                .filter(d -> Unit.find(unitText, d).isPresent())
                .findFirst();
        if (given.isPresent())
            return new NotAQuantity(
                    text, "is " + given.get().words() + ", but " + wanted.words() + " is wanted, " + wanted.instance());
        if (Character.isDigit(unitText.charAt(0)))
            return new NotAQuantity(
                    text, "holds two numbers; write one number without spaces in it, " + wanted.instance());
        Set<String> symbols =
                new LinkedHashSet<>(Unit.of(wanted).stream().map(Unit::symbol).toList());
        return new NotAQuantity(
                text,
                "has the unknown unit \"" + unitText + "\" for " + wanted.words() + "; "
                        + Nearest.hint(unitText, symbols));
    }

    /** The same text with one sort of minus, quote, space and digit. */
    private static String plain(String text) {
        String t = text.replaceAll("(?<=\\d)[\u00a0\u202f\u2009](?=\\d{3}(?!\\d))", "")
                .replaceAll("(\\d)([\u00bc-\u00be\u2150-\u215e])", "$1 $2")
                .replaceAll("[\u2018\u2019\u2032]", "'")
                .replaceAll("[\u201c\u201d\u2033]", "\"");
        return Normalizer.normalize(t, Normalizer.Form.NFKC)
                .replace('\u2212', '-')
                .replace('\u2013', '-')
                .replace('\u2044', '/')
                .replace("''", "\"")
                .strip();
    }

    /**
     * Writes a value with its unit.
     *
     * @param value in SI
     * @param significantDigits at least 1; zeros at the end are dropped
     * @return "no value" for NaN
     */
    public static String format(double value, Unit unit, int significantDigits) {
        if (!Double.isFinite(value)) return "no value";
        BigDecimal number = unit.decimalFromSi(value)
                .round(new MathContext(significantDigits, RoundingMode.HALF_UP))
                .stripTrailingZeros();
        return digits(number) + " " + unit.symbol();
    }

    /**
     * Writes a value with its unit and a fixed number of decimals.
     *
     * @param value in SI
     * @return "no value" for NaN
     */
    public static String formatDecimals(double value, Unit unit, int decimals) {
        if (!Double.isFinite(value)) return "no value";
        return unit.decimalFromSi(value)
                        .setScale(decimals, RoundingMode.HALF_UP)
                        .toPlainString() + " " + unit.symbol();
    }

    /**
     * Writes a value in an SI unit so that reading the text gives the very same double.
     *
     * @param unit whose number is the SI value itself, such as {@link Unit#METRE}
     */
    public static String exact(double value, Unit unit) {
        return digits(BigDecimal.valueOf(value).stripTrailingZeros()) + " " + unit.symbol();
    }

    private static String digits(BigDecimal number) {
        int exponent = number.precision() - number.scale() - 1;
        if (number.signum() == 0 || exponent >= -4 && exponent < 7) return number.toPlainString();
        return number.scaleByPowerOfTen(-exponent).toPlainString() + "e" + exponent;
    }

    /** Writes a length in feet and inches to the nearest eighth of an inch, such as "12 ft 6 1/2 in". */
    public static String feetInches(double metres) {
        if (!Double.isFinite(metres)) return "no value";
        long eighths = Math.round(Unit.INCH.fromSi(Math.abs(metres)) * 8);
        long feet = eighths / 96, inches = eighths % 96 / 8, part = eighths % 8;
        long step = part % 4 == 0 ? 4 : part % 2 == 0 ? 2 : 1;
        String fraction = part == 0 ? "" : part / step + "/" + 8 / step;
        String small = inches == 0 ? fraction : (inches + " " + fraction).strip();
        List<String> words = new ArrayList<>();
        if (feet > 0) words.add(feet + " ft");
        if (!small.isEmpty() || feet == 0) words.add((small.isEmpty() ? "0" : small) + " in");
        return (metres < 0 && eighths > 0 ? "-" : "") + String.join(" ", words);
    }
}
