package slabfield.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Slab;

/** Lengths are measured in the PDF's own coordinates, as a printer would lay them down. */
class PlanSheetsTest {
    private static final double MILLIMETRE = 72 / 25.4;

    /** Collects the straight lines of a page in default user space: points of 1/72 inch. */
    private static final class Lines extends PDFGraphicsStreamEngine {
        final List<double[]> found = new ArrayList<>();
        private Point2D at = new Point2D.Double();
        private Point2D start = at;

        Lines(PDPage page) throws IOException {
            super(page);
            processPage(page);
        }

        private void to(Point2D next) {
            found.add(new double[] {at.getX(), at.getY(), next.getX(), next.getY()});
            at = next;
        }

        @Override
        public void moveTo(float x, float y) {
            at = new Point2D.Double(x, y);
            start = at;
        }

        @Override
        public void lineTo(float x, float y) {
            to(new Point2D.Double(x, y));
        }

        @Override
        public void closePath() {
            to(start);
        }

        @Override
        public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
            at = new Point2D.Double(x3, y3);
        }

        @Override
        public Point2D getCurrentPoint() {
            return at;
        }

        @Override
        public void appendRectangle(Point2D a, Point2D b, Point2D c, Point2D d) {}

        @Override
        public void drawImage(PDImage image) {}

        @Override
        public void clip(int rule) {}

        @Override
        public void endPath() {}

        @Override
        public void strokePath() {}

        @Override
        public void fillPath(int rule) {}

        @Override
        public void fillAndStrokePath(int rule) {}

