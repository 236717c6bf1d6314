package slabfield.solve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Newton's method alone, on equations whose roots are known. */
class NewtonTest {
    private static final Newton.Watch ALWAYS_ON = (k, residual) -> false;

    /** One rising function of one unknown, with what is done to its step. */
    private record One(DoubleUnaryOperator gradient, DoubleUnaryOperator curvature, double stepShare)
            implements NonlinearSystem {
        One(DoubleUnaryOperator gradient, DoubleUnaryOperator curvature) {
            this(gradient, curvature, 1);
        }

        @Override
        public int size() {
            return 1;
        }

        @Override
        public void residual(double[] at, double[] rest, double[] residual) {
            residual[0] = gradient.applyAsDouble(at[0] + rest[0]);
        }

        @Override
        public boolean step(double[] at, double[] rest, double[] residual, double[] step) {
            double slope = curvature.applyAsDouble(at[0] + rest[0]);
            if (!(slope > 0)) return false;
            step[0] = -stepShare * residual[0] / slope;
            return true;
        }

        @Override
        public double scale(double[] at, double[] rest) {
            return 1;
        }
    }

    private static final One LOGARITHM = new One(Math::log, x -> 1 / x);
    private static final One ARC = new One(x -> Math.atan(x - 3), x -> 1 / (1 + (x - 3) * (x - 3)));
    private static final One ROOT =
            new One(x -> Math.signum(x) * Math.sqrt(Math.abs(x)) - 1, x -> 0.5 / Math.sqrt(Math.abs(x) + 1e-12));
    private static final One LINE = new One(x -> 4 * x - 2, x -> 4);

    private static double solved(One equation, double from, int most) {
        double[] x = {from}, rest = {0};
        Newton.Outcome o = Newton.solve(equation, x, rest, ALWAYS_ON);
        assertThat(o.ending()).isEqualTo(Newton.Ending.CONVERGED);
        assertThat(o.iterations()).isLessThanOrEqualTo(most);
        double[] residual = new double[1];
        equation.residual(x, rest, residual);
        assertThat(o.residual()).isEqualTo(Math.abs(residual[0])).isLessThanOrEqualTo(Newton.TOLERANCE);
        return x[0] + rest[0];
    }

    /** Whole steps would run away from an arc tangent, past the root of a square root, and below zero under a logarithm. */
    @Test
    void findsRootsThatWholeStepsMiss() {
        assertThat(solved(ARC, 100, 15)).isCloseTo(3, within(1e-12));
        assertThat(solved(ARC, -1e3, 15)).isCloseTo(3, within(1e-12));
        assertThat(solved(ROOT, 100, 15)).isCloseTo(1, within(1e-11));
        assertThat(solved(LOGARITHM, 5, 12)).isCloseTo(1, within(1e-12));
    }

    @Test
    void aLineTakesOneStepAndOneToSettle() {
        assertThat(solved(LINE, 1e6, 2)).isEqualTo(0.5);
    }

    @Test
    void theFirstGuessMayBeTheAnswer() {
        double[] x = {0.5};
        Newton.Outcome o = Newton.solve(LINE, x, new double[1], ALWAYS_ON);
        assertThat(o).isEqualTo(new Newton.Outcome(Newton.Ending.CONVERGED, 0, 0));
        assertThat(x).containsExactly(0.5);
    }

    /** The first unknown is put right by the system itself; the step sees a residual in which nothing of it is left. */
    @Test
    void aPlaceThatTheSystemEasesIsLookedAtAfresh() {
        List<Double> seen = new ArrayList<>();
        NonlinearSystem two = new NonlinearSystem() {
            @Override
            public int size() {
                return 2;
            }

            @Override
            public void residual(double[] at, double[] rest, double[] residual) {
                residual[0] = 4 * at[0] - 2 + 4 * rest[0];
                residual[1] = at[1] - 3 + rest[1];
            }

            @Override
            public boolean ease(double[] at, double[] rest, double[] residual, double relative) {
                seen.add(relative);
                if (at[0] == 0.5) return false;
                at[0] = 0.5;
                rest[0] = 0;
                return true;
            }

            @Override
            public boolean step(double[] at, double[] rest, double[] residual, double[] step) {
                if (residual[0] != 0) return false;
                step[0] = 0;
                step[1] = -residual[1];
                return true;
            }

            @Override
            public double scale(double[] at, double[] rest) {
                return 1;
            }
        };
        double[] x = {4, 5};
        Newton.Outcome o = Newton.solve(two, x, new double[2], ALWAYS_ON);
        assertThat(o).isEqualTo(new Newton.Outcome(Newton.Ending.CONVERGED, 1, 0));
        assertThat(x).containsExactly(0.5, 3);
        assertThat(seen).containsExactly(16.0, 0.0);
    }

    /** Beside 10^16 a double knows no quarter. */
    @Test
    void keepsWhatRoundingLeavesOut() {
        NonlinearSystem far = new NonlinearSystem() {
            @Override
            public int size() {
                return 1;
            }

            @Override
            public void residual(double[] at, double[] rest, double[] residual) {
                residual[0] = at[0] - 1e16 + (rest[0] - 0.25);
            }

            @Override
            public boolean step(double[] at, double[] rest, double[] residual, double[] step) {
                step[0] = -residual[0];
                return true;
            }

            @Override
            public double scale(double[] at, double[] rest) {
                return 1;
            }
        };
        double[] x = {1e16 + 6}, rest = {0};
        assertThat(Newton.solve(far, x, rest, ALWAYS_ON).ending()).isEqualTo(Newton.Ending.CONVERGED);
        assertThat(x).containsExactly(1e16);
        assertThat(rest).containsExactly(0.25);
    }

