package slabfield.solve;

import java.util.ArrayList;
import java.util.List;

/** The levels below a {@link RedBlackGrid} and one V-cycle through them, worked by a team. */
final class Hierarchy {
    /** A level with at most this many points is solved exactly. */
    private static final int EXACT = 81;
    /** A level with fewer points than this is not worth sharing. */
    private static final int SHARED = 6000;

    private final Workers team;
    private final List<CoarseGrid> levels = new ArrayList<>();
    /** Where each worker's share of the next level's padded rows begins, by level; level 0 is the red-black grid. */
    private final List<int[]> shares = new ArrayList<>();

    private DenseCholesky exact;

    /** @param rowCells number of active cells in each row of the red-black grid */
    Hierarchy(int columns, int rows, int[] rowCells, Workers team) {
        this.team = team;
        int w = columns;
        int h = rows;
        int[] cells = rowCells;
        do {
            int[] paired = new int[(h + 1) / 2];
            for (int j = 0; j < h; j++) {
                paired[j / 2] += cells[j];
            }
            shares.add(share(paired, team.count()));
            w = (w + 1) / 2;
            h = (h + 1) / 2;
            levels.add(new CoarseGrid(w, h));
            cells = paired;
        } while (w * h > EXACT);
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

    /** Builds all levels; every worker of the team calls this, with a view of the red-black grid of its own. */
    void build(int me, NinePoint.Source fine, NinePoint[] operators, Galerkin.Middle middle) {
        NinePoint.Source source = fine;
        for (int k = 0; k < levels.size(); k++) {
            NinePoint coarse = operators[k];
            CoarseGrid above = k == 0 ? null : levels.get(k - 1);
            int from = begin(k, me);
            int to = begin(k, me + 1);
            new Galerkin(source, k > 0, coarse).build(from, to, above, k == 0 ? middle : null);
            coarse.round(levels.get(k), from, to);
            source = coarse.source();
            team.await(me);
        }
        if (me == 0) {
            exact = new DenseCholesky(operators[levels.size() - 1], levels.get(levels.size() - 1));
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
    void cycle(int me) {
        cycle(0, me);
    }

    private void cycle(int k, int me) {
        CoarseGrid level = levels.get(k);
        team.await(me);
        if (level.columns * level.rows < SHARED) {
            if (me == 0) {
                alone(k);
            }
            team.await(me);
            return;
        }
        int from = beginFine(k + 1, me, level.rows);
        int to = beginFine(k + 1, me + 1, level.rows);
        CoarseGrid next = levels.get(k + 1);
        level.smoothEvenFromZero(from, to);
        team.await(me);
        level.smoothOddFromZero(from, to);
        team.await(me);
        level.restrict(next.b, begin(k + 1, me), begin(k + 1, me + 1));
        cycle(k + 1, me);
        level.correct(next.x, from, to);
        team.await(me);
        level.smoothOdd(from, to);
        team.await(me);
        level.smoothEven(from, to);
        team.await(me);
    }

    private void alone(int k) {
        CoarseGrid level = levels.get(k);
        if (k + 1 == levels.size()) {
            exact.solve();
            return;
        }
        CoarseGrid next = levels.get(k + 1);
        int end = level.rows + 1;
        level.smoothEvenFromZero(1, end);
        level.smoothOddFromZero(1, end);
        level.restrict(next.b, 1, next.rows + 1);
        alone(k + 1);
        level.correct(next.x, 1, end);
        level.smoothOdd(1, end);
        level.smoothEven(1, end);
    }
}
