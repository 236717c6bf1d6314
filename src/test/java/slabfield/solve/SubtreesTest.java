package slabfield.solve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bounds of the answers within a part, and answers shown part by part, against those found one by one. */
class SubtreesTest {
    private static final int BATCH = 8;

    /** A grid with couplings over four decades, of which some may have the wrong sign, as those of coarse stone do. */
    private static PanelCholesky factored(double wrong) {
        Graphs graph = Graphs.grid(40, 35, true, 0.1, 21);
        double[] values = graph.matrix().values();
        Random random = new Random(4);
        for (int k = graph.matrix().size(); k < values.length; k++) if (random.nextDouble() < wrong) values[k] *= -1;
        var panels = new PanelCholesky(graph.matrix(), NestedDissection.order(graph.matrix(), graph.x(), graph.y()));
        assertThat(panels.factor()).isEmpty();
        return panels;
    }

    private static boolean[] all(PanelCholesky panels) {
        boolean[] counts = new boolean[panels.pattern.size];
        Arrays.fill(counts, true);
        return counts;
    }

    /** Takes down what it is shown, and skips the parts that it is told to. */
    private static final class Notes implements UnitLoads.Visit {
        final double[][] values;
        final double[][] least;
        final double[][] most;
        final boolean[] skip;
        boolean begun;

        Notes(int nodes, Subtrees parts) {
            values = new double[nodes][];
            least = new double[parts.count()][];
            most = new double[parts.count()][];
            skip = new boolean[parts.count()];
        }

        @Override
        public void ownKnown() {
            begun = true;
        }

        @Override
        public boolean skips(int part, double[] lo, double[] hi) {
            assertThat(begun).isTrue();
            least[part] = lo.clone();
            most[part] = hi.clone();
            return skip[part];
        }

        @Override
        public void answers(int node, double[] x) {
            assertThat(values[node]).as("shown twice").isNull();
            values[node] = x.clone();
        }
    }

    private static int[] neighbours(PanelCholesky panels, int from) {
        return Arrays.copyOfRange(panels.pattern.node, from, from + BATCH);
    }

    @ParameterizedTest
    @CsvSource({"0", "0.05", "0.4"})
    void noAnswerIsOutsideItsPartsBounds(double wrong) {
        PanelCholesky panels = factored(wrong);
        int n = panels.pattern.size, tested = 0;
        Subtrees parts = new Subtrees(panels, all(panels));
        UnitLoads loads = new UnitLoads(panels, BATCH);
        for (int from = 0; from + BATCH <= n; from += n / 5) {
            Notes notes = new Notes(n, parts);
            loads.solve(neighbours(panels, from), 0, BATCH, parts, notes);
            for (int k = 0; k < parts.count(); k++) {
                if (notes.least[k] == null) continue;
                tested++;
                for (int node : parts.nodes(k))
                    for (int b = 0; b < BATCH; b++)
                        assertThat(notes.values[node][b]).isBetween(notes.least[k][b], notes.most[k][b]);
            }
        }
        assertThat(tested).isGreaterThan(100);
    }

    /** In a part that hardly leaks the bounds are those of its rim; and one of its answers comes near the lower. */
    @Test
    void boundsAreNearWhereNoCouplingHasTheWrongSign() {
        PanelCholesky panels = factored(0);
        Subtrees parts = new Subtrees(panels, all(panels));
        Notes notes = new Notes(panels.pattern.size, parts);
        new UnitLoads(panels, BATCH).solve(neighbours(panels, 0), 0, BATCH, parts, notes);
        int near = 0, seen = 0;
        for (int k = 0; k < parts.count(); k++) {
            if (notes.least[k] == null) continue;
            seen++;
            double lowest = Arrays.stream(parts.nodes(k))
                    .mapToDouble(u -> notes.values[u][0])
                    .min()
                    .orElseThrow();
            if (notes.least[k][0] > 0.5 * lowest) near++;
        }
        assertThat(near).isGreaterThan(seen / 2);
    }

    @Test
    void answersShownAreThoseFoundOneByOneAndSkippedPartsAreNotShown() {
        PanelCholesky panels = factored(0.05);
        int n = panels.pattern.size;
        Subtrees parts = new Subtrees(panels, all(panels));
        UnitLoads loads = new UnitLoads(panels, BATCH), plain = new UnitLoads(panels, BATCH);
        for (int from : new int[] {n / 2, 0, n - BATCH}) {
            int[] nodes = neighbours(panels, from);
            Notes notes = new Notes(n, parts);
            List<Integer> hidden = new ArrayList<>();
            for (int k = 0; k < parts.count(); k += 3) notes.skip[k] = true;
            loads.solve(nodes, 0, BATCH, parts, notes);
            for (int k = 0; k < parts.count(); k += 3)
                if (notes.least[k] != null) for (int u : parts.nodes(k)) hidden.add(u);
            plain.solve(nodes, 0, BATCH);
            assertThat(hidden).hasSizeGreaterThan(n / 10);
            for (int u = 0; u < n; u++) {
                if (hidden.contains(u)) assertThat(notes.values[u]).isNull();
                else assertThat(notes.values[u]).containsExactly(plain.at(u), within(0.0));
            }
            for (int u : nodes) assertThat(loads.at(u)).containsExactly(plain.at(u), within(0.0));
        }
    }

    /** Nodes whose answers nobody asks for, such as a wall's that leaks, do not widen the bounds. */
    @Test
    void onlyNodesThatCountAreBounded() {
        PanelCholesky panels = factored(0);
        boolean[] counts = new boolean[panels.pattern.size];
        Subtrees every = new Subtrees(panels, all(panels));
        int[] nodes = every.nodes(0);
        counts[nodes[0]] = true;
        Subtrees one = new Subtrees(panels, counts);
        double[] low = {1}, high = {1}, lowOfAll = {1}, highOfAll = {1};
        one.bound(0, low, high);
        every.bound(0, lowOfAll, highOfAll);
        assertThat(high[0] - low[0]).isLessThan(1e-7);
        assertThat(highOfAll[0] - lowOfAll[0]).isGreaterThan(1e-4);
        assertThat(IntStream.of(nodes).distinct().count()).isEqualTo(nodes.length);
    }
}
