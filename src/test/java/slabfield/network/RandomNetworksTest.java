package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import slabfield.field.Convergence;
import slabfield.field.Progress;
import slabfield.law.AirState;
import slabfield.law.Conductance;
import slabfield.law.FanAndPipe;
import slabfield.law.FlowLaw;
import slabfield.law.InSeries;
import slabfield.law.Orifice;
import slabfield.law.PowerLaw;
import slabfield.law.QuadraticResistance;
import slabfield.law.TileFriction;

/**
 * Small networks drawn at random: a few cells and devices, all laws, contrasts of up to 1e8. Each one is solved, in balance and
 * between the pressures that bound it, or refused; at most one in a thousand is. The profile {@code property} draws 10,000.
 */
class RandomNetworksTest {
    private static final int DRAWS = Integer.getInteger("slabfield.draws", 1000);
    private static final double RISE = 400;
    /** Decades over which sizes of openings, and those over which links of cells, are spread; 1e8 between all conductances. */
    private static final double DECADES = 6;

    private static final double CELL_DECADES = 4;

    /** A network with the bounds that its fixed pressures and fans set. */
    private record Draw(LayerGrid layer, Network network, double low, double high) {}

    private final Random random = new Random(20);

    private double upTo(double decades) {
        return Math.pow(10, -decades * random.nextDouble());
    }

    private Draw draw() {
        boolean inertial = random.nextInt(3) == 0;
        int columns = 1 + random.nextInt(6), rows = 1 + random.nextInt(6);
        LayerGrid layer = new LayerGrid(
                Houses.on(inertial ? 1e-7 : 1e-8, inertial ? 3000 : 0)
                        .rectangle(0, 0, 0.1 * columns, 0.1 * rows)
                        .leakance(random.nextBoolean() ? 0 : 1e-4 * upTo(CELL_DECADES))
                        .scenario(),
                AirState.STANDARD);
        for (double[] links : new double[][] {layer.flow.east, layer.flow.north})
            for (int c = 0; c < links.length; c++) links[c] *= random.nextInt(8) == 0 ? 0 : upTo(CELL_DECADES);
        double outdoors = 10 * random.nextDouble() - 5, low = outdoors, high = outdoors;
        Network network = new Network(layer, outdoors);
        int devices = 1 + random.nextInt(6), fixed = 1 + random.nextInt(3);
        int[] node = new int[devices + fixed];
        for (int k = 0; k < devices; k++) node[k] = network.addNode(0.1 * k, 0);
        for (int k = 0; k < fixed; k++) {
            double p = 600 * random.nextDouble() - 300;
            node[devices + k] = network.addFixed(p);
            low = Math.min(low, p);
            high = Math.max(high, p);
        }
        int leak = network.addAccount("leak", Network.Kind.ROOM);
        for (int k = 0; k < 3 * node.length; k++) {
            int a = random.nextBoolean() ? node[random.nextInt(devices)] : random.nextInt(network.cells());
            int b = node[random.nextInt(node.length)];
            if (a == b) continue;
            FlowLaw law = law();
            if (law instanceof FanAndPipe) b = node[devices + random.nextInt(fixed)];
            network.link(a, b, law, leak);
        }
        return new Draw(layer, network, low - RISE, high);
    }

    private FlowLaw law() {
        double size = upTo(DECADES);
        return switch (random.nextInt(8)) {
            case 0 -> new Conductance(1e-3 * size);
            case 1 -> new QuadraticResistance(1e3 / size, 1e4 / (size * size) * upTo(4));
            case 2 -> new QuadraticResistance(0, 1e4 / (size * size));
            case 3 -> Orifice.of(1e-2 * size, 0.61, 1.2);
            case 4 -> new PowerLaw(1e-2 * size, 0.5 + 0.5 * random.nextDouble(), 0);
            case 5 ->
                TileFriction.corrugated(
                        0.05 + 0.1 * random.nextDouble(), 0.017, 0.1 + 3 * random.nextDouble(), 1.81e-5, 1.204);
            case 6 ->
                new InSeries(
                        new QuadraticResistance(1e3 / size, 1e4 * upTo(4)),
                        new PowerLaw(1e-2 * upTo(DECADES), 0.65, 0));
            default ->
                new FanAndPipe(
                        new double[] {0, 0.05 * size, 0.1 * size},
                        new double[] {RISE, 250 * random.nextDouble() + 100, 0},
                        0.1,
                        10 * random.nextDouble(),
                        random.nextInt(4),
                        1.5,
                        1.5e-6,
                        1.81e-5,
                        1.204);
        };
    }

    @Test
    void everyOneIsSolvedInBalanceAndWithinItsBoundsOrRefused() {
        int refused = 0;
        for (int k = 0; k < DRAWS; k++) {
            Draw d = draw();
            SlabSolver.State state = SlabSolver.State.of(
                    new Devices.Built(d.network, new int[0], new int[0], new int[0], new int[0], List.of(), List.of()),
                    Progress.NONE,
                    Guess.NONE);
            Convergence c = state.convergence();
            assertThat(state.refusal()).as("draw %s", k).isEmpty();
            if (!c.converged()) {
                refused++;
                assertThat(c.ending()).as("draw %s", k).isNotEqualTo(Convergence.Ending.CANCELLED);
                continue;
            }
            assertThat(Math.abs(c.massBalance())).as("draw %s", k).isLessThanOrEqualTo(1e-9);
            double slack = 1e-9 * (d.high - d.low);
            for (int u = 0; u < state.at().length; u++)
                assertThat(state.at()[u] + state.rest()[u])
                        .as("draw %s, unknown %s", k, u)
                        .isBetween(d.low - slack, d.high + slack);
        }
        assertThat(refused).as("refused of %s", DRAWS).isLessThanOrEqualTo(DRAWS / 1000);
    }
}
