package slabfield.cli;

import java.util.Locale;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import slabfield.figure.MapStyle;
import slabfield.figure.VacuumScale;

/** How figures look, for every verb that draws some. */
final class FigureOptions {
    private static final double POINTS_PER_INCH = 72;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--width",
            paramLabel = "PX",
            defaultValue = "1800",
            description = "Width of the figure, 300 to 20000 pixels of the PNG (${DEFAULT-VALUE}).")
    private int width;

    @Option(
            names = "--dpi",
            paramLabel = "N",
            defaultValue = "200",
            description =
                    "Pixels per inch of the PNG, 50 to 1200; with --width it sets how large a page and its text are"
                            + " (${DEFAULT-VALUE}).")
    private int dpi;

    @Option(
            names = "--font-scale",
            paramLabel = "X",
            defaultValue = "1",
            description = "Larger or smaller letters, signs and lines in figures, 0.5 to 4 (${DEFAULT-VALUE}).")
    private double fontScale;

    @Option(names = "--grey", description = "Figures in greys alone.")
    private boolean grey;

    @Option(names = "--vacuum-only", description = "Colour vacuum alone, not pressures above the room's.")
    private boolean vacuumOnly;

    @Option(
            names = "--locale",
            paramLabel = "PLACE",
            defaultValue = "en",
            description =
                    "Whose decimal mark numbers in figures and reports have, such as de or fr-CA (${DEFAULT-VALUE}).")
    private String locale;

    /** Refuses what lies outside the bounds. */
    void check() {
        inRange("--width", width, 300, 20000);
        inRange("--dpi", dpi, 50, 1200);
        inRange("--font-scale", fontScale, 0.5, 4);
    }

    private void inRange(String option, Number value, Number least, Number most) {
        if (!(value.doubleValue() >= least.doubleValue() && value.doubleValue() <= most.doubleValue()))
            throw new ParameterException(
                    spec.commandLine(), option + " " + value + ": give a number from " + least + " to " + most + ".");
    }

    int width() {
        return width;
    }

    int dpi() {
        return dpi;
    }

    /** Width of a page of SVG or PDF [points]. */
    double points() {
        return POINTS_PER_INCH * width / dpi;
    }

    Locale locale() {
        return Locale.forLanguageTag(locale.replace('_', '-'));
    }

    MapStyle style(Shown shown) {
        MapStyle style = MapStyle.of(shown.forFigures().in(locale()))
                .withFontScale(fontScale)
                .withMonochrome(grey);
        return vacuumOnly ? style.with(VacuumScale.Sense.VACUUM_ONLY, style.law()) : style;
    }
}
