package slabfield.figure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;

/**
 * The units in which a figure shows its numbers. Each conversion is a plain factor.
 *
 * @param pressureSymbol such as "Pa"
 * @param pressureFromSi from Pa
 * @param flowSymbol such as "L/s"
 * @param flowFromSi from m3/s
 * @param lengthSymbol such as "m"
 * @param lengthFromSi from m
 * @param decimalMark between whole units and tenths, such as a comma
 */
public record UnitsShown(
        String pressureSymbol,
        DoubleUnaryOperator pressureFromSi,
        String flowSymbol,
        DoubleUnaryOperator flowFromSi,
        String lengthSymbol,
        DoubleUnaryOperator lengthFromSi,
        char decimalMark) {
    private static final double NOTHING = 1e-4;

    /** With a point as decimal mark. */
    public UnitsShown(
            String pressureSymbol,
            DoubleUnaryOperator pressureFromSi,
            String flowSymbol,
            DoubleUnaryOperator flowFromSi,
            String lengthSymbol,
            DoubleUnaryOperator lengthFromSi) {
        this(pressureSymbol, pressureFromSi, flowSymbol, flowFromSi, lengthSymbol, lengthFromSi, '.');
    }

    /** The same units with the decimal mark that people of a place write. */
    public UnitsShown in(Locale place) {
        return new UnitsShown(
                pressureSymbol,
                pressureFromSi,
                flowSymbol,
                flowFromSi,
                lengthSymbol,
                lengthFromSi,
                DecimalFormatSymbols.getInstance(place).getDecimalSeparator());
    }

    /** A text in which this program wrote numbers with a point, with the decimal mark in its place. */
    public String marked(String number) {
        return number.replace('.', decimalMark);
    }

    /** Pa, L/s and m. */
    public static UnitsShown SI() {
        return new UnitsShown("Pa", p -> p, "L/s", q -> 1000 * q, "m", x -> x);
    }

    /** Size of one shown unit of pressure [Pa]. */
    double pressureUnit() {
        return 1 / pressureFromSi.applyAsDouble(1);
    }

    /** Size of one shown unit of length [m]. */
    double lengthUnit() {
        return 1 / lengthFromSi.applyAsDouble(1);
    }

    /** A pressure as a number, without its unit; see {@link #number}. */
    public String pressure(double si) {
        return marked(number(pressureFromSi.applyAsDouble(si)));
    }

    public String flow(double si) {
        return marked(number(flowFromSi.applyAsDouble(si)));
    }

    /** A length as a number, without its unit; see {@link #number}. */
    public String length(double si) {
        return marked(number(lengthFromSi.applyAsDouble(si)));
    }

    /** A length on the plan as a number, as round as it is. */
    public String place(double si) {
        return marked(trimmed(lengthFromSi.applyAsDouble(si)));
    }

    /** A pressure that is given and not computed, such as a target, without zeros that add nothing. */
    public String round(double si) {
        return marked(trimmed(pressureFromSi.applyAsDouble(si)));
    }

    /** A round number as it is, at most three digits. */
    static String trimmed(double shown) {
        if (shown == 0) return "0";
        BigDecimal rounded = new BigDecimal(shown).round(new MathContext(Math.abs(shown) < 1 ? 2 : 3));
        return sign(rounded.stripTrailingZeros().toPlainString());
    }

    /**
     * A computed number: three digits from 10 up, else two, so that no more is said than a model can know. What is
     * below a ten-thousandth of the unit is written as about nothing.
     */
    static String number(double shown) {
        if (Double.isNaN(shown)) return "none";
        double size = Math.abs(shown);
        if (size < NOTHING) return "≈0";
        int magnitude = (int) Math.floor(Math.log10(size));
        int decimals = Math.max(0, magnitude >= 1 ? 2 - magnitude : 1 - magnitude);
        return sign(
                new BigDecimal(shown).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString());
    }

    private static String sign(String digits) {
        return digits.replace('-', '−');
    }
}
