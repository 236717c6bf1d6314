package slabfield.figure;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/**
 * What every PDF of this program has in common: title, language, maker, and an identifier that follows from the title alone,
 * so that the same drawing gives the same bytes. No clock is read.
 */
public final class PdfFile {
    /** Stands as producer, so that the program knows its own files. */
    public static final String MAKER = "Slabfield";

    private static final String LANGUAGE = "en";

    private PdfFile() {}

    /** Writes title, language and maker into a document. */
    public static void describe(PDDocument document, String title, String subject) {
        PDDocumentInformation information = new PDDocumentInformation();
        information.setTitle(title);
        information.setSubject(subject);
        information.setCreator(MAKER);
        information.setProducer(MAKER);
        document.setDocumentInformation(information);
        var catalog = document.getDocumentCatalog();
        catalog.setLanguage(LANGUAGE);
        PDViewerPreferences preferences = new PDViewerPreferences(catalog.getCOSObject());
        preferences.setDisplayDocTitle(true);
        preferences.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
        catalog.setViewerPreferences(preferences);
        CRC32 sum = new CRC32();
        sum.update((title + '\0' + subject).getBytes(StandardCharsets.UTF_8));
        document.setDocumentId(sum.getValue());
    }

    /** The bytes of a document, whose objects stand in it one by one. */
    public static byte[] bytes(PDDocument document) {
        try (ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            document.save(out, CompressParameters.NO_COMPRESSION);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
