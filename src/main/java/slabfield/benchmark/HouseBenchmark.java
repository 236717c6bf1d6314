package slabfield.benchmark;

import java.nio.file.Path;
import java.util.Locale;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.io.ScenarioProblems;
import slabfield.io.ScenarioReader;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;
import slabfield.network.PlacementMap;
import slabfield.network.SlabSolver;
import slabfield.network.SolveSession;

/** Times whole houses: from nothing, after a suction point has moved by a cell, and the placement map. */
final class HouseBenchmark {
    /** A house is solved for so long that what is solved often has been compiled [ns]. */
    private static final long AT_LEAST = 15_000_000_000L;

    private HouseBenchmark() {}

    /**
     * Best times of one house [s].
     *
     * @param cells of its grid
     * @param cold first solve, the laying of the grid included
     * @param steps of Newton's method in it
     * @param warm solve after the first suction point has moved by a cell
     * @param warmSteps steps in it
     * @param map placement map at 20 cm
     * @param places tried in it
     */
    record Measurement(
            String name, int cells, double cold, int steps, double warm, int warmSteps, double map, int places) {}

    static Measurement measure(Path file, int repetitions) throws ScenarioProblems {
        return measure(file.getFileName().toString().replace(".json", ""), ScenarioReader.read(file), repetitions);
    }

    static Measurement measure(String name, Scenario scenario, int repetitions) {
        SuctionPoint first = scenario.suctionPoints().get(0);
        var question = new PlacementMap.Question(
                new SuctionPoint.Pit(0.15), new Source.Pressure(-200), PlacementMap.USUAL_SPACING);
        double cold = Double.POSITIVE_INFINITY, warm = cold, map = cold;
        int steps = 0, warmSteps = 0, places = 0, cells = 0;
        long until = System.nanoTime() + AT_LEAST;
        for (int k = 0; k < repetitions || System.nanoTime() < until; k++) {
            SolveSession session = new SolveSession();
            long start = System.nanoTime();
            Result result = session.solve(scenario, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
            cold = Math.min(cold, (System.nanoTime() - start) * 1e-9);
            steps = result.convergence().iterations();
            Point to = new Point(
                    first.at().x() + scenario.cellSize() * (k % 2 == 0 ? 1 : -1),
                    first.at().y());
            Scenario moved = scenario.withSuctionPoint(first.id(), s -> s.movedTo(to));
            start = System.nanoTime();
            result = session.solve(moved, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
            warm = Math.min(warm, (System.nanoTime() - start) * 1e-9);
            warmSteps = result.convergence().iterations();
            if (result instanceof Result.Solved s) cells = s.field().grid().cells();
            start = System.nanoTime();
            PlacementMap found =
                    PlacementMap.of(scenario, question, Progress.NONE).orElseThrow();
            map = Math.min(map, (System.nanoTime() - start) * 1e-9);
            places = (int) java.util.Arrays.stream(found.weakest())
                    .filter(v -> !Double.isNaN(v))
                    .count();
        }
        return new Measurement(name, cells, cold, steps, warm, warmSteps, map, places);
    }

    static String row(Measurement m) {
        return String.format(
                Locale.ROOT,
                "| %s | %d | %.0f (%d) | %.0f (%d) | %d | %.0f |",
                m.name,
                m.cells,
                1e3 * m.cold,
                m.steps,
                1e3 * m.warm,
                m.warmSteps,
                m.places,
                1e3 * m.map);
    }
}
