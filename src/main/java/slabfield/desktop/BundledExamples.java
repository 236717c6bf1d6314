package slabfield.desktop;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.jar.JarFile;
import java.util.stream.Stream;
import slabfield.desktop.viewmodel.Example;
import slabfield.io.ScenarioProblems;
import slabfield.io.ScenarioReader;

/** The scenario files that come with the program, in its jar or its folder of classes. */
final class BundledExamples {
    private static final String FOLDER = "slabfield/scenarios/";

    private BundledExamples() {}

    /** All of them, by the order of their file names. */
    static List<Example> all() {
        return names().stream().sorted().map(BundledExamples::read).toList();
    }

    private static List<String> names() {
        try {
            Path home = Path.of(BundledExamples.class.getProtectionDomain().getCodeSource().getLocation().toURI());
            if (Files.isDirectory(home)) return namesInFolder(home.resolve(FOLDER));
            try (JarFile jar = new JarFile(home.toFile())) {
                return jar.stream()
                        .map(entry -> entry.getName())
                        .filter(name -> name.startsWith(FOLDER) && name.endsWith(".json"))
                        .map(name -> name.substring(FOLDER.length()))
                        .toList();
            }
        } catch (URISyntaxException wrong) {
            throw new IllegalStateException(wrong);
        } catch (IOException wrong) {
            throw new UncheckedIOException(wrong);
        }
    }

    private static List<String> namesInFolder(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".json"))
                    .toList();
        }
    }

    private static Example read(String name) {
        try (InputStream in = BundledExamples.class.getResourceAsStream("/" + FOLDER + name)) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return new Example(name, ScenarioReader.read(text, name));
        } catch (IOException wrong) {
            throw new UncheckedIOException(wrong);
        } catch (ScenarioProblems wrong) {
            throw new IllegalStateException(wrong.getMessage(), wrong);
        }
    }
}
