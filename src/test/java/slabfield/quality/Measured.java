package slabfield.quality;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Figures of a run, as lines of Markdown; .ci/quality puts them into docs/quality.md. */
public final class Measured {
    private Measured() {}

    /** Writes the lines of one section. */
    public static void write(String section, List<String> lines) throws IOException {
        Path folder = Files.createDirectories(Path.of("target", "quality"));
        Files.write(folder.resolve(section + ".md"), lines);
    }
}
