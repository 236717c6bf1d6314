package slabfield.solve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.concurrent.Callable;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The panel factor against a dense solve and against the reference factor. */
class PanelCholeskyTest {
    private static PanelCholesky solver(Graphs graph) {
        return new PanelCholesky(graph.matrix(), NestedDissection.order(graph.matrix(), graph.x(), graph.y()));
    }

    @ParameterizedTest
    @CsvSource({"20,20,false,0", "20,20,true,0", "25,25,false,0.3", "25,25,true,0.6", "25,25,false,0.6", "1,1,false,0"})
    void agreesWithADenseSolveOnGrids(int columns, int rows, boolean diagonals, double masked) {
        assertAgreesWithDense(Graphs.grid(columns, rows, diagonals, masked, 7));
    }

    @ParameterizedTest
    @CsvSource({"300,700,1", "300,150,2", "120,3000,3"})
    void agreesWithADenseSolveOnRandomGraphs(int nodes, int couplings, long seed) {
        assertAgreesWithDense(Graphs.scattered(nodes, couplings, seed));
    }

    private static void assertAgreesWithDense(Graphs graph) {
        PanelCholesky solver = solver(graph);
        double[] rhs = graph.someRightHandSide(), x = new double[rhs.length], expected = graph.denseSolve(rhs);
        double scale = Arrays.stream(expected).map(Math::abs).max().orElseThrow();
        for (int again = 0; again < 2; again++) {
            assertThat(solver.factor()).isEmpty();
            solver.solve(rhs, x);
            assertThat(x).containsExactly(expected, within(1e-10 * scale));
        }
    }

    @ParameterizedTest
    @CsvSource({"false", "true"})
    void agreesWithTheReferenceFactor(boolean diagonals) {
        Graphs graph = Graphs.grid(90, 70, diagonals, 0.1, 3);
        PanelCholesky panels = solver(graph);
        var reference =
                new CholeskySolver(graph.matrix(), NestedDissection.order(graph.matrix(), graph.x(), graph.y()));
        double[] rhs = graph.someRightHandSide(), a = new double[rhs.length], b = new double[rhs.length];
        assertThat(panels.factor()).isEmpty();
        assertThat(reference.factor()).isEmpty();
        panels.sweep().solve(rhs, a);
        reference.solve(rhs, b);
        double scale = Arrays.stream(b).map(Math::abs).max().orElseThrow();
        assertThat(a).containsExactly(b, within(1e-11 * scale));
        assertThat(panels.fill()).isLessThan(2L * reference.fill());
    }

    /** In a thread of a pool subtrees are gone through one after the other, elsewhere at the same time. */
    @Test
    void oneThreadGivesTheSameToTheLastBit() throws Exception {
        Graphs graph = Graphs.grid(110, 100, true, 0.1, 11);
        assertThat(solver(graph).division.parts).isGreaterThan(4);
        double[] rhs = graph.someRightHandSide();
        Callable<double[]> run = () -> {
            PanelCholesky solver = solver(graph);
            double[] x = new double[rhs.length];
            for (int again = 0; again < 3; again++) assertThat(solver.factor()).isEmpty();
            solver.solve(rhs, x);
            return x;
        };
        var pool = new ForkJoinPool(1);
        try {
            assertThat(run.call()).isEqualTo(pool.submit(run).get());
        } finally {
            pool.shutdown();
        }
    }

    /** Two bad diagonals in subtrees that are gone through at the same time. */
    @Test
    void namesTheFirstOfTwoBadNodes() throws Exception {
        Graphs graph = Graphs.grid(110, 100, false, 0, 12);
        PanelCholesky solver = solver(graph);
        int a = solver.pattern.node[100];
        int b = solver.pattern.node[6000];
        graph.matrix().values()[a] = -1;
        graph.matrix().values()[b] = -1;
        for (int again = 0; again < 5; again++) assertThat(solver.factor()).hasValue(a);
        graph.matrix().values()[a] = 8;
        assertThat(solver.factor()).hasValue(b);
    }

    /** Loads in batches, the last one not full, are the columns of the inverse. */
    @Test
    void unitLoadsAreColumnsOfTheInverse() {
        Graphs graph = Graphs.grid(30, 25, true, 0.2, 5);
        PanelCholesky panels = solver(graph);
        assertThat(panels.factor()).isEmpty();
        int n = graph.matrix().size();
        int[] nodes = UnitLoads.inOrder(
                panels, IntStream.range(0, n).filter(k -> k % 3 == 1).toArray());
        UnitLoads loads = new UnitLoads(panels, 16);
        for (int from = 0; from < nodes.length; from += 16) {
            int to = Math.min(nodes.length, from + 16);
            loads.solve(nodes, from, to);
            int b = (from / 16) % (to - from);
            double[] column = new double[n];
            column[nodes[from + b]] = 1;
            panels.solve(column, column);
            for (int u = 0; u < n; u++)
                assertThat(loads.at(u)[b]).isCloseTo(column[u], within(1e-12 * column[nodes[from + b]]));
        }
        assertThatIllegalArgumentException().isThrownBy(() -> loads.solve(nodes, 0, 17));
    }

    @ParameterizedTest
    @CsvSource({"-5", "0", "NaN"})
    void namesTheNodeWithAnImpossibleDiagonalAndRecovers(double bad) {
        Graphs graph = Graphs.grid(12, 12, false, 0, 6);
        PanelCholesky solver = solver(graph);
        double good = graph.matrix().values()[77];
        graph.matrix().values()[77] = bad;
        assertThat(solver.factor()).isNotEmpty();
        assertThatIllegalStateException().isThrownBy(() -> solver.solve(new double[144], new double[144]));
        graph.matrix().values()[77] = good;
        assertThat(solver.factor()).isEmpty();
    }

    /** Nodes 3 to 5 are joined to each other alone, so any pressure there would do. */
    @Test
    void findsAnIslandWithoutLeak() {
        var matrix = new SymmetricMatrix.Builder(6)
                .couple(0, 1)
                .couple(1, 2)
                .couple(3, 4)
                .couple(4, 5)
                .couple(3, 5)
                .build();
        for (int[] pair : new int[][] {{0, 1}, {1, 2}, {3, 4}, {4, 5}, {3, 5}}) {
            matrix.values()[matrix.slot(pair[0], pair[1])] = -0.1;
            matrix.values()[pair[0]] += 0.1;
            matrix.values()[pair[1]] += 0.1;
        }
        for (int i = 0; i < 3; i++) matrix.values()[i] += 1;
        assertThat(new PanelCholesky(matrix, IntStream.range(0, 6).toArray())
                        .factor()
                        .orElseThrow())
                .isBetween(3, 5);
    }

    @Test
    void refusesAnOrderThatIsNone() {
        var matrix = new SymmetricMatrix.Builder(3).couple(0, 1).build();
        assertThatIllegalArgumentException().isThrownBy(() -> new PanelCholesky(matrix, new int[] {0, 1, 1}));
    }
}
