package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import slabfield.field.Progress;
import slabfield.io.ScenarioReader;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;

class CoringTest {
    /** The same house on wider cells, started from the answer on its own: the same pressures, in fewer steps than from rest. */
    @ParameterizedTest
    @ValueSource(strings = {"tight-sand-loop", "block-walls-before-sealing", "stone-footing"})
    void aHouseOnWiderCellsStartsFromThisOnesAnswer(String name) throws Exception {
        Scenario s = ScenarioReader.read(Path.of("scenarios/" + name + ".json"));
        var question = new PlacementMap.Question(new SuctionPoint.Pit(0.15), new Source.Pressure(-200), 0.4);
        Coring house = Coring.of(s, question, Progress.NONE).orElseThrow();
        double cell = 2 * house.layer.grid.width();
        Coring started = house.onCells(cell).orElseThrow(),
                fromRest =
                        Coring.of(s.withCellSize(cell), question, Progress.NONE).orElseThrow();
        double[] found = started.state.at(), expected = fromRest.state.at();
        assertThat(found).hasSameSizeAs(expected);
        for (int u = 0; u < found.length; u++)
            assertThat(found[u]).isCloseTo(expected[u], within(1e-9 * (1 + Math.abs(expected[u]))));
        assertThat(started.state.convergence().iterations())
                .isLessThan(fromRest.state.convergence().iterations());
    }
}
