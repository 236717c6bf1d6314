package slabfield.desktop;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;
import slabfield.io.SafeFile;

/**
 * Words kept between runs in a small text file. Where it cannot be read it is empty, and where it cannot be written the words
 * last for one run: nothing in it is work of the user's.
 */
final class PropertiesFile {
    private final Path file;
    private final Properties properties = new Properties();

    PropertiesFile(Path file) {
        this.file = file;
        if (!Files.isRegularFile(file)) return;
        try (Reader reader = Files.newBufferedReader(file)) {
            properties.load(reader);
        } catch (IOException | IllegalArgumentException unreadable) {
            properties.clear();
        }
    }

    /** The words; a change lasts only when {@link #write} follows. */
    Properties properties() {
        return properties;
    }

    void write() {
        try {
            Files.createDirectories(file.getParent());
            StringWriter text = new StringWriter();
            properties.store(text, null);
            SafeFile.write(file, text.toString().getBytes(StandardCharsets.UTF_8));
        } catch (IOException notKept) {
            return;
        }
    }
}
