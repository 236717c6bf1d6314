package slabfield.desktop.viewmodel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import slabfield.desktop.drawing.Makers;
import slabfield.desktop.drawing.Places;
import slabfield.model.Point;
import slabfield.model.Scenario;

class PaceTest {
    private static final long SLOW = Pace.LONGEST * 2, FAST = Pace.LONGEST / 10;

    private final Pace pace = new Pace();
    private final Scenario house = Makers.slab(Blank.house(), Places.rectangle(new Point(0, 0), new Point(15, 10)))
            .scenario()
            .withCellSize(0.02);

    private void solves(Scenario of, int many, long time) {
        for (int i = 0; i < many; i++) pace.took(pace.cell(of), time);
    }

    @Test
    void theGridIsNeitherFinerThanTheHousesOwnNorThanTheSmallestCell() {
        assertThat(pace.cell(house)).isEqualTo(Pace.SMALLEST_CELL);
        assertThat(pace.cell(house.withCellSize(0.25))).isEqualTo(0.25);
    }

    @Test
    void aSlowMachineGetsFewerCellsAndAFastOneGetsThemBack() {
        solves(house, 100, SLOW);
        double coarse = pace.cell(house);
        assertThat(coarse).isCloseTo(Math.sqrt(150.0 / Pace.FEWEST_CELLS), within(1e-12));
        solves(house, 100, FAST);
        assertThat(pace.cell(house)).isEqualTo(Pace.SMALLEST_CELL);
    }

    @Test
    void theFirstSolvesOfAGridAreNotHeldAgainstIt() {
        for (int i = 0; i < 3; i++) pace.took(0.2, SLOW * 50);
        for (int i = 0; i < 6; i++) pace.took(0.2, Pace.LONGEST / 2);
        solves(house, 60, Pace.LONGEST / 2);
        assertThat(pace.cell(house)).isEqualTo(Pace.SMALLEST_CELL);
    }

    @Test
    void solvesThatJustKeepUpChangeNothing() {
        solves(house, 100, SLOW);
        double coarse = pace.cell(house);
        solves(house, 100, Pace.LONGEST * 2 / 3);
        assertThat(pace.cell(house)).isEqualTo(coarse);
    }
}
