package slabfield.solve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Coarse operators against P' A P in dense algebra, with P by the rules of black-box multigrid written out point by point. */
class GalerkinTest {
    private static GridOperator grid(int columns, int rows, double masked, double leak) {
        var random = new Random(columns * 31L + rows);
        int n = columns * rows;
        double[] east = random.doubles(n).map(v -> Math.pow(10, -4 * v)).toArray();
        double[] north = random.doubles(n).map(v -> Math.pow(10, -4 * v)).toArray();
        double[] leaks = random.doubles(n).map(v -> (float) (leak * v)).toArray();
        boolean[] active = new boolean[n];
        for (int c = 0; c < n; c++) {
            active[c] = random.nextDouble() >= masked;
        }
        return new GridOperator(columns, rows, east, north, leaks, active);
    }

    @ParameterizedTest
    @CsvSource({
        "13,11,0,1e-2",
        "13,11,0.3,1e-2",
        "12,15,0.15,0",
        "14,10,0.1,1e-6",
        "1,17,0,1",
        "16,1,0.2,1",
        "2,3,0,1",
        "1,1,0,1",
        "5,19,0.5,1e-3",
        "34,33,0.25,1e-3",
        "33,36,0.08,1e-6"
    })
    void coarseOperatorsAreTheGalerkinProduct(int columns, int rows, double masked, double leak) {
        GridOperator operator = grid(columns, rows, masked, leak);
        double[][] fine = new double[columns * rows][columns * rows];
        for (int c = 0; c < fine.length; c++) {
            double[] unit = new double[fine.length];
            unit[c] = 1;
            operator.apply(unit, fine[c]);
        }
        int w = columns;
        int h = rows;
        NinePoint.Source source = new FineRows(operator, new RedBlackGrid(columns, rows), 1, rows + 1);
        CoarseGrid weights = null;
        for (int k = 0; k < 3; k++) {
            double[][] p = new Interpolation(fine, w, h, k > 0 ? null : operator.leak()).weights();
            int wide = w;
            int high = h;
            w = (w + 1) / 2;
            h = (h + 1) / 2;
            var coarse = new NinePoint(w, h);
            var level = new CoarseGrid(w, h, new int[] {1, (h + 1) / 2 + 1});
            new Galerkin(source, k > 0, coarse).build(1, h + 1, weights, null, level);
            if (k > 0) {
                takeRounded(p, weights, fine, wide, high);
            }
            double[][] expected = product(p, fine);
            double[][] found = dense(coarse);
            for (int a = 0; a < expected.length; a++) {
                assertThat(found[a]).as("level " + k + " row " + a).containsExactly(expected[a], within(1e-14));
                int j = a / w + 1;
                int i = a % w + 1;
                assertThat(level.diagonal.get(j, i)).isEqualTo((float) found[a][a]);
                assertThat(level.inverse.get(j, i)).isEqualTo(found[a][a] > 0 ? (float) (1 / found[a][a]) : 0);
            }
            fine = found;
            source = coarse.source();
            weights = level;
        }
    }

    @ParameterizedTest
    @CsvSource({"33,41,0.2,8", "40,30,0,1", "21,64,0.4,20"})
    void workersPartsAreTheWhole(int columns, int rows, double masked, int seam) {
        GridOperator operator = grid(columns, rows, masked, 1e-3);
        var whole = new NinePoint((columns + 1) / 2, (rows + 1) / 2);
        var parts = new NinePoint(whole.columns, whole.rows);
        int[] from = {1, seam, 1};
        int[] to = {whole.rows + 1, whole.rows + 1, seam};
        var corners = new CornerWeights[] {
            new CornerWeights(whole.rows, whole.columns + 2), new CornerWeights(whole.rows, whole.columns + 2)
        };
        for (int part = 0; part < 3; part++) {
            var source = new FineRows(
                    operator,
                    new RedBlackGrid(columns, rows),
                    2 * from[part] - 1,
                    Math.min(2 * to[part] - 1, rows + 1));
            NinePoint target = part == 0 ? whole : parts;
            new Galerkin(source, false, target)
                    .build(
                            from[part],
                            to[part],
                            null,
                            corners[Math.min(part, 1)],
                            new CoarseGrid(whole.columns, whole.rows, new int[] {1, (whole.rows + 1) / 2 + 1}));
        }
        assertThat(dense(parts)).isDeepEqualTo(dense(whole));
        assertThat(corners[1].southWest).isDeepEqualTo(corners[0].southWest);
        assertThat(corners[1].northEast).isDeepEqualTo(corners[0].northEast);
    }

