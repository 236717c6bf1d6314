package slabfield.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
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
import slabfield.network.Responses;
import slabfield.network.SlabSolver;
import slabfield.network.SolveSession;

/**
 * Tries measures one by one, each by solving the house with it, and ranks them by what they gain at the weakest place,
 * then by the area that meets the target, then by the exhaust flow that they save.
 *
 * <p>Places for another suction point are first judged by the house's linear response on a coarse grid ({@link Responses});
 * the best are then solved in full on the scenario's own grid. What draws there is what draws at the scenario's first
 * suction point.
 */
public final class Advisor {
    /** Distance between places tried for a suction point [m]. */
    public static final double SPACING = 0.75;

    /** No place is tried closer to the slab's edge or a barrier, where coring meets the footing; common practice [m]. */
    public static final double FROM_EDGE = 0.5;

    /** No place is tried closer to an opening or another suction point, where it would short-circuit [m]. */
    public static final double FROM_OPENING = 1;

    /** Places kept for a full solve are at least this far apart, so that they are choices [m]. */
    private static final double APART = 2;

    private static final double COARSE = 0.2;
    private static final int KEPT = 4;
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
        List<Measure> measures = new ArrayList<>(seals);
        measures.addAll(bestPlaces(scenario, places, progress, done, total));
        List<Suggestion> out = new ArrayList<>(tryAll(base, scenario, measures, progress, done, total));
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

    /** The places that promise most by the house's linear response on a coarse grid. */
    private static List<Measure> bestPlaces(
            Scenario scenario, List<Point> places, Progress progress, AtomicInteger done, int total) {
        if (places.isEmpty()) return List.of();
        Scenario coarse = scenario.withCellSize(Math.max(COARSE, scenario.cellSize()));
        Optional<Responses> house = Responses.of(coarse, Progress.NONE);
        if (house.isEmpty()) return List.of();
        Source source = scenario.suctionPoints().get(0).source();
        record Place(Point at, double weakest) {}
        List<Place> tried = new ArrayList<>();
        for (Point p : places) {
            if (progress.isCancelled()) break;
            outlook(house.get(), p, source).ifPresent(o -> tried.add(new Place(p, o.weakest())));
            progress.step(done.incrementAndGet(), total, Double.NaN);
        }
        tried.sort(Comparator.comparingDouble(p -> -p.weakest()));
        List<Point> kept = new ArrayList<>();
        for (Place p : tried)
            if (kept.size() < KEPT && kept.stream().allMatch(k -> k.distanceTo(p.at()) >= APART)) kept.add(p.at());
        String id = freeId(scenario);
        return kept.stream()
                .map(p -> (Measure) new Measure.AddSuction(id, p, new SuctionPoint.Pit(PIT), source))
                .toList();
    }

    /** A flow as it is; else the pressure that the first suction point has now is held. */
    private static Optional<Responses.Outlook> outlook(Responses house, Point at, Source source) {
        if (source instanceof Source.Flow f) return house.drawing(at, f.flow());
        if (source instanceof Source.Pressure p) return house.holding(at, PIT, p.pressure());
        OptionalDouble now = house.pitPressure(0);
        return now.isEmpty() ? Optional.empty() : house.holding(at, PIT, now.getAsDouble());
    }

    private static List<Suggestion> tryAll(
            Result.Solved base, Scenario scenario, List<Measure> measures, Progress progress, AtomicInteger done, int total) {
        int workers = Math.max(1, Math.min(measures.size(), Runtime.getRuntime().availableProcessors()));
        return IntStream.range(0, workers)
                .parallel()
                .mapToObj(w -> {
                    SolveSession session = new SolveSession();
                    List<Suggestion> out = new ArrayList<>();
                    for (int k = w; k < measures.size() && !progress.isCancelled(); k += workers) {
                        Measure m = measures.get(k);
                        Result r = session.solve(m.apply(scenario), SlabSolver.Extent.FAN_ON_ONLY, cancelling(progress));
                        progress.step(done.incrementAndGet(), total, Double.NaN);
                        if (r instanceof Result.Solved a)
                            out.add(new Suggestion(m, base.coverage(), a.coverage(), base.flows(), a.flows()));
                    }
                    return out;
                })
                .flatMap(List::stream)
                .toList();
    }

    /** Passes on a wish to stop, but no steps. */
    private static Progress cancelling(Progress progress) {
        return new Progress() {
            @Override
            public boolean isCancelled() {
                return progress.isCancelled();
            }
        };
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
