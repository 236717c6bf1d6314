package slabfield.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;
import slabfield.network.Responses;

/**
 * The places that promise most for another suction point, or for one that is drawn to be moved to, judged by the house's
 * linear response on a coarse grid.
 */
final class SuctionPlaces {
    /** Distance between places tried [m]. */
    private static final double SPACING = 0.75;

    /** Places kept for a full solve are at least this far apart, so that they are choices [m]. */
    private static final double APART = 2;

    private static final double COARSE = 0.2;
    private static final double PIT = 0.15;

    private SuctionPlaces() {}

    /** Further points, drawn by what draws at the first one; best first. */
    static List<Measure> further(Scenario scenario, int kept, Trials trials) {
        if (scenario.suctionPoints().isEmpty()) return List.of();
        Source source = scenario.suctionPoints().get(0).source();
        String id = freeId(scenario);
        return best(scenario, scenario, source, 0, kept, trials).stream()
                .map(p -> (Measure) new Measure.AddSuction(id, p, new SuctionPoint.Pit(PIT), source))
                .toList();
    }

    /** Other places for the points that are drawn; best first for each. */
    static List<Measure> elsewhere(Scenario scenario, int keptOfEach, Trials trials) {
        List<Measure> out = new ArrayList<>();
        for (int k = 0; k < scenario.suctionPoints().size(); k++) {
            SuctionPoint point = scenario.suctionPoints().get(k);
            Scenario without = scenario.withSuctionPoints(
                    scenario.suctionPoints().stream().filter(s -> !s.equals(point)).toList());
            for (Point p : best(scenario, without, point.source(), k, keptOfEach, trials))
                if (p.distanceTo(point.at()) >= APART) out.add(new Measure.MoveSuction(point.id(), p));
        }
        return out;
    }

    private static List<Point> best(
            Scenario drawn, Scenario base, Source source, int like, int kept, Trials trials) {
        List<Point> places = DrillPlaces.forCores(base).net(SPACING);
        double cell = Math.max(COARSE, drawn.cellSize());
        if (places.isEmpty()) return List.of();
        Optional<Responses> asDrawn = Responses.of(drawn.withCellSize(cell), trials.stopOnly());
        Optional<Responses> house = base == drawn ? asDrawn : Responses.of(base.withCellSize(cell), trials.stopOnly());
        if (asDrawn.isEmpty() || house.isEmpty()) return List.of();
        OptionalDouble pit = asDrawn.get().pitPressure(like);
        record Place(Point at, double weakest) {}
        List<Place> tried = new ArrayList<>();
        for (Point p : places) {
            if (trials.isCancelled()) break;
            outlook(house.get(), p, source, pit).ifPresent(o -> tried.add(new Place(p, o.weakest())));
            trials.step();
        }
        tried.sort(Comparator.comparingDouble(p -> -p.weakest()));
        List<Point> out = new ArrayList<>();
        for (Place p : tried)
            if (out.size() < kept && out.stream().allMatch(k -> k.distanceTo(p.at()) >= APART)) out.add(p.at());
        return out;
    }

    /** A flow as it is; else the pressure that the like point has now is held. */
    private static Optional<Responses.Outlook> outlook(Responses house, Point at, Source source, OptionalDouble pit) {
        if (source instanceof Source.Flow f) return house.drawing(at, f.flow());
        if (source instanceof Source.Pressure p) return house.holding(at, PIT, p.pressure());
        return pit.isEmpty() ? Optional.empty() : house.holding(at, PIT, pit.getAsDouble());
    }

    private static String freeId(Scenario scenario) {
        for (int k = scenario.suctionPoints().size() + 1; ; k++) {
            String id = String.format(Locale.ROOT, "S%d", k);
            if (scenario.suctionPoint(id).isEmpty()) return id;
        }
    }
}
