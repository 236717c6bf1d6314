package slabfield.figure;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOInvalidTreeException;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import slabfield.field.Result;

/** Figures as files. */
public final class Figures {
    private static final double POINTS_PER_INCH = 72;
    private static final double METRES_PER_INCH = 0.0254;
    /** Pixels of an image in an SVG to the point: 150 to the inch. */
    private static final double SVG_RASTER = 150 / POINTS_PER_INCH;

    private static final String PNG = "javax_imageio_png_1.0";

    private Figures() {}

    /** Draws a figure in a box of a window, which says title and stamp itself: a chart without its heading. */
    public static void panel(Figure figure, Canvas canvas, Box box) {
        if (figure instanceof Chart chart) chart.drawPanel(canvas, box);
        else figure.draw(canvas);
    }

    /** See {@link #png(Figure, int, int)}. */
    public static byte[] png(Result result, MapStyle style, int width, int dpi) {
        return png(new MapFigure(result, style), width, dpi);
    }

    /**
     * A figure as a PNG on white; its height follows from what it shows. The same input gives the same bytes, save where a
     * text has letters that {@link Typeface} lacks and the machine's fonts stand in.
     *
     * @param width in pixels, 300 to 20000
     * @param dpi pixels per inch written into the file; also sets how large text is, 50 to 1200
     */
    public static byte[] png(Figure figure, int width, int dpi) {
        if (width < 300 || width > 20000) throw new IllegalArgumentException("a figure is 300 to 20000 pixels wide");
        if (dpi < 50 || dpi > 1200) throw new IllegalArgumentException("a figure has 50 to 1200 pixels per inch");
        double pixelsPerPoint = dpi / POINTS_PER_INCH, points = width / pixelsPerPoint;
        int height = (int) Math.ceil(pixelsPerPoint * figure.height(scrap(), points));
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, width, height);
        figure.draw(new AwtCanvas(graphics, points, height / pixelsPerPoint, pixelsPerPoint));
        graphics.dispose();
        return encode(image, dpi);
    }

    /**
     * A figure as SVG, with text as text.
     *
     * @param width of the page, 100 to 5000 [points]
     */
    public static String svg(Figure figure, double width) {
        SvgCanvas canvas = new SvgCanvas(checked(width), figure.height(scrap(), width), SVG_RASTER);
        figure.draw(canvas);
        return canvas.text(figure.title(), figure.description());
    }

    /**
     * A figure as a PDF of one page, with text as text and its font embedded.
     *
     * @param width of the page, 100 to 5000 [points]
     */
    public static byte[] pdf(Figure figure, double width) {
        double height = figure.height(scrap(), checked(width));
        try (PDDocument document = new PDDocument()) {
            PdfFile.describe(document, figure.title(), figure.description());
            PDPage page = new PDPage(new PDRectangle((float) width, (float) height));
            document.addPage(page);
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                figure.draw(new PdfCanvas(new PdfLetters(document), content, height, new Box(0, 0, width, height)));
            }
            return PdfFile.bytes(document);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static double checked(double width) {
        if (!(width >= 100 && width <= 5000)) throw new IllegalArgumentException("a figure is 100 to 5000 points wide");
        return width;
    }

    /** A canvas to measure on; nothing drawn on it is kept. */
    public static Canvas scrap() {
        return new SvgCanvas(1, 1, 1);
    }

    private static byte[] encode(BufferedImage image, int dpi) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (var out = ImageIO.createImageOutputStream(bytes)) {
            writer.setOutput(out);
            IIOMetadata data = writer.getDefaultImageMetadata(new ImageTypeSpecifier(image), null);
            data.mergeTree(PNG, resolution(dpi));
            writer.write(new IIOImage(image, null, data));
        } catch (IIOInvalidTreeException wrong) {
            throw new IllegalStateException(wrong);
        } catch (IOException wrong) {
            throw new UncheckedIOException(wrong);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    /** The text chunk that names this program. */
    private static IIOMetadataNode maker() {
        IIOMetadataNode entry = new IIOMetadataNode("tEXtEntry");
        entry.setAttribute("keyword", "Software");
        entry.setAttribute("value", "Slabfield");
        IIOMetadataNode text = new IIOMetadataNode("tEXt");
        text.appendChild(entry);
        return text;
    }

    private static IIOMetadataNode resolution(int dpi) {
        String perMetre = Long.toString(Math.round(dpi / METRES_PER_INCH));
        IIOMetadataNode size = new IIOMetadataNode("pHYs");
        size.setAttribute("pixelsPerUnitXAxis", perMetre);
        size.setAttribute("pixelsPerUnitYAxis", perMetre);
        size.setAttribute("unitSpecifier", "meter");
        IIOMetadataNode root = new IIOMetadataNode(PNG);
        root.appendChild(size);
        root.appendChild(maker());
        return root;
    }
}
