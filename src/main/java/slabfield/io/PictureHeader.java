package slabfield.io;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What the beginning of a picture's bytes says.
 *
 * @param format by the signature; empty where it is neither
 * @param sound true where the parts before the pixels are as the format's standard asks
 * @param width of the picture, above 0 where it is sound [pixel]
 * @param height of the picture, above 0 where it is sound [pixel]
 * @see "PNG: ISO/IEC 15948:2004, 5.2 and 11.2.2; JPEG: ITU-T T.81 (1992), annex B"
 */
record PictureHeader(Optional<PictureCheck.Format> format, boolean sound, int width, int height) {
    private static final byte[] PNG = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};
    private static final int PNG_HEADER = 33;
    private static final int START_OF_IMAGE = 0xd8;
    private static final int END_OF_IMAGE = 0xd9;
    private static final int START_OF_SCAN = 0xda;
    /** A progressive JPEG of a camera has about ten; each costs a pass over all pixels. */
    private static final int MOST_SCANS = 50;

    static PictureHeader of(byte[] bytes) {
        if (Arrays.equals(bytes, 0, Math.min(PNG.length, bytes.length), PNG, 0, PNG.length))
            return png(ByteBuffer.wrap(bytes));
        if (bytes.length > 2 && (bytes[0] & 0xff) == 0xff && (bytes[1] & 0xff) == START_OF_IMAGE)
            return jpeg(ByteBuffer.wrap(bytes));
        return new PictureHeader(Optional.empty(), false, 0, 0);
    }

    private static PictureHeader bad(PictureCheck.Format format) {
        return new PictureHeader(Optional.of(format), false, 0, 0);
    }

    private static PictureHeader png(ByteBuffer in) {
        if (in.limit() < PNG_HEADER || in.getInt(8) != 13 || !chunkName(in, 12).equals("IHDR"))
            return bad(PictureCheck.Format.PNG);
        int width = in.getInt(16), height = in.getInt(20), depth = in.get(24), colour = in.get(25);
        boolean allowed = switch (colour) {
            case 0 -> depth == 1 || depth == 2 || depth == 4 || depth == 8 || depth == 16;
            case 3 -> depth == 1 || depth == 2 || depth == 4 || depth == 8;
            case 2, 4, 6 -> depth == 8 || depth == 16;
            default -> false;
        };
        boolean sound =
                allowed && width > 0 && height > 0 && in.get(26) == 0 && in.get(27) == 0 && (in.get(28) & 0xfe) == 0;
        return new PictureHeader(Optional.of(PictureCheck.Format.PNG), sound, width, height);
    }

    private static String chunkName(ByteBuffer in, int at) {
        return new String(in.array(), at, 4, StandardCharsets.US_ASCII);
    }

    private static PictureHeader jpeg(ByteBuffer in) {
        int at = 2, scans = 0, width = 0, height = 0;
        while (true) {
            OptionalInt place = nextMarker(in, at);
            if (place.isEmpty()) return bad(PictureCheck.Format.JPEG);
            int marker = in.get(place.getAsInt()) & 0xff;
            if (marker == END_OF_IMAGE) break;
            at = place.getAsInt() + 1;
            if (at + 2 > in.limit()) return bad(PictureCheck.Format.JPEG);
            int length = in.getShort(at) & 0xffff;
            if (length < 2 || at + length > in.limit()) return bad(PictureCheck.Format.JPEG);
            if (isFrame(marker)) {
                boolean again = width > 0, known = marker <= 0xc2 && length >= 8 && in.get(at + 2) == 8;
                if (again || !known) return bad(PictureCheck.Format.JPEG);
                height = in.getShort(at + 3) & 0xffff;
                width = in.getShort(at + 5) & 0xffff;
                if (width == 0 || height == 0) return bad(PictureCheck.Format.JPEG);
            }
            if (marker == START_OF_SCAN && (width == 0 || ++scans > MOST_SCANS)) return bad(PictureCheck.Format.JPEG);
            at += length;
        }
        return new PictureHeader(Optional.of(PictureCheck.Format.JPEG), scans > 0, width, height);
    }

    /** Where the code of the next marker stands that begins a segment or ends the picture; coded pixels are skipped. */
    private static OptionalInt nextMarker(ByteBuffer in, int from) {
        for (int at = from; at + 1 < in.limit(); at++) {
            int code = in.get(at + 1) & 0xff;
            boolean marker = (in.get(at) & 0xff) == 0xff
                    && code != 0
                    && code != 0xff
                    && code != 1
                    && (code < 0xd0 || code > 0xd7);
            if (marker) return OptionalInt.of(at + 1);
        }
        return OptionalInt.empty();
    }

    /** Start-of-frame markers of all kinds of JPEG; those above C2 are rare ones that are not read. */
    private static boolean isFrame(int marker) {
        return marker >= 0xc0 && marker <= 0xcf && marker != 0xc4 && marker != 0xc8 && marker != 0xcc;
    }
}
