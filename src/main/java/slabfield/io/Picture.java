package slabfield.io;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;

/**
 * A picture of a stranger's, looked at before anything decodes it.
 *
 * <p>It must lie in the scenario's own folder, links followed, be a PNG or JPEG by its first bytes, and be small enough for
 * the memory that its pixels would take. What is then decoded are the very bytes that were looked at.
 */
public sealed interface Picture {
    /** Largest file that is read [byte]. */
    int MOST_BYTES = 32 * 1024 * 1024;

    /** Most pixels, width times height: 160 MB when decoded. */
    long MOST_PIXELS = 40_000_000;

    /** The kinds of picture that are read. */
    enum Format {
        PNG,
        JPEG
    }

    /**
     * A picture that may be decoded.
     *
     * @param bytes of the file; not copied
     * @param width of the picture [pixel]
     * @param height of the picture [pixel]
     */
    record Usable(byte[] bytes, Format format, int width, int height) implements Picture {}

    /**
     * A picture that is not decoded.
     *
     * @param reason in the user's words, with what to do
     */
    record Refused(String reason) implements Picture {}

    /**
     * Looks at a picture beside a scenario.
     *
     * @param folder of the scenario file
     * @param name of the picture as the scenario gives it
     */
    static Picture beside(Path folder, String name) {
        String who = "The picture \"" + FileProblem.shortened(name) + "\" ";
        try {
            Path home = folder.toRealPath(), file = home.resolve(name);
            if (!Files.exists(file)) return new Refused(who + "is not there; put it into the scenario's folder.");
            if (!file.toRealPath().startsWith(home))
                return new Refused(who + "lies outside the scenario's own folder; copy it into that folder.");
            if (!Files.isRegularFile(file)) return new Refused(who + "is no ordinary file; choose a PNG or JPEG.");
            try (InputStream in = Files.newInputStream(file)) {
                return of(in.readNBytes(MOST_BYTES + 1), who);
            }
        } catch (InvalidPathException e) {
            return new Refused(who + "has a name that cannot be a file's; give it another.");
        } catch (IOException e) {
            return new Refused(who + "cannot be read; check that you may open it.");
        }
    }

    /** Looks at a picture's bytes. */
    static Picture of(byte[] bytes) {
        return of(bytes, "The picture ");
    }

    private static Picture of(byte[] bytes, String who) {
        if (bytes.length > MOST_BYTES)
            return new Refused(who + "is larger than " + (MOST_BYTES >> 20) + " MB; save it smaller, for instance as a JPEG.");
        PictureHeader header = PictureHeader.of(bytes);
        if (header.format().isEmpty()) return new Refused(who + "is neither PNG nor JPEG; save it as one of them.");
        if (!header.sound()) return new Refused(who + "is damaged, or of a kind that is not read; save it again as PNG or JPEG.");
        if ((long) header.width() * header.height() > MOST_PIXELS)
            return new Refused(who + "has " + header.width() + " x " + header.height() + " pixels; save it with at most "
                    + MOST_PIXELS / 1_000_000 + " million.");
        return new Usable(bytes, header.format().get(), header.width(), header.height());
    }
}
