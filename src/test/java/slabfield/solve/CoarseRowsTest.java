package slabfield.solve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Passes over strips against the level's operator applied point by point in double precision. */
class CoarseRowsTest {
    /** A level of several strips and the next, and the operator of the first. */
    private record Levels(NinePoint operator, CoarseGrid level, CoarseGrid next, CoarseRows rows) {
        /** @param shares where each worker's pairs of rows begin on the first level, and one past the last */
        static Levels of(int columns, int rows, int... shares) {
            var random = new Random(columns * 31L + rows);
            int n = columns * rows;
            double[] east = random.doubles(n).map(v -> Math.pow(10, -2 * v)).toArray();
            double[] north = random.doubles(n).map(v -> Math.pow(10, -2 * v)).toArray();
            double[] leak = random.doubles(n).map(v -> 1e-3 * v).toArray();
            boolean[] active = new boolean[n];
            for (int c = 0; c < n; c++) {
                active[c] = random.nextDouble() >= 0.1;
            }
            var operator = new GridOperator(columns, rows, east, north, leak, active);
            var one = new NinePoint((columns + 1) / 2, (rows + 1) / 2);
            var two = new NinePoint((one.columns + 1) / 2, (one.rows + 1) / 2);
            var level = new CoarseGrid(one.columns, one.rows, shares);
            var next = new CoarseGrid(two.columns, two.rows, new int[] {1, (two.rows + 1) / 2 + 1});
            var source = new FineRows(operator, new RedBlackGrid(columns, rows), 1, rows + 1);
            new Galerkin(source, false, one).build(1, one.rows + 1, null, null, level);
            new Galerkin(one.source(), true, two).build(1, two.rows + 1, level, null, next);
            level.needRest();
            level.loadRest(one, 1, one.rows + 1);
            return new Levels(one, level, next, new CoarseRows(level.strips.longest()));
        }

        static Levels whole(int columns, int rows) {
            int pairs = ((rows + 1) / 2 + 1) / 2;
            return of(columns, rows, 1, pairs + 1);
        }

        int pairs() {
            return next.rows;
        }

        boolean active(int j, int i) {
            return operator.row[j].diagonal.get(i) > 0;
        }

        void fill(Quarters field, CoarseGrid grid, long seed) {
            var random = new Random(seed);
            for (int j = 1; j <= grid.rows; j++) {
                for (int i = 1; i <= grid.columns; i++) {
                    float value = random.nextFloat() - 0.5f;
                    field.set(j, i, grid.diagonal.get(j, i) > 0 ? value : 0);
                }
            }
        }

        /** Row of A x; or, as its size, of |A| |x|. */
        double product(Quarters x, int j, int i, boolean size) {
            SplitRow r = operator.row[j];
            SplitRow under = operator.row[j - 1];
            double sum = term(-r.diagonal.get(i), x, j, i, size);
            sum += term(r.east.get(i), x, j, i + 1, size) + term(r.east.get(i - 1), x, j, i - 1, size);
            sum += term(r.north.get(i), x, j + 1, i, size) + term(under.north.get(i), x, j - 1, i, size);
            sum += term(r.northEast.get(i), x, j + 1, i + 1, size) + term(r.northWest(i), x, j + 1, i - 1, size);
            sum += term(under.northEast.get(i - 1), x, j - 1, i - 1, size);
            return sum + term(under.northWest(i + 1), x, j - 1, i + 1, size);
        }

        private double term(double conductance, Quarters x, int j, int i, boolean size) {
            boolean inside = i >= 1 && i <= level.columns && j >= 1 && j <= level.rows;
            double v = inside ? -conductance * x.get(j, i) : 0;
            return size ? Math.abs(v) : v;
        }

        double residual(int j, int i) {
            return level.b.get(j, i) - product(level.x, j, i, false);
        }
    }

    @ParameterizedTest
    @CsvSource({"180,600", "181,601", "6,4000", "4100,6", "8,9"})
    void multiplyIsTheOperator(int columns, int rows) {
        Levels l = Levels.whole(columns, rows);
        Quarters p = l.level.field();
        Quarters out = l.level.field();
        l.fill(p, l.level, 1);
        l.rows.multiply(l.level, p, out, 1, l.pairs() + 1);
        for (int j = 1; j <= l.level.rows; j++) {
            for (int i = 1; i <= l.level.columns; i++) {
                double size = l.product(p, j, i, true);
                assertThat((double) out.get(j, i))
                        .as("row %d column %d", j, i)
                        .isCloseTo(l.product(p, j, i, false), within(1e-6 * size));
            }
        }
    }

    /** With what is added to the diagonal, the level's leaks are those before rounding. */
    @ParameterizedTest
    @CsvSource({"180,600", "61,47"})
    void restMakesUpForRounding(int columns, int rows) {
        Levels l = Levels.whole(columns, rows);
        for (int j = 1; j <= l.level.rows; j++) {
            for (int i = 1; i <= l.level.columns; i++) {
                SplitRow r = l.operator.row[j];
                SplitRow under = l.operator.row[j - 1];
                double diagonal = r.diagonal.get(i);
                double lost = diagonal - (float) diagonal;
                for (double g : new double[] {
                    r.east.get(i),
                    r.east.get(i - 1),
                    r.north.get(i),
                    under.north.get(i),
                    r.northEast.get(i),
                    r.northWest(i),
                    under.northEast.get(i - 1),
                    under.northWest(i + 1)
                }) {
                    lost -= g - (float) g;
                }
                assertThat((double) l.level.rest.get(j, i))
                        .as("row %d column %d", j, i)
                        .isCloseTo(lost, within(1e-7 * Math.abs(lost) + 1e-16 * diagonal));
            }
        }
    }

