package slabfield.solve;

import java.util.Arrays;
import slabfield.solve.IterationResult.Ending;

/**
 * Conjugate gradients with a multigrid preconditioner for a {@link GridOperator}; also that preconditioner by itself, for
 * a larger system of which the grid is the main part.
 *
 * <p>The black half of the cells is eliminated exactly ({@link RedBlackGrid}) and one V(1,1) cycle of black-box
 * multigrid ({@link Galerkin}) preconditions what remains. The cycle runs in single precision; the iteration and the
 * answer are in double. Nothing is allocated while iterating. Not safe for use by several threads at once; the threads
 * at work are those of the team.
 */
public final class GridMultigrid implements Preconditioner {
    /** A plain step that leaves more than this of the residual calls for a thorough cycle. */
    private static final double SLOW = 0.3;

    private final GridOperator operator;
    private final Workers team;
    private final RedBlackGrid grid;
    private final Hierarchy hierarchy;
    private final CornerWeights corners;
    private final CycleRows[] cycles;
    private final SystemRows[] systems;
    private final double[][] x;
    private final double[][] r;
    private final double[][] p;
    private final double[][] ap;
    /** Residual into the cycle and correction out of it. */
    private final float[][] residual;

    private final float[][] correction;
    /** Red values between two smoothings of a thorough cycle; made when first needed. */
    private float[][] between;

    private final NinePoint[] operators;
    private final TeamSum sums;
    private volatile Effort effort = Effort.PLAIN;
    /** Closed rooms, in a thorough solve; null where there are none. */
    private volatile Rooms rooms;

    /** @param operator whose arrays are read now, and again at each {@link #update()}; its pattern of active cells is fixed */
    public GridMultigrid(GridOperator operator, Workers team) {
        this.operator = operator;
        this.team = team;
        int columns = operator.columns();
        int rows = operator.rows();
        grid = new RedBlackGrid(columns, rows);
        int[] cells = new int[rows];
        for (int c = 0; c < operator.size(); c++) {
            if (operator.active()[c]) {
                cells[c / columns]++;
            }
        }
        hierarchy = new Hierarchy(columns, rows, cells, team);
        corners = new CornerWeights((rows + 1) / 2, grid.length);
        cycles = new CycleRows[team.count()];
        Arrays.setAll(cycles, w -> new CycleRows(grid, corners));
        systems = new SystemRows[team.count()];
        Arrays.setAll(systems, w -> new SystemRows(grid));
        x = new double[rows + 2][grid.length];
        r = new double[rows + 2][grid.length];
        p = new double[rows + 2][grid.length];
        ap = new double[rows + 2][grid.length];
        residual = new float[rows + 2][grid.length];
        correction = new float[rows + 2][grid.length];
        operators = hierarchy.operators();
        sums = new TeamSum(team);
        update();
    }

    /** Takes over changed coefficients. */
    public void update() {
        effort = Effort.PLAIN;
        rooms = null;
        team.run(me -> {
            var rows = new OperatorRows(operator, grid, from(me), to(me));
            hierarchy.build(me, rows, operators, corners);
        });
    }

    private int from(int me) {
        return hierarchy.beginFine(0, me, operator.rows());
    }

    private int to(int me) {
        return hierarchy.beginFine(0, me + 1, operator.rows());
    }

    /**
     * Solves A x = b.
     *
     * @param b right-hand side over all cells; read at active ones
     * @param x start, and then the answer; 0 at inactive cells. The start's black cells do not matter
     * @param tolerance wanted |b - A x| / |b|
     * @param limit on the number of iterations
     */
    public IterationResult solve(double[] b, double[] x, double tolerance, int limit, Watch watch) {
        var run = new Run(b, x, tolerance, limit, watch);
        team.run(run::work);
        return new IterationResult(run.ending, run.iterations, run.relative);
    }

    /** One solve; every worker runs {@link #work} in step and takes the same decisions from the same sums. */
    private final class Run {
        private final double[] b;
        private final double[] answer;
        private final double tolerance;
        private final int limit;
        private final Watch watch;
        private volatile boolean goOn = true;
        private Ending ending;
        private int iterations;
        private double relative;

        Run(double[] b, double[] answer, double tolerance, int limit, Watch watch) {
            this.b = b;
            this.answer = answer;
            this.tolerance = tolerance;
            this.limit = limit;
            this.watch = watch;
        }