        @Override
        public void shadingFill(COSName name) {}
    }

    private static Scenario house(double width, double depth) {
        Scenario sample = SampleHouse.scenario();
        Slab slab = new Slab(
                "basement",
                SampleHouse.points(0, 0, width, 0, width, depth, 0, depth),
                List.of(),
                Slab.USUAL_THICKNESS,
                true);
        return new Scenario(
                "Plain",
                "",
                "",
                sample.display(),
                List.of(slab),
                sample.layer(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                0,
                0,
                sample.air(),
                List.of(),
                sample.testHoles().subList(0, 1),
                List.of(),
                sample.target(),
                0.1);
    }

    private static PlanSheets sheets(Scenario scenario, PlanScale scale, Paper paper) {
        return new PlanSheets(
                scenario,
                scale,
                paper,
                UnitsShown.SI(),
                x -> String.format(Locale.ROOT, "%.2f m", x),
                List.of("S1: 8.00 m of 78 mm inside"));
    }

    private static double longest(PDPage page, boolean across) throws IOException {
        double best = 0;
        for (double[] l : new Lines(page).found) {
            double dx = Math.abs(l[2] - l[0]), dy = Math.abs(l[3] - l[1]);
            boolean frame = dx > 0.9 * (page.getMediaBox().getWidth() - 57)
                    || dy > 0.6 * page.getMediaBox().getHeight();
            if (!frame && (across ? dy < 1e-6 : dx < 1e-6)) best = Math.max(best, across ? dx : dy);
        }
        return best;
    }

    /** The wall is found among all lines by its length alone; nothing else on the sheet is as long. */
    @ParameterizedTest
    @CsvSource({
        "ONE_TO_100,A4,10,6,100",
        "ONE_TO_50,A3,10,6,200",
        "ONE_TO_50,A4,10,5,200",
        "QUARTER_INCH,LETTER,9.144,4,190.5",
        "EIGHTH_INCH,LETTER,18.288,8,190.5"
    })
    void aWallIsAsLongOnPaperAsTheScaleSays(PlanScale scale, Paper paper, double wall, double depth, double millimetres)
            throws IOException {
        try (PDDocument document =
                Loader.loadPDF(sheets(house(wall, depth), scale, paper).pdf())) {
            assertThat(document.getNumberOfPages()).isEqualTo(2);
            assertThat(longest(document.getPage(0), true) / MILLIMETRE).isEqualTo(millimetres, within(0.2));
            assertThat(document.getPage(0).getUserUnit()).isEqualTo(1);
        }
    }

    @Test
    void theRulerOnEverySheetIsTrue() throws IOException {
        try (PDDocument document = Loader.loadPDF(
                sheets(house(30, 20), PlanScale.ONE_TO_50, Paper.A4).pdf())) {
            assertThat(document.getNumberOfPages()).isGreaterThan(4);
            for (PDPage page : document.getPages())
                assertThat(new Lines(page).found).as("a line of 100 mm").anySatisfy(l -> {
                    assertThat(Math.abs(l[2] - l[0]) / MILLIMETRE).isEqualTo(100, within(0.01));
                    assertThat(l[1]).isEqualTo(l[3]).isLessThan(100);
                });
        }
        try (PDDocument document = Loader.loadPDF(
                sheets(house(5, 4), PlanScale.EIGHTH_INCH, Paper.LETTER).pdf())) {
            assertThat(new Lines(document.getPage(0)).found)
                    .anySatisfy(l -> assertThat(Math.abs(l[2] - l[0])).isEqualTo(288, within(0.01)));
        }
    }

    @ParameterizedTest
    @EnumSource(PlanScale.class)
    void theSheetsTogetherShowTheWholeHouse(PlanScale scale) {
        PlanSheets sheets = sheets(house(40, 25), scale, Paper.A4);
        Bounds all = Bounds.of(sheets.scenario());
        for (double x = all.left(); x <= all.right(); x += 0.5)
            for (double y = all.bottom(); y <= all.top(); y += 0.5) {
                double px = x, py = y;
                assertThat(sheets.tiles())
                        .as("a sheet that shows (%s, %s)", x, y)
                        .anyMatch(t -> t.room()
                                .holds(Box.around(t.view().pageX(px), t.view().pageY(py), 0)));
            }
    }

    /** A match line stands at one place of the house on both sheets. */
    @Test
    void neighboursShareTheirMatchLine() {
        PlanSheets sheets = sheets(house(40, 25), PlanScale.ONE_TO_50, Paper.A4);
        var left = sheets.tiles().get(0);
        var right = sheets.tiles().get(1);
        double edge = 6 * Paper.MILLIMETRE, y = 200;
        Point onLeft = left.view().plan(left.room().right() - edge, y),
                onRight = right.view().plan(right.room().left() + edge, y);
        assertThat(onLeft.distanceTo(onRight)).isLessThan(1e-9);
        var below = sheets.tiles().get(sheets.columns());
        assertThat(left.view()
                        .plan(200, left.room().bottom() - edge)
                        .distanceTo(below.view().plan(200, below.room().top() + edge)))
                .isLessThan(1e-9);
    }

    /** A wall that goes over two sheets has its length on both, clear of the match line. */
    @Test
    void aWallOverTwoSheetsHasItsLengthOnBoth() throws IOException {
        PlanSheets sheets = sheets(house(18, 5), PlanScale.ONE_TO_50, Paper.A4);
        String length = sheets.tape().apply(18);
        Box room = sheets.tiles().get(0).room().inset(6 * Paper.MILLIMETRE);
        try (PDDocument document = Loader.loadPDF(sheets.pdf())) {
            for (int page = 1; page <= sheets.tiles().size(); page++) {
                List<Box> found = new ArrayList<>();
                PDFTextStripper stripper = new PDFTextStripper() {
                    @Override
                    protected void writeString(String text, List<TextPosition> places) {
                        if (!text.contains(length)) return;
                        TextPosition first = places.get(0), last = places.get(places.size() - 1);
                        found.add(new Box(
                                first.getXDirAdj(),
                                first.getYDirAdj(),
                                last.getXDirAdj() + last.getWidthDirAdj(),
                                last.getYDirAdj()));
                    }
                };
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                stripper.getText(document);
                assertThat(found).as("sheet %s", page).isNotEmpty().allMatch(room::holds);
            }
        }
    }

    /** Two circles about the corners meet at the hole; of the two places, the one inside. */
    @Test
    void twoTapesLeadBackToThePlace() {
        Scenario scenario = SampleHouse.scenario();
        TapeDistances tapes = new TapeDistances(scenario);
        assertThat(tapes.corners())
                .extracting(TapeDistances.Corner::name)
                .containsExactly("A", "B", "C", "D", "E", "F");
        for (var hole : scenario.testHoles()) {
            TapeDistances.Tape t = tapes.to(hole.at());
            Point a = t.first().at(), b = t.second().at();
            double d = a.distanceTo(b),
                    along = (t.firstLength() * t.firstLength() - t.secondLength() * t.secondLength() + d * d) / (2 * d);
            double off = Math.sqrt(t.firstLength() * t.firstLength() - along * along),
                    ux = (b.x() - a.x()) / d,
                    uy = (b.y() - a.y()) / d;
            Point inside = new Point(a.x() + along * ux - off * uy, a.y() + along * uy + off * ux);
            assertThat(inside.distanceTo(hole.at())).as("hole %s", hole.id()).isLessThan(1e-6);
            double sine = off * d / (t.firstLength() * t.secondLength());
            assertThat(sine)
                    .as("angle at which the tapes to %s cross", hole.id())
                    .isGreaterThan(0.4);
        }
    }

    @Test
    void theListOfPlacesIsText() throws IOException {
        try (PDDocument document = Loader.loadPDF(
                sheets(SampleHouse.scenario(), PlanScale.ONE_TO_100, Paper.A4).pdf())) {
            String text = new PDFTextStripper().getText(document).replaceAll("\\R", " ");
            TapeDistances.Tape first = new TapeDistances(SampleHouse.scenario()).to(new Point(1, 1));
            assertThat(text)
                    .contains("test hole T1")
                    .contains(String.format(
                            Locale.ROOT, "%s  %.2f m", first.first().name(), first.firstLength()))
                    .contains("S1: 8.00 m of 78 mm inside")
                    .contains("Scale 1:100")
                    .contains("Locate utilities");
        }
    }

    @ParameterizedTest
    @CsvSource({"0,A", "25,Z", "26,AA", "27,AB", "701,ZZ"})
    void cornersHaveLetters(int number, String letters) {
        assertThat(TapeDistances.letters(number)).isEqualTo(letters);
    }
}
