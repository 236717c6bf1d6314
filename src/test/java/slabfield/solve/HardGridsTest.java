package slabfield.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.solve.IterationResult.Ending;

/** Grids on which a plain V-cycle is slow: barriers a cell wide with doors, pads cut out beside them, and conductances at random. */
class HardGridsTest {
    private static final int SIDE = 192;

    /** Conductances from cells' transmissivities, by harmonic means, with a leak of 9 / n^2 on the unit square. */
    private static GridOperator grid(double[] t, boolean[] active) {
        int n = SIDE;
        double[] east = new double[n * n];
        double[] north = new double[n * n];
        double[] leak = new double[n * n];
        Arrays.fill(leak, 9.0 / n / n);
        for (int c = 0; c < n * n; c++) {
            east[c] = c % n + 1 < n ? 2 * t[c] * t[c + 1] / (t[c] + t[c + 1]) : 0;
            north[c] = c + n < n * n ? 2 * t[c] * t[c + n] / (t[c] + t[c + n]) : 0;
        }
        return new GridOperator(n, n, east, north, leak, active);
    }

    private static double[] stone() {
        double[] t = new double[SIDE * SIDE];
        Arrays.fill(t, 1);
        return t;
    }

    /** Strips in both directions, 1e-4 as transmissive, each with two doors, and pads cut out at random. */
    private static GridOperator strips(long seed) {
        int n = SIDE;
        var random = new Random(seed);
        double[] t = stone();
        boolean[] active = new boolean[n * n];
        Arrays.fill(active, true);
        for (int strip = 11; strip < n; strip += 23) {
            int upright = random.nextInt(n - 9);
            int level = random.nextInt(n - 9);
            for (int i = 0; i < n; i++) {
                if (i < level || i >= level + 7) {
                    t[strip * n + i] = 1e-4;
                }
                if (i < upright || i >= upright + 7) {
                    t[i * n + strip + 6] = 1e-4;
                }
            }
        }
        for (int pad = 0; pad < 60; pad++) {
            int from = random.nextInt(n - 12);
            int row = random.nextInt(n - 12);
            int width = 1 + random.nextInt(11);
            for (int j = row; j < row + 1 + random.nextInt(11); j++) {
                Arrays.fill(active, j * n + from, j * n + from + width, false);
            }
        }
        return grid(t, active);
    }

    private static int iterations(GridOperator grid, int threads) {
        double[] b = new double[grid.size()];
        for (int c = 0; c < b.length; c++) {
            b[c] = grid.active()[c] && c % 4999 == 77 ? -1 : 0;
        }
        double[] x = new double[b.length];
        try (var team = new Workers(threads)) {
            var result = new GridMultigrid(grid, team).solve(b, x, 1e-8, 300, Watch.NONE);
            assertThat(result.ending()).isEqualTo(Ending.CONVERGED);
            double[] y = new double[b.length];
            grid.apply(x, y);
            double missed = 0;
            double norm = 0;
            for (int c = 0; c < b.length; c++) {
                missed += (b[c] - y[c]) * (b[c] - y[c]);
                norm += b[c] * b[c];
            }
            assertThat(Math.sqrt(missed / norm)).isLessThan(1.01e-8 + rounding(grid, x) / Math.sqrt(norm));
            return result.iterations();
        }
    }

    /** What a double's last digit makes of a residual: 2^-52 | |A| |x| |, which is as much as 1e-8 where leaks are 1e-9. */
    private static double rounding(GridOperator grid, double[] x) {
        double[] size = Arrays.stream(x).map(Math::abs).toArray();
        double[] less = new double[x.length];
        grid.apply(size, less);
        double sum = 0;
        for (int c = 0; c < x.length; c++) {
            double diagonal = grid.leak()[c] + grid.east()[c] + grid.north()[c];
            diagonal += c > 0 ? grid.east()[c - 1] : 0;
            diagonal += c >= grid.columns() ? grid.north()[c - grid.columns()] : 0;
            double all = grid.active()[c] ? 2 * diagonal * size[c] - less[c] : 0;
            sum += all * all;
        }
        return 0x1p-52 * Math.sqrt(sum);
    }

    @ParameterizedTest
    @CsvSource({"1,1", "2,2", "3,3", "4,1"})
    void stripsWithDoorsAndPadsTakeAtMostFifteenIterations(long seed, int threads) {
        assertThat(iterations(strips(seed), threads)).isLessThanOrEqualTo(15);
    }

    /** A thorough solve lets go of what set-up needs; the next set-up gives the same answer again. */
    @Test
    void aThoroughSolveCanBeSetUpAgain() {
        GridOperator grid = cellsAtRandom();
        double[] b = new double[grid.size()];
        for (int c = 0; c < b.length; c++) {
            b[c] = grid.active()[c] && c % 4999 == 77 ? -1 : 0;
        }
        double[][] x = new double[2][b.length];
        try (var team = new Workers(2)) {
            var multigrid = new GridMultigrid(grid, team);
            for (double[] answer : x) {
                multigrid.update();
                multigrid.solve(b, answer, 1e-8, 100, Watch.NONE);
                assertThat(multigrid.effort).isEqualTo(Effort.THOROUGH);
            }
        }
        assertThat(x[1]).isEqualTo(x[0]);
    }

