package slabfield.desktop.viewmodel.work;

import java.util.OptionalDouble;

/** A number as it is typed key by key: digits, one decimal mark, a sign in front. Comma and point both count as the mark. */
public final class Keypad {
    private static final int LONGEST = 9;

    private String digits = "";
    private boolean negative;

    /** Begins anew. */
    public void clear() {
        digits = "";
        negative = false;
    }

    /** Begins with a sign, before any digit. */
    public void start(boolean withMinus) {
        digits = "";
        negative = withMinus;
    }

    public void digit(int digit) {
        if (digit < 0 || digit > 9) throw new IllegalArgumentException("a key bears 0 to 9");
        if (digits.length() < LONGEST) digits += digit;
    }

    /** The decimal mark; a second one does nothing. */
    public void mark() {
        if (!digits.contains(".") && digits.length() < LONGEST) digits += digits.isEmpty() ? "0." : ".";
    }

    public void sign() {
        negative = !negative;
    }

    /** Takes the last key back; on an empty number its sign. */
    public void back() {
        if (digits.isEmpty()) negative = false;
        else digits = digits.substring(0, digits.length() - 1);
    }

    /** Takes what was typed on a keyboard; other letters do nothing. */
    public void type(char letter) {
        if (letter >= '0' && letter <= '9') digit(letter - '0');
        else if (letter == '.' || letter == ',') mark();
        else if (letter == '-' || letter == '\u2212') sign();
    }

    public boolean isEmpty() {
        return digits.isEmpty();
    }

    /** The number; empty where no digit was typed. */
    public OptionalDouble value() {
        if (digits.isEmpty() || digits.equals(".")) return OptionalDouble.empty();
        double size = Double.parseDouble(digits);
        return OptionalDouble.of(negative && size != 0 ? -size : size);
    }

    /** Digits behind the decimal mark. */
    public int decimals() {
        int mark = digits.indexOf('.');
        return mark < 0 ? 0 : digits.length() - mark - 1;
    }

    /** What is shown while it is typed, with a true minus and the given decimal mark. */
    public String shown(char decimalMark) {
        return (negative ? "\u2212" : "") + digits.replace('.', decimalMark);
    }
}
