package slabfield.io;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Photos without what cameras write beside the picture: place, time, owner, serial number, thumbnail. Of a JPEG (ITU-T T.81)
 * all application and comment segments go, save those that a viewer needs for shape and colour, and the direction that is up
 * is written anew. Of a PNG (ISO/IEC 15948) all text, time and Exif chunks go. The picture itself is not changed.
 */
public final class PhotoPrivacy {
    private static final int MARKER = 0xFF, START = 0xD8, END = 0xD9, SCAN = 0xDA, COMMENT = 0xFE;
    private static final int APP0 = 0xE0, APP1 = 0xE1, APP2 = 0xE2, APP14 = 0xEE, APP15 = 0xEF;
    private static final byte[] PNG = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
    private static final Set<String> PNG_DROPPED = Set.of("tEXt", "zTXt", "iTXt", "tIME", "eXIf");
    private static final int ORIENTATION = 0x0112;

    /** A photo that cannot be cleaned; its message says why and what to do. */
    public static final class Unclean extends Exception {
        private static final long serialVersionUID = 1;

        Unclean(String message) {
            super(message);
        }
    }

    private PhotoPrivacy() {}

    /**
     * The photo without any of it.
     *
     * @throws Unclean where it is neither JPEG nor PNG, or broken
     */
    public static byte[] stripped(byte[] photo) throws Unclean {
        try {
            if (photo.length > 3 && at(photo, 0) == MARKER && at(photo, 1) == START) return jpeg(photo);
            if (startsWith(photo, PNG)) return png(photo);
        } catch (IndexOutOfBoundsException e) {
            throw new Unclean("the photo ends too early; save it again");
        }
        throw new Unclean(
                "the photo is neither JPEG nor PNG, so its place cannot be taken out; save it as one of them");
    }

    private static byte[] jpeg(byte[] in) throws Unclean {
        ByteArrayOutputStream out = new ByteArrayOutputStream(in.length);
        out.write(MARKER);
        out.write(START);
        OptionalInt turned = orientation(in);
        boolean written = turned.isEmpty();
        int i = 2;
        while (true) {
            if (at(in, i) != MARKER) throw new Unclean("the photo is a broken JPEG; save it again");
            int kind = at(in, i + 1);
            if (kind == MARKER) {
                i++;
                continue;
            }
            int length = kind == END ? 0 : 256 * at(in, i + 2) + at(in, i + 3);
            if (kind != APP0 && !written) {
                out.writeBytes(exifWith(turned.getAsInt()));
                written = true;
            }
            if (kind == SCAN || kind == END) break;
            if (i + 2 + length > in.length) throw new IndexOutOfBoundsException();
            if (!dropped(in, i, kind)) out.write(in, i, 2 + length);
            i += 2 + length;
        }
        out.write(in, i, end(in, i) - i);
        return out.toByteArray();
    }

    /** Keeps JFIF, colour profiles and the mark of how colours were coded. */
    private static boolean dropped(byte[] in, int i, int kind) {
        if (kind == COMMENT) return true;
        if (kind < APP0 || kind > APP15) return false;
        if (kind == APP0) return !text(in, i + 4, 4).equals("JFIF");
        if (kind == APP2) return !text(in, i + 4, 11).equals("ICC_PROFILE");
        return kind != APP14;
    }

    /** Just behind the end of the picture that begins with this scan; what cameras hang on behind it is left out. */
    private static int end(byte[] in, int scan) {
        for (int i = scan + 2; i + 1 < in.length; i++) if (at(in, i) == MARKER && at(in, i + 1) == END) return i + 2;
        return in.length;
    }

    /** Which side is up, from the first Exif segment; empty where it is not said or upright. */
    private static OptionalInt orientation(byte[] in) {
        for (int i = 2;
                i + 4 < in.length && at(in, i) == MARKER && at(in, i + 1) != SCAN;
                i += 2 + 256 * at(in, i + 2) + at(in, i + 3))
            if (at(in, i + 1) == APP1 && text(in, i + 4, 4).equals("Exif")) return orientation(in, i + 10);
        return OptionalInt.empty();
    }

    private static OptionalInt orientation(byte[] in, int tiff) {
        boolean little = text(in, tiff, 2).equals("II");
        int directory = tiff + word(in, tiff + 4, little, 4), entries = word(in, directory, little, 2);
        for (int k = 0; k < entries; k++) {
            int entry = directory + 2 + 12 * k;
            if (word(in, entry, little, 2) != ORIENTATION) continue;
            int value = word(in, entry + 8, little, 2);
            return value >= 2 && value <= 8 ? OptionalInt.of(value) : OptionalInt.empty();
        }
        return OptionalInt.empty();
    }

    private static int word(byte[] in, int at, boolean little, int bytes) {
        int value = 0;
        for (int k = 0; k < bytes; k++) value |= at(in, at + k) << 8 * (little ? k : bytes - 1 - k);
        return value;
    }

    /** A segment that says which side is up and nothing else. */
    private static byte[] exifWith(int orientation) {
        return new byte[] {
            (byte) MARKER,
            (byte) APP1,
            0,
            34,
            'E',
            'x',
            'i',
            'f',
            0,
            0,
            'M',
            'M',
            0,
            42,
            0,
            0,
            0,
            8,
            0,
            1,
            1,
            0x12,
            0,
            3,
            0,
            0,
            0,
            1,
            0,
            (byte) orientation,
            0,
            0,
            0,
            0,
            0,
            0
        };
    }

    private static byte[] png(byte[] in) throws Unclean {
        ByteArrayOutputStream out = new ByteArrayOutputStream(in.length);
        out.write(in, 0, PNG.length);
        int i = PNG.length;
        while (i < in.length) {
            int length = word(in, i, false, 4);
            if (length < 0 || i + 12L + length > in.length)
                throw new Unclean("the photo is a broken PNG; save it again");
            String kind = text(in, i + 4, 4);
            if (!PNG_DROPPED.contains(kind)) out.write(in, i, 12 + length);
            i += 12 + length;
            if (kind.equals("IEND")) break;
        }
        return out.toByteArray();
    }

    private static boolean startsWith(byte[] in, byte[] sign) {
        return in.length >= sign.length && Arrays.equals(in, 0, sign.length, sign, 0, sign.length);
    }

    private static String text(byte[] in, int at, int length) {
        return at + length > in.length ? "" : new String(in, at, length, StandardCharsets.ISO_8859_1);
    }

    private static int at(byte[] in, int i) {
        return in[i] & 0xFF;
    }
}
