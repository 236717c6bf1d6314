package slabfield.solve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.solve.IterationResult.Ending;

class GridMultigridTest {
    /** Conductances over some decades, a masked share, and a leak everywhere. */
    private static GridOperator grid(int columns, int rows, double decades, double masked, double leak, long seed) {
        var random = new Random(seed);
        int n = columns * rows;
        double[] east = random.doubles(n).map(v -> Math.pow(10, -decades * v)).toArray();
        double[] north = random.doubles(n).map(v -> Math.pow(10, -decades * v)).toArray();
        double[] leaks = random.doubles(n).map(v -> leak * (0.5 + v)).toArray();
        boolean[] active = new boolean[n];
        for (int c = 0; c < n; c++) {
            active[c] = random.nextDouble() >= masked;
        }
        return new GridOperator(columns, rows, east, north, leaks, active);
    }

    private static double[] someRightHandSide(GridOperator grid) {
        double[] b = new Random(5).doubles(grid.size(), -1, 1).toArray();
        for (int c = 0; c < b.length; c++) {
            b[c] = grid.active()[c] ? b[c] : 0;
        }
        return b;
    }

    /** The same system as a sparse matrix over all cells, with 1 on the diagonal of inactive ones, solved directly. */
    private static double[] direct(GridOperator grid, double[] b) {
        int n = grid.size();
        var builder = new SymmetricMatrix.Builder(n);
        double[] x = new double[n];
        double[] y = new double[n];
        for (int c = 0; c < n; c++) {
            int i = c % grid.columns();
            int j = c / grid.columns();
            x[c] = i;
            y[c] = j;
            if (grid.eastOf(c, i) != 0) {
                builder.couple(c, c + 1);
            }
            if (grid.northOf(c, j) != 0) {
                builder.couple(c, c + grid.columns());
            }
        }
        var matrix = builder.build();
        double[] values = matrix.values();
        for (int c = 0; c < n; c++) {
            values[c] += grid.active()[c] ? grid.leak()[c] : 1;
            link(matrix, c, c + 1, grid.eastOf(c, c % grid.columns()));
            link(matrix, c, c + grid.columns(), grid.northOf(c, c / grid.columns()));
        }
        var solver = new CholeskySolver(matrix, NestedDissection.order(matrix, x, y));
        assertThat(solver.factor()).isEmpty();
        double[] answer = new double[n];
        solver.solve(b, answer);
        solver.refine(b, answer, new double[n]);
        return answer;
    }

    private static void link(SymmetricMatrix matrix, int a, int b, double conductance) {
        if (conductance != 0) {
            matrix.values()[matrix.slot(a, b)] = -conductance;
            matrix.values()[a] += conductance;
            matrix.values()[b] += conductance;
        }
    }

    private static double residual(GridOperator grid, double[] b, double[] x) {
        double[] y = new double[b.length];
        grid.apply(x, y);
        double missed = 0;
        double scale = 0;
        for (int c = 0; c < b.length; c++) {
            missed += (b[c] - y[c]) * (b[c] - y[c]);
            scale += b[c] * b[c];
        }
        return Math.sqrt(missed / scale);
    }

