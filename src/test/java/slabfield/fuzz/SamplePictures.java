package slabfield.fuzz;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/** Small pictures of each kind that is read. */
final class SamplePictures {
    private SamplePictures() {}

    static List<byte[]> all() throws IOException {
        List<byte[]> all = new ArrayList<>();
        for (int type : new int[] {
            BufferedImage.TYPE_INT_RGB,
            BufferedImage.TYPE_INT_ARGB,
            BufferedImage.TYPE_BYTE_GRAY,
            BufferedImage.TYPE_BYTE_INDEXED
        }) all.add(written(drawn(type), "png", false));
        for (boolean progressive : new boolean[] {false, true})
            for (int type : new int[] {BufferedImage.TYPE_INT_RGB, BufferedImage.TYPE_BYTE_GRAY})
                all.add(written(drawn(type), "jpeg", progressive));
        return all;
    }

    private static BufferedImage drawn(int type) {
        BufferedImage image = new BufferedImage(24, 17, type);
        for (int y = 0; y < image.getHeight(); y++)
            for (int x = 0; x < image.getWidth(); x++) image.setRGB(x, y, 0xff000000 | x * 7 << 16 | y * 11 << 8);
        return image;
    }

    private static byte[] written(BufferedImage image, String format, boolean progressive) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName(format).next();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ImageOutputStream stream = ImageIO.createImageOutputStream(out)) {
            writer.setOutput(stream);
            ImageWriteParam how = writer.getDefaultWriteParam();
            if (progressive) how.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
            writer.write(null, new IIOImage(image, null, null), how);
        } finally {
            writer.dispose();
        }
        return out.toByteArray();
    }
}
