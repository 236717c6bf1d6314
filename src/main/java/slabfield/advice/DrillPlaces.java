package slabfield.advice;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import slabfield.model.Barrier;
import slabfield.model.Opening;
import slabfield.model.Plan;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Shapes;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;

/** Where the slab may be cored or drilled: away from its edge, barriers, pits and openings, outside the areas kept from drilling. */
public final class DrillPlaces {
    /** Distance of a core from the slab's edge or a barrier, where it meets the footing; common practice [m]. */
    public static final double CORE_FROM_EDGE = 0.5;

    /** Distance of a core from an opening or another suction point, where it would short-circuit; common practice [m]. */
    public static final double CORE_FROM_OPENING = 1;

    /** Distance of a test hole from the slab's edge or a barrier; common practice [m]. */
    public static final double HOLE_FROM_EDGE = 0.3;

    /** Distance of a test hole from an opening, a pit or another hole, which it would only repeat; common practice [m]. */
    public static final double HOLE_FROM_OTHERS = 0.6;

    private static final double TOUCH = 1e-9;

    private final Scenario scenario;
    private final Geometry free;

    private DrillPlaces(Scenario scenario, Geometry free) {
        this.scenario = scenario;
        this.free = free;
    }

    /** For a suction point. */
    public static DrillPlaces forCores(Scenario scenario) {
        Geometry free = clearOfEdges(scenario, CORE_FROM_EDGE);
        return new DrillPlaces(scenario, clearOf(free, scenario, CORE_FROM_OPENING));
    }

    /** For a test hole. */
    public static DrillPlaces forHoles(Scenario scenario) {
        Geometry free = clearOf(clearOfEdges(scenario, HOLE_FROM_EDGE), scenario, HOLE_FROM_OTHERS);
        for (TestHole h : scenario.testHoles()) free = Shapes.without(free, Shapes.disc(h.at(), HOLE_FROM_OTHERS));
        return new DrillPlaces(scenario, free);
    }

    /** The whole slab, with no regard to what may be drilled. */
    public static DrillPlaces everywhere(Scenario scenario) {
        return new DrillPlaces(scenario.withPlan(Plan.EMPTY), Shapes.union(scenario.slabs()));
    }

    /** Barriers count with their gaps filled: where one has a gap it may still have a footing below. */
    private static Geometry clearOfEdges(Scenario scenario, double distance) {
        Geometry free = Shapes.union(scenario.slabs());
        for (Barrier b : scenario.barriers()) free = Shapes.without(free, Shapes.strip(b.withGaps(List.of())));
        return free.buffer(-distance);
    }

    private static Geometry clearOf(Geometry area, Scenario scenario, double distance) {
        Geometry free = area;
        for (Opening o : scenario.openings())
            if (o.place() instanceof Opening.Spot spot && Measure.worthSealing(o))
                free = Shapes.without(free, Shapes.disc(spot.at(), distance));
        for (SuctionPoint s : scenario.suctionPoints()) free = Shapes.without(free, Shapes.disc(s.at(), distance));
        return free;
    }

    /** True where a place may be drilled. */
    public boolean allows(Point place) {
        return !free.isEmpty()
                && free.distance(Shapes.point(place)) < TOUCH
                && scenario.plan().mayDrill(place);
    }

    /**
     * The allowed places of a net over the free area, row by row from the bottom.
     *
     * @param spacing largest distance between neighbours, above 0 [m]
     */
    public List<Point> net(double spacing) {
        List<Point> out = new ArrayList<>();
        if (free.isEmpty()) return out;
        Envelope box = free.getEnvelopeInternal();
        int nx = (int) Math.ceil(box.getWidth() / spacing), ny = (int) Math.ceil(box.getHeight() / spacing);
        for (int j = 0; j <= ny; j++)
            for (int i = 0; i <= nx; i++) {
                Point p = new Point(
                        box.getMinX() + (nx == 0 ? 0 : i * box.getWidth() / nx),
                        box.getMinY() + (ny == 0 ? 0 : j * box.getHeight() / ny));
                if (allows(p)) out.add(p);
            }
        return out;
    }
}
