package slabfield.solve;

import java.util.Arrays;

/**
 * Conjugate gradients with a multigrid preconditioner for a {@link GridOperator}; also that preconditioner by itself, for
 * a larger system of which the grid is the main part.
 *
 * <p>The black half of the cells is eliminated exactly ({@link RedBlackGrid}) and one V(1,1) cycle of black-box
 * multigrid ({@link Galerkin}) preconditions what remains. Where that converges slowly, the solve goes on with more
 * {@link Effort}. Cycle and iteration run in single precision; the answer and its residual are in double, and the residual is
 * worked out anew every time it has fallen ten thousandfold (Strzodka and Goeddeke 2006, Proc. FCCM; van der Vorst and Ye 2000, SIAM J. Sci. Comput. 22), so that
 * the answer is as good as one in double throughout. Nothing is allocated while iterating, but once where a solve
 * becomes thorough. Not safe for use by several threads at once; the threads at work are those of the team.
 */
public final class GridMultigrid implements Preconditioner {
    /** Where a larger part of the rows than one in so many lies from the first to the last that changed, all are set up anew. */
    private static final int MOST_CHANGED = 4;

    final GridOperator operator;
    final Workers team;
    final RedBlackGrid grid;
    final CycleRows[] cycles;
    final SystemRows[] systems;
    /** Steps in single precision. */
    final StepRows[] directions;
    /** Steps in double, and their residual; made when single precision does not do, null before. */
    volatile StepRows[] exact;

    double[][] exactResidual;
    final TeamSum sums;
    /** Red cells of the answer so far. */
    final double[][] x;

    /** Direction, and S times it. */
    private final float[][] p;

    final float[][] ap;
    /** Residual into the cycle and correction out of it. */
    final float[][] residual;

    final float[][] correction;
    volatile Effort effort = Effort.STEADY;
    private final Hierarchy hierarchy;
    private final CornerWeights corners;
    /** Coarse operators in double; let go once a solve is thorough, and made anew at the next {@link #update}. */
    private NinePoint[] operators;

    /** Red values between two smoothings of a thorough cycle; made when first needed. */
    private float[][] between;

    /** Of each padded row: sum of leaks, and of diagonals. */
    private final double[] leaks;

