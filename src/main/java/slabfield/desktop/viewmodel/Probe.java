package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Geometry;
import slabfield.field.Result;
import slabfield.model.Opening;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Shapes;
import slabfield.model.Zone;

/**
 * What is at a place on the plan.
 *
 * @param at the place
 * @param pressure with the suction on; empty where there is none [Pa]
 * @param what lies there, the most particular first
 */
public record Probe(Point at, OptionalDouble pressure, List<String> what) {
    /**
     * Looks at a place.
     *
     * @param result what the map shows
     * @param near how far from its middle or line a thing still counts as pointed at [m]
     */
    public static Probe at(Result result, Point at, double near) {
        Scenario scenario = result.scenario();
        boolean under = Shapes.union(scenario.slabs()).intersects(Shapes.point(at));
        boolean blocked = Shapes.airtight(scenario.barriers()).intersects(Shapes.point(at));
        OptionalDouble pressure = result instanceof Result.Solved solved && under && !blocked
                ? pressure(solved, at)
                : OptionalDouble.empty();
        List<String> what = things(scenario, at, near);
        if (!under) what.add("outside the slab");
        else if (!blocked) what.add(fill(scenario, at));
        return new Probe(at, pressure, List.copyOf(what));
    }

    /** In a pit its own pressure, since a pit can be smaller than a cell; else that of the field. */
    private static OptionalDouble pressure(Result.Solved solved, Point at) {
        return solved.scenario().suctionPoints().stream()
                .filter(s ->
                        s.tile().isEmpty() && s.at().distanceTo(at) <= s.pit().radius())
                .findFirst()
                .flatMap(s -> solved.suction(s.id()))
                .map(s -> OptionalDouble.of(s.pressure()))
                .orElseGet(() -> solved.field().at(at.x(), at.y()));
    }

    private static List<String> things(Scenario scenario, Point at, double near) {
        List<String> what = new ArrayList<>();
        scenario.suctionPoints().stream()
                .filter(s -> s.at().distanceTo(at)
                        <= Math.max(near, s.tile().isEmpty() ? s.pit().radius() : 0))
                .forEach(s -> what.add("suction point " + s.id()));
        scenario.testHoles().stream()
                .filter(h -> h.at().distanceTo(at) <= near)
                .forEach(h -> what.add("test hole " + h.id() + (h.found().isEmpty() ? "" : " (" + h.found() + ")")));
        scenario.openings().stream()
                .filter(o -> holds(scenario, o, at, near))
                .forEach(o -> what.add(o.id() + " (" + o.seal().state().word() + ")"));
        scenario.barriers().stream()
                .filter(b -> Shapes.strip(b).isWithinDistance(Shapes.point(at), near / 4))
                .forEach(b -> what.add(b.id() + (b.known() ? "" : " (suspected)")));
        scenario.drainTiles().stream()
                .filter(t -> along(t.path(), at, near))
                .forEach(t -> what.add("drain tile " + t.id()));
        scenario.blockWalls().stream()
                .filter(w -> along(w.path(), at, near))
                .forEach(w -> what.add(
                        "block wall " + w.id() + " (tops " + w.tops().state().word() + ")"));
        return what;
    }

    private static boolean holds(Scenario scenario, Opening opening, Point at, double near) {
        if (opening.place() instanceof Opening.Spot spot)
            return spot.at().distanceTo(at) <= Math.max(near, spot.radius());
        if (opening.place() instanceof Opening.Along line) return along(line.path(), at, near);
        Opening.Perimeter around = (Opening.Perimeter) opening.place();
        return scenario.slabs().stream()
                .filter(s -> s.id().equals(around.slab()))
                .map(s -> Shapes.area(s.outline()).getBoundary())
                .anyMatch(edge -> edge.isWithinDistance(Shapes.point(at), near));
    }

    private static boolean along(Path path, Point at, double near) {
        return Shapes.line(path).isWithinDistance(Shapes.point(at), near);
    }

    private static String fill(Scenario scenario, Point at) {
        Geometry place = Shapes.point(at);
        Optional<Zone> zone = scenario.layer().zones().stream()
                .filter(z -> Shapes.area(z.outline()).intersects(place))
                .reduce((earlier, later) -> later);
        String words =
                zone.map(Zone::fill).orElse(scenario.layer().fill()).word().words();
        String fill = words.equals("given by numbers") ? "fill given by numbers" : words;
        return zone.map(z -> fill + " in zone " + z.id()).orElse(fill);
    }
}
