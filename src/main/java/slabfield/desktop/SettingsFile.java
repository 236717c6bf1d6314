package slabfield.desktop;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import slabfield.desktop.viewmodel.Memory;

/**
 * What is kept between runs, in one small text file. Where the file cannot be read or written the program goes on without
 * it: nothing in it is work of the user's.
 */
final class SettingsFile implements Memory {
    private static final int KEPT = 8;
    private static final String ACCEPTED = "licence.accepted";
    private static final String RECENT = "recent.";
    private static final String KEPT_WORD = "window.";

    private final PropertiesFile kept;
    private final Properties properties;

    SettingsFile(Path file) {
        kept = new PropertiesFile(file);
        properties = kept.properties();
    }

    /** The file of the person at the machine. */
    static SettingsFile ofUser() {
        return new SettingsFile(ofUserPlace());
    }

    /** The folder in which windows keep what is not saved. */
    static Path recoveryOfUser() {
        return ofUserPlace().resolveSibling("recovery");
    }

    private static Path ofUserPlace() {
        return place(System.getProperty("os.name"), System.getenv(), Path.of(System.getProperty("user.home")));
    }

    /** Where each system keeps such files. */
    static Path place(String system, Map<String, String> environment, Path home) {
        String name = system.toLowerCase(Locale.ROOT);
        Path folder;
        if (name.contains("mac")) folder = home.resolve("Library").resolve("Application Support");
        else if (name.contains("win"))
            folder = given(environment, "APPDATA", home.resolve("AppData").resolve("Roaming"));
        else folder = given(environment, "XDG_CONFIG_HOME", home.resolve(".config"));
        return folder.resolve("slabfield").resolve("settings.properties");
    }

    private static Path given(Map<String, String> environment, String key, Path otherwise) {
        String value = environment.getOrDefault(key, "");
        return value.isBlank() ? otherwise : Path.of(value);
    }

    @Override
    public List<Path> recent() {
        List<Path> files = new ArrayList<>();
        for (int k = 0; properties.containsKey(RECENT + k); k++) files.add(Path.of(properties.getProperty(RECENT + k)));
        return files;
    }

    @Override
    public void remember(Path opened) {
        List<Path> files = new ArrayList<>(recent());
        files.remove(opened.toAbsolutePath());
        files.add(0, opened.toAbsolutePath());
        keep(files.subList(0, Math.min(KEPT, files.size())));
    }

    @Override
    public void forget(Path gone) {
        List<Path> files = new ArrayList<>(recent());
        if (files.remove(gone.toAbsolutePath())) keep(files);
    }

    private void keep(List<Path> files) {
        properties.keySet().removeIf(key -> key.toString().startsWith(RECENT));
        for (int k = 0; k < files.size(); k++)
            properties.setProperty(RECENT + k, files.get(k).toString());
        kept.write();
    }

    @Override
    public boolean accepted() {
        return Boolean.parseBoolean(properties.getProperty(ACCEPTED, "false"));
    }

    @Override
    public void accept() {
        properties.setProperty(ACCEPTED, "true");
        kept.write();
    }

    @Override
    public Optional<String> kept(String word) {
        return Optional.ofNullable(properties.getProperty(KEPT_WORD + word));
    }

    @Override
    public void keep(String word, String value) {
        properties.setProperty(KEPT_WORD + word, value);
        kept.write();
    }
}
