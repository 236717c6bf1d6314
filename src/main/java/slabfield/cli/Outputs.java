package slabfield.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import slabfield.io.OwnFile;
import slabfield.io.SafeFile;

/** Files that the user asked for, by option; refused before anything is solved where writing one would lose another. */
final class Outputs {
    /** Stands for standard output. */
    static final Path STANDARD = Path.of("-");

    private final Map<String, Path> files = new LinkedHashMap<>();

    /** Adds what an option asks for, if it was given. */
    Outputs add(String option, Optional<Path> file) {
        file.ifPresent(f -> files.put(option, f));
        return this;
    }

    /**
     * Looks at each file before the work starts.
     *
     * @param source file that is read, which is never written to
     * @param force whether a file that this program did not write may be replaced
     */
    void check(Path source, boolean force) throws Refusal {
        List<String> reasons = new ArrayList<>();
        Map<Path, String> seen = new HashMap<>();
        files.forEach((option, file) -> {
            if (file.equals(STANDARD)) return;
            refusal(file, source, force).ifPresent(why -> reasons.add(option + " " + file + ": " + why));
            String other = seen.put(file.toAbsolutePath().normalize(), option);
            if (other != null) reasons.add(option + " " + file + ": " + other + " is to go there too; give two names.");
        });
        if (!reasons.isEmpty()) throw new Refusal(Exit.CANNOT_WRITE, reasons);
    }

    private static Optional<String> refusal(Path file, Path source, boolean force) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder))
            return Optional.of("its folder does not exist; make the folder or choose another.");
        if (!Files.exists(file)) return Optional.empty();
        if (!Files.isRegularFile(file)) return Optional.of("this is no ordinary file; give a file name.");
        if (same(file, source)) return Optional.of("this is the scenario itself; give another name.");
        return force || OwnFile.is(file)
                ? Optional.empty()
                : Optional.of("there is a file that this program did not write; give another name, or --force.");
    }

    private static boolean same(Path file, Path source) {
        try {
            return Files.exists(source) && Files.isSameFile(file, source);
        } catch (IOException e) {
            return false;
        }
    }

    /** Writes a text to a file, or to standard output for "-". */
    static void write(Path file, String text, PrintWriter out) throws Refusal {
        if (!file.equals(STANDARD)) {
            write(file, text.getBytes(StandardCharsets.UTF_8));
            return;
        }
        out.print(text);
        if (out.checkError()) throw new Refusal(Exit.CANNOT_WRITE, "Cannot write to standard output.");
    }

    static void write(Path file, byte[] bytes) throws Refusal {
        try {
            SafeFile.write(file, bytes);
        } catch (IOException e) {
            throw new Refusal(Exit.CANNOT_WRITE, e.getMessage());
        }
    }
}
