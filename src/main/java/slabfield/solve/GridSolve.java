package slabfield.solve;

import java.util.Arrays;
import slabfield.solve.IterationResult.Ending;

/** One solve of a {@link GridMultigrid}; every worker runs {@link #work} in step and takes the same decisions from the same sums. */
final class GridSolve {
    /**
     * So many steps that leave more than {@link #BRISK} of the residual call for a plain cycle, more than {@link #SLOW} for a
     * thorough one.
     */
    private static final int LOOK_BACK = 4;

    private static final double BRISK = 0.01;
    private static final double SLOW = 0.06;
    /** Less than this many times what is wanted is not worth getting thorough for. */
    private static final double NEAR = 3;
    /** A residual so many times the least so far is one that single precision has led astray. */
    private static final double RISE = 8;
    /** The same where the residual is worked out anew at this fall or before. */
    private static final double RISE_TIGHT = 2;

    private static final double TIGHT = 1e-3;
    /**
     * The residual is worked out anew when it has fallen to this of what it was, or to this times the square root of how
     * far conductances outweigh leaks, if that is more: the less leaks, the more a small error in the residual weighs.
     */
    private static final double RENEW = 1e-4;

    private static final double RENEW_TIGHT = 6e-7;
    /** A step that leaves less than this has used up all directions, as on a few cells: the next starts afresh. */
    private static final double SPENT = 1e-3;

    private final GridMultigrid grid;
    private final double[] b;
    private final double[] answer;
    private final double tolerance;
    private final int limit;
    private final Watch watch;
    private final double renew;
    private volatile boolean goOn = true;
    private Ending ending;
    private int iterations;
    private double relative;

    GridSolve(GridMultigrid grid, double[] b, double[] answer, double tolerance, int limit, Watch watch) {
        this.grid = grid;
        this.b = b;
        this.answer = answer;
        this.tolerance = tolerance;
        this.limit = limit;
        this.watch = watch;
        renew = Math.min(0.1, Math.max(RENEW, RENEW_TIGHT * Math.sqrt(grid.tightness())));
    }

    IterationResult result() {
        return new IterationResult(ending, iterations, relative);
    }

    void work(int me) {
        new Share(me).solve();
    }

    /** How some iterations went: to the end wanted, or off it. */
    private enum Outcome {
        DONE,
        ASTRAY
    }

    /** One worker's rows. */
    private final class Share {
        private final int me;
        private final int from;
        private final int to;
        private final SystemRows system;
        private StepRows rows;
        /** |b|, and what the single-precision residual is the double one times. */
        private double norm;

        private double scale = 1;
        private int done;
        /** p' S p of the last direction, 0 where the next starts afresh. */
        private double energy;

        /** Residual by the running sums. */
        private double running = Double.POSITIVE_INFINITY;
        /** Residuals of the last steps. */
        private final double[] recent = new double[LOOK_BACK];
        /** Whether the answer at hand has been written out. */
        private boolean answered;

        Share(int me) {
            this.me = me;
            from = grid.from(me);
            to = grid.to(me);
            system = grid.systems[me];
            rows = grid.exact != null ? grid.exact[me] : grid.directions[me];
        }

        private double total(double part) {
            return grid.sums.total(me, part);
        }

        void solve() {
            for (int j = from; j < to; j++) {
                system.takeRed(j, answer, grid.x[j]);
            }
            norm = Math.sqrt(total(system.squared(b, grid.operator.active(), from, to)));
            scale = norm > 0 ? 1 / norm : 1;
            double last = Double.POSITIVE_INFINITY;
            boolean carriedOn = false;
            while (true) {
                double now = residual();
                Ending end = ConjugateGradients.ending(now, tolerance * norm, last, goOn, done >= limit);
                boolean spent = now > 2 * running || end == Ending.STALLED;
                if (spent && carriedOn) {
                    // The directions have run out, as on a grid of few cells: start again from this residual.
                    energy = 0;
                    end = end == Ending.STALLED ? null : end;
                }
                if (end == Ending.STALLED && grid.exact == null) {
                    sharpen();
                    last = Double.POSITIVE_INFINITY;
                    continue;
                }
                if (end != null) {
                    finish(end, now);
                    return;
                }
                last = now;
                carriedOn = energy != 0;
                Outcome outcome = iterate(now);
                if (outcome != Outcome.DONE) {
                    sharpen();
                    last = Double.POSITIVE_INFINITY;
                }
            }
        }

        private void sharpen() {
            grid.sharpen(me);
            rows = grid.exact[me];
            energy = 0;
        }

        private void finish(Ending end, double residual) {
            if (!answered) {
                system.answer(b, grid.x, answer, from, to);
            }
            if (me == 0) {
                ending = end;
                iterations = done;
                relative = norm > 0 ? residual / norm : residual;
            }
        }

        /** Takes the answer, too, where that looks like the last of it. */
        private double residual() {
            double[][] exact = grid.exact == null ? null : grid.exactResidual;
            answered = running <= tolerance * norm;
            double[] taking = answered ? answer : null;
            return Math.sqrt(total(system.residual(b, grid.x, scale, grid.residual, exact, taking, from, to)));
        }

        /** Conjugate gradients until the residual has to be worked out anew; returns how that went. */
        private Outcome iterate(double start) {
            double wanted = Math.max(0.99 * tolerance * norm, (grid.exact == null ? renew : 0) * start);
            double before = start;
            double least = start;
            Arrays.fill(recent, Double.POSITIVE_INFINITY);
            while (true) {
                direct();
                grid.team.await(me);
                energy = total(rows.multiply(from, to));
                done++;
                if (!(energy > 0)) {
                    energy = 0;
                    return Outcome.DONE;
                }
                double length = total(rows.slope(grid.cycles[me], from, to)) / energy;
                double left = total(rows.step(length, 1 / scale, grid.x, grid.residual, from, to));
                double now = Math.sqrt(left) / scale;
                running = now;
                if (me == 0) {
                    goOn = watch.step(done, now / norm);
                }
                grid.team.await(me);
                if (now < SPENT * before) {
                    energy = 0;
                }
                if (now <= wanted || done >= limit || !goOn) {
                    return Outcome.DONE;
                }
                if (grid.exact == null && done > 1 && now > (renew > TIGHT ? RISE_TIGHT : RISE) * least) {
                    return Outcome.ASTRAY;
                }
                double pace = now / recent[done % LOOK_BACK];
                recent[done % LOOK_BACK] = now;
                if (grid.effort == Effort.STEADY && pace > BRISK) {
                    grid.quicken(me);
                }
                if (grid.effort == Effort.PLAIN && pace > SLOW && now > NEAR * tolerance * norm) {
                    grid.strengthen(me);
                    if (grid.exact == null && renew > RENEW) {
                        // So tight a grid may be slow for want of digits, too.
                        return Outcome.ASTRAY;
                    }
                }
                before = now;
                least = Math.min(least, now);
            }
        }

        /** Next direction: the preconditioned residual, made conjugate to the direction before. */
        private void direct() {
            boolean carriesOn = energy != 0;
            grid.cycle(me, grid.effort, carriesOn ? grid.ap : null);
            double along = carriesOn ? total(rows.along(grid.cycles[me], grid.correction, from, to)) : 0;
            rows.direction(grid.correction, carriesOn ? -along / energy : 0, from, to);
        }
    }
}
