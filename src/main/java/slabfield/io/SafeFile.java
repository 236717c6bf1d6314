package slabfield.io;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/** Saves a file so that after a crash or a full disk either the old or the new one is there, whole. */
public final class SafeFile {
    private SafeFile() {}

    /**
     * Writes beside the file, forces it to the disk and puts it in place in one step.
     *
     * @throws IOException in plain words; the old file is then untouched
     */
    public static void write(Path file, byte[] bytes) throws IOException {
        if (Files.isDirectory(file)) throw new IOException("Cannot save " + file + ": it is a folder; give a file name.");
        Path beside = null;
        try {
            Path place = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
            beside = place.resolveSibling("." + place.getFileName() + "." + UUID.randomUUID() + ".part");
            force(beside, bytes);
            move(beside, place);
        } catch (IOException e) {
            if (beside != null) Files.deleteIfExists(beside);
            throw new IOException("Cannot save " + file + ": " + reason(e), e);
        }
    }

    private static void force(Path file, byte[] bytes) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            ByteBuffer left = ByteBuffer.wrap(bytes);
            while (left.hasRemaining()) channel.write(left);
            channel.force(true);
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static String reason(IOException e) {
        if (e instanceof NoSuchFileException) return "its folder does not exist; make the folder or choose another.";
        if (e instanceof AccessDeniedException) return "you may not write there; choose another folder.";
        return "the disk may be full or taken away (" + e.getMessage() + ").";
    }
}
