package slabfield.io;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/** Pictures that a plan is traced from: PNG or JPEG, of a size that can be held, told by their first bytes. */
public final class PictureFile {
    private static final long LARGEST_FILE = 32L * 1024 * 1024;
    private static final long MOST_PIXELS = 60_000_000;
    private static final byte[] PNG = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};
    private static final int FRAME_LOW = 0xc0;
    private static final int FRAME_HIGH = 0xcf;

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
        if (!Files.isRegularFile(file)) throw new IOException("There is no picture " + file + "; check its name and folder.");
        if (Files.size(file) > LARGEST_FILE)
            throw new IOException("The picture " + name + " is larger than 32 MB; save it smaller and choose it again.");
        byte[] bytes = Files.readAllBytes(file);
        int[] size = size(bytes);
        if (size.length == 0 || size[0] <= 0 || size[1] <= 0)
            throw new IOException(name + " is no PNG or JPEG picture; save the plan as one of these and choose it again.");
        if ((long) size[0] * size[1] > MOST_PIXELS)
            throw new IOException("The picture " + name + " has more than 60 million pixels; save it smaller and choose it again.");
        return new Picture(name, bytes, size[0], size[1]);
    }

    /** Copies a picture to another place, unless it is there already. */
    public static void copy(Path from, Path to) throws IOException {
        if (!from.toAbsolutePath().normalize().equals(to.toAbsolutePath().normalize())) SafeFile.write(to, Files.readAllBytes(from));
    }

    /** Width and height; empty where the bytes are those of no picture. */
    private static int[] size(byte[] bytes) {
        ByteBuffer b = ByteBuffer.wrap(bytes);
        if (bytes.length > 24 && Arrays.equals(Arrays.copyOf(bytes, PNG.length), PNG)) return new int[] {b.getInt(16), b.getInt(20)};
        boolean jpeg = bytes.length > 4 && (bytes[0] & 0xff) == 0xff && (bytes[1] & 0xff) == 0xd8;
        return jpeg ? jpegSize(b) : new int[0];
    }

    /** Walks from marker to marker to the frame header, which holds the size. */
    private static int[] jpegSize(ByteBuffer b) {
        int at = 2;
        while (at + 9 < b.limit() && (b.get(at) & 0xff) == 0xff) {
            int marker = b.get(at + 1) & 0xff;
            boolean frame = marker >= FRAME_LOW && marker <= FRAME_HIGH && marker != 0xc4 && marker != 0xc8 && marker != 0xcc;
            if (frame) return new int[] {b.getShort(at + 7) & 0xffff, b.getShort(at + 5) & 0xffff};
            at += marker == 0xff ? 1 : 2 + (b.getShort(at + 2) & 0xffff);
        }
        return new int[0];
    }
}
