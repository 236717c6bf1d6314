package slabfield.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import slabfield.field.AirPaths;
import slabfield.field.Grid;
import slabfield.field.PressureField;
import slabfield.field.Result;
import slabfield.model.Point;

class PlanLayersTest {
    private static final Box PAGE = new Box(0, 0, 500, 380);
    private static final MapStyle STYLE = MapStyle.of(UnitsShown.SI());

    private final Result.Solved solved = SampleHouse.solved();

    /** Air that goes round a middle at rest, as rigidly as a wheel: no cell gains or loses any. */
    private static AirPaths wheel() {
        Grid grid = new Grid(-5, -4, 0.5, 0.5, 20, 16);
        double[] east = new double[grid.cells()], north = new double[grid.cells()];
        for (int j = 0; j < grid.rows(); j++)
            for (int i = 0; i < grid.columns(); i++) {
                east[grid.index(i, j)] = -grid.y(j);
                north[grid.index(i, j)] = grid.x(i);
            }
        return new AirPaths(grid, east, north, List.of("all"), new double[][] {ones(grid.cells())}, new double[] {1});
    }

    private static double[] ones(int n) {
        double[] ones = new double[n];
        Arrays.fill(ones, 1);
        return ones;
    }

    private AirPaths paths() {
        Grid g = solved.field().grid();
        double[] left = new double[g.cells()], right = new double[g.cells()];
        for (int c = 0; c < left.length; c++) {
            boolean has = !Double.isNaN(solved.field().pressure()[c]);
            left[c] = !has ? Double.NaN : g.x(c % g.columns()) < 6 ? 1 : 0;
            right[c] = 1 - left[c];
        }
        return new AirPaths(
                g,
                new double[g.cells()],
                new double[g.cells()],
                List.of("west joint", "east joint"),
                new double[][] {left, right},
                new double[] {0.7, 0.3});
    }

    @Test
    void streamlinesKeepTheirDistanceAndFillThePage() {
        PlanView view = PlanView.fit(new Bounds(-5, -4, 5, 4), PAGE);
        double spacing = 20;
        List<double[]> lines = new Streamlines(wheel()).lines(view, PAGE, spacing);
        for (int a = 0; a < lines.size(); a++)
            for (int b = a + 1; b < lines.size(); b++)
                assertThat(nearest(lines.get(a), lines.get(b)))
                        .as("lines %d and %d", a, b)
                        .isGreaterThan(0.45 * spacing);
        Box inner = view.box(new Bounds(-4, -3, 4, 3));
        for (double y = inner.top(); y < inner.bottom(); y += 17)
            for (double x = inner.left(); x < inner.right(); x += 17)
                assertThat(nearest(new double[] {x, y}, lines))
                        .as("place %.0f, %.0f", x, y)
                        .isLessThan(2.2 * spacing);
    }

    private static double nearest(double[] place, List<double[]> lines) {
        return lines.stream().mapToDouble(l -> nearest(place, l)).min().orElse(Double.MAX_VALUE);
    }

    private static double nearest(double[] a, double[] b) {
        double least = Double.MAX_VALUE;
        for (int i = 0; i < a.length; i += 2)
            for (int j = 0; j < b.length; j += 2) least = Math.min(least, Math.hypot(a[i] - b[j], a[i + 1] - b[j + 1]));
        return least;
    }

    /** Round the wheel's hub a line keeps its distance to it, and goes the way that the air goes. */
    @Test
    void aStreamlineFollowsTheFlow() {
        PlanView view = PlanView.fit(new Bounds(-5, -4, 5, 4), PAGE);
        double[] line = new Streamlines(wheel())
                .lines(view, PAGE, 20).stream()
                        .filter(l -> Math.abs(radius(view, l, 0) - 2.5) < 0.8)
                        .findFirst()
                        .orElseThrow();
        for (int i = 0; i < line.length; i += 2)
            assertThat(radius(view, line, i)).isCloseTo(radius(view, line, 0), within(0.15));
        Point from = view.plan(line[0], line[1]), to = view.plan(line[2], line[3]);
        assertThat(from.x() * to.y() - from.y() * to.x())
                .as("counter-clockwise")
                .isPositive();
    }

