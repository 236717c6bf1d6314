package slabfield.figure;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.FontRenderContext;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Optional;
import slabfield.figure.Canvas.Lettering;

/**
 * The letters that every backend shares, so that a figure has the same layout on a screen, in a PNG, an SVG and a PDF, and on
 * every machine: DejaVu Sans Condensed, which comes with the program under its own free licence. Letters that it lacks, such
 * as Chinese, are drawn with the machine's fonts in an image, and as a white square in a PDF.
 */
public final class Typeface {
    /** Name of the family. */
    public static final String FAMILY = "DejaVu Sans Condensed";

    /** Stands for a letter that the font lacks. */
    static final char MISSING = '\u25A1';

    private static final String FOLDER = "/slabfield/fonts/";
    /** How widths are measured: smooth, in fractions of a pixel. */
    static final FontRenderContext METRICS = new FontRenderContext(null, true, true);

    private static final Font REGULAR = load(false);
    private static final Font BOLD = load(true);

    private Typeface() {}

    /** The TrueType file; the caller closes it. */
    public static InputStream file(boolean bold) {
        String name = bold ? "DejaVuSansCondensed-Bold.ttf" : "DejaVuSansCondensed.ttf";
        return Optional.ofNullable(Typeface.class.getResourceAsStream(FOLDER + name))
                .orElseThrow(() -> new IllegalStateException("the program's font " + name + " is missing"));
    }

    private static Font load(boolean bold) {
        try (InputStream in = file(bold)) {
            return Font.createFont(Font.TRUETYPE_FONT, in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (FontFormatException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Width of a line of text [points]. */
    public static double width(String text, Lettering lettering) {
        return font(text, lettering).getStringBounds(text, METRICS).getWidth();
    }

    /** The font for a text; one of the machine's where ours lacks a letter of it. */
    static Font font(String text, Lettering lettering) {
        Font own = lettering.bold() ? BOLD : REGULAR;
        if (own.canDisplayUpTo(text) < 0) return own.deriveFont((float) lettering.size());
        return new Font(Font.SANS_SERIF, lettering.bold() ? Font.BOLD : Font.PLAIN, 1)
                .deriveFont((float) lettering.size());
    }

    /** The text with every letter that the font lacks, and every control character, replaced. */
    static String printable(String text, boolean bold) {
        Font own = bold ? BOLD : REGULAR;
        StringBuilder out = new StringBuilder();
        text.codePoints().forEach(c -> {
            if (Character.isISOControl(c)) out.append(' ');
            else if (own.canDisplay(c)) out.appendCodePoint(c);
            else out.append(MISSING);
        });
        return out.toString();
    }
}
