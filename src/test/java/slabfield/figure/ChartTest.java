package slabfield.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import slabfield.field.Result;
import slabfield.field.SystemCurve;
import slabfield.figure.Charts.Choice;
import slabfield.model.Point;

class ChartTest {
    private static final MapStyle LOOK = MapStyle.of(UnitsShown.SI());
    private static final Result.Solved SOLVED = SampleHouse.solved();

    private static Figure parity() {
        return Charts.parity(
                "House",
                "before sealing",
                List.of(new Charts.Pair("T1", -20, -22, 3), new Charts.Pair("T2", -5, -1.5, 2)),
                LOOK);
    }

    private static Figure difference() {
        return new DifferenceFigure(SOLVED, SOLVED, "nothing", LOOK);
    }

    static double[] evenOdds() {
        double[] p = new double[SOLVED.field().grid().cells()];
        Arrays.fill(p, 0.5);
        return p;
    }

    static Stream<Figure> all() {
        return Stream.of(
                parity(),
                difference(),
                new ProbabilityFigure(SOLVED, evenOdds(), "vacuum of at least 5 Pa", "Fill and leaks varied.", LOOK),
                new Profile(new Point(0, 1.4), new Point(12, 1.4)).figure(SOLVED, 1, LOOK),
                Charts.system(
                        "House",
                        new SystemCurve(
                                "middle",
                                List.of(new double[] {0, 400}, new double[] {0.06, 0}),
                                List.of(new double[] {0, 0}, new double[] {0.03, 200}),
                                List.of(new double[] {0, 0}, new double[] {0.03, 150}),
                                0.03,
                                200),
                        LOOK),
                Charts.frontier(
                        "House",
                        List.of(new Choice("as drawn", 0.03, 2), new Choice("seal", 0.02, 4)),
                        Charts.Price.ROOM_AIR,
                        5,
                        LOOK),
                Charts.season(
                        "House",
                        List.of(new Charts.Season(-10, 200, 3), new Charts.Season(10, 4000, 5)),
                        "°C",
                        List.of(new Charts.Season(-15, 0, 2)),
                        4,
                        LOOK));
    }

    /** Every text lies on the page at every size of letters, and the figure says what it is. */
    @ParameterizedTest
    @MethodSource("all")
    void everyTextLiesOnThePage(Figure figure) {
        RecordingCanvas canvas = new RecordingCanvas(500, figure.height(Figures.scrap(), 500));
        figure.draw(canvas);
        assertThat(canvas.all()).contains("PREDICTED");
        assertThat(canvas.written)
                .filteredOn(RecordingCanvas.Written::upright)
                .allSatisfy(w -> assertThat(new Box(0, 0, 500, canvas.height()).holds(w.box()))
                        .as("%s at %s", w.text(), w.box())
                        .isTrue());
        assertThat(figure.title()).isNotBlank();
        assertThat(figure.description()).hasSizeGreaterThan(20);
    }

    @ParameterizedTest
    @MethodSource("all")
    void everyFigureIsWrittenInAllThreeKinds(Figure figure) {
        assertThat(Figures.png(figure, 600, 100)).startsWith(0x89, 'P', 'N', 'G');
        assertThat(Figures.svg(figure, 400)).contains("PREDICTED");
        assertThat(new String(Figures.pdf(figure, 400), 0, 5, java.nio.charset.StandardCharsets.US_ASCII))
                .isEqualTo("%PDF-");
    }

    @Test
    void theFrontierKeepsWhatNothingBeats() {
        List<Choice> best = Charts.frontier(List.of(
                new Choice("dear and weak", 5, 1),
                new Choice("cheap", 1, 2),
                new Choice("middle", 3, 4),
                new Choice("same price, weaker", 3, 3),
                new Choice("strong", 9, 6),
                new Choice("unsolved", 2, Double.NaN)));
        assertThat(best).extracting(Choice::name).containsExactly("cheap", "middle", "strong");
    }

