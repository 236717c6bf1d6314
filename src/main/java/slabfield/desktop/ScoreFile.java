package slabfield.desktop;

import java.nio.file.Path;
import java.util.Properties;
import slabfield.desktop.viewmodel.lesson.ScoreBook;

/** Scores of lessons in a small text file of the person at the machine. Where it cannot be read or written they last for one run. */
final class ScoreFile implements ScoreBook {
    private static final String RIGHT = ".right";
    private static final String ASKED = ".asked";

    private final PropertiesFile kept;
    private final Properties properties;

    ScoreFile(Path file) {
        kept = new PropertiesFile(file);
        properties = kept.properties();
    }

    /** The file of the person at the machine, beside the settings. */
    static ScoreFile ofUser() {
        Path settings = SettingsFile.place(
                System.getProperty("os.name"), System.getenv(), Path.of(System.getProperty("user.home")));
        return new ScoreFile(settings.resolveSibling("scores.properties"));
    }

    @Override
    public Score of(String lesson) {
        int asked = number(lesson + ASKED);
        return new Score(Math.min(asked, number(lesson + RIGHT)), asked);
    }

    private int number(String key) {
        try {
            return Math.max(0, Integer.parseInt(properties.getProperty(key, "0")));
        } catch (NumberFormatException edited) {
            return 0;
        }
    }

    @Override
    public void keep(String lesson, Score score) {
        properties.setProperty(lesson + RIGHT, String.valueOf(score.right()));
        properties.setProperty(lesson + ASKED, String.valueOf(score.asked()));
        kept.write();
    }

    @Override
    public void clear() {
        properties.clear();
        kept.write();
    }
}
