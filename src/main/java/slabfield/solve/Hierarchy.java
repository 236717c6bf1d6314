package slabfield.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The levels below a {@link RedBlackGrid} and one V-cycle through them, worked by a team. */
final class Hierarchy {
    /** A level with at most this many points is solved exactly. */
    private static final int EXACT = 300;
    /** A level with fewer points than this is not worth sharing. */
    private static final int SHARED = 1500;

    private final Workers team;
    private final List<CoarseGrid> levels = new ArrayList<>();
    /** Where each worker's share of the next level's padded rows begins, by level; level 0 is the red-black grid. */
    private final List<int[]> shares = new ArrayList<>();

    /** First level that one worker works alone, -1 if that is the one solved exactly. */
    private final int alone;

    private BandCholesky exact;
    private final CoarseRows[] workers;
    private final TeamSum sums;
    private final InnerSteps[] inner;

    /** @param rowCells number of active cells in each row of the red-black grid */
    Hierarchy(int columns, int rows, int[] rowCells, Workers team) {
        this.team = team;
        int w = columns;
        int h = rows;
        int[] cells = pairs(rowCells);
        shares.add(share(cells, team.count()));
        int longest = 0;
        do {
            w = (w + 1) / 2;
            h = (h + 1) / 2;
            cells = pairs(cells);
            shares.add(share(cells, team.count()));
            var level = new CoarseGrid(w, h, shares.get(shares.size() - 1));
            levels.add(level);
            longest = Math.max(longest, level.strips.longest());
        } while (w * h > EXACT);
        alone = firstAlone();
        if (alone >= 0) {
            levels.get(alone).needRest();
        }
        workers = new CoarseRows[team.count()];
        int most = longest;
        Arrays.setAll(workers, me -> new CoarseRows(most));
        sums = new TeamSum(team);
        inner = new InnerSteps[levels.size()];
    }

    private int firstAlone() {
        for (int k = 0; k + 1 < levels.size(); k++) {
            if (levels.get(k).points() < SHARED) {
                return k;
            }
        }
        return -1;
    }

    private int steps(int k, Effort effort) {
        return effort.steps(k, k == alone);
    }

    /** Sums of pairs of rows. */
    private static int[] pairs(int[] rows) {
        int[] paired = new int[(rows.length + 1) / 2];
        for (int j = 0; j < rows.length; j++) {
            paired[j / 2] += rows[j];
        }
        return paired;
    }

    private static int[] share(int[] cells, int workers) {
        long total = 0;
        for (int c : cells) {
            total += c;
        }
        int[] begin = new int[workers + 1];
        long sum = 0;
        int worker = 1;
        for (int j = 0; j < cells.length; j++) {
            while (worker < workers && sum * workers >= total * worker && j > 0) {
                begin[worker++] = j + 1;
            }
            sum += cells[j];
        }
        begin[0] = 1;
        while (worker <= workers) {
            begin[worker++] = cells.length + 1;
        }
        return begin;
    }

    /** First padded row of level {@code below + 1} that is a worker's when level {@code below} is restricted. */
    int begin(int below, int worker) {
        return shares.get(below)[worker];
    }

    /** First padded row of level {@code below} itself that is a worker's. */
    int beginFine(int below, int worker, int rows) {
        return Math.min(2 * begin(below, worker) - 1, rows + 1);
    }

    CoarseGrid first() {
        return levels.get(0);
    }

    /** Builds all levels, small ones by one worker; all of the team call this, each with a view of its own rows of the red-black grid. */
    void build(int me, NinePoint.Source fine, NinePoint[] operators, CornerWeights middle) {
        NinePoint.Source source = fine;
        for (int k = 0; k < levels.size(); k++) {
            NinePoint coarse = operators[k];
            CoarseGrid above = k == 0 ? null : levels.get(k - 1);
            boolean shared = k == 0 || levels.get(k).points() >= SHARED;
            if (!shared && me > 0) {
                break;
            }
            int from = shared ? begin(k, me) : 1;
            int to = shared ? begin(k, me + 1) : coarse.rows + 1;
            new Galerkin(source, k > 0, coarse).build(from, to, above, k == 0 ? middle : null, levels.get(k));
            source = coarse.source();
            pause(me, shared);
            if (k == alone && me == 0) {
                levels.get(k).loadRest(coarse, 1, coarse.rows + 1);
            }
        }
        if (me == 0) {
            exact = new BandCholesky(operators[levels.size() - 1], levels.get(levels.size() - 1));
        }
    }

    /** Builds anew what rests on padded rows low .. high of the red-black grid alone; all else is as it was. One worker calls this. */
    void rebuild(int low, int high, NinePoint.Source fine, NinePoint[] operators, CornerWeights middle) {
        NinePoint.Source source = fine;
        int from = low;
        int to = high;
        for (int k = 0; k < levels.size(); k++) {
            NinePoint coarse = operators[k];
            // Coarse row j rests on rows 2j - 6 to 2j + 3 of the level above it, and on a cell less to either side of
            // the cells.
            from = Math.max(1, from / 2 - 1);
            to = Math.min(coarse.rows, to / 2 + 3);
            new Galerkin(source, k > 0, coarse)
                    .build(from, to + 1, k == 0 ? null : levels.get(k - 1), k == 0 ? middle : null, levels.get(k));
            source = coarse.source();
            if (k == alone) {
                levels.get(k).loadRest(coarse, 1, coarse.rows + 1);
            }
        }
        exact = new BandCholesky(operators[levels.size() - 1], levels.get(levels.size() - 1));
    }

