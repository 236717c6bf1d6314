package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import slabfield.field.Progress;
import slabfield.io.ScenarioReader;
import slabfield.model.Scenario;

/** Tile, walls, pits and pipes balanced by themselves. */
class DeviceBalanceTest {
    private static Scenario scenario(String name) throws Exception {
        return ScenarioReader.read(Path.of("scenarios/" + name + ".json"));
    }

    private static Network network(Scenario s) {
        LayerGrid layer = new LayerGrid(s, SlabSolver.airOf(s));
        Devices.addDiscs(s, layer);
        layer.isolateDiscs();
        Network network = Devices.build(s, layer, SlabSolver.airOf(s), true).network();
        network.close();
        return network;
    }

    /** Sum of absolute residuals of the unknowns from one on. */
    private static double left(Network network, double[] at, double[] rest, int from) {
        double[] residual = new double[at.length];
        network.residual(at, rest, residual);
        return Arrays.stream(residual, from, residual.length).map(Math::abs).sum();
    }

    /** Each has pits behind fans or pipes; the first a tile, the second hollow walls. */
    @ParameterizedTest
    @ValueSource(strings = {"tight-sand-loop", "block-walls-before-sealing"})
    void devicesAreInBalanceAndCellsAsTheyWere(String name) throws Exception {
        Network network = network(scenario(name));
        double[] at = new double[network.size()], rest = new double[at.length];
        int first = network.cellUnknowns();
        for (int u = 0; u < first; u++) at[u] = -5 - u % 7;
        double[] cells = Arrays.copyOf(at, first);
        double flow = network.scale(at, rest), before = left(network, at, rest, first);
        assertThat(before).isGreaterThan(1e-3 * flow);
        new DeviceBalance(network).settle(at, rest, 1e-3, flow);
        assertThat(left(network, at, rest, first)).isLessThanOrEqualTo(1e-7 * flow);
        assertThat(Arrays.copyOf(at, first)).isEqualTo(cells);
        assertThat(Arrays.stream(rest, 0, first)).containsOnly(0.0);
    }

    /** Steps that leave it to the whole are twice as many here. */
    @Test
    void aTileTakesFewSteps() throws Exception {
        Scenario s = scenario("tight-sand-loop");
        assertThat(SlabSolver.solve(s, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE)
                        .convergence()
                        .iterations())
                .isLessThanOrEqualTo(5);
    }

    @Test
    void nothingIsEasedNearTheAnswerOrWhereTheCellsAreWhatIsOff() throws Exception {
        Network network = network(scenario("tight-sand-loop"));
        double[] at = new double[network.size()], rest = new double[at.length], residual = new double[at.length];
        network.residual(at, rest, residual);
        double relative = Arrays.stream(residual).map(Math::abs).sum() / network.scale(at, rest);
        assertThat(network.ease(at, rest, residual, 1e-4)).isFalse();
        assertThat(at).containsOnly(0.0);
        assertThat(network.ease(at, rest, residual, relative)).isTrue();
        new DeviceBalance(network).settle(at, rest, 1e-3, network.scale(at, rest));
        network.residual(at, rest, residual);
        relative = Arrays.stream(residual).map(Math::abs).sum() / network.scale(at, rest);
        assertThat(relative).isGreaterThan(0.01);
        double[] kept = at.clone();
        assertThat(network.ease(at, rest, residual, relative)).isFalse();
        assertThat(at).isEqualTo(kept);
    }
}