    private static double largest(double[] x) {
        return Arrays.stream(x).map(Math::abs).max().orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({
        "1,1,0,0,1",
        "2,1,0,0,1",
        "1,7,0,0,1",
        "3,3,1,0,1",
        "40,40,0,0,1",
        "41,37,1,0,1",
        "64,64,4,0,1",
        "65,50,2,0.2,1",
        "90,30,1,0.45,1",
        "200,5,2,0.1,1",
        "128,128,1,0.05,2",
        "120,131,1,0.05,3",
        "5,90,0,0,3",
        "3,2,0,0,4"
    })
    void agreesWithADirectSolve(int columns, int rows, double decades, double masked, int threads) {
        GridOperator grid = grid(columns, rows, decades, masked, 1e-2, columns + rows);
        double[] b = someRightHandSide(grid);
        double[] x = new double[grid.size()];
        try (var team = new Workers(threads)) {
            var result = new GridMultigrid(grid, team).solve(b, x, 1e-12, 60, Watch.NONE);

            assertThat(result.ending()).isEqualTo(Ending.CONVERGED);
            assertThat(residual(grid, b, x)).isLessThan(1.01e-12).isCloseTo(result.residual(), within(1e-13));
        }
        double[] expected = direct(grid, b);
        assertThat(x).containsExactly(expected, within(1e-9 * largest(expected)));
    }

    /** Rows low .. high changed, one kind of coefficient at a time: in the middle, at the rims, at a seam, all, and more than is refreshed. */
    @ParameterizedTest
    @CsvSource({
        "70,90,1,40,43",
        "70,90,2,44,46",
        "70,90,3,0,0",
        "70,90,3,89,89",
        "71,91,2,88,90",
        "130,131,2,17,40",
        "70,90,2,0,89",
        "70,90,2,10,60",
        "300,190,2,94,96",
        "9,7,1,3,3"
    })
    void refreshedIsTheSameToTheLastBitAsMadeAnew(int columns, int rows, int threads, int low, int high) {
        GridOperator grid = grid(columns, rows, 1, 0.1, 1e-2, columns);
        double[] b = someRightHandSide(grid), found = new double[b.length], expected = new double[b.length];
        Random random = new Random(rows);
        try (var team = new Workers(threads)) {
            var multigrid = new GridMultigrid(grid, team);
            for (double[] changed : new double[][] {grid.east(), grid.north(), grid.leak(), new double[b.length]}) {
                for (int j = low; j <= high; j++) {
                    int c = j * columns + random.nextInt(columns);
                    for (int i = j * columns; i <= c; i++) changed[i] *= 1 + random.nextDouble();
                }
                multigrid.refresh();
                multigrid.apply(b, found);
                var anew = new GridMultigrid(grid, team);
                anew.apply(b, expected);
                assertThat(found).isEqualTo(expected);
                assertThat(multigrid.tightness()).isEqualTo(anew.tightness());
            }
        }
    }

    @Test
    void refreshedAfterAThoroughSolveIsTheSameAsMadeAnew() {
        GridOperator grid = grid(60, 60, 0, 0, 1e-3, 8);
        double[] b = someRightHandSide(grid), found = new double[b.length], expected = new double[b.length];
        try (var team = new Workers(2)) {
            var multigrid = new GridMultigrid(grid, team);
            team.run(multigrid::strengthen);
            grid.north()[1800] = 5;
            multigrid.refresh();
            multigrid.apply(b, found);
            new GridMultigrid(grid, team).apply(b, expected);
            assertThat(found).isEqualTo(expected);
            assertThat(multigrid.effort).isEqualTo(Effort.STEADY);
        }
    }

    @Test
    void takesFewIterationsHoweverFineTheGrid() {
        for (int n : new int[] {32, 64, 128, 256}) {
            GridOperator grid = grid(n, n, 0, 0, 9.0 / n / n, 1);
            double[] x = new double[grid.size()];
            try (var team = new Workers(1)) {
                var result = new GridMultigrid(grid, team).solve(someRightHandSide(grid), x, 1e-8, 60, Watch.NONE);
                assertThat(result.iterations()).isLessThanOrEqualTo(8);
            }
        }
    }

    /** A wall one cell wide, 1e-6 as conductive, at an even and at an odd column: the coarse levels must not smear it. */
    @ParameterizedTest
    @CsvSource({"60", "61", "62", "63"})
    void keepsAThinWall(int wall) {
        int n = 128;
        GridOperator grid = grid(n, n, 0, 0, 1e-6, 1);
        for (int j = 0; j < n; j++) {
            int c = j * n + wall;
            grid.east()[c - 1] = 2e-6;
            grid.east()[c] = 2e-6;
            grid.north()[c] = 1e-6;
        }
        double[] b = new double[grid.size()];
        b[10 * n + 10] = 1;
        double[] x = new double[grid.size()];
        try (var team = new Workers(1)) {
            var result = new GridMultigrid(grid, team).solve(b, x, 1e-8, 60, Watch.NONE);
            assertThat(result.hasConverged()).isTrue();
            assertThat(result.iterations()).isLessThanOrEqualTo(10);
        }
    }

    @Test
    void aGoodStartSavesIterationsAndAnExactOneTakesNone() {
        GridOperator grid = grid(100, 100, 1, 0, 1e-3, 3);
        double[] b = someRightHandSide(grid);
        double[] x = new double[grid.size()];
        try (var team = new Workers(1)) {
            var multigrid = new GridMultigrid(grid, team);
            int cold = multigrid.solve(b, x, 1e-8, 60, Watch.NONE).iterations();
            assertThat(multigrid.solve(b, x, 1.1e-8, 60, Watch.NONE).iterations())
                    .isZero();
            b[5050] *= 1.001;
            assertThat(multigrid.solve(b, x, 1e-8, 60, Watch.NONE).iterations())
                    .isPositive()
                    .isLessThan(cold);
        }
    }

    @Test
    void updateTakesOverChangedConductances() {
        GridOperator grid = grid(70, 60, 1, 0.1, 1e-2, 4);
        double[] b = someRightHandSide(grid);
        double[] x = new double[grid.size()];
        try (var team = new Workers(2)) {
            var multigrid = new GridMultigrid(grid, team);
            multigrid.solve(b, x, 1e-10, 60, Watch.NONE);
            Arrays.setAll(grid.east(), c -> grid.east()[c] * (c % 3 + 1));
            multigrid.update();
            assertThat(multigrid.solve(b, x, 1e-10, 60, Watch.NONE).hasConverged())
                    .isTrue();
        }
        assertThat(residual(grid, b, x)).isLessThan(1.01e-10);
    }

    /** How far one running residual in single precision is off is chance, and for two operators in five above 1e-6: half of many are within it. */
    @Test
    void watchSeesTheResidualFallAndCanStop() {
        double[] off = new double[51];
        for (int k = 0; k < off.length; k++) {
            GridOperator grid = grid(100, 100, 1, 0, 1e-3, k + 1);
            double[] b = someRightHandSide(grid);
            double[] x = new double[grid.size()];
            try (var team = new Workers(2)) {
                var seen = new java.util.ArrayList<Double>();
                var result = new GridMultigrid(grid, team).solve(b, x, 1e-12, 60, (n, r) -> seen.add(r) && n < 3);

                assertThat(result.ending()).isEqualTo(Ending.CANCELLED);
                assertThat(result.iterations()).isEqualTo(3);
                assertThat(seen).hasSize(3);
                off[k] = Math.abs(residual(grid, b, x) / seen.get(2) - 1);
            }
        }
        Arrays.sort(off);
        assertThat(off[off.length / 2]).isLessThan(1e-6);
    }

    /** Whatever stands in the right-hand side where there is no cell, even columns or odd: it is not read, and the answer there is 0. */
    @ParameterizedTest
    @CsvSource({"41,37,1", "64,50,2"})
    void noCellsRightHandSideIsNotRead(int columns, int rows, int threads) {
        GridOperator grid = grid(columns, rows, 1, 0.3, 1e-2, 5);
        double[] b = someRightHandSide(grid);
        double[] marred = b.clone();
        for (int c = 0; c < b.length; c++) {
            if (!grid.active()[c]) {
                marred[c] = Double.NaN;
            }
        }
        double[] x = new double[b.length];
        double[] other = new double[b.length];
        try (var team = new Workers(threads)) {
            var multigrid = new GridMultigrid(grid, team);
            multigrid.solve(b, x, 1e-10, 60, Watch.NONE);
            multigrid.update();
            assertThat(multigrid.solve(marred, other, 1e-10, 60, Watch.NONE).ending())
                    .isEqualTo(Ending.CONVERGED);
        }
        assertThat(Arrays.equals(other, x)).isTrue();
        for (int c = 0; c < b.length; c++) {
            if (!grid.active()[c]) {
                assertThat(other[c]).as("cell %d", c).isZero();
            }
        }
    }

    @Test
    void saysWhenTheLimitIsReached() {
        GridOperator grid = grid(100, 100, 1, 0, 1e-3, 3);
        double[] x = new double[grid.size()];
        try (var team = new Workers(1)) {
            var result = new GridMultigrid(grid, team).solve(someRightHandSide(grid), x, 1e-12, 2, Watch.NONE);
            assertThat(result.ending()).isEqualTo(Ending.ITERATION_LIMIT);
            assertThat(result.iterations()).isEqualTo(2);
        }
    }

    @Test
    void isSymmetricAndPositiveAsAPreconditioner() {
        GridOperator grid = grid(61, 47, 2, 0.15, 1e-3, 9);
        double[] u = someRightHandSide(grid);
        double[] v = new double[u.length];
        Arrays.setAll(v, c -> grid.active()[c] ? Math.sin(c) : 0);
        double[] mu = new double[u.length];
        double[] mv = new double[u.length];
        try (var team = new Workers(1)) {
            var multigrid = new GridMultigrid(grid, team);
            multigrid.apply(u, mu);
            multigrid.apply(v, mv);
        }
        assertThat(dot(v, mu)).isCloseTo(dot(u, mv), within(1e-4 * Math.sqrt(dot(u, mu) * dot(v, mv))));
        assertThat(dot(u, mu)).isPositive();
    }

    @Test
    void aRightHandSideOfAnyMagnitudeComesOutRight() {
        GridOperator grid = grid(64, 64, 1, 0, 1e-2, 3);
        double[] b = someRightHandSide(grid);
        double[] x = new double[b.length];
        double[] y = new double[b.length];
        double[] tiny = Arrays.stream(b).map(v -> v * 0x1p-200).toArray();
        try (var team = new Workers(1)) {
            var multigrid = new GridMultigrid(grid, team);
            multigrid.solve(b, x, 1e-10, 60, Watch.NONE);
            multigrid.solve(tiny, y, 1e-10, 60, Watch.NONE);
        }
        assertThat(Arrays.stream(y).map(v -> v * 0x1p200).toArray()).containsExactly(x, within(1e-8 * largest(x)));
    }

    private static double dot(double[] a, double[] b) {
        double s = 0;
        for (int k = 0; k < a.length; k++) {
            s += a[k] * b[k];
        }
        return s;
    }
}
