package slabfield.figure;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;

/**
 * Writes SVG 1.1. Text stays text, set in {@link Typeface#FAMILY} or whatever sans-serif stands in for it, and keeps its width
 * by {@code textLength}. Numbers have three decimals of a point. The same drawing gives the same bytes.
 */
public final class SvgCanvas implements Canvas {
    /** Stands in the first comment of every file, so that the program knows its own. */
    public static final String MAKER = "<!-- Made by Slabfield -->";

    private static final String FONTS = "DejaVu Sans Condensed, DejaVu Sans, Arial, Helvetica, sans-serif";
    private static final int DECIMALS = 3;
    private static final int OPAQUE = 255;

    private final double width;
    private final double height;
    private final double pixelsPerPoint;
    private final StringBuilder body = new StringBuilder();
    private int clips;

    /**
     * An empty page.
     *
     * @param width of the page [points]
     * @param height of the page [points]
     * @param pixelsPerPoint of images in it
     */
    public SvgCanvas(double width, double height, double pixelsPerPoint) {
        this.width = width;
        this.height = height;
        this.pixelsPerPoint = pixelsPerPoint;
    }

    /**
     * The file.
     *
     * @param title what readers for the blind say first
     * @param description what they say of the content
     */
    public String text(String title, String description) {
        String w = number(width), h = number(height);
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + MAKER + "\n<svg xmlns=\"http://www.w3.org/2000/svg\""
                + " xmlns:xlink=\"http://www.w3.org/1999/xlink\" width=\"" + w + "pt\" height=\"" + h
                + "pt\" viewBox=\"0 0 " + w
                + " " + h + "\" xml:lang=\"en\" role=\"img\">\n<title>" + escaped(title) + "</title>\n<desc>"
                + escaped(description)
                + "</desc>\n<rect width=\"" + w + "\" height=\"" + h + "\" fill=\"#ffffff\"/>\n<g font-family=\""
                + FONTS
                + "\" stroke-linecap=\"butt\" stroke-linejoin=\"miter\" stroke-miterlimit=\"4\">\n" + body
                + "</g>\n</svg>\n";
    }

    @Override
    public double width() {
        return width;
    }

    @Override
    public double height() {
        return height;
    }

    @Override
    public double pixelsPerPoint() {
        return pixelsPerPoint;
    }

    @Override
    public void fill(List<double[]> rings, int argb) {
        body.append("<path d=\"")
                .append(outline(rings))
                .append("\" fill-rule=\"evenodd\"")
                .append(paint("fill", argb))
                .append("/>\n");
    }

    @Override
    public void line(double[] line, boolean closed, Pen pen) {
        body.append("<path d=\"")
                .append(path(line, closed))
                .append("\" fill=\"none\"")
                .append(paint("stroke", pen.argb()));
        body.append(" stroke-width=\"").append(number(pen.width())).append('"');
        if (!pen.dash().isEmpty())
            body.append(" stroke-dasharray=\"")
                    .append(pen.dash().stream().map(SvgCanvas::number).collect(Collectors.joining(" ")))
                    .append('"');
        body.append("/>\n");
    }

    @Override
    public void text(String text, double x, double y, Anchor anchor, double rotation, Lettering lettering) {
        if (text.isBlank()) return;
        if (lettering.halo() != 0)
            letters(
                    text,
                    x,
                    y,
                    anchor,
                    rotation,
                    lettering,
                    " aria-hidden=\"true\" fill=\"none\""
                            + paint("stroke", lettering.halo()) + " stroke-width=\"" + number(lettering.haloWidth())
                            + "\" style=\"stroke-linejoin:round\"");
        letters(text, x, y, anchor, rotation, lettering, paint("fill", lettering.argb()));
    }

    private void letters(
            String text, double x, double y, Anchor anchor, double rotation, Lettering lettering, String paint) {
        String side = switch (anchor) {
            case START -> "start";
            case MIDDLE -> "middle";
            case END -> "end";
        };
        body.append("<text x=\"")
                .append(number(x))
                .append("\" y=\"")
                .append(number(y))
                .append("\" text-anchor=\"")
                .append(side);
        body.append("\" font-size=\"").append(number(lettering.size())).append('"');
        if (lettering.bold()) body.append(" font-weight=\"bold\"");
        body.append(" textLength=\"")
                .append(number(textWidth(text, lettering)))
                .append("\" lengthAdjust=\"spacingAndGlyphs\"");
        if (rotation != 0)
            body.append(" transform=\"rotate(")
                    .append(number(Math.toDegrees(rotation)))
                    .append(' ')
                    .append(number(x))
                    .append(' ')
                    .append(number(y))
                    .append(")\"");
        body.append(paint).append('>').append(escaped(text)).append("</text>\n");
    }

    @Override
    public void image(int[] argb, int columns, int rows, Box box) {
        BufferedImage image = new BufferedImage(columns, rows, BufferedImage.TYPE_INT_ARGB);
        image.setRGB(0, 0, columns, rows, argb, 0, columns);
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "png", png);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        body.append("<image x=\"").append(number(box.left())).append("\" y=\"").append(number(box.top()));
        body.append("\" width=\"")
                .append(number(box.width()))
                .append("\" height=\"")
                .append(number(box.height()));
        body.append("\" preserveAspectRatio=\"none\" xlink:href=\"data:image/png;base64,");
        body.append(Base64.getEncoder().encodeToString(png.toByteArray())).append("\"/>\n");
    }

    @Override
    public void clipped(List<double[]> rings, Runnable drawing) {
        String name = "c" + ++clips;
        body.append("<clipPath id=\"")
                .append(name)
                .append("\"><path clip-rule=\"evenodd\" d=\"")
                .append(outline(rings));
        body.append("\"/></clipPath>\n<g clip-path=\"url(#").append(name).append(")\">\n");
        drawing.run();
        body.append("</g>\n");
    }

    private static String outline(List<double[]> rings) {
        return rings.stream().map(r -> path(r, true)).collect(Collectors.joining());
    }

    private static String path(double[] line, boolean closed) {
        StringBuilder d =
                new StringBuilder("M").append(number(line[0])).append(' ').append(number(line[1]));
        for (int i = 2; i < line.length; i += 2)
            d.append('L').append(number(line[i])).append(' ').append(number(line[i + 1]));
        return closed ? d.append('Z').toString() : d.toString();
    }

    private static String paint(String what, int argb) {
        int alpha = argb >>> 24;
        String colour = " " + what + "=\"#" + String.format("%06x", argb & 0xFFFFFF) + "\"";
        return alpha == OPAQUE ? colour : colour + " " + what + "-opacity=\"" + number(alpha / (double) OPAQUE) + "\"";
    }

    static String number(double value) {
        return BigDecimal.valueOf(value)
                .setScale(DECIMALS, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }

    private static String escaped(String text) {
        StringBuilder out = new StringBuilder();
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                default -> out.appendCodePoint(inXml(c) ? c : ' ');
            }
        });
        return out.toString();
    }

    /** Characters that XML 1.0 can hold. */
    private static boolean inXml(int c) {
        return c >= 0x20 && c <= 0xD7FF || c >= 0xE000 && c <= 0xFFFD || c >= 0x10000;
    }
}
