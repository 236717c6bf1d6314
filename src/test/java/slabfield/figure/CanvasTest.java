package slabfield.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.github.weisj.jsvg.SVGDocument;
import com.github.weisj.jsvg.parser.SVGLoader;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.xml.sax.InputSource;

/** The same drawing on Java2D, SVG and PDF. */
class CanvasTest {
    private static final Figure MAP = new MapFigure(SampleHouse.solved(), MapStyle.of(UnitsShown.SI()));
    private static final double WIDTH = 600;

    /** A square with a hole, a dashed line, a clipped bar and a text, at places that a test can look at. */
    private record Marks() implements Figure {
        @Override
        public String title() {
            return "Marks <&>";
        }

        @Override
        public String description() {
            return "Test";
        }

        @Override
        public double height(Canvas measure, double width) {
            return 120;
        }

        @Override
        public void draw(Canvas canvas) {
            canvas.fill(List.of(new Box(10, 10, 70, 70).ring(), new Box(30, 30, 50, 50).ring()), 0xFF204080);
            canvas.clipped(
                    List.of(new Box(80, 10, 100, 70).ring()),
                    () -> canvas.fill(List.of(new Box(60, 20, 140, 60).ring()), 0xFFC04000));
            canvas.image(new int[] {0xFF008000, 0xFF000000}, 1, 2, new Box(110, 10, 150, 70));
            canvas.line(new double[] {10, 90, 150, 90}, false, Canvas.Pen.dashed(0xFF000000, 4, 20.0, 20.0));
            canvas.text(
                    "Δp ≤ −5 Pa & <m³>",
                    150,
                    110,
                    Canvas.Anchor.END,
                    0,
                    new Canvas.Lettering(9, true, 0xFF000000, 0xF0FFFFFF));
        }
    }

    private static BufferedImage svgImage(String svg, int width, int height) {
        SVGDocument document = new SVGLoader().load(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
        assertThat(document).isNotNull();
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.scale(width / (double) document.size().width, height / (double) document.size().height);
        document.render(null, graphics);
        graphics.dispose();
        return image;
    }

    private static BufferedImage pdfImage(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFRenderer(document).renderImage(0, 1);
        }
    }

    @Test
    void marksStandAtTheSamePlaceOnEveryBackend() throws IOException {
        BufferedImage png = new BufferedImage(160, 120, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = png.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, 160, 120);
        new Marks().draw(new AwtCanvas(graphics, 160, 120, 1));
        List<BufferedImage> all = List.of(
                png, svgImage(Figures.svg(new Marks(), 160), 160, 120), pdfImage(Figures.pdf(new Marks(), 160)));
        assertThat(all).allSatisfy(image -> {
            near(image, 20, 20, 0x204080);
            near(image, 40, 40, 0xFFFFFF);
            near(image, 90, 40, 0xC04000);
            near(image, 75, 40, 0xFFFFFF);
            near(image, 105, 40, 0xFFFFFF);
            near(image, 130, 15, 0x008000);
            near(image, 130, 65, 0x000000);
            near(image, 20, 90, 0x000000);
            near(image, 40, 90, 0xFFFFFF);
            near(image, 60, 90, 0x000000);
        });
    }

    private static void near(BufferedImage image, int x, int y, int rgb) {
        int seen = image.getRGB(x, y);
        for (int shift = 0; shift < 24; shift += 8)
            assertThat(seen >> shift & 0xFF).as("colour at %d, %d", x, y).isCloseTo(rgb >> shift & 0xFF, within(12));
    }

    @Test
    void svgIsXmlWithTextAsText() throws Exception {
        String svg = Figures.svg(MAP, WIDTH);
        var tree =
                DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
        StringBuilder texts = new StringBuilder();
        var found = tree.getElementsByTagName("text");
        for (int i = 0; i < found.getLength(); i++)
            texts.append(found.item(i).getTextContent()).append('\n');
        assertThat(texts).contains("T1").contains("PREDICTED").contains("Negative = soil under vacuum");
        assertThat(tree.getElementsByTagName("title").item(0).getTextContent()).isEqualTo(MAP.title());
        assertThat(svg)
                .doesNotContain("http://www.w3.org/1999/xlink/")
                .startsWith("<?xml")
                .contains(SvgCanvas.MAKER);
        assertThat(Figures.svg(new Marks(), 160))
                .contains("Marks &lt;&amp;&gt;")
                .contains("Δp ≤ −5 Pa &amp; &lt;m³&gt;");
    }

    /** A library that this program does not use draws it: what is blue in the PNG is blue there. */
    @Test
    void anotherLibraryDrawsTheSvg() {
        int height = (int) MAP.height(Figures.scrap(), WIDTH);
        BufferedImage image = svgImage(Figures.svg(MAP, WIDTH), (int) WIDTH, height);
        long coloured = 0;
        for (int y = 0; y < height; y++)
            for (int x = 0; x < (int) WIDTH; x++) {
                int c = image.getRGB(x, y);
                if ((c & 0xFF) > (c >> 16 & 0xFF) + 40) coloured++;
            }
        assertThat(coloured).isGreaterThan(20_000);
    }

    @Test
    void pdfHoldsItsTextAndItsFonts() throws IOException {
        byte[] pdf = Figures.pdf(MAP, WIDTH);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(new PDFTextStripper().getText(document))
                    .contains("PREDICTED")
                    .contains("T1")
                    .contains("Pa");
            assertThat(document.getDocumentInformation().getTitle()).isEqualTo(MAP.title());
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en");
            var resources = document.getPage(0).getResources();
            assertThat(resources.getFontNames()).hasSize(2);
            for (COSName name : resources.getFontNames()) {
                PDFont font = resources.getFont(name);
                assertThat(font.isEmbedded()).isTrue();
                assertThat(font.getName()).as("a subset").matches("[A-Z]{6}\\+DejaVuSansCondensed(-Bold)?");
            }
        }
    }

    @Test
    void theRimOfALetterIsNoTextOfItsOwn() throws IOException {
        try (PDDocument document = Loader.loadPDF(Figures.pdf(new Marks(), 160))) {
            assertThat(new PDFTextStripper().getText(document)).containsOnlyOnce("Δp ≤ −5 Pa & <m³>");
        }
    }

    @Test
    void lettersThatTheFontLacksAreReplacedInAPdf() {
        assertThat(Typeface.printable("Haus 家\t1", false)).isEqualTo("Haus □ 1");
        assertThat(Typeface.printable("≈ ≥ ≤ − Δ ² ³ ° Ж é", true)).isEqualTo("≈ ≥ ≤ − Δ ² ³ ° Ж é");
    }

    @Test
    void theSameDrawingGivesTheSameBytes() {
        assertThat(Figures.pdf(MAP, WIDTH)).isEqualTo(Figures.pdf(MAP, WIDTH));
        assertThat(Figures.svg(MAP, WIDTH)).isEqualTo(Figures.svg(MAP, WIDTH));
    }

    @Test
    void numbersHaveTheDecimalMarkOfThePlace() {
        UnitsShown german = UnitsShown.SI().in(Locale.GERMANY);
        assertThat(german.pressure(-4.234)).isEqualTo("−4,2");
        assertThat(german.round(12.5)).isEqualTo("12,5");
        assertThat(german.flow(0.0384)).isEqualTo("38,4");
    }
}