    @Test
    void holesStandAtTheFootOfTheirPerpendicular() {
        Profile line = new Profile(new Point(0, 0), new Point(12, 0));
        assertThat(line.feet(SOLVED, 1.5)).extracting(Charts.Foot::id).containsExactly("T1", "T3", "T5");
        assertThat(line.feet(SOLVED, 1.5).get(1).along()).isEqualTo(6.9, within(1e-12));
        assertThat(line.feet(SOLVED, 1.5).get(1).beside()).isEqualTo(1.4, within(1e-12));
        Profile slanting = new Profile(new Point(0, 0), new Point(3, 4));
        assertThat(slanting.feet(SOLVED, 10))
                .filteredOn(f -> f.id().equals("T1"))
                .singleElement()
                .satisfies(f -> {
                    assertThat(f.along()).isEqualTo(1.4, within(1e-12));
                    assertThat(f.beside()).isEqualTo(0.2, within(1e-12));
                });
    }

    @Test
    void aDifferenceIsAfterLessBeforeOnOneScale() {
        double[] lower = SOLVED.field().pressure().clone();
        for (int i = 0; i < lower.length; i++) lower[i] -= 3;
        Result.Solved after = new Result.Solved(
                SOLVED.scenario(),
                SOLVED.convergence(),
                ValuePlan.with(SOLVED, lower),
                SOLVED.fanOff(),
                SOLVED.flows(),
                SOLVED.holes(),
                SOLVED.suctions(),
                SOLVED.coverage(),
                SOLVED.unreached(),
                SOLVED.doubts(),
                SOLVED.inertialShare());
        DifferenceFigure figure = new DifferenceFigure(SOLVED, after, "more suction", LOOK);
        assertThat(Arrays.stream(figure.change()).filter(Double::isFinite))
                .isNotEmpty()
                .allSatisfy(d -> assertThat(d).isEqualTo(-3, within(1e-9)));
        var before = VacuumScale.rangeOf(SOLVED.field(), LOOK.sense(), 1);
        assertThat(figure.shared().low())
                .isLessThanOrEqualTo(before.low())
                .isLessThanOrEqualTo(
                        VacuumScale.rangeOf(after.field(), LOOK.sense(), 1).low());
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.01, 1.01})
    void aProbabilityLiesBetweenNoneAndAll(double wrong) {
        double[] p = evenOdds();
        p[7] = wrong;
        assertThatThrownBy(() -> new ProbabilityFigure(SOLVED, p, "x", "", LOOK))
                .hasMessageContaining("between 0 and 1");
    }

    @Test
    void theBarOfAProbabilityHasQuarters() {
        Figure figure = new ProbabilityFigure(SOLVED, evenOdds(), "x", "", LOOK);
        RecordingCanvas canvas = new RecordingCanvas(500, figure.height(Figures.scrap(), 500));
        figure.draw(canvas);
        assertThat(canvas.texts()).containsSubsequence("100", "75", "50", "25", "0");
    }

    @Test
    void anAxisHoldsItsValuesAndRoundTicks() {
        Axis axis = Axis.around("flow", true, 3, 47);
        assertThat(axis.low()).isZero();
        assertThat(axis.high()).isGreaterThan(47);
        assertThat(axis.ticks(5)).containsExactly(0.0, 10.0, 20.0, 30.0, 40.0).doesNotContain(60.0);
        assertThat(Axis.around("t", false, 5, 5).position(5)).isEqualTo(0.5);
    }

    @Test
    void ticksHaveTheDecimalMarkOfThePlace() {
        RecordingCanvas canvas = new RecordingCanvas(500, 400);
        MapStyle german = MapStyle.of(UnitsShown.SI().in(Locale.GERMANY));
        Charts.frontier(
                        "Haus",
                        List.of(new Choice("a", 0.0004, 0.3), new Choice("b", 0.0009, 0.8)),
                        Charts.Price.ROOM_AIR,
                        0.5,
                        german)
                .draw(canvas);
        assertThat(canvas.texts()).contains("0,2", "0,4").doesNotContain("0.2");
    }
}
