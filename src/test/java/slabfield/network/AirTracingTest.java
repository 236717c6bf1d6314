package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import slabfield.field.AirPaths;
import slabfield.field.CellKind;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.BlockWall;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;

class AirTracingTest {
    /** Each origin's flow is followed by sums of products of doubles over a few thousand nodes. */
    private static final double ROUNDING = 1e-9;

    private static final Opening.Orifice HAND = new Opening.Orifice(0.01, 0.61);

    private static Houses house(double inertial) {
        BlockWall wall = new BlockWall(
                "north",
                Houses.path(0, 4, 6, 4),
                2,
                Seal.of(SealState.OPEN),
                0.09,
                1e-5,
                1e-6,
                1e-6,
                1e-3,
                true,
                Optional.empty());
        return Houses.on(1e-8, inertial)
                .rectangle(0, 0, 6, 4)
                .cell(0.2)
                .leakance(1e-6)
                .outdoors(3)
                .wall(wall)
                .tile(null, List.of(), 0.5, 0.5, 5.5, 0.5)
                .opening("left", new Opening.Spot(new Point(0.7, 2), 0.1), HAND)
                .opening("right", new Opening.Spot(new Point(5.3, 2.2), 0.1), HAND);
    }

    private static AirPaths trace(Scenario scenario) {
        return AirTracing.of(scenario, Progress.NONE).orElseThrow();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 2e5})
    void sharesOfTheExhaustAreTheFlowsThroughTheOpenings(double inertial) {
        Scenario scenario = house(inertial)
                .suction("S1", 3, 2, 0.15, new Source.Pressure(-150))
                .scenario();
        Map<String, Double> flows = Houses.solve(scenario).flows().bySource();
        double exhaust = Houses.solve(scenario).flows().exhaust();
        AirPaths paths = trace(scenario);
        assertThat(flows.values())
                .as("nothing may leave elsewhere, or the check would not hold")
                .allMatch(q -> q >= 0);
        assertThat(paths.origins()).containsExactlyInAnyOrderElementsOf(flows.keySet());
        for (int k = 0; k < paths.origins().size(); k++)
            assertThat(paths.exhaustShare()[k])
                    .as(paths.origins().get(k))
                    .isEqualTo(flows.get(paths.origins().get(k)) / exhaust, within(ROUNDING));
        assertThat(paths.exhaustShare()).isSortedAccordingTo((a, b) -> Double.compare(b, a));
    }

    @Test
    void airInEveryCellComesFromSomewhere() {
        AirPaths paths =
                trace(house(0).suction("S1", 3, 2, 0.15, new Source.Flow(0.01)).scenario());
        int passed = 0;
        for (int c = 0; c < paths.grid().cells(); c++) {
            double sum = 0;
            for (double[] share : paths.share()) sum += share[c];
            if (Double.isNaN(sum)) continue;
            passed++;
            assertThat(sum).isEqualTo(1, within(ROUNDING));
        }
        assertThat(passed).isGreaterThan(paths.grid().cells() * 9 / 10);
    }

    @Test
    void eachSideIsFedByItsOwnOpening() {
        Scenario scenario = Houses.on(1e-9, 0)
                .rectangle(0, 0, 6, 3)
                .cell(0.1)
                .drainedLine("west", 0, 0, 0, 3)
                .drainedLine("east", 6, 0, 6, 3)
                .suction("S1", 2, 1.5, 0.1, new Source.Pressure(-100))
                .scenario();
        AirPaths paths = trace(scenario);
        var grid = paths.grid();
        int west = paths.origins().indexOf("west"), east = paths.origins().indexOf("east");
        assertThat(paths.share()[west][grid.index(grid.column(1), grid.row(1.5))])
                .isGreaterThan(0.999);
        assertThat(paths.share()[east][grid.index(grid.column(4), grid.row(1.5))])
                .isGreaterThan(0.999);
        assertThat(paths.main(grid.index(grid.column(1), grid.row(1.5)))).isEqualTo(west);
        assertThat(paths.toEast()[grid.index(grid.column(1), grid.row(1.5))]).isPositive();
        assertThat(paths.toEast()[grid.index(grid.column(4), grid.row(1.5))]).isNegative();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 2e5})
    void whatFlowsIntoACellFlowsOutAgain(double inertial) {
        Scenario scenario = Houses.on(1e-8, inertial)
                .rectangle(0, 0, 6, 4)
                .cell(0.2)
                .opening("far", new Opening.Spot(new Point(5, 3), 0.3), HAND)
                .suction("S1", 1, 1, 0.3, new Source.Flow(0.02))
                .scenario();
        AirPaths paths = trace(scenario);
        Result.Solved solved = Houses.solve(scenario);
        var grid = paths.grid();
        int columns = grid.columns(), checked = 0;
        for (int j = 1; j < grid.rows() - 1; j++)
            for (int i = 1; i < columns - 1; i++) {
                int c = grid.index(i, j);
                Point middle = new Point(grid.x(i), grid.y(j));
                if (solved.field().kind()[c] != CellKind.LAYER) continue;
                if (middle.distanceTo(new Point(5, 3)) < 0.9 || middle.distanceTo(new Point(1, 1)) < 0.9) continue;
                double out =
                        paths.toEast()[c] - paths.toEast()[c - 1] + paths.toNorth()[c] - paths.toNorth()[c - columns];
                assertThat(out).as("cell %d, %d", i, j).isEqualTo(0, within(1e-9 * 0.02));
                checked++;
            }
        assertThat(checked).isGreaterThan(300);
    }

    @Test
    void aHouseWithoutAnAnswerHasNoPaths() {
        Scenario sealed = Houses.on(1e-9, 0)
                .rectangle(0, 0, 3, 3)
                .suction("S1", 1, 1, 0.1, new Source.Flow(0.01))
                .scenario();
        assertThat(AirTracing.of(sealed, Progress.NONE)).isEmpty();
    }
}
