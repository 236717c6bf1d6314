package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Saving leaves the old file or the new one, and nothing else. */
class SafeFileTest {
    @TempDir
    private Path folder;

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString()).sorted().toList();
        }
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void writesANewFileAndReplacesAnOldOne() throws IOException {
        Path file = folder.resolve("a.json");
        SafeFile.write(file, bytes("one"));
        assertThat(file).hasContent("one");
        SafeFile.write(file, bytes("two"));
        assertThat(file).hasContent("two");
        assertThat(names()).containsExactly("a.json");
    }

    @Test
    void aLinkKeepsPointing() throws IOException {
        Path real = Files.createDirectory(folder.resolve("real")).resolve("a.json");
        Files.writeString(real, "one");
        Path link = Files.createSymbolicLink(folder.resolve("link.json"), real);
        SafeFile.write(link, bytes("two"));
        assertThat(link).isSymbolicLink();
        assertThat(real).hasContent("two");
    }

    @Test
    void failsInPlainWordsAndCleansUp() throws IOException {
        Path missing = folder.resolve("none").resolve("a.json");
        assertThatThrownBy(() -> SafeFile.write(missing, bytes("x")))
                .isInstanceOf(IOException.class)
                .hasMessage("Cannot save " + missing + ": its folder does not exist; make the folder or choose another.");
        assertThatThrownBy(() -> SafeFile.write(folder, bytes("x")))
                .hasMessage("Cannot save " + folder + ": it is a folder; give a file name.");
        assertThat(names()).isEmpty();
    }
}
