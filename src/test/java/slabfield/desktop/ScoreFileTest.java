package slabfield.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import slabfield.desktop.viewmodel.lesson.ScoreBook.Score;

class ScoreFileTest {
    @TempDir
    Path folder;

    @Test
    void scoresLastUntilTheyAreCleared() {
        Path file = folder.resolve("below").resolve("scores.properties");
        new ScoreFile(file).keep("broken tile", new Score(2, 3));
        ScoreFile again = new ScoreFile(file);
        assertThat(again.of("broken tile")).isEqualTo(new Score(2, 3));
        assertThat(again.of("sealing")).isEqualTo(Score.NONE);
        again.clear();
        assertThat(new ScoreFile(file).of("broken tile")).isEqualTo(Score.NONE);
    }

    @Test
    void aFileThatSomebodyEditedDoesNoHarm() throws IOException {
        Path file = folder.resolve("scores.properties");
        Files.writeString(file, "a.right=nine\na.asked=3\nb.right=7\nb.asked=-2\n");
        assertThat(new ScoreFile(file).of("a")).isEqualTo(new Score(0, 3));
        assertThat(new ScoreFile(file).of("b")).isEqualTo(Score.NONE);
    }
}
