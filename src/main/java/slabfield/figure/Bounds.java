package slabfield.figure;

import slabfield.model.Point;
import slabfield.model.Scenario;

/** A rectangle on the plan, in metres, y counted up. */
public record Bounds(double left, double bottom, double right, double top) {
    private static final Bounds NOTHING =
            new Bounds(Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE);

    /** The smallest rectangle that holds all slabs, and whatever else is drawn with a place of its own. */
    public static Bounds of(Scenario scenario) {
        Bounds all = NOTHING;
        for (var slab : scenario.slabs()) for (Point p : slab.outline()) all = all.with(p);
        for (var wall : scenario.blockWalls()) for (Point p : wall.path().points()) all = all.with(p);
        for (var tile : scenario.drainTiles()) for (Point p : tile.path().points()) all = all.with(p);
        for (var barrier : scenario.barriers()) for (Point p : barrier.path().points()) all = all.with(p);
        for (var suction : scenario.suctionPoints()) all = all.with(suction.at());
        for (var hole : scenario.testHoles()) all = all.with(hole.at());
        return all;
    }

    public double width() {
        return right - left;
    }

    public double height() {
        return top - bottom;
    }

    private Bounds with(Point p) {
        return new Bounds(Math.min(left, p.x()), Math.min(bottom, p.y()), Math.max(right, p.x()), Math.max(top, p.y()));
    }
}
