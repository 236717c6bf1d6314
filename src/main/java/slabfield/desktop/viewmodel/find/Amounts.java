package slabfield.desktop.viewmodel.find;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import slabfield.advice.Range;
import slabfield.desktop.viewmodel.Units;
import slabfield.desktop.viewmodel.Words;
import slabfield.figure.UnitsShown;
import slabfield.fit.Interval;
import slabfield.fit.Observation;
import slabfield.fit.Parameter;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/** Numbers of findings as they are written. */
record Amounts(Units units) {
    static final String NONE = "\u2013";
    static final String SIGN = "Negative = soil under vacuum relative to the room.";

    private static final int DIGITS = 2;
    private static final String ARROW = " \u2192 ";

    /** How a place is written where no unit has been chosen. */
    private static final Pattern IN_METRES = Pattern.compile("([xy]) = (-?[0-9]+\\.[0-9]) m\\b");

    /** A value of an unknown with its unit; leaks and the like as multiples of what is drawn. */
    String of(Parameter p, double value) {
        return switch (p.kind()) {
            case PERMEABILITY, BARRIER -> Quantity.format(value, Unit.SQUARE_METRE_OF_PERMEABILITY, DIGITS);
            case INERTIAL -> Quantity.format(value, Unit.PER_METRE, DIGITS);
            case SOIL -> Quantity.format(value, Unit.METRE_PER_SECOND_PASCAL, DIGITS);
            case LEAK, TILE, EXPONENT, INERTIAL_NOT_DRAWN, FILL_BESIDE -> "\u00d7 " + plain(value);
            case LEFT_BY_SEAL -> Words.percent(Math.min(1, value));
            case GAP, PIT -> units.length(value);
            case OUTDOORS -> units.pressure(value);
        };
    }

    String of(Parameter p, Interval range) {
        return of(p, range.low()) + " to " + of(p, range.high());
    }

    /** Two digits that count. */
    static String plain(double value) {
        return new BigDecimal(value).round(new MathContext(DIGITS)).toPlainString();
    }

    /** So many decimals. */
    static String decimals(double value, int decimals) {
        return String.format(java.util.Locale.ROOT, "%." + decimals + "f", value)
                .replace('-', '\u2212');
    }

    /** A reading or what was predicted for it. */
    String reading(Observation o, double value) {
        return o.what() == Observation.What.FLOW ? units.flow(value) : units.pressure(value);
    }

    String number(OptionalDouble pressure) {
        return pressure.isPresent() ? units.pressureNumber(pressure.getAsDouble()) : NONE;
    }

    /** A sentence that names places in metres, with them in the unit that is shown. */
    String placed(String sentence) {
        return IN_METRES
                .matcher(sentence)
                .replaceAll(m -> m.group(1) + " " + units.aboutLength(Double.parseDouble(m.group(2))));
    }

    /** A vacuum, which is positive inside, as a pressure. */
    String weakest(double vacuum) {
        return units.pressureNumber(-vacuum);
    }

    /** Pressures between which a vacuum lies. */
    String weakest(Range vacuum) {
        return units.pressureNumber(-vacuum.low()) + " to " + units.pressureNumber(-vacuum.high());
    }

    String change(double before, double after) {
        return weakest(before) + ARROW + weakest(after);
    }

    static String percents(double before, double after) {
        return Words.percent(before) + ARROW + Words.percent(after);
    }

    String flow(double si) {
        return shown().flow(si);
    }

    String flow(Range range) {
        return shown().flow(range.low()) + " to " + shown().flow(range.high());
    }

    private UnitsShown shown() {
        return units.shown().get();
    }

    /** A title with the unit of pressure. */
    String inPressure(String title) {
        return title + "\n[" + units.pressure().get().symbol() + "]";
    }

    String inFlow(String title) {
        return title + "\n[" + units.flow().get().symbol() + "]";
    }

    static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
