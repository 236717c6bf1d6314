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
        double[] east = random.doubles(n).map(v -> Math.pow(10, -3 * v)).toArray();
        double[] north = random.doubles(n).map(v -> Math.pow(10, -3 * v)).toArray();
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
        "5,19,0.5,1e-3"
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
            double[][] p = interpolation(fine, w, h, k > 0);
            double[][] expected = product(p, fine);
            w = (w + 1) / 2;
            h = (h + 1) / 2;
            var coarse = new NinePoint(w, h);
            var level = new CoarseGrid(w, h, new int[] {1, (h + 1) / 2 + 1});
            new Galerkin(source, k > 0, coarse).build(1, h + 1, weights, null, level);
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

    /** Row by fine point, column by coarse one. */
    private static double[][] interpolation(double[][] a, int columns, int rows, boolean rounded) {
        int wide = (columns + 1) / 2;
        double[][] p = new double[columns * rows][wide * ((rows + 1) / 2)];
        for (int j = 0; j < rows; j++) {
            for (int i = 0; i < columns; i++) {
                int c = j * columns + i;
                if (i % 2 == 0 && j % 2 == 0) {
                    p[c][j / 2 * wide + i / 2] = 1;
                } else if (j % 2 == 0) {
                    side(a, p, columns, rows, i, j, 1, 0, wide, rounded);
                } else if (i % 2 == 0) {
                    side(a, p, columns, rows, i, j, 0, 1, wide, rounded);
                }
            }
        }
        for (int j = 1; j < rows; j += 2) {
            for (int i = 1; i < columns; i += 2) {
                int c = j * columns + i;
                for (int n = 0; n < a.length && a[c][c] > 0; n++) {
                    for (int k = 0; k < p[c].length && n != c; k++) {
                        p[c][k] -= a[c][n] * p[n][k] / a[c][c];
                    }
                }
            }
        }
        return p;
    }

    /** A point between two in direction (di, dj), its couplings summed across. */
    private static void side(
            double[][] a,
            double[][] p,
            int columns,
            int rows,
            int i,
            int j,
            int di,
            int dj,
            int wide,
            boolean rounded) {
        int c = j * columns + i;
        double[] to = new double[3];
        for (int along = -1; along <= 1; along++) {
            for (int across = -1; across <= 1; across++) {
                int x = i + along * di + across * dj;
                int y = j + along * dj + across * di;
                if (x >= 0 && x < columns && y >= 0 && y < rows) {
                    to[along + 1] -= a[c][y * columns + x];
                }
            }
        }
        double sum = Math.max(-to[1], to[0] + to[2]);
        for (int end = 0; end <= 2; end += 2) {
            int x = i + (end - 1) * di;
            int y = j + (end - 1) * dj;
            if (sum > 0 && x < columns && y < rows && (di == 0 || a[y * columns + x][y * columns + x] > 0)) {
                double weight = to[end] / sum;
                p[c][y / 2 * wide + x / 2] = rounded ? (float) weight : weight;
            }
        }
    }

    private static double[][] product(double[][] p, double[][] a) {
        int n = p[0].length;
        double[][] result = new double[n][n];
        for (int r = 0; r < n; r++) {
            for (int s = 0; s < n; s++) {
                for (int b = 0; b < a.length; b++) {
                    for (int c = 0; c < a.length; c++) {
                        result[r][s] += p[b][r] * a[b][c] * p[c][s];
                    }
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
