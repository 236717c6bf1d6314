package slabfield.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.locationtech.jts.geom.Geometry;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Barrier;
import slabfield.model.BlockWall;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.SealState;
import slabfield.model.Shapes;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;
import slabfield.network.SlabSolver;

/**
 * Tries measures one by one, each by solving the house with it, and ranks them by what they gain at the weakest place,
 * then by the area that meets the target, then by the exhaust flow that they save.
 *
 * <p>Places for another suction point are first tried on a coarse net and a coarse grid; the best are then solved on the
 * scenario's own grid. What draws there is what draws at the scenario's first suction point.
 */
public final class Advisor {
    /** Distance between places tried for a suction point [m]. */
    public static final double SPACING = 1.5;

    /** No place is tried closer to the slab's edge or a barrier, where coring meets the footing; common practice [m]. */
    public static final double FROM_EDGE = 0.5;

    /** No place is tried closer to an opening or another suction point, where it would short-circuit [m]. */
    public static final double FROM_OPENING = 1;

    private static final double COARSE = 0.2;
    private static final int KEPT = 3;
    private static final double PIT = 0.15;

    private Advisor() {}

    /**
     * All measures, best first.
     *
     * @param scenario as drawn
     * @param progress asked once per solve; a cancelled search gives what it has
     * @throws IllegalStateException where the scenario itself has no solution
     */
    public static List<Suggestion> suggest(Scenario scenario, Progress progress) {
        Result.Solved base = solved(scenario)
                .orElseThrow(() -> new IllegalStateException("the scenario as drawn has no solution to improve on"));
        List<Measure> seals = seals(scenario);
        List<Point> places = places(scenario);
        int total = seals.size() + places.size() + KEPT;
        AtomicInteger done = new AtomicInteger();
        List<Suggestion> out = new ArrayList<>(tryAll(base, scenario, seals, progress, done, total));
        out.addAll(tryAll(base, scenario, bestPlaces(scenario, places, progress, done, total), progress, done, total));
        out.sort(Comparator.comparingDouble((Suggestion s) -> -Math.rint(s.gain() * 1000))
                .thenComparingDouble(s -> -s.after().meeting())
                .thenComparingDouble(s -> s.flowsAfter().exhaust())
                .thenComparing(s -> s.measure().words()));
        return out;
    }

    private static List<Measure> seals(Scenario scenario) {
        List<Measure> out = new ArrayList<>();
        for (Opening o : scenario.openings()) if (Measure.worthSealing(o)) out.add(new Measure.SealOpening(o.id()));
        for (BlockWall w : scenario.blockWalls())
            if (w.topArea() > 0 && w.tops().fraction() < SealState.SEALED.assumedFraction())
                out.add(new Measure.SealTops(w.id()));
        if (out.size() > 1) out.add(new Measure.SealAll());
        return out;
    }

    private static List<Measure> bestPlaces(
            Scenario scenario, List<Point> places, Progress progress, AtomicInteger done, int total) {
        if (places.isEmpty()) return List.of();
        Scenario coarse = scenario.withCellSize(Math.max(COARSE, scenario.cellSize()));
        Optional<Result.Solved> base = solved(coarse);
        if (base.isEmpty()) return List.of();
        Source source = scenario.suctionPoints().get(0).source();
        String id = freeId(scenario);
        List<Measure> candidates = places.stream()
                .map(p -> (Measure) new Measure.AddSuction(id, p, new SuctionPoint.Pit(PIT), source))
                .toList();
        return tryAll(base.get(), coarse, candidates, progress, done, total).stream()
                .sorted(Comparator.comparingDouble((Suggestion s) -> -s.gain())
                        .thenComparingDouble(s -> -s.after().meeting()))
                .limit(KEPT)
                .map(Suggestion::measure)
                .toList();
    }

    private static List<Suggestion> tryAll(
            Result.Solved base, Scenario scenario, List<Measure> measures, Progress progress, AtomicInteger done, int total) {
        return measures.parallelStream()
                .flatMap(m -> {
                    if (progress.isCancelled()) return java.util.stream.Stream.empty();
                    Optional<Result.Solved> after = solved(m.apply(scenario));
                    progress.step(done.incrementAndGet(), total, Double.NaN);
                    return after.map(a -> new Suggestion(m, base.coverage(), a.coverage(), base.flows(), a.flows()))
                            .stream();
                })
                .toList();
    }

    private static Optional<Result.Solved> solved(Scenario scenario) {
        Result r = SlabSolver.solve(scenario, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
        return r instanceof Result.Solved s ? Optional.of(s) : Optional.empty();
    }

    private static String freeId(Scenario scenario) {
        for (int k = scenario.suctionPoints().size() + 1; ; k++) {
            String id = String.format(Locale.ROOT, "S%d", k);
            if (scenario.suctionPoint(id).isEmpty()) return id;
        }
    }

    /** Places for a suction point on a square net, away from edges, barriers, openings and other points. */
    static List<Point> places(Scenario scenario) {
        if (scenario.suctionPoints().isEmpty()) return List.of();
        Geometry free = Shapes.union(scenario.slabs());
        for (Barrier b : scenario.barriers()) free = free.difference(Shapes.strip(b));
        free = free.buffer(-FROM_EDGE);
        for (Opening o : scenario.openings())
            if (o.place() instanceof Opening.Spot spot && Measure.worthSealing(o))
                free = free.difference(Shapes.disc(spot.at(), FROM_OPENING));
        for (SuctionPoint s : scenario.suctionPoints()) free = free.difference(Shapes.disc(s.at(), FROM_OPENING));
        var box = free.getEnvelopeInternal();
        List<Point> out = new ArrayList<>();
        if (free.isEmpty()) return out;
        int nx = (int) Math.ceil(box.getWidth() / SPACING), ny = (int) Math.ceil(box.getHeight() / SPACING);
        for (int j = 0; j <= ny; j++)
            for (int i = 0; i <= nx; i++) {
                Point p = new Point(
                        box.getMinX() + (nx == 0 ? 0 : i * box.getWidth() / nx),
                        box.getMinY() + (ny == 0 ? 0 : j * box.getHeight() / ny));
                if (free.distance(Shapes.point(p)) < 1e-9) out.add(p);
            }
        return out;
    }
}
