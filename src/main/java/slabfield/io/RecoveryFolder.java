package slabfield.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import slabfield.model.Scenario;

/**
 * Where each open window keeps a copy of what is not saved yet, so that a crash loses nothing that was copied.
 *
 * <p>Each window has one file, replaced whole by {@link SafeFile}. It names the process that owns it by number and start:
 * while that process runs, the file belongs to an open window; after that, it is what a crash left. Two machines that share
 * one home folder take each other's windows for crashes.
 */
public final class RecoveryFolder {
    private static final int VERSION = 1;
    private static final String ENDING = ".recovery.json";
    private static final int LARGEST_FILE = 20 * 1024 * 1024;

    private final Path folder;
    private final Owner self;

    /**
     * @param folder of this user alone; made when something is first kept in it
     */
    public RecoveryFolder(Path folder) {
        this(folder, Owner.thisProcess());
    }

    RecoveryFolder(Path folder, Owner self) {
        this.folder = folder;
        this.self = self;
    }

    /**
     * Work that a window left unsaved when its process ended.
     *
     * @param kept file in the recovery folder
     * @param file where the scenario was read from or saved to; empty where it never was
     * @param time when it was kept
     * @param text of the scenario
     */
    public record Leftover(Path kept, Optional<Path> file, Instant time, String text) {
        /**
         * The house as it was kept.
         *
         * @throws ScenarioProblems where the copy was changed since
         */
        public Scenario scenario() throws ScenarioProblems {
            return ScenarioReader.readUnfinished(text, kept.toString());
        }
    }

    /** One file of the folder; without a text it only says which file a window has open. */
    private record Kept(Path kept, Owner owner, Optional<Path> file, Instant time, Optional<String> text) {}

    /** A place for one more window of this process; what windows left that had nothing unsaved is swept away. */
    public Window window() {
        kept().stream()
                .filter(k -> k.text().isEmpty() && !k.owner().isRunning())
                .forEach(k -> {
                    try {
                        Files.deleteIfExists(k.kept());
                    } catch (IOException leftForNextTime) {
                        return;
                    }
                });
        return new Window(folder.resolve(self.process() + "-" + UUID.randomUUID() + ENDING));
    }

    /** What windows left whose process is gone, the latest first. */
    public List<Leftover> leftovers() {
        return kept().stream()
                .filter(k -> !k.owner().isRunning())
                .flatMap(k -> k.text().map(text -> new Leftover(k.kept(), k.file(), k.time(), text)).stream())
                .sorted(Comparator.comparing(Leftover::time).reversed())
                .toList();
    }

    /** Throws away what a crash left, once the user has it back or does not want it. */
    public void discard(Leftover leftover) throws IOException {
        Files.deleteIfExists(leftover.kept());
    }

    private List<Kept> kept() {
        if (!Files.isDirectory(folder)) return List.of();
        try (Stream<Path> files = Files.list(folder)) {
            List<Kept> all = new ArrayList<>();
            for (Path file : files.filter(f -> f.toString().endsWith(ENDING)).toList())
                read(file).ifPresent(all::add);
            return all;
        } catch (IOException unreadable) {
            return List.of();
        }
    }

    private static Optional<Kept> read(Path file) {
        try {
            if (Files.size(file) > LARGEST_FILE) return Optional.empty();
            JsonNode root =
                    JsonTree.parse(Files.readString(file), file.toString()).root();
            if (root.path("slabfieldRecovery").asInt() != VERSION) return Optional.empty();
            Owner owner = new Owner(root.path("process").asLong(), instant(root, "started"));
            Optional<Path> scenario = text(root, "file").map(Path::of);
            return Optional.of(
                    new Kept(file, owner, scenario, instant(root, "time").orElse(Instant.EPOCH), scenario(root)));
        } catch (IOException | ScenarioProblems | InvalidPathException | DateTimeException notOurs) {
            return Optional.empty();
        }
    }

    private static Optional<String> scenario(JsonNode root) {
        return Optional.of(root.path("scenario")).filter(JsonNode::isObject).map(JsonText::of);
    }

    private static Optional<String> text(JsonNode root, String key) {
        return root.path(key).isTextual() ? Optional.of(root.path(key).asText()) : Optional.empty();
    }

    private static Optional<Instant> instant(JsonNode root, String key) {
        return text(root, key).map(Instant::parse);
    }

    /** What one window keeps. Safe to call from any one thread at a time. */
    public final class Window {
        private final Path kept;

        private Window(Path kept) {
            this.kept = kept;
        }

        /** Notes that everything in the window is saved; the file that it has open is known to other windows. */
        public void saved(Optional<Path> file) throws IOException {
            if (file.isPresent()) keep(file, Optional.empty());
            else close();
        }

        /** Keeps what is not saved yet; whole on the disk when this returns. */
        public void unsaved(Optional<Path> file, Scenario scenario) throws IOException {
            keep(file, Optional.of(ScenarioWriter.tree(scenario)));
        }

        /** True where another window that still runs has the file open. */
        public boolean isOpenElsewhere(Path file) {
            return kept().stream()
                    .anyMatch(k -> !k.kept().equals(kept)
                            && k.owner().isRunning()
                            && k.file().filter(open -> isSame(open, file)).isPresent());
        }

        /** Ends the window in good order: nothing of it is left. */
        public void close() throws IOException {
            Files.deleteIfExists(kept);
        }

        private void keep(Optional<Path> file, Optional<ObjectNode> scenario) throws IOException {
            Files.createDirectories(folder);
            ObjectNode root = JsonNodeFactory.instance.objectNode();
            root.put("slabfieldRecovery", VERSION).put("process", self.process());
            self.started().ifPresent(t -> root.put("started", t.toString()));
            root.put("time", Instant.now().toString());
            file.ifPresent(f -> root.put("file", f.toAbsolutePath().toString()));
            scenario.ifPresent(tree -> root.set("scenario", tree));
            SafeFile.write(kept, JsonText.of(root).getBytes(StandardCharsets.UTF_8));
        }
    }

    private static boolean isSame(Path open, Path file) {
        try {
            return Files.exists(open) && Files.exists(file)
                    ? Files.isSameFile(open, file)
                    : open.equals(file.toAbsolutePath());
        } catch (IOException unreadable) {
            return false;
        }
    }
}
