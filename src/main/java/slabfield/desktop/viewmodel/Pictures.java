package slabfield.desktop.viewmodel;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import slabfield.io.PictureFile;
import slabfield.model.Scenario;
import slabfield.model.Underlay;

/** Pictures to trace: each lies in the folder of its scenario; until that has one, where the user chose it. */
public final class Pictures {
    /**
     * A picture as it lies in its file.
     *
     * @param width [pixels]
     * @param height [pixels]
     */
    public record Loaded(byte[] bytes, int width, int height) {}

    private final Document document;
    private final TaskRunner runner;
    private final Consumer<String> trouble;
    private final Map<String, Path> chosen = new HashMap<>();

    Pictures(Document document, TaskRunner runner, Consumer<String> trouble) {
        this.document = document;
        this.runner = runner;
        this.trouble = trouble;
    }

    /** Lays a picture under the drawing, after a look whether it is one. */
    public void choose(Path file) {
        run(() -> PictureFile.read(file), picture -> {
            chosen.put(picture.name(), file);
            document.edit(Edit.of(
                    "lay the picture " + picture.name(), s -> Tracing.laid(s, picture.name(), picture.width())));
        });
    }

    /** Reads a picture and makes something of it, away from the thread of the screen. */
    public <T> void load(String name, Function<Loaded, T> decode, BiConsumer<Loaded, T> show) {
        Optional<Path> file = place(name);
        if (file.isEmpty()) {
            trouble.accept("The picture \u201c" + name
                    + "\u201d is not beside the scenario; put it there and open the scenario again.");
            return;
        }
        record Made<T>(Loaded loaded, T value) {}
        run(
                () -> {
                    PictureFile.Picture picture = PictureFile.read(file.get());
                    Loaded loaded = new Loaded(picture.bytes(), picture.width(), picture.height());
                    return new Made<>(loaded, decode.apply(loaded));
                },
                made -> show.accept(made.loaded(), made.value()));
    }

    private Optional<Path> place(String name) {
        Optional<Path> beside = document.file()
                .get()
                .flatMap(f -> PictureFile.beside(f.toAbsolutePath().getParent(), name));
        return beside.or(() -> Optional.ofNullable(chosen.get(name)));
    }

    /** Copies the picture of a scenario into the folder that it is saved to, unless it lies there. */
    void bringAlong(Scenario scenario, Path file) throws IOException {
        Optional<String> name = scenario.plan().underlay().map(Underlay::picture);
        if (name.isEmpty()) return;
        Optional<Path> from = place(name.get());
        if (from.isPresent()) PictureFile.copy(from.get(), file.toAbsolutePath().resolveSibling(name.get()));
    }

    private interface Reading<T> {
        T read() throws IOException;
    }

    private <T> void run(Reading<T> reading, Consumer<T> show) {
        runner.run(progress -> reading.read(), new TaskRunner.Outcome<T>() {
            @Override
            public void done(T value) {
                show.accept(value);
            }

            @Override
            public void failed(Throwable reason) {
                trouble.accept(reason instanceof IOException ? reason.getMessage() : "The picture cannot be shown.");
            }
        });
    }
}
