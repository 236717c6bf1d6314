package slabfield.io;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;

/** Pictures that a plan is traced from: PNG or JPEG, of a size that can be held, told by their first bytes. */
public final class PictureFile {
    private PictureFile() {}

    /**
     * A picture, not yet decoded.
     *
     * @param name of its file, without a folder
     * @param bytes of the file
     * @param width [pixels]
     * @param height [pixels]
     */
    public record Picture(String name, byte[] bytes, int width, int height) {}

    /**
     * Reads a picture and its size, without decoding it.
     *
     * @throws IOException in plain words, where it is no PNG or JPEG picture or too large
     */
    public static Picture read(Path file) throws IOException {
        String name = file.getFileName().toString();
        if (!Files.isRegularFile(file))
            throw new IOException("There is no picture " + file + "; check its name and folder.");
        PictureCheck check;
        try (InputStream in = Files.newInputStream(file)) {
            check = PictureCheck.of(in.readNBytes(PictureCheck.MOST_BYTES + 1), name);
        }
        if (check instanceof PictureCheck.Usable usable)
            return new Picture(name, usable.bytes(), usable.width(), usable.height());
        throw new IOException(((PictureCheck.Refused) check).reason());
    }

    /**
     * The picture of a scenario in the scenario's own folder.
     *
     * @param folder of the scenario file
     * @param name of the picture as the scenario gives it
     * @return empty where there is none, or where a link leads out of that folder
     */
    public static Optional<Path> beside(Path folder, String name) {
        try {
            Path home = folder.toRealPath(), file = home.resolve(name);
            return Files.isRegularFile(file) && file.toRealPath().startsWith(home)
                    ? Optional.of(file)
                    : Optional.empty();
        } catch (IOException | InvalidPathException notThere) {
            return Optional.empty();
        }
    }

    /** Copies a picture to another place, unless it is there already. */
    public static void copy(Path from, Path to) throws IOException {
        if (!from.toAbsolutePath().normalize().equals(to.toAbsolutePath().normalize()))
            SafeFile.write(to, Files.readAllBytes(from));
    }
}
