package slabfield.desktop.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.desktop.viewmodel.Blank;
import slabfield.model.Point;
import slabfield.model.Scenario;

class SnapperTest {
    private static final double REACH = 0.15;

    /** 6 m by 4 m, and a footing from (2, 1) to (2, 3). */
    private static Scenario house() {
        Scenario slab = Makers.slab(Blank.house(), Places.rectangle(new Point(0, 0), new Point(6, 4)))
                .scenario();
        return Makers.barrier(slab, List.of(new Point(2, 1), new Point(2, 3))).scenario();
    }

    private static Snapper snapper(double grid) {
        return new Snapper(house(), List.of(), List.of(Layer.values()), grid);
    }

    @ParameterizedTest
    @CsvSource({
        "5.92, 3.95, CORNER,   6,    4",
        "3.05, 0.1,  MIDPOINT, 3,    0",
        "4.62, 0.1,  EDGE,     4.6,  0",
        "4.44, 1.08, ALIGNED,  4.4,  1",
        "4.44, 1.66, GRID,     4.4,  1.7",
        "1.95, 2.93, CORNER,   2,    3"
    })
    void aPlaceIsDrawnToTheStrongestThingNearIt(double x, double y, Snap.Sort sort, double toX, double toY) {
        Snap snap = snapper(0.1).snap(new Point(x, y), Optional.empty(), REACH);
        assertThat(snap.sort()).isEqualTo(sort);
        assertThat(snap.at()).isEqualTo(Places.whole(toX, toY));
    }

    @ParameterizedTest
    @CsvSource({
        "4.43, 0.56, STRAIGHT, 4.4,  0.5",
        "1.57, 1.50, STRAIGHT, 1.5,  1.5",
        "2.05, 2.42, PERPENDICULAR, 2, 2.4"
    })
    void aLineIsDrawnStraight(double x, double y, Snap.Sort sort, double toX, double toY) {
        Point from = sort == Snap.Sort.PERPENDICULAR ? new Point(4.7, 2.4) : new Point(0.5, 0.5);
        Snap snap = snapper(0.1).snap(new Point(x, y), Optional.of(from), REACH);
        if (sort == Snap.Sort.PERPENDICULAR) assertThat(snap.sort()).isEqualTo(sort);
        assertThat(snap.at().distanceTo(new Point(toX, toY))).as("%s", snap).isLessThan(0.05);
        assertThat(Math.abs(Math.sin(4 * Places.angle(from, snap.at()))))
                .as("a multiple of 45 degrees")
                .isLessThan(1e-6);
    }

    @Test
    void crossingsAreFound() {
        Scenario crossed = Makers.barrier(house(), List.of(new Point(1, 2.5), new Point(5, 2.6)))
                .scenario();
        Snap snap = new Snapper(crossed, List.of(), List.of(Layer.values()), 0)
                .snap(new Point(2.05, 2.5), Optional.empty(), REACH);
        assertThat(snap.sort()).isEqualTo(Snap.Sort.CROSSING);
        assertThat(snap.at()).isEqualTo(new Point(2, 2.525));
    }

    @Test
    void whatIsMovedAndWhatIsHiddenDrawsNothing() {
        Point near = new Point(1.95, 2.93);
        Snapper moving = new Snapper(house(), List.of(Item.of(Kind.BARRIER, "footing 1")), List.of(Layer.values()), 0);
        assertThat(moving.snap(near, Optional.empty(), REACH)).isEqualTo(Snap.free(near));
        assertThat(new Snapper(house(), List.of(), List.of(Layer.SLABS), 0).snap(near, Optional.empty(), REACH))
                .isEqualTo(Snap.free(near));
    }
}