    @Test
    void theResidualIsSeenAgainstTheScale() {
        NonlinearSystem large = new NonlinearSystem() {
            @Override
            public int size() {
                return 2;
            }

            @Override
            public void residual(double[] at, double[] rest, double[] residual) {
                residual[0] = at[0] - 3;
                residual[1] = 1 - at[1];
            }

            @Override
            public boolean step(double[] at, double[] rest, double[] residual, double[] step) {
                return false;
            }

            @Override
            public double scale(double[] at, double[] rest) {
                return 8;
            }
        };
        double[] x = {4, 4};
        assertThat(Newton.solve(large, x, new double[2], ALWAYS_ON))
                .isEqualTo(new Newton.Outcome(Newton.Ending.SINGULAR, 0, 0.5));
        assertThat(x).containsExactly(4, 4);
    }

    @Test
    void stopsWhenToldTo() {
        List<Integer> steps = new ArrayList<>();
        List<Double> residuals = new ArrayList<>();
        double[] x = {100};
        Newton.Outcome o = Newton.solve(ROOT, x, new double[1], (k, residual) -> {
            steps.add(k);
            residuals.add(residual);
            return k == 2;
        });
        assertThat(o.ending()).isEqualTo(Newton.Ending.CANCELLED);
        assertThat(o.iterations()).isEqualTo(2);
        assertThat(steps).containsExactly(0, 1, 2);
        assertThat(residuals.get(0)).isEqualTo(9);
        assertThat(o.residual()).isEqualTo(residuals.get(2)).isLessThan(9);
        double[] residual = new double[1];
        ROOT.residual(x, new double[1], residual);
        assertThat(o.residual()).isEqualTo(Math.abs(residual[0]));
    }

    /** A step uphill, or none, is not taken and not called an answer. */
    @Test
    void aStepThatDoesNotHelpIsNoAnswer() {
        for (double share : new double[] {-1, 0}) {
            double[] x = {7};
            Newton.Outcome o = Newton.solve(new One(v -> v, v -> 1, share), x, new double[1], ALWAYS_ON);
            assertThat(o).isEqualTo(new Newton.Outcome(Newton.Ending.STALLED, 0, 7));
            assertThat(x).containsExactly(7);
        }
    }

    @Test
    void stepsThatGetNowhereEndAtTheLimit() {
        double[] x = {1};
        Newton.Outcome o = Newton.solve(new One(v -> v, v -> 1, 1e-3), x, new double[1], ALWAYS_ON);
        assertThat(o.ending()).isEqualTo(Newton.Ending.ITERATION_LIMIT);
        assertThat(o.iterations()).isEqualTo(200);
        assertThat(x[0]).isCloseTo(Math.pow(0.999, 200), within(1e-12));
        assertThat(o.residual()).isEqualTo(x[0]);
    }

    /** Two unknowns bound by a steep law, from far away. */
    @Test
    void twoUnknownsWithOneSteepLaw() {
        NonlinearSystem two = new NonlinearSystem() {
            @Override
            public int size() {
                return 2;
            }

            private double steep(double[] at, double[] rest) {
                return at[0] - at[1] + (rest[0] - rest[1]);
            }

            @Override
            public void residual(double[] at, double[] rest, double[] residual) {
                double q = Math.pow(steep(at, rest), 3);
                residual[0] = q + at[0] + rest[0] - 10;
                residual[1] = -q + at[1] + rest[1];
            }

            @Override
            public boolean step(double[] at, double[] rest, double[] residual, double[] step) {
                double s = 3 * Math.pow(steep(at, rest), 2), a = s + 1, det = a * a - s * s;
                step[0] = -(a * residual[0] + s * residual[1]) / det;
                step[1] = -(s * residual[0] + a * residual[1]) / det;
                return true;
            }

            @Override
            public double scale(double[] at, double[] rest) {
                return 10;
            }
        };
        double[] x = {1e4, -1e4}, rest = {0, 0};
        assertThat(Newton.solve(two, x, rest, ALWAYS_ON).ending()).isEqualTo(Newton.Ending.CONVERGED);
        // x + y = 10 and, with d = x - y, 2 d^3 + d = 10: d = 1.612...
        double d = x[0] - x[1];
        assertThat(x[0] + x[1]).isCloseTo(10, within(1e-10));
        assertThat(2 * d * d * d + d).isCloseTo(10, within(1e-9));
    }

    private static int steps(One equation, double from) {
        double[] x = {from}, rest = {0};
        return Newton.solve(equation, x, rest, ALWAYS_ON).iterations();
    }

    /** From 1e-4 steps go to 5e-9 and to 1e-17. */
    @Test
    void aShortStepThatEndsSettledIsTheLast() {
        assertThat(steps(new One(Math::expm1, Math::exp), 1e-4)).isEqualTo(2);
    }

    /** The first leaves 2e-14 of 2, the second nothing. */
    @Test
    void aLongStepIsFollowedByAnotherHoweverWellItEnds() {
        assertThat(steps(new One(LINE.gradient, LINE.curvature, 1 - 1e-14), 0)).isEqualTo(2);
    }
}
