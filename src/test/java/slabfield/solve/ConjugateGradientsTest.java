package slabfield.solve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import slabfield.solve.IterationResult.Ending;

class ConjugateGradientsTest {
    private static Preconditioner diagonal(SymmetricMatrix matrix) {
        return (r, z) -> Arrays.setAll(z, k -> r[k] / matrix.values()[k]);
    }

    @Test
    void agreesWithADenseSolve() {
        Graphs graph = Graphs.scattered(200, 600, 1);
        double[] b = graph.someRightHandSide();
        double[] x = new double[200];
        var result =
                new ConjugateGradients(graph.matrix(), diagonal(graph.matrix())).solve(b, x, 1e-12, 1000, Watch.NONE);

        assertThat(result.hasConverged()).isTrue();
        double[] expected = graph.denseSolve(b);
        assertThat(x)
                .containsExactly(
                        expected,
                        within(1e-7
                                * Arrays.stream(expected).map(Math::abs).max().orElseThrow()));
    }

    @Test
    void anExactPreconditionerTakesOneIteration() {
        Graphs graph = Graphs.grid(30, 30, true, 0.1, 2);
        var direct = new CholeskySolver(graph.matrix(), NestedDissection.order(graph.matrix(), graph.x(), graph.y()));
        direct.factor();
        double[] x = new double[graph.matrix().size()];
        var result = new ConjugateGradients(graph.matrix(), direct::solve)
                .solve(graph.someRightHandSide(), x, 1e-9, 50, Watch.NONE);

        assertThat(result.iterations()).isEqualTo(1);
        assertThat(result.hasConverged()).isTrue();
    }

    @Test
    void stallsOnAnIndefiniteMatrixAndStopsAtTheLimitOrWhenTold() {
        Graphs graph = Graphs.grid(30, 30, false, 0, 2);
        double[] b = graph.someRightHandSide();
        var gradients = new ConjugateGradients(graph.matrix(), diagonal(graph.matrix()));
        assertThat(gradients.solve(b, new double[900], 1e-10, 3, Watch.NONE).ending())
                .isEqualTo(Ending.ITERATION_LIMIT);
        assertThat(gradients
                        .solve(b, new double[900], 1e-10, 300, (k, r) -> k < 5)
                        .ending())
                .isEqualTo(Ending.CANCELLED);
        Arrays.fill(graph.matrix().values(), 0, 900, -1);
        assertThat(gradients.solve(b, new double[900], 1e-10, 300, Watch.NONE).ending())
                .isEqualTo(Ending.STALLED);
    }

    /** A grid, three nodes each joined to a row of its cells by strong links, and weak links between diagonal neighbours. */
    @Test
    void multigridOfTheGridAlonePreconditionsAGridWithDevices() {
        int n = 96;
        int cells = n * n;
        double[] ones = new double[cells];
        Arrays.fill(ones, 1);
        double[] leak = new double[cells];
        Arrays.fill(leak, 1e-4);
        boolean[] active = new boolean[cells];
        Arrays.fill(active, true);
        var builder = new SymmetricMatrix.Builder(cells + 3);
        for (int c = 0; c < cells; c++) {
            builder.couple(c, c % n + 1 < n ? c + 1 : c);
            builder.couple(c, c + n < cells ? c + n : c);
            builder.couple(c, c % n + 1 < n && c + n + 1 < cells ? c + n + 1 : c);
        }
        for (int k = 0; k < 3; k++) {
            for (int i = 0; i < n; i++) {
                builder.couple(cells + k, (20 + 30 * k) * n + i);
            }
        }
        var matrix = builder.build();
        double[] values = matrix.values();
        for (int c = 0; c < cells; c++) {
            values[c] += leak[c];
            add(matrix, c, c % n + 1 < n ? c + 1 : c, 1);
            add(matrix, c, c + n < cells ? c + n : c, 1);
            add(matrix, c, c % n + 1 < n && c + n + 1 < cells ? c + n + 1 : c, 0.05);
        }
        for (int k = 0; k < 3; k++) {
            values[cells + k] += 0.5;
            for (int i = 0; i < n; i++) {
                int c = (20 + 30 * k) * n + i;
                add(matrix, cells + k, c, 0.3);
                leak[c] += 0.3;
            }
        }
        double[] b = new double[cells + 3];
        b[5 * n + 5] = 1;
        double[] x = new double[cells + 3];
        try (var team = new Workers(1)) {
            var multigrid = new GridMultigrid(new GridOperator(n, n, ones, ones, leak, active), team);
            double[] r = new double[cells];
            double[] z = new double[cells];
            Preconditioner both = (given, out) -> {
                System.arraycopy(given, 0, r, 0, cells);
                multigrid.apply(r, z);
                System.arraycopy(z, 0, out, 0, cells);
                for (int k = cells; k < out.length; k++) {
                    out[k] = given[k] / values[k];
                }
            };
            var result = new ConjugateGradients(matrix, both).solve(b, x, 1e-10, 60, Watch.NONE);
            assertThat(result.hasConverged()).isTrue();
            int plain = new ConjugateGradients(matrix, diagonal(matrix))
                    .solve(b, new double[b.length], 1e-10, 9999, Watch.NONE)
                    .iterations();
            assertThat(result.iterations()).isLessThan(plain / 8);
        }
        double[] y = new double[b.length];
        matrix.multiply(x, y);
        assertThat(y).containsExactly(b, within(1e-9));
    }

    private static void add(SymmetricMatrix matrix, int a, int b, double conductance) {
        if (a != b) {
            matrix.values()[matrix.slot(a, b)] -= conductance;
            matrix.values()[a] += conductance;
            matrix.values()[b] += conductance;
        }
    }
}
