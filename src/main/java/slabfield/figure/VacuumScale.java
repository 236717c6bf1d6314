package slabfield.figure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import slabfield.field.PressureField;

/**
 * Colour of a pressure under the slab. Both senses are made by straight lines between anchor colours in OKLab, with the
 * lightness in equal steps.
 *
 * <p>SIGNED: white-grey at 0 Pa, blue for vacuum, orange for soil that pushes into the room; a pascal is the same step
 * of colour on either side. VACUUM_ONLY: the stronger the darker; a pressure above the room's has one colour of its
 * own.
 */
public final class VacuumScale {
    /** Which pressures have colours. */
    public enum Sense {
        SIGNED,
        VACUUM_ONLY
    }

    /** How the place on the scale follows the size of the pressure. */
    public enum Law {
        LINEAR,
        SQUARE_ROOT,
        /** Logarithmic with a linear part around 0, as wide as a two-hundredth of the range. */
        SYMMETRIC_LOG
    }

    /**
     * Pressures at the two ends of the scale.
     *
     * @param low most vacuum, below 0 [Pa]
     * @param high least vacuum, or most pressure, above low [Pa]
     */
    public record Range(double low, double high) {
        public Range {
            if (!(low < high) || !(low < 0) || !Double.isFinite(high))
                throw new IllegalArgumentException("a range needs a low end below 0 and below its high end");
        }
    }

    /** A mark on the scale. */
    public record Tick(double pressure, double position) {}

    private static final int TABLE = 1 << 14;
    private static final double LOG_PART = 200;
    private static final int PUSHING = OkLab.of(0.78, 0.13, 62).argb();
    private static final int PUSHING_GREY = OkLab.of(1, 0, 0).argb();

    private static final OkLab[] BLUE = {OkLab.of(0.965, 0, 0), OkLab.of(0.68, 0.115, 246), OkLab.of(0.36, 0.115, 264)};
    private static final OkLab[] ORANGE = {BLUE[0], OkLab.of(0.68, 0.135, 56), OkLab.of(0.36, 0.085, 45)};
    private static final OkLab[] DEEP = {
        OkLab.of(0.965, 0.035, 105), OkLab.of(0.73, 0.085, 172), OkLab.of(0.50, 0.095, 238), OkLab.of(0.26, 0.085, 285)
    };
    private static final OkLab[] GREY = {OkLab.of(0.97, 0, 0), OkLab.of(0.42, 0, 0)};

    private final Sense sense;
    private final Law law;
    private final Range range;
    private final boolean monochrome;
    private final double reach;
    private final double low;
    private final double perPascal;
    private final int[] table = new int[TABLE];

    private VacuumScale(Sense sense, Law law, Range range, boolean monochrome) {
        this.sense = sense;
        this.law = law;
        this.range = range;
        this.monochrome = monochrome;
        this.reach = Math.max(-range.low(), Math.abs(range.high()));
        this.low = range.low();
        this.perPascal = (TABLE - 1) / (range.high() - range.low());
        for (int i = 0; i < TABLE; i++)
            table[i] = colour(range.low() + (range.high() - range.low()) * i / (TABLE - 1.0));
    }

    public static VacuumScale of(Sense sense, Law law, Range range, boolean monochrome) {
        return new VacuumScale(sense, law, range, monochrome);
    }

    /**
     * The round range that holds the pressures of all cells that count.
     *
     * @param unit size of the unit in which the ends are round [Pa]
     */
    public static Range rangeOf(PressureField field, Sense sense, double unit) {
        double low = 0, high = 0;
        for (int i = 0; i < field.pressure().length; i++) {
            if (!field.counts()[i] || Double.isNaN(field.pressure()[i])) continue;
            low = Math.min(low, field.pressure()[i]);
            high = Math.max(high, field.pressure()[i]);
        }
        double lowEnd = -unit * Steps.end(Math.max(low < 0 ? -low : high, 1e-3 * unit) / unit);
        double highEnd = sense == Sense.SIGNED && high > 0 ? unit * Steps.end(high / unit) : 0;
        return new Range(lowEnd, highEnd);
    }

    public Sense sense() {
        return sense;
    }

    public Law law() {
        return law;
    }

