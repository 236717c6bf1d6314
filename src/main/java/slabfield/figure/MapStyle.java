package slabfield.figure;

import java.util.Optional;
import slabfield.figure.VacuumScale.Law;
import slabfield.figure.VacuumScale.Range;
import slabfield.figure.VacuumScale.Sense;

/**
 * How a map of the vacuum is to look.
 *
 * @param units of the numbers shown
 * @param sense both signs, or vacuum alone
 * @param law how colour follows pressure
 * @param range of the scale, so that several maps can share it; empty to take it from the field
 * @param isolines whether lines of equal pressure are drawn
 * @param labels whether holes, suction points, openings and isolines carry text
 * @param hatch whether the part that misses the target is hatched
 * @param planNorth whether an arrow names the plan's up as plan north
 * @param fontScale enlarges text, symbols and lines, 1 for print
 * @param monochrome greys alone
 */
public record MapStyle(
        UnitsShown units,
        Sense sense,
        Law law,
        Optional<Range> range,
        boolean isolines,
        boolean labels,
        boolean hatch,
        boolean planNorth,
        double fontScale,
        boolean monochrome) {
    public MapStyle {
        if (!(fontScale >= 0.5 && fontScale <= 4))
            throw new IllegalArgumentException("the font scale must lie between 0.5 and 4");
    }

    /** Signed colours by square root, range from the field, everything shown. */
    public static MapStyle of(UnitsShown units) {
        return new MapStyle(units, Sense.SIGNED, Law.SQUARE_ROOT, Optional.empty(), true, true, true, false, 1, false);
    }

    public MapStyle with(Sense other, Law otherLaw) {
        return new MapStyle(units, other, otherLaw, range, isolines, labels, hatch, planNorth, fontScale, monochrome);
    }

    /** The same with its range locked. */
    public MapStyle with(Range locked) {
        return new MapStyle(
                units, sense, law, Optional.of(locked), isolines, labels, hatch, planNorth, fontScale, monochrome);
    }

    /** The same with or without isolines, labels and the hatch of the part that misses the target. */
    public MapStyle showing(boolean withIsolines, boolean withLabels, boolean withHatch) {
        return new MapStyle(
                units, sense, law, range, withIsolines, withLabels, withHatch, planNorth, fontScale, monochrome);
    }

    public MapStyle withPlanNorth(boolean shown) {
        return new MapStyle(units, sense, law, range, isolines, labels, hatch, shown, fontScale, monochrome);
    }

    public MapStyle withFontScale(double other) {
        return new MapStyle(units, sense, law, range, isolines, labels, hatch, planNorth, other, monochrome);
    }

    public MapStyle withMonochrome(boolean greys) {
        return new MapStyle(units, sense, law, range, isolines, labels, hatch, planNorth, fontScale, greys);
    }
}
