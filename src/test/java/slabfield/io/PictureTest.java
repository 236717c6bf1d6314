package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A picture is looked at before it is decoded, and refused in words where it may do harm. */
class PictureTest {
    @TempDir
    private Path folder;

    private Path project;

    @BeforeEach
    void begin() throws IOException {
        project = Files.createDirectory(folder.resolve("project"));
    }

    static byte[] picture(String format, int width, int height) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            ImageIO.write(new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB), format, out);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
        return out.toByteArray();
    }

    private static String refusal(Picture picture) {
        assertThat(picture).isInstanceOf(Picture.Refused.class);
        return ((Picture.Refused) picture).reason();
    }

    @ParameterizedTest
    @EnumSource(Picture.Format.class)
    void aPictureBesideTheScenarioIsUsable(Picture.Format format) throws IOException {
        byte[] bytes = picture(format.name().toLowerCase(java.util.Locale.ROOT), 70, 30);
        Files.write(Files.createDirectory(project.resolve("plans")).resolve("cellar"), bytes);
        assertThat(Picture.beside(project, "plans/cellar")).isInstanceOfSatisfying(Picture.Usable.class, p -> {
            assertThat(p.format()).isEqualTo(format);
            assertThat(p.width()).isEqualTo(70);
            assertThat(p.height()).isEqualTo(30);
            assertThat(p.bytes()).isEqualTo(bytes);
        });
    }

    @Test
    void nothingOutsideTheProjectIsRead() throws IOException {
        Path outside = Files.write(folder.resolve("secret.png"), picture("png", 2, 2));
        Files.createSymbolicLink(project.resolve("link.png"), outside);
        Files.createSymbolicLink(project.resolve("way"), folder);
        for (String name : new String[] {"../secret.png", "link.png", "way/secret.png", outside.toString()})
            assertThat(refusal(Picture.beside(project, name))).contains("lies outside the scenario's own folder");
    }

    @Test
    void aProjectBehindALinkIsStillTheProject() throws IOException {
        Files.write(project.resolve("a.png"), picture("png", 2, 2));
        Path link = Files.createSymbolicLink(folder.resolve("link"), project);
        assertThat(Picture.beside(link, "a.png")).isInstanceOf(Picture.Usable.class);
    }

    @Test
    void whatIsNoPictureIsRefusedInWords() throws IOException {
        Files.writeString(project.resolve("a.png"), "<svg/>");
        Files.createDirectory(project.resolve("folder.png"));
        assertThat(refusal(Picture.beside(project, "a.png"))).contains("neither PNG nor JPEG");
        assertThat(refusal(Picture.beside(project, "folder.png"))).contains("is no ordinary file");
        assertThat(refusal(Picture.beside(project, "none.png"))).isEqualTo("The picture \"none.png\" is not there; put it into the scenario's folder.");
        assertThat(refusal(Picture.beside(project, "a\0.png"))).contains("a name that cannot be a file's");
        assertThat(refusal(Picture.of(new byte[0]))).contains("neither PNG nor JPEG");
    }

    @Test
    void aFileOrPixelsBeyondTheLimitsAreRefused() {
        assertThat(refusal(Picture.of(new byte[Picture.MOST_BYTES + 1]))).contains("larger than 32 MB");
        byte[] bomb = picture("png", 2, 2);
        ByteBuffer.wrap(bomb).putInt(16, 50_000).putInt(20, 50_000);
        assertThat(refusal(Picture.of(bomb))).isEqualTo("The picture has 50000 x 50000 pixels; save it with at most 40 million.");
    }

    @ParameterizedTest
    @CsvSource({"8, 14", "16, 0", "16, -1", "20, 0", "24, 0x03000000"})
    void aDamagedPngHeaderIsRefused(int at, String value) {
        byte[] png = picture("png", 2, 2);
        ByteBuffer.wrap(png).putInt(at, Integer.decode(value));
        assertThat(refusal(Picture.of(png))).contains("is damaged");
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 10, 30, 200})
    void aJpegCutShortIsRefused(int length) {
        assertThat(refusal(Picture.of(java.util.Arrays.copyOf(picture("jpeg", 60, 60), length)))).contains("is damaged");
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
        assertThat(refusal(Picture.of(out.toByteArray()))).contains("is damaged, or of a kind that is not read");
    }
}
