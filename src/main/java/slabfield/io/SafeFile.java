package slabfield.io;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermission;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * Saves a file so that after a crash or on a full disk either the old or the new one is there, whole.
 *
 * <p>The bytes go into a file beside it, are forced to the disk, and take the old file's place by one rename; then the folder
 * is forced to the disk too. {@code SavesSurviveKillTest} and {@code DiskTroubleTest} check it.
 */
public final class SafeFile {
    /** Versions that {@link #writeKeepingVersions} keeps. */
    public static final int VERSIONS = 3;

    private static final String PART = ".part";
    /** No write takes so long: a part that is older was left by a crash. */
    private static final Duration LEFT_BEHIND = Duration.ofMinutes(10);

    private static final Set<PosixFilePermission> WRITING = EnumSet.of(
            PosixFilePermission.OWNER_WRITE, PosixFilePermission.GROUP_WRITE, PosixFilePermission.OTHERS_WRITE);

    private SafeFile() {}

    /**
     * Writes a file that can be made again, such as a result.
     *
     * @throws IOException in plain words; the old file is then untouched
     */
    public static void write(Path file, byte[] bytes) throws IOException {
        write(file, bytes, false);
    }

    /**
     * Writes a file that holds a user's work. What stood there before is kept as {@code name.1~}, and what that replaced as
     * {@code name.2~}, up to {@link #VERSIONS}.
     *
     * @throws IOException in plain words; the old file is then untouched
     */
    public static void writeKeepingVersions(Path file, byte[] bytes) throws IOException {
        write(file, bytes, true);
    }

    /** The earlier versions of a file that are there, the latest first. */
    public static List<Path> versions(Path file) {
        List<Path> versions = new ArrayList<>();
        for (int age = 1; age <= VERSIONS; age++)
            if (Files.isRegularFile(version(file, age))) versions.add(version(file, age));
        return versions;
    }

    private static Path version(Path file, int age) {
        return file.resolveSibling(file.getFileName() + "." + age + "~");
    }

    private static void write(Path file, byte[] bytes, boolean keeping) throws IOException {
        if (Files.isDirectory(file))
            throw new IOException("Cannot save " + file + ": it is a folder; give a file name.");
        Path place = file.toAbsolutePath(), part = null;
        try {
            if (Files.exists(file)) place = file.toRealPath();
            if (isProtected(place)) throw new AccessDeniedException(file.toString());
            part = place.resolveSibling("." + place.getFileName() + "." + UUID.randomUUID() + PART);
            force(part, bytes);
            if (Files.exists(place)) copyPermissions(place, part);
            if (keeping) keepVersion(place);
            move(part, place);
            forceFolder(place.getParent());
            sweep(place);
        } catch (IOException e) {
            if (part != null) discard(part, e);
            throw new IOException("Cannot save " + file + ": " + new SaveTrouble(e, place, bytes.length).words(), e);
        }
    }

    private static void discard(Path part, IOException trouble) {
        try {
            Files.deleteIfExists(part);
        } catch (IOException unreachable) {
            trouble.addSuppressed(unreachable);
        }
    }

    /** A rename would replace a write-protected file without a word, where its folder may be written to. */
    private static boolean isProtected(Path file) throws IOException {
        if (!Files.exists(file)) return false;
        PosixFileAttributeView posix = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        boolean noOneMay =
                posix != null && posix.readAttributes().permissions().stream().noneMatch(WRITING::contains);
        return noOneMay || !Files.isWritable(file);
    }

    private static void force(Path file, byte[] bytes) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            ByteBuffer left = ByteBuffer.wrap(bytes);
            while (left.hasRemaining()) channel.write(left);
            channel.force(true);
        }
    }

    private static void copyPermissions(Path from, Path to) throws IOException {
        PosixFileAttributeView posix = Files.getFileAttributeView(from, PosixFileAttributeView.class);
        if (posix != null)
            Files.setPosixFilePermissions(to, posix.readAttributes().permissions());
    }

    /** The file itself stays in its place meanwhile: its version is a second name for it, or a copy. */
    private static void keepVersion(Path file) throws IOException {
        if (!Files.exists(file)) return;
        for (int age = VERSIONS; age > 1; age--)
            if (Files.exists(version(file, age - 1))) move(version(file, age - 1), version(file, age));
        Path latest = version(file, 1);
        Files.deleteIfExists(latest);
        try {
            Files.createLink(latest, file);
        } catch (UnsupportedOperationException | IOException noLinks) {
            Files.copy(file, latest, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** Makes the rename itself last. Some systems do not open folders; their renames are in a journal. */
    private static void forceFolder(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException notHere) {
            return;
        }
    }

    /** Removes parts that crashes left beside the file, by the clock of the disk that both are on. */
    private static void sweep(Path written) {
        String start = "." + written.getFileName() + ".";
        try (Stream<Path> all = Files.list(written.getParent())) {
            Instant old = Files.getLastModifiedTime(written).toInstant().minus(LEFT_BEHIND);
            for (Path part :
                    all.filter(f -> isPart(f.getFileName().toString(), start)).toList())
                if (Files.getLastModifiedTime(part).toInstant().isBefore(old)) Files.delete(part);
        } catch (IOException | UncheckedIOException leftForNextTime) {
            return;
        }
    }

    private static boolean isPart(String name, String start) {
        return name.startsWith(start) && name.endsWith(PART);
    }
}
