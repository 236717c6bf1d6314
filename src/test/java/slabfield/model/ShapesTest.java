package slabfield.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static slabfield.model.DrawnHouse.path;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;

/** Areas and lengths that can be worked out by hand. */
class ShapesTest {
    private static final double ROUNDING = 1e-9;

    @Test
    void holesAreTakenOutOfASlabEvenAtItsEdge() {
        Slab slab =
                new Slab("s", DrawnHouse.rectangle(0, 0, 10, 8), List.of(DrawnHouse.rectangle(0, 0, 2, 1)), 0.1, true);
        assertThat(Shapes.area(slab).getArea()).isCloseTo(78, within(ROUNDING));
    }

    @Test
    void slabsThatTouchBecomeOnePiece() {
        Geometry both = Shapes.union(List.of(
                DrawnHouse.slab("a", 0, 0, 10, 8),
                DrawnHouse.slab("b", 10, 2, 14, 6),
                DrawnHouse.slab("c", 20, 0, 21, 1)));
        assertThat(both.getNumGeometries()).isEqualTo(2);
        assertThat(both.getArea()).isCloseTo(80 + 16 + 1, within(ROUNDING));
    }

    @Test
    void aStripHasButtEndsAndMitredCorners() {
        Geometry strip = Shapes.strip(DrawnHouse.barrier("b", path(1, 1, 5, 1, 5, 4)));
        assertThat(strip.getArea()).isCloseTo(0.4 * (4 + 3), within(ROUNDING));
        assertThat(strip.getEnvelopeInternal().getMinX()).isCloseTo(1, within(ROUNDING));
        assertThat(strip.contains(Shapes.point(new Point(5.19, 0.81))))
                .as("outer corner is filled")
                .isTrue();
    }

    @Test
    void aClosedStripIsAFrame() {
        Geometry frame = Shapes.strip(DrawnHouse.barrier("b", path(1, 1, 5, 1, 5, 4, 1, 4, 1, 1)));
        assertThat(frame.getArea()).isCloseTo(4.4 * 3.4 - 3.6 * 2.6, within(ROUNDING));
    }

    @Test
    void gapsAreTakenOutOfAStrip() {
        Geometry strip = Shapes.strip(DrawnHouse.barrier("b", path(1, 1, 5, 1), new Gap(new Point(3, 1.2), 1)));
        assertThat(strip.getNumGeometries()).isEqualTo(2);
        assertThat(strip.getArea()).isCloseTo(0.4 * 3, within(ROUNDING));
        assertThat(strip.intersects(Shapes.point(new Point(2.51, 1)))).isFalse();
        assertThat(strip.intersects(Shapes.point(new Point(2.49, 1)))).isTrue();
    }

    @Test
    void aGapThatReachesOverTheEndTakesOnlyWhatIsThere() {
        assertThat(Shapes.pieces(path(0, 0, 4, 0), List.of(new Gap(new Point(0, 0), 2))))
                .containsExactly(path(1, 0, 4, 0));
        assertThat(Shapes.pieces(path(0, 0, 4, 0), List.of(new Gap(new Point(2, 0), 10))))
                .isEmpty();
    }

    @Test
    void overlappingGapsAreOne() {
        List<Gap> gaps = List.of(new Gap(new Point(3, 0), 2), new Gap(new Point(2, 0), 4));
        assertThat(Shapes.pieces(path(0, 0, 6, 0), gaps)).containsExactly(path(4, 0, 6, 0));
    }

    @Test
    void aBreakOfNoLengthCuts() {
        assertThat(Shapes.pieces(path(0, 0, 4, 0), List.of(new Gap(new Point(1, 0), 0))))
                .containsExactly(path(0, 0, 1, 0), path(1, 0, 4, 0));
        assertThat(Shapes.pieces(path(0, 0, 4, 0), List.of(new Gap(new Point(0, 0), 0))))
                .containsExactly(path(0, 0, 4, 0));
    }

    @Test
    void aLoopCutOnceStaysOnePieceOverItsFirstPoint() {
        Path loop = path(0, 0, 4, 0, 4, 3, 0, 3, 0, 0);
        assertThat(Shapes.pieces(loop, List.of(new Gap(new Point(4, 1.5), 1))))
                .containsExactly(path(4, 2, 4, 3, 0, 3, 0, 0, 4, 0, 4, 1));
        assertThat(Shapes.pieces(loop, List.of(new Gap(new Point(4, 1.5), 0))))
                .containsExactly(path(4, 1.5, 4, 3, 0, 3, 0, 0, 4, 0, 4, 1.5));
    }

    @Test
    void aLoopCutAtItsFirstPointOpensThere() {
        Path loop = path(0, 0, 4, 0, 4, 3, 0, 3, 0, 0);
        assertThat(Shapes.pieces(loop, List.of(new Gap(new Point(0, 0), 2))))
                .containsExactly(path(1, 0, 4, 0, 4, 3, 0, 3, 0, 1));
        assertThat(Shapes.pieces(loop, List.of(new Gap(new Point(0, 0), 0)))).containsExactly(loop);
    }

    @Test
    void aDiscIsNearlyRound() {
        assertThat(Shapes.disc(new Point(1, 2), 0.5).getArea())
                .isCloseTo(Math.PI * 0.25, within(0.0017 * Math.PI * 0.25));
    }

    @Test
    void onlyBarriersThatNoAirPassesAreAirtight() {
        Barrier tight = DrawnHouse.barrier("t", path(1, 1, 5, 1));
        Barrier leaky = new Barrier("l", path(1, 3, 5, 3), 0.4, 1e-12, true, List.of());
        assertThat(Shapes.airtight(List.of(tight, leaky)).getArea()).isCloseTo(1.6, within(ROUNDING));
        assertThat(Shapes.airtight(List.of()).isEmpty()).isTrue();
    }

    /** A comb of two teeth over a strip: two squares of 1 m; a corner touched has no area, and one far off nothing at all. */
    @Test
    void whatTwoOutlinesHaveInCommonMayLieApart() {
        List<Point> comb = List.of(
                new Point(0, 0),
                new Point(3, 0),
                new Point(3, 2),
                new Point(2, 2),
                new Point(2, 1),
                new Point(1, 1),
                new Point(1, 2),
                new Point(0, 2));
        List<List<Point>> both = Shapes.common(comb, DrawnHouse.rectangle(0, 1, 3, 5));
        assertThat(both).hasSize(2);
        for (List<Point> part : both) assertThat(Shapes.area(part).getArea()).isCloseTo(1, within(ROUNDING));
        assertThat(Shapes.common(comb, DrawnHouse.rectangle(3, 2, 4, 4))).isEmpty();
        assertThat(Shapes.common(comb, DrawnHouse.rectangle(30, 20, 40, 40))).isEmpty();
    }
}
