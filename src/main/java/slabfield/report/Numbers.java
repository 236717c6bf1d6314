package slabfield.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import java.util.OptionalDouble;
import slabfield.figure.UnitsShown;
import slabfield.model.Display;
import slabfield.quantity.Dimension;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/**
 * Numbers as a report shows them: down to what a good meter or a tape tells apart, with the decimal mark of a place, and a dash
 * where there is none.
 *
 * @param pressure unit
 * @param flow unit
 * @param length unit
 * @param place whose decimal mark is written
 */
public record Numbers(Unit pressure, Unit flow, Unit length, Locale place) {
    static final String NONE = "–";

    /** The units that a scenario asks for. */
    public static Numbers of(Display display, Locale place) {
        return new Numbers(
                Unit.find(display.pressure(), Dimension.PRESSURE).orElseThrow(),
                Unit.find(display.flow(), Dimension.FLOW).orElseThrow(),
                Unit.find(display.length(), Dimension.LENGTH).orElseThrow(),
                place);
    }

    String pressure(double si) {
        return number(si, pressure, 0.1);
    }

    String pressure(OptionalDouble si) {
        return pressure(si.orElse(Double.NaN));
    }

    String pressureText(double si) {
        return pressure(si) + " " + pressure.symbol();
    }

    /** A given pressure with no more digits than it has. */
    String given(double si) {
        return marked(Quantity.format(si, pressure, 3));
    }

    String flow(double si) {
        return number(si, flow, Unit.CFM.toSi(0.1));
    }

    String flow(OptionalDouble si) {
        return flow(si.orElse(Double.NaN));
    }

    String flowText(double si) {
        return flow(si) + " " + flow.symbol();
    }

    /** Whether lengths are in feet or inches. */
    public boolean imperial() {
        return length == Unit.FOOT || length == Unit.INCH;
    }

    /** As read off a tape. */
    String tape(double si) {
        return imperial() ? Quantity.feetInches(si) : marked(Quantity.formatDecimals(si, Unit.METRE, 2));
    }

    String pipe(double si) {
        return marked(
                imperial()
                        ? Quantity.formatDecimals(si, Unit.INCH, 2)
                        : Quantity.formatDecimals(si, Unit.MILLIMETRE, 0));
    }

    String area(double si) {
        return marked(Quantity.format(si, imperial() ? Unit.SQUARE_FOOT : Unit.SQUARE_METRE, 3));
    }

    Unit degrees() {
        return imperial() ? Unit.FAHRENHEIT : Unit.CELSIUS;
    }

    String temperature(double si) {
        return Double.isFinite(si) ? marked(Quantity.formatDecimals(si, degrees(), 0)) : NONE;
    }

    String plain(double value, int decimals) {
        if (!Double.isFinite(value)) return NONE;
        return marked(BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString());
    }

    String scientific(double value, int decimals) {
        return marked(String.format(Locale.ROOT, "%." + decimals + "e", value));
    }

    String plain(OptionalDouble value, int decimals) {
        return plain(value.orElse(Double.NaN), decimals);
    }

    /** A part of a whole; 0 and 100 % only where they are meant. */
    String percent(double part) {
        if (!Double.isFinite(part)) return NONE;
        if (part > 0 && part < 0.005) return "less than 1 %";
        if (part < 1 && part > 0.995) return "more than 99 %";
        return plain(100 * part, 0) + " %";
    }

    private String number(double si, Unit unit, double step) {
        if (!Double.isFinite(si)) return NONE;
        int decimals = (int) Math.max(0, Math.ceil(-Math.log10(unit.fromSi(step)) - 1e-9));
        String text = plain(unit.fromSi(si), decimals);
        return text.replace('-', '\u2212');
    }

    private String marked(String text) {
        return text.replace('.', DecimalFormatSymbols.getInstance(place).getDecimalSeparator());
    }

    /** The same units for figures. */
    UnitsShown forFigures() {
        return new UnitsShown(
                        pressure.symbol(),
                        pressure::fromSi,
                        flow.symbol(),
                        flow::fromSi,
                        length.symbol(),
                        length::fromSi)
                .in(place);
    }
}
