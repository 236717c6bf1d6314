package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
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
                .hasMessage(
                        "Cannot save " + missing + ": its folder does not exist; make the folder or choose another.");
        assertThatThrownBy(() -> SafeFile.write(folder, bytes("x")))
                .hasMessage("Cannot save " + folder + ": it is a folder; give a file name.");
        assertThat(names()).isEmpty();
    }

    @Test
    void keepsTheLastVersionsOfWork() throws IOException {
        Path file = folder.resolve("a.json");
        for (String text : List.of("one", "two", "three", "four", "five"))
            SafeFile.writeKeepingVersions(file, bytes(text));
        assertThat(file).hasContent("five");
        assertThat(SafeFile.versions(file))
                .extracting(v -> Files.readString(v))
                .containsExactly("four", "three", "two");
        assertThat(names()).containsExactly("a.json", "a.json.1~", "a.json.2~", "a.json.3~");
    }

    @Test
    void keepsThePermissionsOfTheFile() throws IOException {
        Path file = Files.writeString(folder.resolve("a.json"), "one");
        assumeTrue(
                Files.getFileAttributeView(file, PosixFileAttributeView.class) != null,
                "no such permissions on this disk");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw----"));
        SafeFile.write(file, bytes("two"));
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-rw----");
    }

    @Test
    void aWriteProtectedFileIsNotReplaced() throws IOException {
        Path file = Files.writeString(folder.resolve("a.json"), "one");
        assertThat(file.toFile().setReadOnly()).isTrue();
        assertThatThrownBy(() -> SafeFile.write(file, bytes("two")))
                .hasMessage("Cannot save " + file
                        + ": the file is write-protected; save it under another name, or take the protection off.");
        assertThat(file).hasContent("one");
        assertThat(names()).containsExactly("a.json");
    }

    @Test
    void aPlaceThatCannotBeIsExplained() throws IOException {
        Path file = Files.writeString(folder.resolve("a.json"), "one");
        assertThatThrownBy(() -> SafeFile.write(file.resolve("b.json"), bytes("x")))
                .hasMessageContaining("\"a.json\" is a file, not a folder");
        Path longName = folder.resolve("x".repeat(250));
        assertThatThrownBy(() -> SafeFile.write(longName, bytes("x"))).hasMessageContaining("its name is too long");
    }

    @Test
    void partsOfAnEarlierCrashAreSweptAndNoOthers() throws IOException {
        Path old = Files.writeString(folder.resolve(".a.json.1.part"), "half"),
                fresh = Files.writeString(folder.resolve(".a.json.2.part"), "half");
        Path others = Files.writeString(folder.resolve(".b.json.1.part"), "half");
        FileTime hourAgo = FileTime.from(Instant.now().minus(Duration.ofHours(1)));
        Files.setLastModifiedTime(old, hourAgo);
        Files.setLastModifiedTime(others, hourAgo);
        SafeFile.write(folder.resolve("a.json"), bytes("one"));
        assertThat(old).doesNotExist();
        assertThat(fresh).exists();
        assertThat(others).exists();
    }
}