        void work(int me) {
            int from = from(me);
            int to = to(me);
            SystemRows rows = systems[me];
            for (int j = from; j < to; j++) {
                rows.takeRed(j, answer, x[j]);
            }
            team.await(me);
            double norm = Math.sqrt(sums.total(me, rows.squared(b, from, to)));
            int done = 0;
            double last = Double.POSITIVE_INFINITY;
            while (true) {
                double start = residual(me);
                Ending end = ConjugateGradients.ending(start, tolerance * norm, last, goOn, done >= limit);
                if (end != null) {
                    rows.answer(b, x, answer, from, to);
                    if (me == 0) {
                        ending = end;
                        iterations = done;
                        relative = norm > 0 ? start / norm : start;
                    }
                    return;
                }
                Effort now = effort;
                done = iterate(me, level(me, start), norm, done);
                last = effort == now ? start : Double.POSITIVE_INFINITY;
            }
        }

        private double residual(int me) {
            return Math.sqrt(sums.total(me, systems[me].residual(b, x, r, from(me), to(me))));
        }

        /** Brings every closed room to its right level; returns the residual then. */
        private double level(int me, double start) {
            if (rooms == null) {
                return start;
            }
            rooms.gather(me, r, from(me), to(me));
            team.await(me);
            rooms.solve(me);
            rooms.add(me, 1, x, from(me), to(me));
            team.await(me);
            return residual(me);
        }

        /** Conjugate gradients until the running residual is small enough or falls slowly; returns the iterations done in all. */
        private int iterate(int me, double start, double norm, int before) {
            int from = from(me);
            int to = to(me);
            SystemRows rows = systems[me];
            double scale = 1 / start;
            rows.round(r, scale, residual, from, to);
            int done = before;
            double rz = 0;
            double length = 0;
            double last = Double.POSITIVE_INFINITY;
            while (true) {
                double rzNew = sums.total(me, cycle(me, effort)) / scale;
                double factor = rz == 0 ? 0 : rzNew / rz;
                if (effort == Effort.THOROUGH && rz != 0) {
                    factor = -length * sums.total(me, rows.dot(correction, ap, from, to)) / rz;
                }
                rows.direction(correction, factor, p, from, to);
                conjugate(me);
                rz = rzNew;
                team.await(me);
                double pap = sums.total(me, rows.multiply(p, ap, from, to));
                done++;
                if (!(pap > 0)) {
                    return done;
                }
                length = rz / pap;
                double now = Math.sqrt(sums.total(me, rows.step(length, p, ap, x, r, scale, residual, from, to)));
                if (me == 0) {
                    goOn = watch.step(done, now / norm);
                }
                team.await(me);
                if (now <= 0.99 * tolerance * norm || done >= limit || !goOn) {
                    return done;
                }
                if (effort == Effort.PLAIN && now > SLOW * last) {
                    strengthen(me);
                    return done;
                }
                last = now;
            }
        }

        /** Makes the direction conjugate to the rooms' levels. */
        private void conjugate(int me) {
            if (rooms == null) {
                return;
            }
            rooms.gatherConjugate(me, correction, from(me), to(me));
            team.await(me);
            rooms.solve(me);
            rooms.add(me, -1, p, from(me), to(me));
        }

        private void strengthen(int me) {
            team.await(me);
            if (me == 0) {
                if (between == null) {
                    between = new float[grid.rows + 2][grid.length];
                }
                rooms = Rooms.of(operator, grid, team.count());
                effort = Effort.THOROUGH;
            }
            team.await(me);
        }
    }

    /** One application of the preconditioner to {@code residual}, into {@code correction}; returns this worker's part of residual' correction. */
    private double cycle(int me, Effort now) {
        int from = from(me);
        int to = to(me);
        CycleRows rows = cycles[me];
        CoarseGrid coarse = hierarchy.first();
        team.await(me);
        if (now == Effort.PLAIN) {
            rows.restrict(residual, null, coarse, hierarchy.begin(0, me), hierarchy.begin(0, me + 1));
            hierarchy.cycle(me, now);
            return rows.correct(residual, null, coarse, correction, from, to);
        }
        rows.correct(residual, null, null, correction, from, to);
        team.await(me);
        rows.restrict(residual, correction, coarse, hierarchy.begin(0, me), hierarchy.begin(0, me + 1));
        hierarchy.cycle(me, now);
        rows.correct(residual, correction, coarse, between, from, to);
        team.await(me);
        return rows.correct(residual, between, null, correction, from, to);
    }

    /** {@inheritDoc} Vectors run over all cells; z is 0 at inactive ones. */
    @Override
    public void apply(double[] given, double[] z) {
        double largest = 0;
        for (double v : given) {
            largest = Math.max(largest, Math.abs(v));
        }
        if (largest == 0) {
            Arrays.fill(z, 0);
            return;
        }
        double scale = 1 / largest;
        team.run(me -> {
            int from = from(me);
            int to = to(me);
            SystemRows rows = systems[me];
            rows.reduce(given, r, from, to);
            rows.round(r, scale, residual, from, to);
            cycle(me, Effort.PLAIN);
            rows.widen(correction, 1 / scale, p, from, to);
            team.await(me);
            rows.answer(given, p, z, from, to);
        });
    }
}
