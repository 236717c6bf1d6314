package slabfield.desktop.view;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import javafx.scene.image.WritableImage;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/** Pictures with at most 256 colours, which keep the documents small. */
final class SmallPng {
    private static final int MOST = 256;

    private SmallPng() {}

    static byte[] of(WritableImage image) throws IOException {
        int width = (int) image.getWidth(), height = (int) image.getHeight();
        int[] argb = new int[width * height];
        image.getPixelReader()
                .getPixels(0, 0, width, height, javafx.scene.image.PixelFormat.getIntArgbInstance(), argb, 0, width);
        int[] colours = frequent(argb);
        BufferedImage small = new BufferedImage(
                width,
                height,
                BufferedImage.TYPE_BYTE_INDEXED,
                new IndexColorModel(8, colours.length, colours, 0, false, -1, java.awt.image.DataBuffer.TYPE_BYTE));
        Map<Integer, Integer> nearest = new HashMap<>();
        for (int i = 0; i < argb.length; i++)
            small.getRaster()
                    .setSample(
                            i % width,
                            i / width,
                            0,
                            nearest.computeIfAbsent(argb[i] & 0xffffff, c -> nearest(c, colours)));
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        ImageWriteParam tight = writer.getDefaultWriteParam();
        tight.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        tight.setCompressionQuality(0);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ImageOutputStream stream = ImageIO.createImageOutputStream(out)) {
            writer.setOutput(stream);
            writer.write(null, new IIOImage(small, null, null), tight);
        }
        writer.dispose();
        return out.toByteArray();
    }

    /** The mean colour of each of the most used cells of a coarse colour cube. */
    private static int[] frequent(int[] argb) {
        Map<Integer, long[]> cells = new HashMap<>();
        for (int c : argb) {
            int cell = (c >> 16 & 0xf8) << 16 | (c >> 8 & 0xf8) << 8 | c & 0xf8;
            long[] sum = cells.computeIfAbsent(cell, k -> new long[4]);
            sum[0]++;
            sum[1] += c >> 16 & 255;
            sum[2] += c >> 8 & 255;
            sum[3] += c & 255;
        }
        return cells.values().stream()
                .sorted((a, b) -> Long.compare(b[0], a[0]))
                .limit(MOST)
                .mapToInt(s -> (int) (s[1] / s[0]) << 16 | (int) (s[2] / s[0]) << 8 | (int) (s[3] / s[0]))
                .toArray();
    }

    private static int nearest(int colour, int[] colours) {
        int best = 0;
        long least = Long.MAX_VALUE;
        for (int i = 0; i < colours.length; i++) {
            long r = (colour >> 16 & 255) - (colours[i] >> 16 & 255),
                    g = (colour >> 8 & 255) - (colours[i] >> 8 & 255),
                    b = (colour & 255) - (colours[i] & 255);
            long d = 2 * r * r + 4 * g * g + 3 * b * b;
            if (d < least) {
                least = d;
                best = i;
            }
        }
        return best;
    }
}
