package slabfield.desktop.view;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.nio.IntBuffer;
import java.util.function.Consumer;
import javafx.scene.image.Image;
import javafx.scene.image.PixelBuffer;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import slabfield.figure.AwtCanvas;
import slabfield.figure.Canvas;

/** Drawings as images for the screen. */
final class Pictures {
    /** Pixels of the screen to a point of the page. */
    static final double PIXELS_PER_POINT = 96.0 / 72;

    private Pictures() {}

    /**
     * An image of a drawing.
     *
     * @param width of the page [points]
     * @param height of the page [points]
     * @param fine pixels of the image to one of the screen
     */
    static Image of(double width, double height, double fine, Consumer<Canvas> drawing) {
        double pixels = fine * PIXELS_PER_POINT;
        int columns = Math.max(1, (int) Math.round(width * pixels)),
                rows = Math.max(1, (int) Math.round(height * pixels));
        BufferedImage image = new BufferedImage(columns, rows, BufferedImage.TYPE_INT_ARGB_PRE);
        Graphics2D graphics = image.createGraphics();
        drawing.accept(new AwtCanvas(graphics, width, height, pixels));
        graphics.dispose();
        int[] argb = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        return new WritableImage(
                new PixelBuffer<>(columns, rows, IntBuffer.wrap(argb), PixelFormat.getIntArgbPreInstance()));
    }
}
