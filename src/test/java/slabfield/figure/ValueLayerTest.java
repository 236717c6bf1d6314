package slabfield.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import slabfield.field.Grid;

class ValueLayerTest {
    private static final Grid GRID = new Grid(0, 0, 1, 1, 4, 1);
    private static final double[] VALUES = {0, 0.25, 1, Double.NaN};
    private static final ValueLayer.Subject PERCENT =
            new ValueLayer.Subject("odds", List.of("Odds of it."), 0, 1, List.of(0.5), p -> Math.round(100 * p) + " %");

    private static int pixel(PlanLayer layer, double x) {
        BufferedImage image = new BufferedImage(40, 10, BufferedImage.TYPE_INT_ARGB);
        var graphics = image.createGraphics();
        layer.draw(new AwtCanvas(graphics, 40, 10, 1), new PlanView(10, 0, 10), new Box(0, 0, 40, 10), 1);
        graphics.dispose();
        return image.getRGB((int) (10 * x), 5);
    }

    private static double lightness(int argb) {
        return OkLab.ofArgb(argb).l();
    }

    private static List<String> told(PlanLayer layer) {
        List<String> told = new ArrayList<>();
        layer.explain(
                new PlanLayer.Key() {
                    @Override
                    public void entry(Sample sample, String text) {
                        told.add(text);
                    }

                    @Override
                    public void paragraph(String text) {
                        told.add(text);
                    }
                },
                1);
        return told;
    }

    @Test
    void theLargerTheDarkerInEqualStepsAndNothingWhereThereIsNoValue() {
        ValueLayer layer = new ValueLayer(
                GRID, VALUES, new ValueLayer.Subject("odds", List.of(), 0, 1, List.of(), String::valueOf), false);
        double none = lightness(pixel(layer, 0.5)),
                quarter = lightness(pixel(layer, 1.5)),
                all = lightness(pixel(layer, 2.5));
        assertThat(none).isGreaterThan(quarter);
        assertThat((none - quarter) / (none - all)).isCloseTo(0.25, within(0.06));
        assertThat(pixel(layer, 3.5) >>> 24).isZero();
    }

    @Test
    void theKeySaysWhatItIsAndEachLevelWithItsNumber() {
        assertThat(told(new ValueLayer(GRID, VALUES, PERCENT, false)))
                .containsExactly("Odds of it.", "100 %", "50 %", "0 %");
    }

    @Test
    void valuesAreReadOffAtPlaces() {
        ValueLayer layer = new ValueLayer(GRID, VALUES, PERCENT, false);
        assertThat(layer.at(1.5, 0.5)).isEqualTo(0.25);
        assertThat(layer.at(3.5, 0.5)).isNaN();
        assertThat(layer.at(9, 0.5)).isNaN();
    }

    @Test
    void roundEndsHoldWhatIsAskedAndLevelsLieBetweenThem() {
        ValueLayer.Subject inches = ValueLayer.Subject.round("width", List.of(), 0, 61, 249.089, String::valueOf);
        assertThat(inches.low()).isZero();
        assertThat(inches.high() / 249.089).isCloseTo(0.25, within(1e-9));
        assertThat(inches.levels()).isNotEmpty().allMatch(l -> l > inches.low() && l < inches.high());
        ValueLayer.Subject flat = ValueLayer.Subject.round("width", List.of(), 3, 3, 1, String::valueOf);
        assertThat(flat.high()).isGreaterThan(flat.low());
        assertThat(flat.low()).isLessThanOrEqualTo(3);
    }

    @Test
    void valuesMustFitTheGrid() {
        assertThatThrownBy(() -> new ValueLayer(GRID, new double[3], PERCENT, false))
                .hasMessageContaining("each cell");
    }

    @Test
    void aMaskIsGreyWhereSomethingCannotBeAndSaysWhy() {
        MaskLayer mask = new MaskLayer(GRID, new boolean[] {true, false, false, true}, "no hole here");
        assertThat(pixel(mask, 0.5) >>> 24).isPositive();
        assertThat(pixel(mask, 1.5) >>> 24).isZero();
        assertThat(mask.at(3.5, 0.5)).isTrue();
        assertThat(told(mask)).containsExactly("no hole here");
    }
}
