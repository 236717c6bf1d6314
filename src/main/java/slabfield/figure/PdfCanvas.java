package slabfield.figure;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;
import org.apache.pdfbox.util.Matrix;

/** Draws on a part of a PDF page. Text stays text, in the embedded {@link Typeface}; lines stay lines. */
public final class PdfCanvas implements Canvas {
    private static final double RASTER = 200.0 / 72;
    private static final float OPAQUE = 255;

    private final PdfLetters letters;
    private final PDPageContentStream content;
    private final Box place;
    private final double pageHeight;

    /**
     * A canvas whose own origin stands at the upper left of a box of the page.
     *
     * @param letters of the document
     * @param content of the page, open
     * @param pageHeight of the page [points]
     * @param place of this canvas on the page, y counted down from the page's top [points]
     */
    public PdfCanvas(PdfLetters letters, PDPageContentStream content, double pageHeight, Box place) {
        this.letters = letters;
        this.content = content;
        this.place = place;
        this.pageHeight = pageHeight;
    }

    @Override
    public double width() {
        return place.width();
    }

    @Override
    public double height() {
        return place.height();
    }

    @Override
    public double pixelsPerPoint() {
        return RASTER;
    }

    @Override
    public void fill(List<double[]> rings, int argb) {
        try {
            content.setGraphicsStateParameters(opacity(argb));
            content.setNonStrokingColor(red(argb), green(argb), blue(argb));
            for (double[] ring : rings) path(ring, true);
            content.fillEvenOdd();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void line(double[] line, boolean closed, Pen pen) {
        try {
            content.setGraphicsStateParameters(opacity(pen.argb()));
            content.setStrokingColor(red(pen.argb()), green(pen.argb()), blue(pen.argb()));
            content.setLineWidth((float) pen.width());
            content.setLineCapStyle(0);
            content.setLineJoinStyle(0);
            content.setMiterLimit(4);
            float[] dash = new float[pen.dash().size()];
            for (int i = 0; i < dash.length; i++) dash[i] = pen.dash().get(i).floatValue();
            content.setLineDashPattern(dash, 0);
            path(line, closed);
            content.stroke();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void text(String text, double x, double y, Anchor anchor, double rotation, Lettering lettering) {
        if (text.isBlank()) return;
        double shift = switch (anchor) {
            case START -> 0;
            case MIDDLE -> -textWidth(text, lettering) / 2;
            case END -> -textWidth(text, lettering);
        };
        double left = x + shift * Math.cos(rotation), base = y + shift * Math.sin(rotation);
        try {
            if (lettering.halo() != 0) {
                content.setGraphicsStateParameters(opacity(lettering.halo()));
                content.setStrokingColor(red(lettering.halo()), green(lettering.halo()), blue(lettering.halo()));
                content.setLineWidth((float) lettering.haloWidth());
                content.setLineJoinStyle(1);
                content.setLineDashPattern(new float[0], 0);
                rim(text, left, base, rotation, lettering);
            }
            content.setGraphicsStateParameters(opacity(lettering.argb()));
            content.setNonStrokingColor(red(lettering.argb()), green(lettering.argb()), blue(lettering.argb()));
            letters(text, left, base, rotation, lettering);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The rim as the outlines of the letters, so that no search finds the text twice. */
    private void rim(String text, double left, double base, double rotation, Lettering lettering) throws IOException {
        AffineTransform at = AffineTransform.getTranslateInstance(left, base);
        at.rotate(rotation);
        Shape outline = Typeface.font(text, lettering)
                .createGlyphVector(Typeface.METRICS, text)
                .getOutline();
        double[] c = new double[6];
        double[] here = new double[2];
        for (PathIterator it = outline.getPathIterator(at); !it.isDone(); it.next()) {
            int kind = it.currentSegment(c);
            switch (kind) {
                case PathIterator.SEG_MOVETO -> content.moveTo(pageX(c[0]), pageY(c[1]));
                case PathIterator.SEG_LINETO -> content.lineTo(pageX(c[0]), pageY(c[1]));
                case PathIterator.SEG_QUADTO -> quadratic(here, c);
                case PathIterator.SEG_CUBICTO ->
                    content.curveTo(pageX(c[0]), pageY(c[1]), pageX(c[2]), pageY(c[3]), pageX(c[4]), pageY(c[5]));
                default -> content.closePath();
            }
            int last = kind == PathIterator.SEG_QUADTO ? 2 : kind == PathIterator.SEG_CUBICTO ? 4 : 0;
            if (kind != PathIterator.SEG_CLOSE) System.arraycopy(c, last, here, 0, 2);
        }
        content.stroke();
    }

    /** A quadratic curve as the cubic that is the same. */
    private void quadratic(double[] from, double[] c) throws IOException {
        double x1 = from[0] + (c[0] - from[0]) * 2 / 3, y1 = from[1] + (c[1] - from[1]) * 2 / 3;
        double x2 = c[2] + (c[0] - c[2]) * 2 / 3, y2 = c[3] + (c[1] - c[3]) * 2 / 3;
        content.curveTo(pageX(x1), pageY(y1), pageX(x2), pageY(y2), pageX(c[2]), pageY(c[3]));
    }

    private void letters(String text, double left, double base, double rotation, Lettering lettering)
            throws IOException {
        content.beginText();
        content.setFont(letters.font(lettering.bold()), (float) lettering.size());
        content.setTextMatrix(Matrix.getRotateInstance(-rotation, pageX(left), pageY(base)));
        content.showText(Typeface.printable(text, lettering.bold()));
        content.endText();
    }

    @Override
    public void image(int[] argb, int columns, int rows, Box box) {
        BufferedImage image = new BufferedImage(columns, rows, BufferedImage.TYPE_INT_ARGB);
        image.setRGB(0, 0, columns, rows, argb, 0, columns);
        try {
            content.setGraphicsStateParameters(opacity(Ink.DARK));
            content.drawImage(
                    LosslessFactory.createFromImage(letters.document(), image),
                    pageX(box.left()),
                    pageY(box.bottom()),
                    (float) box.width(),
                    (float) box.height());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void clipped(List<double[]> rings, Runnable drawing) {
        try {
            content.saveGraphicsState();
            for (double[] ring : rings) path(ring, true);
            content.clipEvenOdd();
            drawing.run();
            content.restoreGraphicsState();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void path(double[] line, boolean closed) throws IOException {
        content.moveTo(pageX(line[0]), pageY(line[1]));
        for (int i = 2; i < line.length; i += 2) content.lineTo(pageX(line[i]), pageY(line[i + 1]));
        if (closed) content.closePath();
    }

    private PDExtendedGraphicsState opacity(int argb) {
        return letters.opacity(argb >>> 24);
    }

    private float pageX(double x) {
        return (float) (place.left() + x);
    }

    private float pageY(double y) {
        return (float) (pageHeight - place.top() - y);
    }

    private static float red(int argb) {
        return (argb >> 16 & 0xFF) / OPAQUE;
    }

    private static float green(int argb) {
        return (argb >> 8 & 0xFF) / OPAQUE;
    }

    private static float blue(int argb) {
        return (argb & 0xFF) / OPAQUE;
    }
}
