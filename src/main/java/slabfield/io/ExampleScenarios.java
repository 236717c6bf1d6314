package slabfield.io;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import slabfield.model.Scenario;

/** The houses that come with the program. */
public final class ExampleScenarios {
    private static final String FOLDER = "/slabfield/scenarios/";

    private ExampleScenarios() {}

    /**
     * One of them.
     *
     * @param file its file name
     * @param scenario what it draws
     * @param text of the file
     */
    public record Example(String file, Scenario scenario, String text) {
        public byte[] bytes() {
            return text.getBytes(StandardCharsets.UTF_8);
        }
    }

    /** All of them, in the order in which they are best met. */
    public static List<Example> all() {
        return files().stream().map(ExampleScenarios::read).toList();
    }

    /** Their file names, in the same order; none of them is read. */
    public static List<String> files() {
        return text("/slabfield/examples.txt")
                .lines()
                .filter(line -> !line.isBlank())
                .toList();
    }

    /** A house of the lessons, by its file name. */
    public static Scenario lesson(String file) {
        try {
            return ScenarioReader.read(text("/slabfield/lessons/" + file), file);
        } catch (ScenarioProblems e) {
            throw new IllegalStateException("a lesson's house has problems", e);
        }
    }

    /** The one with a file name that {@link #files} lists. */
    public static Example read(String file) {
        try {
            String text = text(FOLDER + file);
            return new Example(file, ScenarioReader.read(text, file), text);
        } catch (ScenarioProblems e) {
            throw new IllegalStateException("an example that comes with the program has problems", e);
        }
    }

    private static String text(String resource) {
        try (InputStream in = ExampleScenarios.class.getResourceAsStream(resource)) {
            if (in == null) throw new IllegalStateException(resource + " is missing from the program");
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
