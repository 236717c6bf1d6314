package slabfield.io;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Tells a result that this program wrote, which it may replace, from any other file, which it may not. */
public final class OwnFile {
    /** Stands as the first key of every result in JSON, and in a picture's text chunk. */
    public static final String KEY = "writtenBy";

    public static final String NAME = "Slabfield";

    private static final int LOOKED_AT = 400;
    private static final List<String> SIGNS = List.of(
            "\"" + KEY + "\": \"" + NAME + "\"",
            FieldCsv.HEADER,
            HolesCsv.PREDICTED,
            BatchFile.HEADER,
            ReadingsCsv.START,
            ReadingsCsv.START.replace(',', ';'),
            "tEXtSoftware\0" + NAME,
            "<!-- Made by " + NAME + " -->");

    /** A PDF names its maker anywhere in the file. */
    private static final String PDF = "%PDF-";

    private static final String PRODUCER = "/Producer (" + NAME + ")";
    private static final int LARGEST_PDF = 64 * 1024 * 1024;

    private OwnFile() {}

    /** True where the file's beginning shows that it is a result of this program. */
    public static boolean is(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            String start = new String(in.readNBytes(LOOKED_AT), StandardCharsets.ISO_8859_1);
            if (SIGNS.stream().anyMatch(start::contains)) return true;
            if (!start.startsWith(PDF)) return false;
            return (start + new String(in.readNBytes(LARGEST_PDF), StandardCharsets.ISO_8859_1)).contains(PRODUCER);
        } catch (IOException e) {
            return false;
        }
    }
}
