package slabfield.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A unit of measurement: SI value = (number + zero) times numerator / denominator, worked in decimals so that 7 ft is
 * 2.1336 m to the last digit.
 *
 * <p>Exact by definition: inch 0.0254 m and foot 0.3048 m (international, 1959), US gallon 231 cubic inches. An inch or
 * millimetre of water is the conventional one: 1000 kg/m3 and 9.80665 m/s2, so 249.08891 Pa to the inch. A darcy is the
 * permeability that lets 1 cP through at 1 cm/s for 1 atm/cm, so 1e-7 / 101325 m2. A Btu is that of the International
 * Table, 1055.05585262 J, a therm 100,000 of it, a pound 0.45359237 kg.
 */
public enum Unit {
    PASCAL(Dimension.PRESSURE, "Pa", "1", "1", "pascal", "pascals"),
    KILOPASCAL(Dimension.PRESSURE, "kPa", "1000"),
    HECTOPASCAL(Dimension.PRESSURE, "hPa", "100"),
    MILLIBAR(Dimension.PRESSURE, "mbar", "100"),
    INCH_OF_WATER(
            Dimension.PRESSURE,
            "inH2O",
            "249.08891",
            "1",
            "in.H2O",
            "inwc",
            "in.wc",
            "in.w.c.",
            "inw.c.",
            "in.w.c",
            "\"wc",
            "\"w.c.",
            "\"H2O",
            "inwg",
            "in.w.g."),
    MILLIMETRE_OF_WATER(Dimension.PRESSURE, "mmH2O", "9.80665", "1", "mmwc"),

    CUBIC_METRE_PER_SECOND(Dimension.FLOW, "m3/s", "1"),
    CUBIC_METRE_PER_HOUR(Dimension.FLOW, "m3/h", "1", "3600", "m3/hr"),
    LITRE_PER_SECOND(Dimension.FLOW, "L/s", "1", "1000"),
    LITRE_PER_MINUTE(Dimension.FLOW, "L/min", "1", "60000"),
    CFM(Dimension.FLOW, "cfm", "0.028316846592", "60", "ft3/min"),

    METRE(Dimension.LENGTH, "m", "1", "1", "metre", "metres", "meter", "meters"),
    CENTIMETRE(Dimension.LENGTH, "cm", "0.01"),
    MILLIMETRE(Dimension.LENGTH, "mm", "0.001"),
    INCH(Dimension.LENGTH, "in", "0.0254", "1", "in.", "inch", "inches", "\""),
    FOOT(Dimension.LENGTH, "ft", "0.3048", "1", "ft.", "foot", "feet", "'"),

    SQUARE_METRE(Dimension.AREA, "m2", "1", "1", "sqm"),
    SQUARE_CENTIMETRE(Dimension.AREA, "cm2", "0.0001"),
    SQUARE_INCH(Dimension.AREA, "in2", "0.00064516", "1", "sqin", "sq.in."),
    SQUARE_FOOT(Dimension.AREA, "ft2", "0.09290304", "1", "sqft", "sq.ft."),

    CUBIC_METRE(Dimension.VOLUME, "m3", "1"),
    LITRE(Dimension.VOLUME, "L", "0.001", "1", "litre", "litres", "liter", "liters"),
    CUBIC_FOOT(Dimension.VOLUME, "ft3", "0.028316846592", "1", "cuft", "cu.ft."),
    GALLON(Dimension.VOLUME, "gal", "0.003785411784", "1", "gallon", "gallons"),

    SQUARE_METRE_OF_PERMEABILITY(Dimension.PERMEABILITY, "m2", "1"),
    DARCY(Dimension.PERMEABILITY, "darcy", "1e-7", "101325"),

    PER_METRE(Dimension.PER_LENGTH, "1/m", "1", "1", "m-1", "m^-1"),

    SQUARE_METRE_PER_METRE(Dimension.AREA_PER_LENGTH, "m2/m", "1"),
    SQUARE_CENTIMETRE_PER_METRE(Dimension.AREA_PER_LENGTH, "cm2/m", "0.0001"),
    SQUARE_INCH_PER_FOOT(Dimension.AREA_PER_LENGTH, "in2/ft", "0.00064516", "0.3048"),

    METRE_PER_SECOND_PASCAL(Dimension.LEAKANCE, "m/s/Pa", "1", "1", "m/(sPa)", "m3/s/Pa/m2"),
    CUBIC_METRE_PER_SECOND_PASCAL(Dimension.CONDUCTANCE, "m3/s/Pa", "1", "1", "m3/(sPa)"),
    SQUARE_METRE_PER_SECOND_PASCAL(Dimension.CONDUCTANCE_PER_LENGTH, "m3/s/Pa/m", "1", "1", "m3/(sPam)", "m2/s/Pa"),
    METRE4_PER_SECOND_PASCAL(Dimension.CONDUCTANCE_TIMES_LENGTH, "m4/s/Pa", "1", "1", "m4/(sPa)"),
    CUBIC_METRE_PER_SECOND_PASCAL_N(Dimension.LEAK_COEFFICIENT, "m3/s/Pa^n", "1", "1", "m3/(sPa^n)"),
    CUBIC_METRE_PER_HOUR_PASCAL_N(Dimension.LEAK_COEFFICIENT, "m3/h/Pa^n", "1", "3600"),
    LITRE_PER_SECOND_PASCAL_N(Dimension.LEAK_COEFFICIENT, "L/s/Pa^n", "1", "1000"),
    CFM_PER_PASCAL_N(Dimension.LEAK_COEFFICIENT, "cfm/Pa^n", "0.028316846592", "60"),

