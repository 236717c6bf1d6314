package slabfield.desktop.viewmodel;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import slabfield.io.RecoveryFolder;
import slabfield.io.RecoveryFolder.Leftover;
import slabfield.model.Scenario;

/**
 * Keeps what is not saved in a file of this window's own, never over the user's, soon after every change; and offers what
 * windows left behind that ended without closing. Where the file cannot be written the program goes on without it.
 */
public final class Recovery {
    /**
     * What an earlier window left behind.
     *
     * @param file that it had open, if it had one
     * @param time of the last change
     * @param kept where it lies
     */
    public record Left(Optional<Path> file, Instant time, Leftover kept) {}

    private record Unsaved(Optional<Path> file, Scenario scenario) {}

    private final RecoveryFolder folder;
    private final RecoveryFolder.Window window;
    private final TaskRunner runner;
    private final long quiet;
    private final AtomicReference<Optional<Unsaved>> waiting = new AtomicReference<>(Optional.empty());
    private final ObservableList<Left> leftovers = FXCollections.observableArrayList();

    /**
     * @param runner writes, one after the other
     * @param quiet how long changes are gathered before they are written [ms]
     */
    public Recovery(RecoveryFolder folder, TaskRunner runner, long quiet) {
        this.folder = folder;
        this.runner = runner;
        this.quiet = quiet;
        this.window = folder.window();
        leftovers.setAll(folder.leftovers().stream()
                .map(l -> new Left(l.file(), l.time(), l))
                .toList());
    }

    /** Watches a document. */
    void watch(Document document) {
        document.scenario().addListener((o, was, is) -> {
            if (document.dirty().get()) keep(new Unsaved(document.file().get(), is));
        });
        document.dirty().addListener((o, was, is) -> {
            if (!is) saved(document.file().get());
        });
        document.opened().addListener((o, was, is) -> saved(document.file().get()));
    }

    private void keep(Unsaved unsaved) {
        if (waiting.getAndSet(Optional.of(unsaved)).isPresent()) return;
        runner.run(
                progress -> {
                    Thread.sleep(quiet);
                    Optional<Unsaved> latest = waiting.getAndSet(Optional.empty());
                    if (latest.isPresent())
                        window.unsaved(latest.get().file(), latest.get().scenario());
                    return true;
                },
                new Quietly());
    }

    private void saved(Optional<Path> file) {
        waiting.set(Optional.empty());
        runner.run(
                progress -> {
                    window.saved(file);
                    return true;
                },
                new Quietly());
    }

    private static final class Quietly implements TaskRunner.Outcome<Boolean> {
        @Override
        public void done(Boolean value) {
            return;
        }

        @Override
        public void failed(Throwable notKept) {
            return;
        }
    }

    /** What earlier windows left behind, the latest first. */
    public ObservableList<Left> leftovers() {
        return leftovers;
    }

    public void discard(Left leftover) {
        leftovers.remove(leftover);
        try {
            folder.discard(leftover.kept());
        } catch (IOException stays) {
            return;
        }
    }

    /** True where another window that runs has the file open. */
    boolean isOpenElsewhere(Path file) {
        return window.isOpenElsewhere(file);
    }

    /** The window closes in good order. */
    public void close() {
        try {
            window.close();
        } catch (IOException stays) {
            return;
        }
    }
}
