package slabfield.io;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Random;
import java.util.zip.CRC32;

/**
 * A process of its own that saves one version after the other and says on standard output which ones are done.
 * It needs the classes of this program and nothing else. A failed save is told as {@code ! message}.
 */
final class SaveLoop {
    private static final int SHORTEST = 1_000;
    private static final int LONGEST = 300_000;

    private SaveLoop() {}

    /** Arguments: file, number of the first version, number of saves. */
    public static void main(String[] args) {
        Path file = Path.of(args[0]);
        int first = Integer.parseInt(args[1]), saves = Integer.parseInt(args[2]);
        for (int version = first; version < first + saves; version++) {
            try {
                SafeFile.writeKeepingVersions(file, content(version));
                System.out.println(version);
            } catch (IOException e) {
                System.out.println("! " + e.getMessage());
            }
        }
    }

    /** A version's bytes: its number and checksum, and then as much as the number decides. */
    static byte[] content(int version) {
        Random random = new Random(version);
        byte[] body = new byte[SHORTEST + random.nextInt(LONGEST - SHORTEST)];
        random.nextBytes(body);
        byte[] head = (version + " " + checksum(body, 0) + "\n").getBytes(StandardCharsets.US_ASCII);
        byte[] all = new byte[head.length + body.length];
        System.arraycopy(head, 0, all, 0, head.length);
        System.arraycopy(body, 0, all, head.length, body.length);
        return all;
    }

    /** Which version a file holds; empty where it is not whole. */
    static Optional<Integer> version(Path file) throws IOException {
        byte[] all = Files.readAllBytes(file);
        int end = 0;
        while (end < all.length && all[end] != '\n') end++;
        String[] head = new String(all, 0, end, StandardCharsets.US_ASCII).split(" ");
        if (head.length != 2 || !head[0].matches("\\d{1,9}") || end == all.length) return Optional.empty();
        int version = Integer.parseInt(head[0]);
        boolean whole = head[1].equals(String.valueOf(checksum(all, end + 1))) && all.length == content(version).length;
        return whole ? Optional.of(version) : Optional.empty();
    }

    private static long checksum(byte[] bytes, int from) {
        CRC32 crc = new CRC32();
        crc.update(bytes, from, bytes.length - from);
        return crc.getValue();
    }
}
