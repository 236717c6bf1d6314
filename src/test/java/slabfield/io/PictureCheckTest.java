package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A picture is looked at before it is decoded, and refused in words where it may do harm. */
class PictureCheckTest {
    static byte[] picture(String format, int width, int height) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            ImageIO.write(new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB), format, out);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        return out.toByteArray();
    }

    private static String refusal(byte[] bytes) {
        PictureCheck check = PictureCheck.of(bytes, "plan");
        assertThat(check).isInstanceOf(PictureCheck.Refused.class);
        return ((PictureCheck.Refused) check).reason();
    }

    @ParameterizedTest
    @EnumSource(PictureCheck.Format.class)
    void aPictureIsUsableWithTheSizeOfItsHeader(PictureCheck.Format format) {
        byte[] bytes = picture(format.name().toLowerCase(Locale.ROOT), 70, 30);
        assertThat(PictureCheck.of(bytes, "plan")).isEqualTo(new PictureCheck.Usable(bytes, format, 70, 30));
    }

    @Test
    void whatIsNoPictureIsRefusedInWords() {
        assertThat(refusal("<svg/>".getBytes(StandardCharsets.UTF_8)))
                .isEqualTo("The picture \"plan\" is neither PNG nor JPEG; save it as one of them.");
        assertThat(refusal(new byte[0])).contains("neither PNG nor JPEG");
    }

    @Test
    void aFileOrPixelsBeyondTheLimitsAreRefused() {
        assertThat(refusal(new byte[PictureCheck.MOST_BYTES + 1])).contains("larger than 32 MB");
        byte[] bomb = picture("png", 2, 2);
        ByteBuffer.wrap(bomb).putInt(16, 50_000).putInt(20, 50_000);
        assertThat(refusal(bomb))
                .isEqualTo("The picture \"plan\" has 50000 x 50000 pixels; save it with at most 40 million.");
    }

    @ParameterizedTest
    @CsvSource({"8, 14", "16, 0", "16, -1", "20, 0", "24, 0x03000000"})
    void aDamagedPngHeaderIsRefused(int at, String value) {
        byte[] png = picture("png", 2, 2);
        ByteBuffer.wrap(png).putInt(at, Integer.decode(value));
        assertThat(refusal(png)).contains("is damaged");
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 10, 30, 200})
    void aJpegCutShortIsRefused(int length) {
        assertThat(refusal(Arrays.copyOf(picture("jpeg", 60, 60), length))).contains("is damaged");
    }

    @Test
    void aJpegOfEndlessScansIsRefused() {
        byte[] jpeg = picture("jpeg", 8, 8);
        int scan = 0;
        while (jpeg[scan] != (byte) 0xff || jpeg[scan + 1] != (byte) 0xda) scan++;
        int end = jpeg.length - 2;
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(jpeg, 0, end);
        for (int k = 0; k < 60; k++) out.write(jpeg, scan, end - scan);
        out.write(jpeg, end, 2);
        assertThat(refusal(out.toByteArray())).contains("is damaged, or of a kind that is not read");
    }
}