    /** Checks the weights of points between two against those of a level, and goes on with these, which are rounded. */
    private static void takeRounded(double[][] p, CoarseGrid level, double[][] a, int columns, int rows) {
        int wide = (columns + 1) / 2;
        for (int j = 0; j < rows; j++) {
            for (int i = 0; i < columns; i++) {
                int c = j * columns + i;
                if ((i + j) % 2 == 1 && a[c][c] > 0) {
                    int at = level.strips.at(j / 2 + 1) + i / 2 + 1;
                    int strip = level.strips.strip(j / 2 + 1);
                    float before = (i % 2 == 1 ? level.fromWest : level.fromSouth)[strip][at];
                    float after = (i % 2 == 1 ? level.fromEast : level.fromNorth)[strip][at];
                    int one = j / 2 * wide + i / 2;
                    int other = one + (i % 2 == 1 ? 1 : wide);
                    take(p[c], one, before);
                    if (i % 2 == 1 ? i + 1 < columns : j + 1 < rows) {
                        take(p[c], other, after);
                    } else {
                        assertThat(after).isZero();
                    }
                }
            }
        }
        Interpolation.addMiddles(p, a, columns, rows);
    }

    private static void take(double[] p, int coarse, float weight) {
        assertThat((double) weight).isCloseTo(p[coarse], within(1e-6));
        p[coarse] = weight;
    }

    /** The rules of {@link Ties}, {@link CellTies} and {@link FreePoints}, point by point. Row by fine point, column by coarse one. */
    private static final class Interpolation {
        private final double[][] a;
        private final int columns;
        private final int rows;
        private final double[] leaks;
        private final boolean across;
        private final int wide;

        /** @param leaks of cells, without the rounding of their sums; null on a level, whose points are coupled across */
        Interpolation(double[][] a, int columns, int rows, double[] leaks) {
            this.a = a;
            this.columns = columns;
            this.rows = rows;
            this.leaks = leaks;
            across = leaks == null;
            wide = (columns + 1) / 2;
        }

        double[][] weights() {
            double[][] p = new double[columns * rows][wide * ((rows + 1) / 2)];
            for (int j = 0; j < rows; j++) {
                for (int i = 0; i < columns; i++) {
                    if (i % 2 == 0 && j % 2 == 0) {
                        set(p, i, j, i, j, 1);
                    } else if (i % 2 == 0 || j % 2 == 0) {
                        double[] tie = ties(i, j);
                        double sum = tie[0] + tie[1] + tie[2];
                        if (sum > 1e-9 * diagonal(i, j)) {
                            set(p, i, j, i - di(i), j - dj(i), tie[0] / sum);
                            set(p, i, j, i + di(i), j + dj(i), tie[2] / sum);
                        }
                    }
                }
            }
            for (int j = 0; j < rows; j += 2) {
                for (int i = 0; i < columns; i += 2) {
                    giveFree(p, i, j);
                }
            }
            addMiddles(p, a, columns, rows);
            return p;
        }

        private static int di(int i) {
            return i % 2;
        }

        private static int dj(int i) {
            return 1 - i % 2;
        }

        private boolean in(int i, int j) {
            return i >= 0 && j >= 0 && i < columns && j < rows;
        }

        private double diagonal(int i, int j) {
            return in(i, j) ? a[j * columns + i][j * columns + i] : 0;
        }

        private boolean active(int i, int j) {
            return diagonal(i, j) > 0;
        }

        private double g(int i, int j, int x, int y) {
            return in(i, j) && in(x, y) ? -a[j * columns + i][y * columns + x] : 0;
        }

        private void set(double[][] p, int i, int j, int x, int y, double weight) {
            if (in(x, y)) {
                p[j * columns + i][y / 2 * wide + x / 2] = weight;
            }
        }

        /** Of a point between two: all that is coupled with the row before, with its own row, and with the row after. */
        private double[] sums(int i, int j) {
            double[] sum = new double[3];
            for (int along = -1; along <= 1; along++) {
                for (int beside = -1; beside <= 1; beside++) {
                    sum[along + 1] += g(i, j, i + along * di(i) + beside * dj(i), j + along * dj(i) + beside * di(i));
                }
            }
            return sum;
        }

        /** How far a coupling to a point between two counts as one to the staying point before (-1) or after it (1). */
        private double share(int i, int j, int end) {
            if (!active(i + end * di(i), j + end * dj(i))) {
                return 0;
            }
            double[] sum = sums(i, j);
            double all = Math.max(-sum[1], sum[0] + sum[2]);
            return all > 0 ? Math.min(1, Math.max(0, 4 * sum[end + 1] / all)) : 0;
        }

        /** Ties to the one before, leak, and ties to the one after. */
        private double[] ties(int i, int j) {
            double[] sum = sums(i, j);
            double[] tie = new double[3];
            for (int end = -1; end <= 1; end += 2) {
                int x = i + end * di(i);
                int y = j + end * dj(i);
                double direct = g(i, j, x, y);
                for (int beside = -1; beside <= 1 && across; beside += 2) {
                    int u = x + beside * dj(i);
                    int v = y + beside * di(i);
                    direct += g(i, j, u, v) == 0 ? 0 : g(i, j, u, v) * share(u, v, -beside);
                }
                double little = across ? 0.01 * Math.max(0, sum[end + 1]) : 0;
                tie[end + 1] = active(x, y) ? Math.max(0, direct) + little : 0;
            }
            tie[1] = across ? Math.max(0, -sum[1] - (sum[0] + sum[2])) : leaks[j * columns + i];
            return tie;
        }

