package slabfield.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import slabfield.field.Result;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Shapes;
import slabfield.model.Slab;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;
import slabfield.network.PlacementMap;

/**
 * The places that promise most for another suction point, or for one that is drawn to be moved to, by the placement map on
 * coarse cells. Where the map cannot be drawn, as for a house without a solution on these cells, no place is proposed.
 */
final class SuctionPlaces {
    /** Distance between places tried [m]. */
    private static final double SPACING = 0.5;

    /** Places kept for a full solve are at least this far apart, so that they are choices [m]. */
    private static final double APART = 2;

    private static final double COARSE = 0.2;
    /** Cells of the map, about, on a slab that is large. */
    private static final double MOST_CELLS = 8000;

    private static final SuctionPoint.Pit PIT = new SuctionPoint.Pit(0.15);

    private final Scenario scenario;
    private final Result.Solved solved;
    private final Trials trials;

    /** For a house with its solved field. */
    SuctionPlaces(Result.Solved solved, Trials trials) {
        this.scenario = solved.scenario();
        this.solved = solved;
        this.trials = trials;
    }

    /** Further points, drawn by what draws at the first one; best first. */
    List<Measure> further(int kept) {
        if (scenario.suctionPoints().isEmpty()) return List.of();
        SuctionPoint first = scenario.suctionPoints().get(0);
        String id = freeId(scenario);
        return best(scenario, first, PIT, kept).stream()
                .map(p -> (Measure) new Measure.AddSuction(id, p, PIT, first.source()))
                .toList();
    }

    /** Other places for the points that are drawn; best first for each. */
    List<Measure> elsewhere(int keptOfEach) {
        List<Measure> out = new ArrayList<>();
        for (SuctionPoint point : scenario.suctionPoints()) {
            Scenario without = scenario.withSuctionPoints(scenario.suctionPoints().stream()
                    .filter(s -> !s.equals(point))
                    .toList());
            for (Point p : best(without, point, point.pit(), keptOfEach))
                if (p.distanceTo(point.at()) >= APART) out.add(new Measure.MoveSuction(point.id(), p));
        }
        return out;
    }

    private List<Point> best(Scenario base, SuctionPoint like, SuctionPoint.Pit pit, int kept) {
        if (trials.isCancelled()) return List.of();
        PlacementMap.Question question = new PlacementMap.Question(pit, source(like), SPACING);
        Optional<PlacementMap> found = PlacementMap.of(base.withCellSize(cell()), question, trials.stopOnly());
        trials.step();
        if (found.isEmpty()) return List.of();
        PlacementMap map = found.get();
        DrillPlaces allowed = DrillPlaces.forCores(base);
        List<Integer> order = IntStream.range(0, map.weakest().length)
                .filter(c -> !Double.isNaN(map.weakest()[c]))
                .boxed()
                .sorted(Comparator.comparingDouble(c -> -map.weakest()[c]))
                .toList();
        List<Point> out = new ArrayList<>();
        for (int c : order) {
            Point p = map.at(c);
            if (out.size() == kept) break;
            if (out.stream().allMatch(k -> k.distanceTo(p) >= APART) && allowed.allows(p)) out.add(p);
        }
        return out;
    }

    /** A branch is tried with the pressure that it has now. */
    private Source source(SuctionPoint like) {
        return like.source() instanceof Source.Branch
                ? new Source.Pressure(solved.suction(like.id()).orElseThrow().pressure())
                : like.source();
    }

    private double cell() {
        double area = 0;
        for (Slab s : scenario.slabs()) area += Shapes.area(s).getArea();
        return Math.max(Math.max(COARSE, scenario.cellSize()), Math.sqrt(area / MOST_CELLS));
    }

    private static String freeId(Scenario scenario) {
        for (int k = scenario.suctionPoints().size() + 1; ; k++) {
            String id = String.format(Locale.ROOT, "S%d", k);
            if (scenario.suctionPoint(id).isEmpty()) return id;
        }
    }
}
