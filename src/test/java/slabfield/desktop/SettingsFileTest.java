package slabfield.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SettingsFileTest {
    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void place() {
        file = folder.resolve("deep").resolve("settings.properties");
    }

    @Test
    void isReadBackByTheNextRun() {
        SettingsFile settings = new SettingsFile(file);
        assertThat(settings.accepted()).isFalse();
        settings.accept();
        settings.remember(folder.resolve("a.json"));
        settings.remember(folder.resolve("b b.json"));
        settings.remember(folder.resolve("a.json"));
        SettingsFile next = new SettingsFile(file);
        assertThat(next.accepted()).isTrue();
        assertThat(next.recent()).containsExactly(folder.resolve("a.json"), folder.resolve("b b.json"));
    }

    @Test
    void keepsTheLatestEightFilesAndForgetsThoseThatAreGone() {
        SettingsFile settings = new SettingsFile(file);
        for (int k = 0; k < 12; k++) settings.remember(folder.resolve(k + ".json"));
        assertThat(settings.recent())
                .hasSize(8)
                .startsWith(folder.resolve("11.json"))
                .endsWith(folder.resolve("4.json"));
        settings.forget(folder.resolve("9.json"));
        assertThat(new SettingsFile(file).recent()).hasSize(7).doesNotContain(folder.resolve("9.json"));
    }

    @Test
    void goesOnWithoutAFileThatIsDamagedOrCannotBeWritten() throws IOException {
        Files.createDirectories(file.getParent());
        Files.writeString(file, "recent.0=\\uZZZZ");
        SettingsFile damaged = new SettingsFile(file);
        assertThat(damaged.recent()).isEmpty();
        SettingsFile unwritable = new SettingsFile(file.resolve("below a file").resolve("settings.properties"));
        unwritable.accept();
        assertThat(unwritable.accepted()).isTrue();
    }

    @Test
    void standsWhereEachSystemKeepsSuchFiles() {
        Path home = Path.of("home");
        assertThat(SettingsFile.place("Linux", Map.of(), home))
                .isEqualTo(Path.of("home", ".config", "slabfield", "settings.properties"));
        assertThat(SettingsFile.place("Linux", Map.of("XDG_CONFIG_HOME", "conf"), home))
                .isEqualTo(Path.of("conf", "slabfield", "settings.properties"));
        assertThat(SettingsFile.place("Mac OS X", Map.of(), home))
                .isEqualTo(Path.of("home", "Library", "Application Support", "slabfield", "settings.properties"));
        assertThat(SettingsFile.place("Windows 11", Map.of("APPDATA", "roam"), home))
                .isEqualTo(Path.of("roam", "slabfield", "settings.properties"));
    }
}
