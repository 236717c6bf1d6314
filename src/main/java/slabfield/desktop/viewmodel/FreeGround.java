package slabfield.desktop.viewmodel;

import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.distance.DistanceOp;
import slabfield.model.DrainTile;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Shapes;
import slabfield.model.SuctionPoint;

/**
 * Where a suction point can stand: on its tile; else under a slab, off barriers, its pit clear of openings and of other
 * pits.
 */
final class FreeGround {
    /** Kept from every edge, so that a place on it is surely free [m]. */
    private static final double MARGIN = 0.01;
    /** Places are whole nanometres, as in a scenario file. */
    private static final double NANOMETRE = 1e9;

    private final Geometry ground;
    private final double step;

    /**
     * @param step distance between places, in free ground [m]
     */
    FreeGround(Scenario scenario, SuctionPoint point, double step) {
        this.step = step;
        this.ground = scenario.drainTiles().stream()
                .filter(t -> point.tile().equals(Optional.of(t.id())))
                .map(DrainTile::path)
                .<Geometry>map(Shapes::line)
                .findFirst()
                .orElseGet(() -> free(scenario, point));
    }

    private static Geometry free(Scenario scenario, SuctionPoint point) {
        double radius = point.pit().radius();
        Geometry free = Shapes.union(scenario.slabs())
                .difference(Shapes.airtight(scenario.barriers()))
                .buffer(-MARGIN);
        for (Opening o : scenario.openings())
            if (o.place() instanceof Opening.Spot spot)
                free = free.difference(Shapes.disc(spot.at(), 1.01 * (radius + spot.radius())));
        for (SuctionPoint other : scenario.suctionPoints())
            if (!other.id().equals(point.id()) && other.tile().isEmpty())
                free = free.difference(
                        Shapes.disc(other.at(), 1.01 * (radius + other.pit().radius())));
        return free;
    }

    /** The place where the point can stand that is nearest to one wanted. */
    Point nearest(Point wanted) {
        Point round = new Point(step * Math.rint(wanted.x() / step), step * Math.rint(wanted.y() / step));
        if (ground.isEmpty()) return wanted;
        if (ground.contains(Shapes.point(round))) return whole(round.x(), round.y());
        Coordinate place = DistanceOp.nearestPoints(ground, Shapes.point(wanted))[0];
        return whole(place.x, place.y);
    }

    private static Point whole(double x, double y) {
        return new Point(Math.rint(x * NANOMETRE) / NANOMETRE, Math.rint(y * NANOMETRE) / NANOMETRE);
    }
}