    /** Once all even columns of even rows have been smoothed last, they are in balance; and so for the others by turns. */
    @ParameterizedTest
    @CsvSource({"180,600", "181,601"})
    void smoothedLastIsInBalance(int columns, int rows) {
        Levels l = Levels.whole(columns, rows);
        l.fill(l.level.b, l.level, 2);
        l.fill(l.level.x, l.level, 3);
        l.rows.smoothEvenForth(l.level, 1, l.pairs() + 1);
        balanced(l, 0, 1);
        l.rows.smoothEvenBack(l.level, 1, l.pairs() + 1);
        balanced(l, 0, 0);
        l.rows.smoothOddForth(l.level, 1, l.pairs() + 1);
        balanced(l, 1, 1);
        l.rows.smoothOddBack(l.level, 1, l.pairs() + 1);
        balanced(l, 1, 0);
    }

    private static void balanced(Levels l, int row, int column) {
        for (int j = 1 + row; j <= l.level.rows; j += 2) {
            for (int i = 1 + column; i <= l.level.columns; i += 2) {
                if (l.active(j, i)) {
                    double size = l.product(l.level.x, j, i, true) + Math.abs(l.level.b.get(j, i));
                    assertThat(l.residual(j, i)).as("row %d column %d", j, i).isCloseTo(0, within(1e-6 * size));
                }
            }
        }
    }

    /** What is restricted is P' of the residual: e' P' r = (P e)' r for any e; after one smoothing from zero and after more. */
    @ParameterizedTest
    @CsvSource({"180,600,false", "181,601,false", "180,600,true", "181,603,true", "4100,6,true"})
    void restrictionIsTheTransposeOfInterpolation(int columns, int rows, boolean again) {
        Levels l = Levels.whole(columns, rows);
        int end = l.pairs() + 1;
        l.fill(l.level.b, l.level, 4);
        l.rows.smoothEvenFromZero(l.level, 1, end);
        l.rows.smoothOddFromZero(l.level, 1, end);
        if (again) {
            l.rows.smoothEvenForth(l.level, 1, end);
            l.rows.smoothOddForth(l.level, 1, end);
        }
        double[] residual = new double[l.level.rows * l.level.columns];
        for (int c = 0; c < residual.length; c++) {
            residual[c] = l.residual(c / l.level.columns + 1, c % l.level.columns + 1);
        }
        l.rows.restrict(l.level, again, l.next, 1, end);
        for (float[][] colour : new float[][][] {l.level.x.ee, l.level.x.oe, l.level.x.eo, l.level.x.oo}) {
            Arrays.stream(colour).forEach(strip -> Arrays.fill(strip, 0));
        }
        l.fill(l.next.x, l.next, 5);
        l.rows.correct(l.level, l.next, 1, end);
        double fine = 0;
        double size = 0;
        for (int c = 0; c < residual.length; c++) {
            double term = residual[c] * l.level.x.get(c / l.level.columns + 1, c % l.level.columns + 1);
            fine += term;
            size += Math.abs(term);
        }
        double coarse = 0;
        for (int j = 1; j <= l.next.rows; j++) {
            for (int i = 1; i <= l.next.columns; i++) {
                coarse += (double) l.next.x.get(j, i) * l.next.b.get(j, i);
            }
        }
        assertThat(coarse).isCloseTo(fine, within(1e-6 * size));
    }

    /** Three workers' shares, one of a single pair of rows, one after another give what one worker gives, to the last bit. */
    @ParameterizedTest
    @CsvSource({"180,600,70,71", "61,90,1,12"})
    void sharesAreTheWhole(int columns, int rows, int one, int two) {
        int pairs = ((rows + 1) / 2 + 1) / 2;
        Levels whole = Levels.of(columns, rows, 1, pairs + 1);
        Levels parts = Levels.of(columns, rows, 1, one, two, pairs + 1);
        run(whole, 1, pairs + 1);
        run(parts, 1, one, two, pairs + 1);
        for (int j = 1; j <= whole.level.rows; j++) {
            for (int i = 1; i <= whole.level.columns; i++) {
                assertThat(parts.level.x.get(j, i)).isEqualTo(whole.level.x.get(j, i));
            }
        }
        for (int j = 1; j <= whole.next.rows; j++) {
            for (int i = 1; i <= whole.next.columns; i++) {
                assertThat(parts.next.b.get(j, i)).isEqualTo(whole.next.b.get(j, i));
            }
        }
    }

    private static void run(Levels l, int... shares) {
        l.fill(l.level.b, l.level, 6);
        l.fill(l.next.x, l.next, 7);
        int workers = shares.length - 1;
        for (int pass = 0; pass < 8; pass++) {
            for (int w = 0; w < workers; w++) {
                int from = shares[w];
                int to = shares[w + 1];
                switch (pass) {
                    case 0 -> l.rows.smoothEvenFromZero(l.level, from, to);
                    case 1 -> l.rows.smoothOddFromZero(l.level, from, to);
                    case 2 -> l.rows.smoothEvenForth(l.level, from, to);
                    case 3 -> l.rows.smoothOddForth(l.level, from, to);
                    case 4 -> l.rows.restrict(l.level, true, l.next, from, to);
                    case 5 -> l.rows.correct(l.level, l.next, from, to);
                    case 6 -> l.rows.smoothOddBack(l.level, from, to);
                    default -> l.rows.smoothEvenBack(l.level, from, to);
                }
            }
        }
    }
}