    public Range range() {
        return range;
    }

    public boolean monochrome() {
        return monochrome;
    }

    /** Opaque colour of a pressure [Pa]; beyond an end that end's; transparent for NaN. */
    public int argb(double pressure) {
        if (!(pressure <= 0)) {
            if (Double.isNaN(pressure)) return 0;
            if (sense == Sense.VACUUM_ONLY) return monochrome ? PUSHING_GREY : PUSHING;
        }
        int i = (int) ((pressure - low) * perPascal + 0.5);
        return table[i < 0 ? 0 : Math.min(i, TABLE - 1)];
    }

    /** Place of a pressure along the bar: 0 at the low end, 1 at the high end, outside for what lies beyond. */
    public double position(double pressure) {
        double low = bent(range.low()), high = bent(range.high());
        return (bent(pressure) - low) / (high - low);
    }

    /** The pressure at a place along the bar, the inverse of {@link #position} [Pa]. */
    public double pressureAt(double position) {
        double low = bent(range.low()), high = bent(range.high());
        double s = low + position * (high - low), size = Math.abs(s);
        double unbent = switch (law) {
            case LINEAR -> size;
            case SQUARE_ROOT -> size * size;
            case SYMMETRIC_LOG -> Math.expm1(size * Math.log1p(LOG_PART)) / LOG_PART;
        };
        return Math.signum(s) * unbent * reach;
    }

    /**
     * Round pressures to write beside the bar, by rising pressure; 0 among them where it lies on the bar.
     *
     * @param unit size of the unit in which they are round [Pa]
     * @param spacing least distance between two, as part of the bar
     */
    public List<Tick> ticks(double unit, double spacing) {
        List<Tick> kept = new ArrayList<>();
        for (double pressure : candidates(unit, spacing)) {
            double position = position(pressure);
            boolean free = kept.stream().allMatch(k -> Math.abs(k.position() - position) >= spacing);
            if (position > -1e-9 && position < 1 + 1e-9 && free) kept.add(new Tick(pressure, position));
        }
        kept.sort(Comparator.comparingDouble(Tick::pressure));
        return kept;
    }

    /** Round pressures, those first that should be kept before others. */
    private List<Double> candidates(double unit, double spacing) {
        List<Double> all = new ArrayList<>(List.of(0.0, range.low(), range.high()));
        if (law == Law.LINEAR) {
            double step = Steps.atLeast(spacing * (range.high() - range.low()) / unit);
            for (double m : Steps.multiples(step, range.low() / unit, range.high() / unit)) all.add(m * unit);
            return all;
        }
        List<Double> sizes = new ArrayList<>(Steps.between(reach / unit * 1e-4, reach / unit));
        sizes.sort(Comparator.comparingInt(Steps::roughness).thenComparing(Comparator.reverseOrder()));
        for (double size : sizes) {
            all.add(-size * unit);
            all.add(size * unit);
        }
        return all;
    }

    private int colour(double pressure) {
        double t = Math.min(1, Math.abs(bent(pressure)));
        if (monochrome) return along(GREY, t).argb();
        if (sense == Sense.SIGNED) return along(pressure > 0 ? ORANGE : BLUE, t).argb();
        return along(DEEP, t).argb();
    }

    /** Signed place of a pressure, -1 to 1 over the reach. */
    private double bent(double pressure) {
        double size = Math.abs(pressure) / reach;
        double bent = switch (law) {
            case LINEAR -> size;
            case SQUARE_ROOT -> Math.sqrt(size);
            case SYMMETRIC_LOG -> Math.log1p(LOG_PART * size) / Math.log1p(LOG_PART);
        };
        return Math.signum(pressure) * bent;
    }

    /** The colour whose lightness lies t of the way between those of the first and the last anchor. */
    private static OkLab along(OkLab[] anchors, double t) {
        double l = anchors[0].l() + t * (anchors[anchors.length - 1].l() - anchors[0].l());
        int i = 1;
        while (i < anchors.length - 1 && l < anchors[i].l()) i++;
        OkLab from = anchors[i - 1], to = anchors[i];
        return from.towards(to, (from.l() - l) / (from.l() - to.l()));
    }
}
