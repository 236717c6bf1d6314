package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PictureFileTest {
    @TempDir
    Path folder;

    private Path picture(String format) throws IOException {
        Path file = folder.resolve("plan." + format);
        ImageIO.write(new BufferedImage(123, 45, BufferedImage.TYPE_INT_RGB), format, file.toFile());
        return file;
    }

    @ParameterizedTest
    @ValueSource(strings = {"png", "jpg"})
    void theSizeIsReadWithoutDecoding(String format) throws IOException {
        PictureFile.Picture picture = PictureFile.read(picture(format));
        assertThat(picture.name()).isEqualTo("plan." + format);
        assertThat(picture.width()).isEqualTo(123);
        assertThat(picture.height()).isEqualTo(45);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "hello, this is a text and no picture at all", "\u00ff\u00d8\u00ff\u00e0\u0000\u0002"})
    void whatIsNoPictureIsRefusedInWords(String text) throws IOException {
        Path file =
                Files.write(folder.resolve("other.png"), text.getBytes(java.nio.charset.StandardCharsets.ISO_8859_1));
        assertThatThrownBy(() -> PictureFile.read(file))
                .isInstanceOf(IOException.class)
                .hasMessageMatching(".*(neither PNG nor JPEG|is damaged).*");
    }

    @Test
    void aPictureThatWouldFillTheMemoryIsRefusedBeforeItIsDecoded() throws IOException {
        byte[] bytes = Files.readAllBytes(picture("png"));
        ByteBuffer.wrap(bytes).putInt(16, 30_000).putInt(20, 30_000);
        Path file = Files.write(folder.resolve("bomb.png"), bytes);
        assertThatThrownBy(() -> PictureFile.read(file)).hasMessageContaining("30000 x 30000 pixels");
        assertThatThrownBy(() -> PictureFile.read(folder.resolve("gone.png"))).hasMessageContaining("no picture");
    }

    @Test
    void aPictureIsCopiedBesideTheScenario() throws IOException {
        Path to = Files.createDirectory(folder.resolve("house")).resolve("plan.png");
        PictureFile.copy(picture("png"), to);
        assertThat(to).hasSameBinaryContentAs(folder.resolve("plan.png"));
        PictureFile.copy(to, to);
        assertThat(to).exists();
    }

    @Test
    void nothingOutsideTheProjectIsTheScenarios() throws IOException {
        Path project = Files.createDirectory(folder.resolve("project")), outside = picture("png");
        Files.copy(outside, project.resolve("own.png"));
        Files.createSymbolicLink(project.resolve("link.png"), outside);
        Files.createSymbolicLink(project.resolve("way"), folder);
        assertThat(PictureFile.beside(project, "own.png")).isPresent();
        assertThat(PictureFile.beside(Files.createSymbolicLink(folder.resolve("other"), project), "own.png"))
                .isPresent();
        for (String name :
                new String[] {"../plan.png", "link.png", "way/plan.png", outside.toString(), "none.png", "a\0.png"})
            assertThat(PictureFile.beside(project, name)).as(name).isEmpty();
    }
}
