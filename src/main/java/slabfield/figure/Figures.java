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
import slabfield.field.Result;

/** Figures as files. */
public final class Figures {
    private static final double POINTS_PER_INCH = 72;
    private static final double METRES_PER_INCH = 0.0254;
    private static final String PNG = "javax_imageio_png_1.0";

    private Figures() {}

    /**
     * The map as a PNG on white; its height follows from the plan. The same input gives the same bytes on one machine;
     * another machine may have other fonts.
     *
     * @param width in pixels, 300 to 20000
     * @param dpi pixels per inch written into the file; also sets how large text is, 50 to 1200
     */
    public static byte[] png(Result result, MapStyle style, int width, int dpi) {
        if (width < 300 || width > 20000) throw new IllegalArgumentException("a figure is 300 to 20000 pixels wide");
        if (dpi < 50 || dpi > 1200) throw new IllegalArgumentException("a figure has 50 to 1200 pixels per inch");
        double pixelsPerPoint = dpi / POINTS_PER_INCH, points = width / pixelsPerPoint;
        int height = (int) Math.ceil(pixelsPerPoint * VacuumMap.height(scrap(), points, result, style));
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, width, height);
        VacuumMap.draw(new AwtCanvas(graphics, points, height / pixelsPerPoint, pixelsPerPoint), result, style);
        graphics.dispose();
        return encode(image, dpi);
    }

    private static Canvas scrap() {
        return new AwtCanvas(new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics(), 1, 1, 1);
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