    private static double radius(PlanView view, double[] line, int i) {
        Point at = view.plan(line[i], line[i + 1]);
        return Math.hypot(at.x(), at.y());
    }

    @Test
    void theOriginsAreNamedOnTheMapAndInTheKey() {
        RecordingCanvas canvas = new RecordingCanvas(500, 380);
        List<PlanLayer> layers = List.of(new OriginLayer(paths(), solved, STYLE));
        VacuumMap.drawPlan(
                canvas, solved, STYLE, layers, PlanView.fit(Bounds.of(solved.scenario()), PAGE.inset(20)), PAGE);
        assertThat(canvas.texts()).contains("west joint 70 %", "east joint 30 %");
        RecordingCanvas key = new RecordingCanvas(180, 900);
        VacuumMap.drawLegend(key, solved, STYLE, layers, new Box(0, 0, 180, 900));
        assertThat(key.all())
                .contains("west joint: 70 %")
                .contains("Where the air")
                .doesNotContain("square-root scale")
                .doesNotContain("target: vacuum");
    }

    @Test
    void originColoursAreApartForEyesWithoutRedGreenSense() {
        for (int a = 0; a < 7; a++)
            for (int b = a + 1; b < 7; b++) {
                assertThat(distance(OriginLayer.colour(a), OriginLayer.colour(b)))
                        .as("colours %d and %d", a, b)
                        .isGreaterThan(0.1);
                assertThat(distance(deutan(OriginLayer.colour(a)), deutan(OriginLayer.colour(b))))
                        .as("colours %d and %d, deuteranope", a, b)
                        .isGreaterThan(0.05);
            }
    }

    private static double distance(int a, int b) {
        return OkLab.ofArgb(a).distanceTo(OkLab.ofArgb(b));
    }

    /** How a deuteranope sees a colour: Vi\u00e9not, Brettel and Mollon (1999), in linear light. */
    private static int deutan(int argb) {
        double r = linear(argb >> 16), g = linear(argb >> 8), b = linear(argb);
        double l = 17.8824 * r + 43.5161 * g + 4.11935 * b,
                s = 0.0299566 * r + 0.184309 * g + 1.46709 * b,
                m = 0.494207 * l + 1.24827 * s;
        return 0xFF000000
                | coded(0.0809444479 * l - 0.130504409 * m + 0.116721066 * s) << 16
                | coded(-0.0102485335 * l + 0.0540193266 * m - 0.113614708 * s) << 8
                | coded(-0.000365296938 * l - 0.00412161469 * m + 0.693511405 * s);
    }

    private static double linear(int channel) {
        return Math.pow((channel & 255) / 255.0, 2.2);
    }

    private static int coded(double linear) {
        return (int) Math.round(255 * Math.pow(Math.max(0, Math.min(1, linear)), 1 / 2.2));
    }

    @Test
    void theChangeIsAfterLessBeforeAndSaysWhichWayIsMore() {
        PressureField f = solved.field();
        double[] stronger = f.pressure().clone();
        for (int c = 0; c < stronger.length; c++) stronger[c] -= 7;
        Result.Solved after = new Result.Solved(
                solved.scenario(),
                solved.convergence(),
                new PressureField(f.grid(), f.kind(), stronger, f.counts(), f.openArea()),
                solved.fanOff(),
                solved.flows(),
                solved.holes(),
                solved.suctions(),
                solved.coverage(),
                solved.unreached(),
                solved.doubts(),
                solved.inertialShare());
        assertThat(new ChangeLayer(solved, after, STYLE).at(new Point(2, 4))).isCloseTo(-7, within(1e-9));
        RecordingCanvas key = new RecordingCanvas(180, 900);
        VacuumMap.drawLegend(
                key, solved, STYLE, List.of(new ChangeLayer(solved, after, STYLE)), new Box(0, 0, 180, 900));
        assertThat(key.all())
                .contains("after less before")
                .contains("\u22128: more vacuum")
                .contains("+8: less vacuum, hatched");
    }

