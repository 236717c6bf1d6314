package slabfield.io;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Why a file could not be saved, in words for the user. The system's own message comes in the language of the machine, so
 * the disk is asked instead.
 *
 * @param cause what the system said
 * @param file that was to be saved
 * @param size of the new file [byte]
 */
record SaveTrouble(IOException cause, Path file, long size) {
    private static final int LONGEST_NAME = 200;

    /** The disk of a folder; not known in some changed roots. */
    private static Optional<FileStore> disk(Path folder) {
        try {
            return Optional.of(Files.getFileStore(folder));
        } catch (IOException unknown) {
            return Optional.empty();
        }
    }

    private boolean isFull(FileStore disk) {
        try {
            return disk.getUsableSpace() < size;
        } catch (IOException gone) {
            return false;
        }
    }

    String words() {
        Path folder = file.getParent();
        if (folder == null || !Files.exists(folder))
            return "its folder does not exist; make the folder or choose another.";
        if (!Files.isDirectory(folder))
            return "\"" + folder.getFileName() + "\" is a file, not a folder; choose another place.";
        if (file.getFileName().toString().length() > LONGEST_NAME) return "its name is too long; give a shorter one.";
        Optional<FileStore> disk = disk(folder);
        if (disk.filter(FileStore::isReadOnly).isPresent()) return "the disk can only be read; save to another place.";
        if (disk.filter(this::isFull).isPresent()) return "the disk is full; free some room or save to another place.";
        if (!(cause instanceof AccessDeniedException))
            return "the disk may be full or taken away (" + cause.getMessage() + ").";
        return Files.isWritable(folder)
                ? "the file is write-protected; save it under another name, or take the protection off."
                : "you may not write there; choose another folder.";
    }
}
