package slabfield.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import slabfield.model.Gap;
import slabfield.model.Path;
import slabfield.model.Point;

class PlacementTest {
    private static final Box PAGE = new Box(0, 0, 400, 300);

    @Test
    void aViewAndItsInverseAgree() {
        PlanView view = PlanView.fit(new Bounds(-2, 1, 10, 7), PAGE);
        Point there = view.plan(view.pageX(3.3), view.pageY(5.5));
        assertThat(there.x()).isEqualTo(3.3, within(1e-12));
        assertThat(there.y()).isEqualTo(5.5, within(1e-12));
    }

    @Test
    void aFittedPlanFillsTheBoxWithUpUp() {
        PlanView view = PlanView.fit(new Bounds(-2, 1, 10, 7), PAGE);
        assertThat(view.scale()).isEqualTo(400 / 12.0, within(1e-12));
        assertThat(view.box(new Bounds(-2, 1, 10, 7)).ring())
                .containsExactly(new Box(0, 50, 400, 250).ring(), within(1e-9));
        assertThat(view.pageY(7)).isLessThan(view.pageY(1));
    }

    @Test
    void zoomingKeepsThePlaceUnderThePointer() {
        PlanView view = new PlanView(30, 12, 200).zoomed(1.7, 90, 40).panned(0, 0);
        Point before = new PlanView(30, 12, 200).plan(90, 40), after = view.plan(90, 40);
        assertThat(after.distanceTo(before)).isLessThan(1e-12);
        assertThat(view.scale()).isEqualTo(51, within(1e-12));
    }

    @Test
    void aViewWithoutScaleIsRefused() {
        assertThatThrownBy(() -> new PlanView(0, 1, 1)).hasMessageContaining("scale above 0");
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void crowdedLabelsNeverOverlapNorLeaveThePage(long seed) {
        Random random = new Random(seed);
        Labels labels = new Labels(PAGE);
        List<Box> placed = new ArrayList<>();
        for (int i = 0; i < 60; i++)
            labels.place(400 * random.nextDouble(), 300 * random.nextDouble(), 70, 12, 9, 25, 50)
                    .ifPresent(placed::add);
        assertThat(placed).hasSizeGreaterThan(30).allMatch(PAGE::holds);
        for (int i = 0; i < placed.size(); i++)
            for (int j = 0; j < i; j++)
                assertThat(placed.get(i).overlaps(placed.get(j))).isFalse();
    }

    @Test
    void aLabelInACornerTurnsInwards() {
        assertThat(new Labels(PAGE).place(398, 2, 60, 12, 8))
                .hasValueSatisfying(b -> assertThat(PAGE.holds(b)).isTrue());
        assertThat(new Labels(new Box(0, 0, 20, 20)).place(10, 10, 60, 12, 8)).isEmpty();
    }

    @Test
    void textOnALineIsNeverUpsideDownAndSkipsShortLines() {
        for (double turn = 0; turn < 6.3; turn += 0.2) {
            double c = 100 * Math.cos(turn), s = 100 * Math.sin(turn);
            var spots =
                    LineLabels.places(new double[] {200 - c, 150 - s, 200 + c, 150 + s}, 30, 8, 1, new Labels(PAGE));
            assertThat(spots).hasSize(1);
            assertThat(spots.get(0).angle()).isBetween(-Math.PI / 2, Math.PI / 2);
            assertThat(Math.abs(Math.sin(spots.get(0).angle() - turn))).isLessThan(1e-9);
        }
        assertThat(LineLabels.places(new double[] {10, 10, 60, 10}, 30, 8, 1, new Labels(PAGE)))
                .isEmpty();
    }

    @Test
    void textOnABentLineMovesToAStraightPart() {
        double[] bent = {20, 150, 180, 150, 180, 160, 190, 160, 190, 150, 380, 150};
        var spots = LineLabels.places(bent, 60, 8, 1, new Labels(PAGE));
        assertThat(spots).hasSize(1);
        assertThat(Math.abs(spots.get(0).x() - 185)).isGreaterThan(25);
    }

    @ParameterizedTest
    @CsvSource({"3,0", "5,0.785398", "4,1.5707963", "6,-0.785398"})
    void hatchingCoversAnAreaEvenlyAndLeavesHolesOut(double spacing, double angle) {
        List<double[]> rings = List.of(new Box(0, 0, 300, 200).ring(), new Box(100, 50, 200, 150).ring());
        double length = 0;
        for (double[] line : Hatching.across(rings, spacing, angle)) {
            length += Lines.length(line);
            assertThat(Lines.inside(rings, (line[0] + line[2]) / 2, (line[1] + line[3]) / 2))
                    .isTrue();
        }
        // area 50 000; one line more or less is at most 361 long
        assertThat(length * spacing).isEqualTo(50_000, within(361 * spacing));
    }

    @Test
    void hatchingsOfNeighboursFallOnTheSameLines() {
        for (double left : new double[] {0, 13.7, 101.3})
            for (double[] line : Hatching.across(List.of(new Box(left, 3.1, left + 50, 60).ring()), 7, 0.6)) {
                double across = -Math.sin(0.6) * line[0] + Math.cos(0.6) * line[1];
                assertThat(across / 7).isEqualTo(Math.rint(across / 7), within(1e-9));
            }
    }

    @Test
    void hatchingOfARegionEndsAtItsEdge() {
        var lines = Hatching.across(PAGE, (x, y) -> Math.hypot(x - 200, y - 150) < 80, 7, Math.PI / 4);
        assertThat(lines).isNotEmpty();
        for (double[] line : lines) {
            assertThat(Math.hypot(line[0] - 200, line[1] - 150)).isEqualTo(80, within(0.05));
            assertThat(Math.hypot(line[2] - 200, line[3] - 150)).isEqualTo(80, within(0.05));
        }
    }

    @Test
    void gapsAndWhatTheyLeaveMakeUpThePath() {
        Path loop = SampleHouse.path(0, 0, 10, 0, 10, 10, 0, 10, 0, 0);
        List<Gap> gaps =
                List.of(new Gap(new Point(0.5, 0), 3), new Gap(new Point(10, 4), 2), new Gap(new Point(10, 5), 2));
        PlanView view = new PlanView(1, 0, 0);
        assertThat(Lines.remaining(loop, gaps, 0, view).stream()
                        .mapToDouble(Lines::length)
                        .sum())
                .isEqualTo(34, within(1e-9));
        assertThat(Lines.gaps(loop, List.of(gaps.get(0)), 0, view).stream()
                        .mapToDouble(Lines::length)
                        .sum())
                .isEqualTo(3, within(1e-9));
        assertThat(Lines.gaps(loop, List.of(new Gap(new Point(5, 0), 0)), 1.5, view))
                .hasSize(1)
                .allSatisfy(g -> assertThat(Lines.length(g)).isEqualTo(1.5, within(1e-9)));
    }

    @Test
    void aLineBesideAnotherKeepsItsDistanceRoundACorner() {
        double[] beside = Lines.beside(new double[] {0, 0, 10, 0, 10, 10}, false, 2);
        assertThat(beside).containsExactly(new double[] {0, 2, 8, 2, 8, 10}, within(1e-12));
    }
}
