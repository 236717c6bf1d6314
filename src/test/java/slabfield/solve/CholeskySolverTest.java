package slabfield.solve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CholeskySolverTest {
    private static CholeskySolver solver(Graphs graph) {
        return new CholeskySolver(graph.matrix(), NestedDissection.order(graph.matrix(), graph.x(), graph.y()));
    }

    /** A masked share of 0.6 leaves many islands, so the graph is disconnected. */
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
        CholeskySolver solver = solver(graph);
        assertThat(solver.factor()).isEmpty();
        double[] rhs = graph.someRightHandSide();
        double[] x = new double[rhs.length];
        solver.solve(rhs, x);
        double[] expected = graph.denseSolve(rhs);
        double scale = Arrays.stream(expected).map(Math::abs).max().orElseThrow();

        assertThat(x).containsExactly(expected, within(1e-10 * scale));
    }

    @Test
    void factorsAnewWhenValuesChange() {
        Graphs graph = Graphs.grid(15, 15, true, 0.1, 4);
        CholeskySolver solver = solver(graph);
        double[] rhs = graph.someRightHandSide();
        double[] first = new double[rhs.length];
        double[] second = new double[rhs.length];
        assertThat(solver.factor()).isEmpty();
        solver.solve(rhs, first);
        Arrays.setAll(graph.matrix().values(), k -> 3 * graph.matrix().values()[k]);
        assertThat(solver.factor()).isEmpty();
        solver.solve(rhs, second);

        assertThat(second).containsExactly(Arrays.stream(first).map(v -> v / 3).toArray(), within(1e-9));
    }

    @Test
    void refinementRemovesTheErrorOfFactorsThatAreSlightlyOld() {
        Graphs graph = Graphs.grid(20, 20, false, 0, 8);
        CholeskySolver solver = solver(graph);
        solver.factor();
        for (int i = 0; i < graph.matrix().size(); i++) {
            graph.matrix().values()[i] *= 1 + 1e-5;
        }
        double[] rhs = graph.someRightHandSide();
        double[] x = new double[rhs.length];
        double[] residual = new double[rhs.length];
        solver.solve(rhs, x);
        double before = solver.refine(rhs, x, residual);
        double after = solver.refine(rhs, x, residual);

        assertThat(before).isBetween(1e-7, 1e-1);
        assertThat(after).isLessThan(before / 10);
        assertThat(Math.sqrt(Arrays.stream(residual).map(r -> r * r).sum()
                        / Arrays.stream(rhs).map(r -> r * r).sum()))
                .isCloseTo(after, within(1e-3 * after));
    }

    /** Rounding makes the last pivot of such an island a little above or below 0, by chance. */
    @ParameterizedTest
    @ValueSource(longs = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19})
    void namesANodeOfAnIslandWithoutLeak(long seed) {
        // Nodes 0 to 2 leak; nodes 3 to 5 are joined to each other alone, so any pressure there would do.
        var matrix = new SymmetricMatrix.Builder(6)
                .couple(0, 1)
                .couple(1, 2)
                .couple(3, 4)
                .couple(4, 5)
                .couple(3, 5)
                .build();
        var random = new Random(seed);
        for (int[] pair : new int[][] {{0, 1}, {1, 2}, {3, 4}, {4, 5}, {3, 5}}) {
            double conductance = random.nextDouble();
            matrix.values()[matrix.slot(pair[0], pair[1])] = -conductance;
            matrix.values()[pair[0]] += conductance;
            matrix.values()[pair[1]] += conductance;
        }
        for (int i = 0; i < 3; i++) {
            matrix.values()[i] += 1;
        }
        var solver = new CholeskySolver(matrix, IntStream.range(0, 6).toArray());

        assertThat(solver.factor().orElseThrow()).isBetween(3, 5);
        assertThatIllegalStateException().isThrownBy(() -> solver.solve(new double[6], new double[6]));
    }

    @ParameterizedTest
    @CsvSource({"-5", "0", "NaN"})
    void namesTheNodeWithAnImpossibleDiagonalAndRecovers(double bad) {
        Graphs graph = Graphs.grid(12, 12, false, 0, 6);
        var solver = new CholeskySolver(graph.matrix(), IntStream.range(0, 144).toArray());
        double good = graph.matrix().values()[77];
        assertThat(solver.factor()).isEmpty();
        graph.matrix().values()[77] = bad;
        assertThat(solver.factor()).hasValue(77);
        graph.matrix().values()[77] = good;
        assertThat(solver.factor()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0 1", "0 1 1", "0 1 3"})
    void refusesAnOrderThatIsNone(String order) {
        var matrix = new SymmetricMatrix.Builder(3).couple(0, 1).build();
        int[] given =
                Arrays.stream(order.split(" ")).mapToInt(Integer::parseInt).toArray();
        assertThatIllegalArgumentException().isThrownBy(() -> new CholeskySolver(matrix, given));
    }
}
