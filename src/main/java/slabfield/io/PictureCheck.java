package slabfield.io;

/**
 * A picture of a stranger's, looked at before anything decodes it.
 *
 * <p>It must be a PNG or JPEG by its first bytes, and small enough for the memory that its pixels would take. What is then
 * decoded are the very bytes that were looked at.
 */
sealed interface PictureCheck {
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
    record Usable(byte[] bytes, Format format, int width, int height) implements PictureCheck {}

    /**
     * A picture that is not decoded.
     *
     * @param reason in the user's words, with what to do
     */
    record Refused(String reason) implements PictureCheck {}

    /**
     * Looks at a picture's bytes.
     *
     * @param name of the picture, for messages
     */
    static PictureCheck of(byte[] bytes, String name) {
        String who = "The picture \"" + FileProblem.shortened(name) + "\" ";
        if (bytes.length > MOST_BYTES)
            return new Refused(
                    who + "is larger than " + (MOST_BYTES >> 20) + " MB; save it smaller, for instance as a JPEG.");
        PictureHeader header = PictureHeader.of(bytes);
        if (header.format().isEmpty()) return new Refused(who + "is neither PNG nor JPEG; save it as one of them.");
        if (!header.sound())
            return new Refused(who + "is damaged, or of a kind that is not read; save it again as PNG or JPEG.");
        if ((long) header.width() * header.height() > MOST_PIXELS)
            return new Refused(who + "has " + header.width() + " x " + header.height()
                    + " pixels; save it with at most " + MOST_PIXELS / 1_000_000 + " million.");
        return new Usable(bytes, header.format().get(), header.width(), header.height());
    }
}