    /** Makes room in the levels that take more than one step. */
    void prepare(Effort effort) {
        for (int k = 0; k + 1 < levels.size(); k++) {
            if (steps(k, effort) > 1) {
                levels.get(k).needRest();
            }
        }
    }

    /** Makes those levels ready; all of the team call this once there is room. */
    void load(int me, Effort effort, NinePoint[] operators) {
        for (int k = 0; k + 1 < levels.size(); k++) {
            if (steps(k, effort) > 1) {
                CoarseGrid level = levels.get(k);
                level.loadRest(operators[k], beginFine(k + 1, me, level.rows), beginFine(k + 1, me + 1, level.rows));
            }
        }
    }

    NinePoint[] operators() {
        var operators = new NinePoint[levels.size()];
        for (int k = 0; k < operators.length; k++) {
            operators[k] = new NinePoint(levels.get(k).columns, levels.get(k).rows);
        }
        return operators;
    }

    /** Cycles from the first level's right-hand side to its x; every worker calls this. */
    void cycle(int me, Effort effort) {
        visit(0, me, true, effort);
    }

    /** Solves a level well enough for the one above it. */
    private void visit(int k, int me, boolean shared, Effort effort) {
        CoarseGrid level = levels.get(k);
        pause(me, shared);
        if (shared && level.points() < SHARED) {
            if (me == 0) {
                visit(k, me, false, effort);
            }
            team.await(me);
        } else if (k + 1 == levels.size()) {
            exact.solve();
        } else if (steps(k, effort) > 1) {
            accelerate(k, me, shared, effort);
        } else {
            cycle(k, me, shared, effort);
        }
    }

    private void pause(int me, boolean shared) {
        if (shared) {
            team.await(me);
        }
    }

    /** First pair of rows of level k that is a worker's. */
    private int begin(int k, int me, boolean shared) {
        return shared ? begin(k + 1, me) : 1;
    }

    private int end(int k, int me, boolean shared) {
        return shared ? begin(k + 1, me + 1) : levels.get(k + 1).rows + 1;
    }

    /** One cycle from a level's b to its x. */
    private void cycle(int k, int me, boolean shared, Effort effort) {
        CoarseGrid level = levels.get(k);
        CoarseGrid next = levels.get(k + 1);
        CoarseRows rows = workers[me];
        int from = begin(k, me, shared);
        int to = end(k, me, shared);
        rows.smoothEvenFromZero(level, from, to);
        pause(me, shared);
        rows.smoothOddFromZero(level, from, to);
        pause(me, shared);
        for (int n = 1; n < effort.sweeps; n++) {
            rows.smoothEvenForth(level, from, to);
            pause(me, shared);
            rows.smoothOddForth(level, from, to);
            pause(me, shared);
        }
        rows.restrict(level, effort.sweeps > 1, next, from, to);
        visit(k + 1, me, shared, effort);
        rows.correct(level, next, from, to);
        pause(me, shared);
        for (int n = 0; n < effort.sweeps; n++) {
            rows.smoothOddBack(level, from, to);
            pause(me, shared);
            rows.smoothEvenBack(level, from, to);
            pause(me, shared);
        }
    }

    /** A few steps of conjugate gradients with the cycle as preconditioner, every direction made conjugate to all before. */
    private void accelerate(int k, int me, boolean shared, Effort effort) {
        InnerSteps steps = inner(k, me, shared);
        CoarseRows rows = workers[me];
        int from = begin(k, me, shared);
        int to = end(k, me, shared);
        int n = 0;
        while (n < steps(k, effort)) {
            cycle(k, me, shared, effort);
            steps.take(n, from, to);
            for (int m = 0; m < n; m++) {
                steps.clear(me, n, m, sum(me, shared, steps.along(me, n, m, from, to)), from, to);
            }
            pause(me, shared);
            double energy = sum(me, shared, steps.multiply(me, rows, n, from, to));
            double work = sum(me, shared, steps.work(me, n, from, to));
            if (!(energy > 0)) {
                break;
            }
            steps.step(me, n, energy, work, from, to);
            n++;
        }
        steps.answer(me, n, from, to);
        pause(me, shared);
    }

    private InnerSteps inner(int k, int me, boolean shared) {
        if (me == 0 && inner[k] == null) {
            inner[k] = new InnerSteps(levels.get(k), Effort.most(k, k == alone), team.count());
        }
        pause(me, shared);
        return inner[k];
    }

    private double sum(int me, boolean shared, double part) {
        return shared ? sums.total(me, part) : part;
    }
}
