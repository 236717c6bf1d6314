package slabfield.fuzz;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/**
 * Damages bytes by chance, and the same way for the same seed: single bits, bytes, stretches cut, doubled, moved or taken
 * from another sample, words of the format, numbers at the edge of what numbers can be.
 */
final class Mutator {
    private static final List<String> NUMBERS = List.of(
            "0",
            "-0",
            "-1",
            "1e308",
            "-1e308",
            "1e309",
            "4.9e-324",
            "1e-400",
            "NaN",
            "Infinity",
            "-Infinity",
            "2147483647",
            "2147483648",
            "-2147483649",
            "9007199254740993",
            "0.1",
            "1e5",
            "100000.0001",
            "1,5",
            "1.000,5",
            "1e9999",
            "00",
            "1/0",
            "0x10");
    private static final int MOST_COPIES = 200;
    private static final int LONGEST = 60_000;

    private final Random random;
    private final List<byte[]> samples;
    private final List<String> words;

    /**
     * @param samples that are damaged, at least one
     * @param words of the format, at least one
     */
    Mutator(long seed, List<byte[]> samples, List<String> words) {
        this.random = new Random(seed);
        this.samples = samples;
        this.words = words;
    }

    /** One sample, damaged one to eight times. */
    byte[] next() {
        byte[] bytes = any(samples);
        for (int k = 1 << random.nextInt(4); k > 0; k--) bytes = damaged(bytes);
        return bytes.length <= LONGEST ? bytes : Arrays.copyOf(bytes, LONGEST);
    }

    private byte[] damaged(byte[] in) {
        int at = in.length == 0 ? 0 : random.nextInt(in.length), length = stretch(in.length - at);
        return switch (random.nextInt(11)) {
            case 0 ->
                with(in, at, Math.min(1, in.length), new byte[] {
                    (byte) (in.length == 0 ? 0 : in[at] ^ 1 << random.nextInt(8))
                });
            case 1 -> with(in, at, Math.min(1, in.length), new byte[] {(byte) random.nextInt(256)});
            case 2 -> with(in, at, length, new byte[0]);
            case 3 -> with(in, at, 0, Arrays.copyOfRange(in, at, at + length));
            case 4 -> with(in, at, 0, any(words).getBytes(StandardCharsets.UTF_8));
            case 5 -> with(in, at, word(in, at), any(words).getBytes(StandardCharsets.UTF_8));
            case 6 -> with(in, at, word(in, at), any(NUMBERS).getBytes(StandardCharsets.UTF_8));
            case 7 -> with(in, at, length, stolen());
            case 8 -> with(in, at, 0, repeated(Arrays.copyOfRange(in, at, at + Math.min(length, 40))));
            case 9 -> Arrays.copyOf(in, at);
            default -> with(in, at, 0, new String(Character.toChars(character())).getBytes(StandardCharsets.UTF_8));
        };
    }

    private int stretch(int most) {
        return most <= 0 ? 0 : Math.min(most, 1 + random.nextInt(1 << random.nextInt(9)));
    }

    private byte[] stolen() {
        byte[] other = any(samples);
        if (other.length == 0) return other;
        int at = random.nextInt(other.length);
        return Arrays.copyOfRange(other, at, at + stretch(other.length - at));
    }

    private byte[] repeated(byte[] piece) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        for (int k = random.nextInt(MOST_COPIES); k > 0; k--) out.writeBytes(piece);
        return out.toByteArray();
    }

    /** Length of the word or number that stands at a place. */
    private static int word(byte[] in, int at) {
        int end = at;
        while (end < in.length && (Character.isLetterOrDigit(in[end]) || in[end] == '.' || in[end] == '-')) end++;
        return end - at;
    }

    private int character() {
        int c = random.nextInt(random.nextBoolean() ? 0x300 : 0x10ffff);
        return c >= 0xd800 && c < 0xe000 ? 0xfffd : c;
    }

    private static byte[] with(byte[] in, int at, int removed, byte[] added) {
        byte[] out = new byte[in.length - removed + added.length];
        System.arraycopy(in, 0, out, 0, at);
        System.arraycopy(added, 0, out, at, added.length);
        System.arraycopy(in, at + removed, out, at + added.length, in.length - at - removed);
        return out;
    }

    private <T> T any(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }
}
