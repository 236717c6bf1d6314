package slabfield.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import slabfield.field.Result;
import slabfield.figure.RecordingCanvas.Written;
import slabfield.figure.VacuumScale.Law;
import slabfield.figure.VacuumScale.Range;
import slabfield.figure.VacuumScale.Sense;
import slabfield.model.OpeningKind;
import slabfield.model.SealState;

class VacuumMapTest {
    private static final MapStyle SI = MapStyle.of(UnitsShown.SI());

    private static RecordingCanvas drawn(Result result, MapStyle style, double width) {
        RecordingCanvas canvas =
                new RecordingCanvas(width, VacuumMap.height(new RecordingCanvas(1, 1), width, result, style));
        VacuumMap.draw(canvas, result, style);
        return canvas;
    }

    @Test
    void theSheetSaysWhatItIs() {
        String all = drawn(SampleHouse.solved(), SI, 672).all();
        assertThat(all)
                .contains("PREDICTED")
                .contains("Bearing-wall footing with a doorway")
                .contains("Pressure, Pa")
                .contains("Negative = soil under vacuum relative to the room.")
                .contains("target 5 Pa")
                .contains("met under 68 % of the area")
                .contains("below target: 32 %")
                .contains("S1 −120 Pa, 38.4 L/s")
                .contains("weakest \u22121.3 Pa")
                .contains("Cell 0.10 m")
                .contains("steady flow in one layer, seen from above; assumptions as drawn")
                .contains(
                        "block wall, tops open",
                        "block wall, tops loose",
                        "drain tile broken",
                        "drain tile full of water")
                .contains("footing or barrier, known", "footing or barrier, suspected", "sump, covered", "crack, open")
                .doesNotContain("plan north");
    }

    @Test
    void measuredValuesComeFromTheLatestStageWithTheHouseAsDrawn() {
        String all = drawn(SampleHouse.solved(), SI, 672).all();
        assertThat(all).contains("T1 −8.8 / −12.3 Pa", "T4 0.91 / 0.40 Pa").contains("T2 −7.4 Pa");
    }

    @Test
    void unitsRunThroughTheWholeSheet() {
        String all = drawn(SampleHouse.solved(), MapStyle.of(SampleHouse.feet()), 672)
                .all();
        assertThat(all)
                .contains("Pressure, inH2O", "81.4 cfm", "target 0.02 inH2O", "5 ft")
                .doesNotContain(" Pa");
    }

    @Test
    void planNorthAppearsOnlyWhenAsked() {
        assertThat(drawn(SampleHouse.solved(), SI.withPlanNorth(true), 672).texts())
                .contains("plan north");
    }

    @Test
    void labelsCanBeLeftOut() {
        assertThat(drawn(SampleHouse.solved(), SI.showing(true, false, true), 672)
                        .texts())
                .doesNotContain("T1", "target 5 Pa");
    }

    @Test
    void anUnsolvedResultHasItsReasonAndNoField() {
        RecordingCanvas canvas = drawn(SampleHouse.unsolved(), SI, 672);
        assertThat(canvas.images).isZero();
        assertThat(canvas.all())
                .contains(
                        "NOT SOLVED", "could not be solved", "draws a fixed flow from a part of the layer", "T1", "S1")
                .doesNotContain("PREDICTED", "target", "weakest");
        assertThat(drawn(SampleHouse.solved(), SI, 672).images).isEqualTo(2);
    }

    @ParameterizedTest
    @CsvSource({"300,1", "420,1", "525,1", "672,1", "1152,1.6", "900,2.5"})
    void noTextLeavesThePage(double width, double fontScale) {
        for (Result result : List.of(SampleHouse.solved(), SampleHouse.unsolved())) {
            RecordingCanvas canvas = drawn(result, SI.withFontScale(fontScale), width);
            Box page = new Box(0, 0, canvas.width(), canvas.height());
            assertThat(canvas.written).filteredOn(Written::upright).allMatch(w -> page.holds(w.box()));
        }
    }

    @ParameterizedTest
    @CsvSource({"420,1", "525,1", "672,1", "1152,1.6"})
    void noTextStandsOnAnother(double width, double fontScale) {
        List<Written> upright = drawn(SampleHouse.solved(), SI.withFontScale(fontScale), width).written.stream()
                .filter(Written::upright)
                .toList();
        for (int i = 0; i < upright.size(); i++)
            for (int j = 0; j < i; j++)
                assertThat(upright.get(i).box().overlaps(upright.get(j).box()))
                        .as("%s over %s", upright.get(i).text(), upright.get(j).text())
                        .isFalse();
    }

