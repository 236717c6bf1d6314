package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;

/** What a solve starts from. */
class GuessTest {
    private static Scenario house(double cell) {
        return Houses.on(5e-8, 1500)
                .rectangle(0, 0, 10, 8)
                .tile(null, List.of(), 1, 1, 9, 1, 9, 7)
                .opening("joint", new Opening.Perimeter("slab 0"), new Opening.Crack(5e-4, 0))
                .leakance(1e-6)
                .suction("S", 4.05, 4.05, 0.15, new Source.Pressure(-250))
                .cell(cell)
                .scenario();
    }

    /** Around a pit that moved the pressures go with it; far away they stay. */
    @Test
    void theFieldIsCarriedWithAPit() {
        LayerGrid bare = new LayerGrid(house(0.1), SlabSolver.airOf(house(0.1)));
        double[] cells = new double[bare.grid.cells()];
        for (int c = 0; c < cells.length; c++)
            cells[c] = -250
                    * Math.exp(-Math.hypot(
                            bare.grid.x(c % bare.grid.columns()) - 4.05, bare.grid.y(c / bare.grid.columns()) - 4.05));
        Guess carried = new Guess(cells, new double[0]).carried(bare, new Point(4.05, 4.05), new Point(4.25, 4.05));
        assertThat(carried.cells()[bare.grid.index(42, 40)]).as("in the pit").isCloseTo(-250, within(1e-6));
        assertThat(carried.cells()[bare.grid.index(45, 43)]).isCloseTo(cells[bare.grid.index(43, 43)], within(1e-6));
        int far = bare.grid.index(80, 70);
        assertThat(carried.cells()[far]).isEqualTo(cells[far]);
    }

    /** A rough answer on wide cells spares steps and changes nothing. */
    @Test
    void aRoughAnswerSparesSteps() {
        Scenario s = house(0.1);
        LayerGrid a = layer(s), b = layer(s);
        SlabSolver.State started = SlabSolver.started(s, a, true, Progress.NONE, Guess.NONE, FactorRoom.once());
        SlabSolver.State fromRest =
                SlabSolver.State.of(Devices.build(s, b, SlabSolver.airOf(s), true), Progress.NONE, Guess.NONE);
        assertThat(started.convergence().iterations())
                .isLessThan(fromRest.convergence().iterations());
        for (int u = 0; u < started.at().length; u++)
            assertThat(started.at()[u]).isCloseTo(fromRest.at()[u], within(1e-8 * Math.abs(fromRest.at()[u]) + 1e-10));
    }

    private static LayerGrid layer(Scenario s) {
        LayerGrid layer = new LayerGrid(s, SlabSolver.airOf(s));
        Devices.addDiscs(s, layer);
        layer.isolateDiscs();
        return layer;
    }
}
