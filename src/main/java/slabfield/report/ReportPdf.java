package slabfield.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import slabfield.figure.Box;
import slabfield.figure.Canvas;
import slabfield.figure.Paper;
import slabfield.figure.PdfCanvas;
import slabfield.figure.PdfFile;
import slabfield.figure.PdfLetters;

/**
 * Reports as PDF: text as text in embedded fonts, bookmarks, a structure for readers aloud. The same job gives the same bytes;
 * no clock is read.
 */
public final class ReportPdf {
    private static final double SIDE = 54;
    private static final double TOP = 50;
    private static final double FOOT = 52;

    private final Job job;
    private final Numbers numbers;
    private final Paper paper;

    private ReportPdf(Job job, Numbers numbers, Paper paper) {
        this.job = job;
        this.numbers = numbers;
        this.paper = paper;
    }

    /**
     * Writes the documents asked for into one file, each on pages of its own.
     *
     * @param kinds in the order in which they are to stand
     */
    public static byte[] bytes(Job job, List<ReportKind> kinds, Numbers numbers, Paper paper) {
        return new ReportPdf(job, numbers, paper).bytes(kinds);
    }

    private byte[] bytes(List<ReportKind> kinds) {
        Layout layout = new Layout(paper.height() - 2 * SIDE, paper.width() - TOP - FOOT);
        for (ReportKind kind : kinds) layout.add(kind.blocks(job, numbers));
        try (PDDocument pdf = new PDDocument()) {
            String title = kinds.size() == 1 ? kinds.get(0).title() : "Record of the job";
            PdfFile.describe(
                    pdf, title + ": " + job.scenario().name(), job.provenance().inputHash());
            PdfLetters letters = new PdfLetters(pdf);
            Structure structure = new Structure(pdf);
            for (int i = 0; i < layout.pages().size(); i++) page(pdf, letters, structure, layout, i);
            structure.finish();
            bookmarks(pdf, layout.marks());
            return PdfFile.bytes(pdf);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void page(PDDocument pdf, PdfLetters letters, Structure structure, Layout layout, int number)
            throws IOException {
        double wide = paper.height(), high = paper.width();
        PDPage page = new PDPage(new PDRectangle((float) wide, (float) high));
        pdf.addPage(page);
        page.getCOSObject().setName(COSName.getPDFName("Tabs"), "S");
        try (PDPageContentStream content = new PDPageContentStream(pdf, page)) {
            PdfCanvas area = new PdfCanvas(letters, content, high, new Box(SIDE, TOP, wide - SIDE, high - FOOT));
            for (Layout.Piece piece : layout.pages().get(number)) {
                boolean artifact = piece.tag().type().equals("Artifact");
                if (artifact) content.beginMarkedContent(COSName.ARTIFACT);
                else structure.begin(content, page, number, piece.tag());
                Canvas canvas = piece.own()
                        ? new PdfCanvas(
                                letters,
                                content,
                                high,
                                new Box(SIDE, TOP + piece.top(), wide - SIDE, TOP + piece.top() + piece.height()))
                        : area;
                piece.drawing().accept(canvas);
                content.endMarkedContent();
            }
            content.beginMarkedContent(COSName.ARTIFACT);
            foot(
                    new PdfCanvas(letters, content, high, new Box(0, 0, wide, high)),
                    number + 1,
                    layout.pages().size());
            content.endMarkedContent();
        }
    }

    private void foot(Canvas canvas, int number, int all) {
        double y = canvas.height() - FOOT + 18;
        var small = new Canvas.Lettering(7, false, Layout.SOFT, 0);
        canvas.line(
                new double[] {SIDE, y - 10, canvas.width() - SIDE, y - 10}, false, Canvas.Pen.solid(Layout.SOFT, 0.4));
        String date = job.provenance().date().map(d -> ", " + d).orElse("");
        canvas.text(cut(job.scenario().name(), 60) + date, SIDE, y, Canvas.Anchor.START, 0, small);
        canvas.text("page " + number + " of " + all, canvas.width() - SIDE, y, Canvas.Anchor.END, 0, small);
        String from = "Slabfield " + job.provenance().version() + ", input "
                + job.provenance().inputHash().substring(0, 12) + ". An aid, not a design approval.";
        canvas.text(from, SIDE, y + 9.5, Canvas.Anchor.START, 0, small);
    }

    private static String cut(String text, int most) {
        return text.length() <= most ? text : text.substring(0, most) + "…";
    }

    private void bookmarks(PDDocument pdf, List<Layout.Mark> marks) {
        PDDocumentOutline outline = new PDDocumentOutline();
        pdf.getDocumentCatalog().setDocumentOutline(outline);
        Optional<PDOutlineItem> document = Optional.empty();
        for (Layout.Mark mark : marks) {
            if (mark.level() > 1) continue;
            PDOutlineItem item = new PDOutlineItem();
            item.setTitle(mark.text());
            PDPageXYZDestination place = new PDPageXYZDestination();
            place.setPage(pdf.getPage(mark.page()));
            place.setTop((int) (paper.width() - TOP - mark.top() + 4));
            item.setDestination(place);
            if (mark.level() == 0 || document.isEmpty()) {
                outline.addLast(item);
                document = Optional.of(item);
            } else document.get().addLast(item);
        }
        outline.openNode();
    }
}