    KELVIN(Dimension.TEMPERATURE, "K", "1"),
    CELSIUS(Dimension.TEMPERATURE, "C", "1", "1", new BigDecimal("273.15"), "°C", "degC"),
    FAHRENHEIT(Dimension.TEMPERATURE, "F", "5", "9", new BigDecimal("459.67"), "°F", "degF"),

    METRE_PER_SECOND(Dimension.SPEED, "m/s", "1"),
    FOOT_PER_MINUTE(Dimension.SPEED, "fpm", "0.3048", "60", "ft/min"),

    WATT(Dimension.POWER, "W", "1"),
    JOULE(Dimension.ENERGY, "J", "1"),
    MEGAJOULE(Dimension.ENERGY, "MJ", "1e6"),
    KILOWATT_HOUR(Dimension.ENERGY, "kWh", "3.6e6"),
    BRITISH_THERMAL_UNIT(Dimension.ENERGY, "BTU", "1055.05585262"),
    THERM(Dimension.ENERGY, "therm", "105505585.262"),
    KILOGRAM_PER_CUBIC_METRE(Dimension.DENSITY, "kg/m3", "1"),
    POUND_PER_CUBIC_FOOT(Dimension.DENSITY, "lb/ft3", "0.45359237", "0.028316846592"),
    SECOND(Dimension.DURATION, "s", "1", "1", "second", "seconds"),
    HOUR(Dimension.DURATION, "h", "3600", "1", "hour", "hours"),
    DAY(Dimension.DURATION, "d", "86400", "1", "day", "days"),
    KELVIN_SECOND(Dimension.DEGREE_DAYS, "Ks", "1"),
    KELVIN_DAY(Dimension.DEGREE_DAYS, "Kd", "86400", "1", "Cd"),
    FAHRENHEIT_DAY(Dimension.DEGREE_DAYS, "Fd", "432000", "9"),
    PERCENT(Dimension.FRACTION, "%", "1", "100", "percent");

    private static final MathContext DIGITS = MathContext.DECIMAL128;

    private final Dimension dimension;
    private final String symbol;
    private final List<String> aliases;
    private final BigDecimal numerator;
    private final BigDecimal denominator;
    private final BigDecimal zero;

    Unit(Dimension dimension, String symbol, String numerator) {
        this(dimension, symbol, numerator, "1");
    }

    Unit(Dimension dimension, String symbol, String numerator, String denominator, String... aliases) {
        this(dimension, symbol, numerator, denominator, BigDecimal.ZERO, aliases);
    }

    Unit(Dimension dimension, String symbol, String numerator, String denominator, BigDecimal zero, String... aliases) {
        this.dimension = dimension;
        this.symbol = symbol;
        this.aliases = List.of(aliases);
        this.numerator = new BigDecimal(numerator);
        this.denominator = new BigDecimal(denominator);
        this.zero = zero;
    }

    public Dimension dimension() {
        return dimension;
    }

    /** How the unit is written by this program. */
    public String symbol() {
        return symbol;
    }

    /** Other spellings that are read, spaces left out. */
    public List<String> aliases() {
        return aliases;
    }

    /**
     * A number of this unit in SI.
     *
     * @return the nearest double; what is not finite stays as it is
     */
    public double toSi(double number) {
        return Double.isFinite(number) ? toSi(BigDecimal.valueOf(number)) : number;
    }

    double toSi(BigDecimal number) {
        return number.add(zero, DIGITS)
                .multiply(numerator)
                .divide(denominator, DIGITS)
                .doubleValue();
    }

    /**
     * An SI value as a number of this unit.
     *
     * @return the nearest double; what is not finite stays as it is
     */
    public double fromSi(double value) {
        return Double.isFinite(value) ? decimalFromSi(value).doubleValue() : value;
    }

    BigDecimal decimalFromSi(double value) {
        return BigDecimal.valueOf(value)
                .multiply(denominator)
                .divide(numerator, DIGITS)
                .subtract(zero, DIGITS);
    }

    /** All units of one kind, the SI unit first where it has one. */
    public static List<Unit> of(Dimension dimension) {
        return Arrays.stream(values()).filter(u -> u.dimension == dimension).toList();
    }

    /** The unit of one kind that is written so, by symbol or alias; capitals count only where they decide. */
    public static Optional<Unit> find(String written, Dimension dimension) {
        String key = written.replaceAll("[\\s\u00b7]", "");
        List<Unit> units = of(dimension);
        return units.stream()
                .filter(u -> u.symbol.equals(key) || u.aliases.contains(key))
                .findFirst()
                .or(() -> units.stream()
                        .filter(u -> u.symbol.equalsIgnoreCase(key)
                                || u.aliases.stream().anyMatch(key::equalsIgnoreCase))
                        .findFirst());
    }
}