    @Test
    void theLawIsDoubtfulOnlyWhereItsFillHasDarcyAloneAndTheAirIsFast() {
        boolean[] none = new DoubtLayer(solved, Double.POSITIVE_INFINITY, STYLE).lawDoubtful(),
                all = new DoubtLayer(solved, -1, STYLE).lawDoubtful();
        Grid g = solved.field().grid();
        int inStone = g.index(g.column(1), g.row(1)), inSand = g.index(g.column(2), g.row(5));
        assertThat(none).containsOnly(false);
        assertThat(all[inSand]).isEqualTo(!Double.isNaN(solved.inertialShare()[inSand]));
        assertThat(all[inStone]).as("clean stone has an inertial coefficient").isFalse();
    }

    @Test
    void theFootNamesStampLengthAndNorth() {
        RecordingCanvas canvas = new RecordingCanvas(500, 380);
        PlanView view = new PlanView(30, 20, 360);
        new MapFoot("MEASURED", UnitsShown.SI(), 90).draw(canvas, view, PAGE, 1);
        assertThat(canvas.texts()).containsExactly("MEASURED", "0", "2 m", "N");
    }

    @Test
    void pinsStayOnThePageAndALineHasItsEndsNamed() {
        RecordingCanvas canvas = new RecordingCanvas(500, 380);
        PlanView view = new PlanView(30, 20, 360);
        new MarksLayer(
                        List.of(new MarksLayer.Mark(view.plan(490, 200), "1: \u221212.5 Pa")),
                        Optional.of(new Profile(new Point(1, 1), new Point(5, 4))))
                .draw(canvas, view, PAGE, 1);
        assertThat(canvas.texts()).containsExactly("A", "B", "1: \u221212.5 Pa");
        assertThat(canvas.written.get(2).box().right()).isLessThan(490);
    }

    @Test
    void aMeasuredMapHasReadingsAndNoField() {
        RecordingCanvas canvas = new RecordingCanvas(500, 380);
        var stage = solved.scenario().stages().get(0);
        List<PlanLayer> layers =
                List.of(new MeasuredLayer(solved.scenario(), stage, VacuumMap.scale(solved, STYLE), STYLE.units()));
        VacuumMap.drawPlan(
                canvas,
                solved,
                STYLE.showing(true, false, true),
                layers,
                PlanView.fit(Bounds.of(solved.scenario()), PAGE.inset(20)),
                PAGE);
        assertThat(canvas.images).as("no coloured field").isZero();
        List<String> expected = new ArrayList<>();
        solved.scenario().testHoles().forEach(h -> expected.add(h.id()));
        assertThat(canvas.texts()).containsAll(expected).contains("not read").doesNotContain("weakest");
        assertThat(canvas.all()).as("nothing predicted beside it").doesNotContain(" / ");
        RecordingCanvas sheet = new RecordingCanvas(700, 500);
        VacuumMap.draw(sheet, solved, STYLE, layers);
        assertThat(sheet.texts())
                .contains("MEASURED")
                .doesNotContain("PREDICTED")
                .noneMatch(t -> t.contains("predicted"));
    }

    @Test
    void labelsLeaveTheFootOfAPlanAndPinsFree() {
        Box page = new Box(0, 0, 300, 205);
        PlanView view = PlanView.fit(Bounds.of(solved.scenario()), page.inset(4));
        MapFoot foot = new MapFoot("PREDICTED", STYLE.units(), 0);
        MarksLayer pins = new MarksLayer(
                List.of(new MarksLayer.Mark(new Point(3.4, 4.4), "1"), new MarksLayer.Mark(new Point(9.4, 4.4), "2")),
                Optional.empty());
        RecordingCanvas canvas = new RecordingCanvas(page.width(), page.height());
        VacuumMap.drawPlan(canvas, solved, STYLE, List.of(pins, foot), view, page);
        List<Box> kept = new ArrayList<>(pins.keepsFree(canvas, view, page, 1));
        kept.addAll(foot.keepsFree(canvas, view, page, 1));
        List<String> own = List.of("PREDICTED", "0", "N", "1", "2");
        for (RecordingCanvas.Written w : canvas.written)
            if (w.upright() && !own.contains(w.text()) && !w.text().matches("\\d+ m"))
                assertThat(kept).as(w.text()).noneMatch(w.box()::overlaps);
    }
}
