package slabfield.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.OptionalDouble;
import slabfield.figure.UnitsShown;
import slabfield.model.Point;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/**
 * Numbers as the tables show them: with decimals down to what a good meter or a tape tells apart (0.1 Pa, 0.1 cfm,
 * 1 cm), and "-" where there is none.
 */
record Shown(Unit pressureUnit, Unit flowUnit, Unit lengthUnit) {
    private static final double PRESSURE_STEP = 0.1;
    private static final double FLOW_STEP = Unit.CFM.toSi(0.1);
    private static final double LENGTH_STEP = 0.01;

    /** A pressure without its unit. */
    String pressure(double si) {
        return number(si, pressureUnit, PRESSURE_STEP);
    }

    String pressure(OptionalDouble si) {
        return pressure(si.orElse(Double.NaN));
    }

    /** A pressure with its unit. */
    String pressureText(double si) {
        return pressure(si) + " " + pressureUnit.symbol();
    }

    /** A given pressure with its unit and no more digits than it has. */
    String givenPressure(double si) {
        return Quantity.format(si, pressureUnit, 4);
    }

    /** A flow without its unit. */
    String flow(double si) {
        return number(si, flowUnit, FLOW_STEP);
    }

    String flow(OptionalDouble si) {
        return flow(si.orElse(Double.NaN));
    }

    /** A flow with its unit. */
    String flowText(double si) {
        return flow(si) + " " + flowUnit.symbol();
    }

    /** A place on the plan with its unit. */
    String place(Point at) {
        return "(" + length(at.x()) + ", " + length(at.y()) + ") " + lengthUnit.symbol();
    }

    /** A length without its unit. */
    private String length(double si) {
        return number(si, lengthUnit, LENGTH_STEP);
    }

    /** A small length with its unit. */
    String size(double si) {
        return Quantity.format(si, lengthUnit, 2);
    }

    /** A length of the size of a pipe, with its unit. */
    String smallLength(double si) {
        return imperial() ? Quantity.formatDecimals(si, Unit.INCH, 2) : Quantity.formatDecimals(si, Unit.MILLIMETRE, 0);
    }

    /** An area with its unit. */
    String area(double si) {
        return Quantity.format(si, imperial() ? Unit.SQUARE_FOOT : Unit.SQUARE_METRE, 3);
    }

    boolean imperial() {
        return lengthUnit == Unit.FOOT || lengthUnit == Unit.INCH;
    }

    Unit speedUnit() {
        return imperial() ? Unit.FOOT_PER_MINUTE : Unit.METRE_PER_SECOND;
    }

    /** A speed without its unit. */
    String speed(double si) {
        return number(si, speedUnit(), imperial() ? Unit.FOOT_PER_MINUTE.toSi(10) : 0.1);
    }

    /** A temperature with its unit, to the degree. */
    String temperature(double si) {
        return Double.isFinite(si) ? Quantity.formatDecimals(si, imperial() ? Unit.FAHRENHEIT : Unit.CELSIUS, 0) : "-";
    }

    Unit temperatureUnit() {
        return imperial() ? Unit.FAHRENHEIT : Unit.CELSIUS;
    }

    /** A number of kilowatt hours without its unit. */
    static String kilowattHours(OptionalDouble joules) {
        return decimals(Unit.KILOWATT_HOUR.fromSi(joules.orElse(Double.NaN)), 0);
    }

    /** A plain number with a number of decimals. */
    static String plain(double value, int decimals) {
        return decimals(value, decimals);
    }

    /** A part of a whole; 0 and 100 % only where they are meant. */
    static String percent(double part) {
        if (!Double.isFinite(part)) return "-";
        if (part > 0 && part < 0.0005) return "<0.1 %";
        if (part < 1 && part >= 0.9995) return ">99.9 %";
        return decimals(100 * part, 1) + " %";
    }

    /** The same units for a figure. */
    UnitsShown forFigures() {
        return new UnitsShown(
                pressureUnit.symbol(),
                pressureUnit::fromSi,
                flowUnit.symbol(),
                flowUnit::fromSi,
                lengthUnit.symbol(),
                lengthUnit::fromSi);
    }

    private static String number(double si, Unit unit, double step) {
        return decimals(unit.fromSi(si), (int) Math.max(0, Math.ceil(-Math.log10(unit.fromSi(step)) - 1e-9)));
    }

    private static String decimals(double number, int decimals) {
        if (!Double.isFinite(number)) return "-";
        return BigDecimal.valueOf(number)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }
}
