package slabfield.desktop.viewmodel;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** What the program keeps from one run to the next. */
public interface Memory {
    /** Files opened or saved lately, the latest first. */
    List<Path> recent();

    /** Puts a file at the head of {@link #recent}. */
    void remember(Path file);

    /** Takes a file that is gone out of {@link #recent}. */
    void forget(Path file);

    /** True where the user has accepted {@link Caution#LICENCE}. */
    boolean accepted();

    void accept();

    /** What was kept under a word; empty where nothing was. */
    default Optional<String> kept(String word) {
        return Optional.empty();
    }

    /** Keeps something under a word. */
    default void keep(String word, String value) {
        return;
    }
}
