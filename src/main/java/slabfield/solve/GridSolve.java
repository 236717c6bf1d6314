package slabfield.solve;

import slabfield.solve.IterationResult.Ending;

/** One solve of a {@link GridMultigrid}; every worker runs {@link #work} in step and takes the same decisions from the same sums. */
final class GridSolve {
    /** A plain step that leaves more than this of the residual calls for a thorough cycle. */
    private static final double SLOW = 0.4;
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

    /** How some iterations went: to the end wanted; slowly; or off it. */
    private enum Outcome {
        DONE,
        SLOW,
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
        /** Of the direction at hand: residual' M residual, or 0 before the first; and the length of the last step. */
        private double rz;

        private double length;
        /** Residual by the running sums. */
        private double running = Double.POSITIVE_INFINITY;
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
                    rz = 0;
                    end = end == Ending.STALLED ? null : end;
                }
                if (end != null) {
                    finish(end, now);
                    return;
                }
                last = now;
                if (grid.rooms != null) {
                    now = level();
                }
                carriedOn = rz != 0;
                Outcome outcome = iterate(now);
                // So tight a grid may be slow for want of digits, and a thorough cycle, whose products are single, does
                // not help then.
                boolean blurred = outcome == Outcome.SLOW && grid.exact == null && renew > RENEW;
                if (outcome == Outcome.ASTRAY || blurred) {
                    grid.sharpen(me);
                    rows = grid.exact[me];
                } else if (outcome == Outcome.SLOW) {
                    grid.strengthen(me);
                }
                if (outcome != Outcome.DONE) {
                    last = Double.POSITIVE_INFINITY;
                    rz = 0;
                }
            }
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

        /** Brings every closed room to its right level; returns the residual then. */
        private double level() {
            grid.rooms.gather(me, grid.residual, from, to);
            grid.team.await(me);
            grid.rooms.solve(me);
            grid.rooms.raise(me, 1 / scale, grid.x, from, to);
            grid.team.await(me);
            return residual();
        }

        /** Conjugate gradients until the residual has to be worked out anew; returns how that went. */
        private Outcome iterate(double start) {
            double wanted = Math.max(0.99 * tolerance * norm, (grid.exact == null ? renew : 0) * start);
            double before = start;
            boolean first = true;
            while (true) {
                direct();
                grid.team.await(me);
                double pap = total(rows.multiply(from, to));
                done++;
                if (!(pap > 0)) {
                    rz = 0;
                    return Outcome.DONE;
                }
                length = rz / pap;
                double left = total(rows.step(length, 1 / scale, grid.x, grid.residual, from, to));
                double now = Math.sqrt(left) / scale;
                running = now;
                if (me == 0) {
                    goOn = watch.step(done, now / norm);
                }
                grid.team.await(me);
                if (now < SPENT * before) {
                    rz = 0;
                }
                if (now <= wanted || done >= limit || !goOn) {
                    return Outcome.DONE;
                }
                if (grid.exact == null && done > 1 && now > before) {
                    return Outcome.ASTRAY;
                }
                if (grid.effort == Effort.PLAIN && !first && now > SLOW * before) {
                    return Outcome.SLOW;
                }
                before = now;
                first = false;
            }
        }

        /** Next direction: the preconditioned residual, made conjugate to the direction before and to the rooms' levels. */
        private void direct() {
            grid.cycle(me, grid.effort, rz == 0 ? null : grid.ap);
            CycleRows cycle = grid.cycles[me];
            double next = total(cycle.work());
            double factor = rz == 0 ? 0 : -length * total(rows.along(cycle, grid.correction, from, to)) / rz;
            rows.direction(grid.correction, factor, from, to);
            rz = next;
            if (grid.rooms != null) {
                grid.rooms.gatherConjugate(me, grid.correction, from, to);
                grid.team.await(me);
                grid.rooms.solve(me);
                rows.clear(grid.rooms, me, from, to);
            }
        }
    }
}
