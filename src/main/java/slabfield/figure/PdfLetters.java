package slabfield.figure;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;

/** What all canvases of one PDF document share: the embedded fonts, of which only the letters used are kept, and opacities. */
public final class PdfLetters {
    private static final float OPAQUE = 255;

    private final PDDocument document;
    private final PDType0Font regular;
    private final PDType0Font bold;
    private final Map<Integer, PDExtendedGraphicsState> opacities = new HashMap<>();

    public PdfLetters(PDDocument document) {
        this.document = document;
        regular = load(false);
        bold = load(true);
    }

    private PDType0Font load(boolean heavy) {
        try (InputStream in = Typeface.file(heavy)) {
            return PDType0Font.load(document, in, true);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public PDDocument document() {
        return document;
    }

    public PDType0Font font(boolean heavy) {
        return heavy ? bold : regular;
    }

    PDExtendedGraphicsState opacity(int alpha) {
        return opacities.computeIfAbsent(alpha, a -> {
            PDExtendedGraphicsState state = new PDExtendedGraphicsState();
            state.setStrokingAlphaConstant(a / OPAQUE);
            state.setNonStrokingAlphaConstant(a / OPAQUE);
            return state;
        });
    }
}
