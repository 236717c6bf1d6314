package slabfield.benchmark;

import java.util.Arrays;
import java.util.Locale;
import java.util.function.IntConsumer;
import java.util.function.IntFunction;
import slabfield.field.Progress;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;
import slabfield.network.PlacementMap;
import slabfield.network.SlabSolver;
import slabfield.network.SolveSession;

/** Times what follows a pointer: kernels on a square grid, and the whole house with everything. */
final class DragBenchmark {
    /** Solves of each kind in a whole house. */
    static final int MOVES = 20;
    /** Cells under the pit of the kernels. */
    static final int PIT = 9;

    /** Difference of two ways to one answer, over the pit's pressure, that their tolerances leave. */
    private static final double SAME = 1e-5;

    private DragBenchmark() {}

    /** A row of a table: moved from kept responses, with fetching, warm with nothing kept, strength alone, one solve, new factor [ms], error. */
    static String row(int side, int repetitions) {
        DragKernel kernel = new DragKernel(side);
        int many = 10 * repetitions, from = side / 4;
        kernel.moveTo(from);
        double fetch = best(side / 2, k -> kernel.moveTo(from + 1 + k));
        double move = best(many, k -> kernel.moveTo(from + k % 2));
        kernel.keepUnit(from);
        double strength = best(many, k -> kernel.strengthen(1)), solve = best(many, k -> kernel.solveOnce());
        double factor = best(repetitions, k -> kernel.refactor());
        double warm = warm(side, from, many, kernel);
        return String.format(
                Locale.ROOT,
                "| %d | %.3f | %.2f | %.2f | %.4f | %.2f | %.1f | %.0e |",
                side,
                move,
                fetch,
                warm,
                strength,
                solve,
                factor,
                kernel.error(from + 1));
    }

    /** Time of a move by a cell from the last field, without a factor [ms]; its answer is held against the kept responses'. */
    private static double warm(int side, int from, int times, DragKernel kernel) {
        try (DragWarm grid = new DragWarm(side)) {
            double time = best(10 * times, k -> grid.moveTo(from + k % 2));
            double[] exact = kernel.moveTo(from), found = grid.moveTo(from);
            for (int c = 0; c < exact.length; c++)
                if (!(Math.abs(found[c] - exact[c]) <= SAME * -DragKernel.HELD) && !kernel.isUnder(c, from))
                    throw new IllegalStateException("cell " + c + ": " + found[c] + " against " + exact[c]);
            return time;
        }
    }

    private static double best(int times, IntConsumer run) {
        double best = Double.POSITIVE_INFINITY;
        for (int k = 0; k < times; k++) {
            long start = System.nanoTime();
            run.accept(k);
            best = Math.min(best, (System.nanoTime() - start) * 1e-6);
        }
        return best;
    }

    /** A row of a table: cells, and median and best after a move by a cell, by part of one, and with another fan. */
    static String houseRow(double cell, int repetitions) {
        Scenario house = WholeHouse.withCells(cell);
        SuctionPoint point = house.suctionPoints().get(0);
        Source.Fan fan = (Source.Fan) point.source();
        IntFunction<Scenario> byCell = k -> moved(house, point, cell * (k % MOVES)),
                byThird = k -> moved(house, point, cell / 3 * (k % MOVES));
        IntFunction<Scenario> byFan =
                k -> house.withSuctionPoint(point.id(), s -> s.drawnBy(stronger(fan, 1 + 0.02 * (k % 5))));
        SolveSession session = new SolveSession();
        for (int k = 0; k < 5 * repetitions; k++) solve(session, byThird.apply(k));
        String times = times(session, byCell) + times(session, byThird) + times(session, byFan);
        return String.format(Locale.ROOT, "| %.0f |%s", 150 / (cell * cell), times);
    }

    private static String times(SolveSession session, IntFunction<Scenario> houses) {
        double[] times = new double[MOVES];
        solve(session, houses.apply(0));
        for (int k = 0; k < MOVES; k++) {
            Scenario next = houses.apply(k + 1);
            long start = System.nanoTime();
            solve(session, next);
            times[k] = (System.nanoTime() - start) * 1e-6;
        }
        Arrays.sort(times);
        return String.format(Locale.ROOT, " %.0f, %.0f |", times[MOVES / 2], times[0]);
    }

    private static void solve(SolveSession session, Scenario house) {
        if (!session.solve(house, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE)
                .convergence()
                .converged()) throw new IllegalStateException("the house of the benchmark has an answer");
    }

    private static Scenario moved(Scenario house, SuctionPoint point, double by) {
        return house.withSuctionPoint(
                point.id(),
                s -> s.movedTo(new Point(point.at().x() + by, point.at().y())));
    }

    private static Source stronger(Source.Fan fan, double times) {
        return new Source.Fan(
                new Source.FanCurve(
                        fan.curve().flows(),
                        fan.curve().rises().stream().map(r -> times * r).toList()),
                fan.run(),
                fan.discharge());
    }

    /** Solves one after the other in a session, the pit a cell further each time. */
    static void drag(int times) {
        Scenario house = WholeHouse.withCells(0.1);
        SuctionPoint point = house.suctionPoints().get(0);
        SolveSession session = new SolveSession();
        for (int k = 0; k < times; k++) solve(session, moved(house, point, 0.1 * (k % MOVES)));
    }

    /** Solves from nothing. */
    static void cold(int times) {
        for (int k = 0; k < times; k++) solve(new SolveSession(), WholeHouse.withCells(0.1));
    }

    /** Placement maps. */
    static void maps(int times) {
        var question = new PlacementMap.Question(
                new SuctionPoint.Pit(0.15), new Source.Pressure(-200), PlacementMap.USUAL_SPACING);
        for (int k = 0; k < times; k++)
            PlacementMap.of(WholeHouse.withCells(0.1), question, Progress.NONE).orElseThrow();
    }
}