    @Test
    void aLockedRangeHolds() {
        var solved = SampleHouse.solved();
        Range locked = new Range(-40, 10);
        assertThat(VacuumMap.scale(solved, SI.with(locked)).range()).isEqualTo(locked);
        assertThat(VacuumMap.scale(solved, SI).range()).isEqualTo(new Range(-150, 1.5));
    }

    @Test
    void theViewIsWhereThePlanIsDrawn() {
        var solved = SampleHouse.solved();
        BufferedImage image = image(900, 700, c -> VacuumMap.draw(c, solved, SI.showing(false, false, false)));
        PlanView view = VacuumMap.view(new RecordingCanvas(900, 700), solved, SI);
        int x = (int) view.pageX(6.0), y = (int) view.pageY(5.0);
        int expected = VacuumMap.scale(solved, SI).argb(SampleHouse.pressure(6, 5));
        assertThat(OkLab.ofArgb(image.getRGB(x, y)).distanceTo(OkLab.ofArgb(expected)))
                .isLessThan(0.02);
        assertThat(new Color(image.getRGB((int) view.pageX(9.5), (int) view.pageY(7.5))))
                .isEqualTo(Color.WHITE);
    }

    @ParameterizedTest
    @EnumSource(Law.class)
    void greysAreGrey(Law law) {
        var solved = SampleHouse.solved();
        BufferedImage image = image(
                700,
                560,
                c -> VacuumMap.drawPlan(
                        c,
                        solved,
                        SI.with(Sense.SIGNED, law).withMonochrome(true),
                        new PlanView(50, 20, 500),
                        new Box(0, 0, 700, 560)));
        for (int x = 0; x < 700; x += 7)
            for (int y = 0; y < 560; y += 7) {
                OkLab colour = OkLab.ofArgb(image.getRGB(x, y));
                // the ink itself is a blue-black of chroma 0.03
                assertThat(Math.hypot(colour.a(), colour.b())).isLessThan(0.035);
            }
    }

    @ParameterizedTest
    @EnumSource(OpeningKind.class)
    void theMoreAnOpeningIsClosedTheDarkerItsSign(OpeningKind kind) {
        rising(state -> c -> new Symbols(c, new Ink(1)).opening(kind, state, 20, 20));
    }

    @Test
    void theMoreALineIsClosedTheDarkerItsSign() {
        double[] line = {0, 20, 120, 20};
        rising(state -> c -> new LineSigns(c, new Ink(1)).joint(line, false, state));
        rising(state -> c -> new LineSigns(c, new Ink(1)).crack(line, state));
        rising(state -> c -> new LineSigns(c, new Ink(1)).wall(line, state));
    }

    private static void rising(java.util.function.Function<SealState, Consumer<Canvas>> sign) {
        List<Long> darkness = new ArrayList<>();
        for (SealState state : SealState.values()) {
            BufferedImage image = image(120, 40, sign.apply(state));
            long dark = 0;
            for (int x = 0; x < 120; x++) for (int y = 0; y < 40; y++) dark += 255 - (image.getRGB(x, y) >> 8 & 255);
            darkness.add(dark);
        }
        double open = darkness.get(0), span = darkness.get(3) - open;
        assertThat(span).as("%s", darkness).isGreaterThan(0.3 * open);
        double loose = (darkness.get(1) - open) / span, covered = (darkness.get(2) - open) / span;
        assertThat(loose).as("%s", darkness).isBetween(0.3, 0.65);
        assertThat(covered).as("%s", darkness).isBetween(loose + 0.15, 0.92);
    }

    private static BufferedImage image(int width, int height, Consumer<Canvas> drawing) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, width, height);
        drawing.accept(new AwtCanvas(graphics, width, height, 1));
        return image;
    }

    @Test
    void aPngHasItsSizeAndResolutionAndIsTheSameEachTime() throws Exception {
        byte[] png = Figures.png(SampleHouse.solved(), SI, 700, 150);
        assertThat(Figures.png(SampleHouse.solved(), SI, 700, 150)).isEqualTo(png);
        assertThat(ImageIO.read(new ByteArrayInputStream(png)).getWidth()).isEqualTo(700);
        int chunk = new String(png, StandardCharsets.ISO_8859_1).indexOf("pHYs");
        ByteBuffer phys = ByteBuffer.wrap(png, chunk + 4, 9);
        // 150 dpi = 5905.5 pixels per metre; unit 1 is the metre
        assertThat(List.of(phys.getInt(), phys.getInt(), (int) phys.get())).containsExactly(5906, 5906, 1);
    }

    @Test
    void aPngOfAnImpossibleSizeIsRefused() {
        assertThatThrownBy(() -> Figures.png(SampleHouse.solved(), SI, 10, 96)).hasMessageContaining("300 to 20000");
        assertThatThrownBy(() -> Figures.png(SampleHouse.solved(), SI, 700, 5)).hasMessageContaining("50 to 1200");
    }
}