    private static GridOperator cellsAtRandom() {
        double[] t = new Random(7)
                .doubles(SIDE * SIDE)
                .map(v -> Math.pow(10, -4 * v))
                .toArray();
        boolean[] active = new boolean[t.length];
        Arrays.fill(active, true);
        return grid(t, active);
    }

    @Test
    void cellsAtRandomOverFourDecadesTakeAtMostTwentyIterations() {
        assertThat(iterations(cellsAtRandom(), 2)).isLessThanOrEqualTo(20);
    }

    /** So little leak that single precision cannot hold a step: a wall one cell wide, wherever it is, parts two rooms that are all but sealed. */
    @ParameterizedTest
    @CsvSource({"1e-4", "1e-5", "1e-6"})
    void anAllButSealedGridTakesFewIterations(double conductance) {
        int n = SIDE;
        for (int wall = 40; wall < 90; wall++) {
            double[] t = stone();
            for (int j = 0; j < n; j++) {
                t[j * n + wall] = conductance;
            }
            boolean[] active = new boolean[n * n];
            Arrays.fill(active, true);
            GridOperator grid = grid(t, active);
            Arrays.fill(grid.leak(), 1e-9);
            assertThat(iterations(grid, 1)).as("wall at column %d", wall).isLessThanOrEqualTo(20);
        }
    }

    /** Of any size and at any place between the points of coarse levels, so that some of them have no point in it. */
    @ParameterizedTest
    @CsvSource({"3,1e-5", "6,1e-5", "13,1e-5", "20,1e-5", "41,1e-5", "20,1e-7"})
    void closedRoomsTakeFewIterations(int width, double conductance) {
        int n = SIDE;
        for (int from = 40; from < 57; from++) {
            double[] t = stone();
            for (int k = 0; k <= width; k++) {
                t[from * n + from + k] = conductance;
                t[(from + width) * n + from + k] = conductance;
                t[(from + k) * n + from] = conductance;
                t[(from + k) * n + from + width] = conductance;
            }
            boolean[] active = new boolean[n * n];
            Arrays.fill(active, true);
            assertThat(iterations(grid(t, active), 1)).as("from cell %d", from).isLessThanOrEqualTo(15);
        }
    }

    /**
     * Walls one to three cells thick, from a thirtieth to a three-millionth as transmissive as stone, some with doors, at random, so that
     * they cross, end within a room and run side by side; with pads cut out, in half of the cases from an L, and leaks over four decades.
     */
    private static GridOperator walls(long seed) {
        var random = new Random(seed);
        int n = SIDE;
        double[] t = stone();
        int walls = 4 + random.nextInt(20);
        for (int w = 0; w < walls; w++) {
            boolean upright = random.nextBoolean();
            int at = random.nextInt(n - 3);
            int thickness = 1 + random.nextInt(3);
            double conductance = Math.pow(10, -1.5 - 5 * random.nextDouble());
            int from = random.nextInt(3) == 0 ? 0 : random.nextInt(n / 2);
            int to = random.nextInt(3) == 0 ? n : n / 2 + random.nextInt(n / 2);
            boolean[] door = new boolean[n];
            for (int d = random.nextInt(4); d > 0; d--) {
                int begin = random.nextInt(n);
                Arrays.fill(door, begin, Math.min(n, begin + 1 + random.nextInt(20)), true);
            }
            for (int k = from; k < to; k++) {
                for (int m = at; m < at + thickness && !door[k]; m++) {
                    t[upright ? k * n + m : m * n + k] = conductance;
                }
            }
        }
        boolean[] active = new boolean[n * n];
        Arrays.fill(active, true);
        for (int pad = random.nextInt(120); pad > 0; pad--) {
            int from = random.nextInt(n - 12);
            int row = random.nextInt(n - 12);
            int width = 1 + random.nextInt(11);
            int height = 1 + random.nextInt(11);
            for (int j = row; j < row + height; j++) {
                Arrays.fill(active, j * n + from, j * n + from + width, false);
            }
        }
        if (random.nextBoolean()) {
            for (int j = n / 2; j < n; j++) {
                Arrays.fill(active, j * n + n / 2, (j + 1) * n, false);
            }
        }
        GridOperator grid = grid(t, active);
        Arrays.fill(grid.leak(), Math.pow(10, -3 - 4 * random.nextDouble()));
        return grid;
    }

    @Test
    void wallsAtRandomTakeFewIterations() {
        int[] iterations = new int[80];
        Arrays.setAll(iterations, seed -> iterations(walls(seed), 1 + seed % 2));
        Arrays.sort(iterations);
        assertThat(iterations[40]).as("half of them").isLessThanOrEqualTo(15);
        assertThat(iterations[64]).as("eight in ten").isLessThanOrEqualTo(25);
    }
}