        private boolean loose(int i, int j) {
            double[] tie = active(i, j) ? ties(i, j) : new double[3];
            return active(i, j) && tie[0] + tie[1] + tie[2] < (across ? 0.15 : 0.02) * diagonal(i, j);
        }

        private boolean isFree(int i, int j, int x, int y) {
            return diagonal(i, j) <= (across ? 0.02 : 0.001) * diagonal(x, y);
        }

        /** East, north, west and south of a free point, in turn. */
        private void giveFree(double[][] p, int i, int j) {
            int[] x = {i + 1, i, i - 1, i};
            int[] y = {j, j + 1, j, j - 1};
            boolean[] asks = new boolean[4];
            for (int n = 0; n < 4; n++) {
                boolean other = n >= 2 && isFree(2 * x[n] - i, 2 * y[n] - j, x[n], y[n]);
                asks[n] = loose(x[n], y[n]) && isFree(i, j, x[n], y[n]) && !other;
            }
            int first = asks[0] ? 0 : asks[2] ? 2 : asks[1] ? 1 : 3;
            if (!asks[first]) {
                return;
            }
            boolean[] on = new boolean[4];
            for (int n = 0; n < 4; n++) {
                int m = (n + 1) % 4;
                int u = x[n] + x[m] - i;
                int v = y[n] + y[m] - j;
                double coupling =
                        across ? g(x[n], y[n], x[m], y[m]) : Math.min(g(x[n], y[n], u, v), g(u, v, x[m], y[m]));
                on[n] = coupling > 0 && coupling >= 0.05 * Math.min(diagonal(x[n], y[n]), diagonal(x[m], y[m]));
            }
            for (int n = 0; n < 4; n++) {
                int round = Math.floorMod(n - first, 4);
                boolean forth = true;
                for (int s = 0; s < round; s++) {
                    forth &= on[(first + s) % 4];
                }
                boolean back = true;
                for (int s = round; s < 4; s++) {
                    back &= on[(first + s) % 4];
                }
                if (asks[n] && (forth || back)) {
                    java.util.Arrays.fill(p[y[n] * columns + x[n]], 0);
                    set(p, x[n], y[n], i, j, 1);
                }
            }
        }

        /** The middle of four: what balances it. */
        static void addMiddles(double[][] p, double[][] a, int columns, int rows) {
            for (int j = 1; j < rows; j += 2) {
                for (int i = 1; i < columns; i += 2) {
                    int c = j * columns + i;
                    java.util.Arrays.fill(p[c], 0);
                    for (int n = 0; n < a.length && a[c][c] > 0; n++) {
                        for (int k = 0; k < p[c].length && n != c; k++) {
                            p[c][k] -= a[c][n] * p[n][k] / a[c][c];
                        }
                    }
                }
            }
        }
    }

    /** P' A P. */
    private static double[][] product(double[][] p, double[][] a) {
        int n = p[0].length;
        double[][] result = new double[n][n];
        for (int b = 0; b < a.length; b++) {
            double[] times = new double[n];
            for (int c = 0; c < a.length; c++) {
                for (int s = 0; s < n && a[b][c] != 0; s++) {
                    times[s] += a[b][c] * p[c][s];
                }
            }
            for (int r = 0; r < n; r++) {
                for (int s = 0; s < n && p[b][r] != 0; s++) {
                    result[r][s] += p[b][r] * times[s];
                }
            }
        }
        return result;
    }

    private static double[][] dense(NinePoint operator) {
        int w = operator.columns;
        double[][] a = new double[w * operator.rows][w * operator.rows];
        for (int j = 1; j <= operator.rows; j++) {
            SplitRow row = operator.row[j];
            for (int i = 1; i <= w; i++) {
                int c = (j - 1) * w + i - 1;
                a[c][c] = row.diagonal.get(i);
                couple(a, c, i < w, c + 1, row.east.get(i));
                couple(a, c, j < operator.rows, c + w, row.north.get(i));
                couple(a, c, i < w && j < operator.rows, c + w + 1, row.northEast.get(i));
                couple(a, c, i > 1 && j < operator.rows, c + w - 1, row.northWest(i));
            }
        }
        return a;
    }

    private static void couple(double[][] a, int c, boolean exists, int other, double conductance) {
        if (exists) {
            a[c][other] = -conductance;
            a[other][c] = -conductance;
        } else {
            assertThat(conductance).as("coupling beyond the edge").isZero();
        }
    }
}