    private final double[] diagonals;
    private double tightness;

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
        sums = new TeamSum(team);
        x = new double[rows + 2][grid.length];
        p = new float[rows + 2][grid.length];
        ap = new float[rows + 2][grid.length];
        directions = new StepRows[team.count()];
        Arrays.setAll(directions, w -> new DirectionRows(grid, p, ap));
        residual = new float[rows + 2][grid.length];
        correction = new float[rows + 2][grid.length];
        leaks = new double[rows + 2];
        diagonals = new double[rows + 2];
        update();
    }

    /** Takes over changed coefficients. */
    public void update() {
        begin();
        if (operators == null) {
            operators = hierarchy.operators();
        }
        team.run(me -> {
            var rows = new FineRows(operator, grid, from(me), to(me));
            hierarchy.build(me, rows, operators, corners);
            weigh(from(me), to(me));
        });
        tighten();
    }

    /**
     * Takes over changed coefficients where most rows of the grid may be as they were, which is looked at first: only what rests on the
     * changed ones and those between them is set up anew. The same to the last bit as {@link #update}.
     */
    public void refresh() {
        if (operators == null) {
            update();
            return;
        }
        var changed = new ChangedRows(team.count());
        team.run(me -> changed.look(me, new FineRows(operator, grid, 0, 0), from(me), to(me)));
        if (changed.count() * MOST_CHANGED > operator.rows()) {
            update();
            return;
        }
        begin();
        if (changed.count() > 0) {
            int low = changed.low();
            int high = changed.high();
            var rows = new FineRows(operator, grid, low, high + 1);
            hierarchy.rebuild(low, high, rows, operators, corners);
            weigh(low, Math.min(high + 1, operator.rows()) + 1);
            tighten();
        }
    }

    private void begin() {
        effort = Effort.STEADY;
        exact = null;
    }

    /** Leaks and diagonals of padded rows from .. to - 1. */
    private void weigh(int from, int to) {
        for (int j = from; j < to; j++) {
            leaks[j] = grid.leaks(j);
            diagonals[j] = 2 * grid.diagonals(j);
        }
    }

    private void tighten() {
        double leak = 0;
        double all = 0;
        for (int j = 0; j < leaks.length; j++) {
            leak += leaks[j];
            all += diagonals[j];
        }
        tightness = all / leak;
    }

    int from(int me) {
        return hierarchy.beginFine(0, me, operator.rows());
    }

    int to(int me) {
        return hierarchy.beginFine(0, me + 1, operator.rows());
    }

    /**
     * Solves A x = b.
     *
     * @param b right-hand side over all cells; read at active ones
     * @param x start, and then the answer, another array than b; 0 at inactive cells. The start's black cells do not matter
     * @param tolerance wanted |b - A x| / |b|
     * @param limit on the number of iterations
     * @param watch told of each iteration's running residual, which is within a few parts in a thousand of the true one
     */
    public IterationResult solve(double[] b, double[] x, double tolerance, int limit, Watch watch) {
        var run = new GridSolve(this, b, x, tolerance, limit, watch);
        team.run(run::work);
        return run.result();
    }

    /** Goes on with steps in double precision; every worker calls this. */
    void sharpen(int me) {
        team.await(me);
        if (me == 0) {
            double[][] direction = new double[grid.rows + 2][grid.length];
            double[][] product = new double[grid.rows + 2][grid.length];
            exactResidual = new double[grid.rows + 2][grid.length];
            var steps = new StepRows[team.count()];
            Arrays.setAll(steps, w -> new ExactRows(grid, direction, product, exactResidual));
            exact = steps;
        }
        team.await(me);
    }

    /** How far all conductances together outweigh the leaks; infinite without leaks. */
    double tightness() {
        return tightness;
    }

    /** Goes on with plain cycles; every worker calls this. */
    void quicken(int me) {
        team.await(me);
        effort = Effort.PLAIN;
        team.await(me);
    }

    /** Goes on with thorough cycles; every worker calls this. */
    void strengthen(int me) {
        team.await(me);
        if (me == 0) {
            if (between == null) {
                between = new float[grid.rows + 2][grid.length];
            }
            hierarchy.prepare(Effort.THOROUGH);
        }
        team.await(me);
        hierarchy.load(me, Effort.THOROUGH, operators);
        team.await(me);
        if (me == 0) {
            operators = null;
            effort = Effort.THOROUGH;
        }
        team.await(me);
    }

    /**
     * One application of the preconditioner to {@code residual}, into {@code correction}; every worker calls this.
     *
     * @param last A times the direction before, or null
     */
    void cycle(int me, Effort now, float[][] last) {
        int from = from(me);
        int to = to(me);
        CycleRows rows = cycles[me];
        CoarseGrid coarse = hierarchy.first();
        team.await(me);
        float[][] smoothed = null;
        if (now.sweeps > 1) {
            rows.correct(residual, null, null, correction, null, from, to);
            team.await(me);
            smoothed = correction;
        }
        rows.restrict(residual, smoothed, coarse, hierarchy.begin(0, me), hierarchy.begin(0, me + 1));
        hierarchy.cycle(me, now);
        if (now.sweeps > 1) {
            rows.correct(residual, correction, coarse, between, null, from, to);
            team.await(me);
            rows.correct(residual, between, null, correction, last, from, to);
        } else {
            rows.correct(residual, null, coarse, correction, last, from, to);
        }
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
            rows.reduce(given, scale, residual, from, to);
            cycle(me, Effort.STEADY, null);
            rows.widen(correction, 1 / scale, x, from, to);
            team.await(me);
            rows.answer(given, x, z, from, to);
        });
    }
}
