package slabfield.desktop.drawing;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import slabfield.model.Point;
import slabfield.model.Scenario;

/** Draws a place to what lies near it. Corners come before middles, these before crossings, edges, straight lines, grid. */
public final class Snapper {
    private static final double EIGHTH = Math.PI / 4;

    private record Edge(Point a, Point b) {}

    private final List<Point> corners = new ArrayList<>();
    private final List<Edge> edges = new ArrayList<>();
    private final double grid;

    /**
     * @param without what is being moved, and draws nothing
     * @param shown the layers that draw
     * @param grid distance between the lines of the grid; 0 for none [m]
     */
    public Snapper(Scenario scenario, Collection<Item> without, Collection<Layer> shown, double grid) {
        this.grid = grid;
        for (Item item : Items.all(scenario)) {
            if (without.contains(item)
                    || item.kind() == Kind.UNDERLAY
                    || !shown.contains(item.kind().layer())) continue;
            Items.form(scenario, item).filter(f -> !f.fixed()).ifPresent(f -> {
                corners.addAll(f.points());
                for (int i = 0; i < f.edges(); i++) edges.add(new Edge(f.from(i), f.to(i)));
            });
        }
    }

    /**
     * The place that another counts as.
     *
     * @param from the place that a line is drawn from, if one is
     * @param reach how near something must be to draw [m]
     */
    public Snap snap(Point p, Optional<Point> from, double reach) {
        return nearest(p, corners, reach)
                .map(c -> new Snap(c, Snap.Sort.CORNER, List.of()))
                .or(() -> nearest(
                                p,
                                edges.stream()
                                        .map(e -> Places.middle(e.a(), e.b()))
                                        .toList(),
                                reach)
                        .map(m -> found(m, Snap.Sort.MIDPOINT)))
                .or(() -> nearest(p, crossings(p, reach), reach).map(c -> found(c, Snap.Sort.CROSSING)))
                .or(() -> from.flatMap(f -> perpendicular(p, f, reach)))
                .or(() -> onEdge(p, from, reach))
                .or(() -> from.flatMap(f -> straight(p, f, reach)))
                .or(() -> aligned(p, reach))
                .orElseGet(() -> onGrid(p));
    }

    private static Snap found(Point at, Snap.Sort sort) {
        return new Snap(Places.whole(at.x(), at.y()), sort, List.of());
    }

    private static Optional<Point> nearest(Point p, List<Point> places, double reach) {
        Point best = null;
        for (Point each : places)
            if (each.distanceTo(p) <= reach && (best == null || each.distanceTo(p) < best.distanceTo(p))) best = each;
        return Optional.ofNullable(best);
    }

    private List<Edge> near(Point p, double reach) {
        return edges.stream()
                .filter(e -> Places.nearest(p, e.a(), e.b()).distanceTo(p) <= reach)
                .toList();
    }

    private List<Point> crossings(Point p, double reach) {
        List<Edge> near = near(p, reach);
        List<Point> found = new ArrayList<>();
        for (int i = 1; i < near.size(); i++)
            for (int j = 0; j < i; j++) crossing(near.get(i), near.get(j)).ifPresent(found::add);
        return found;
    }

    private static Optional<Point> crossing(Edge e, Edge f) {
        double ex = e.b().x() - e.a().x(),
                ey = e.b().y() - e.a().y(),
                fx = f.b().x() - f.a().x(),
                fy = f.b().y() - f.a().y();
        double cross = ex * fy - ey * fx;
        if (Math.abs(cross) < 1e-9 || !Places.meet(e.a(), e.b(), f.a(), f.b())) return Optional.empty();
        double t = ((f.a().x() - e.a().x()) * fy - (f.a().y() - e.a().y()) * fx) / cross;
        return Optional.of(new Point(e.a().x() + t * ex, e.a().y() + t * ey));
    }

    /** The foot on an edge nearby of a line drawn square on it. */
    private Optional<Snap> perpendicular(Point p, Point from, double reach) {
        List<Point> feet = near(p, reach).stream()
                .map(e -> Places.nearest(from, e.a(), e.b()))
                .filter(foot -> foot.distanceTo(from) > reach)
                .toList();
        return nearest(p, feet, reach).map(foot -> found(foot, Snap.Sort.PERPENDICULAR));
    }

    /** A place on an edge: where a straight line from the last place or a line of the grid cuts it, if near. */
    private Optional<Snap> onEdge(Point p, Optional<Point> from, double reach) {
        List<Edge> near = near(p, reach);
        if (near.isEmpty()) return Optional.empty();
        Edge edge = near.get(0);
        List<Point> cuts = new ArrayList<>();
        from.ifPresent(f -> {
            double far = 4 * (f.distanceTo(p) + reach);
            for (int k = 0; k < 8; k++)
                crossing(edge, new Edge(f, Places.at(f, far, k * EIGHTH))).ifPresent(cuts::add);
        });
        Optional<Point> cut = nearest(p, cuts, reach);
        if (cut.isPresent()) return cut.map(c -> found(c, Snap.Sort.EDGE));
        Point on = Places.nearest(gridded(p), edge.a(), edge.b());
        Point close = on.distanceTo(p) <= reach ? on : Places.nearest(p, edge.a(), edge.b());
        return Optional.of(found(close, Snap.Sort.EDGE));
    }

    /** On the nearest multiple of 45 degrees from the last place; at a corner's height or a whole step along it. */
    private Optional<Snap> straight(Point p, Point from, double reach) {
        double distance = from.distanceTo(p);
        if (distance == 0) return Optional.empty();
        double angle = EIGHTH * Math.round(Places.angle(from, p) / EIGHTH);
        double off = distance * Math.abs(Math.sin(Places.angle(from, p) - angle));
        if (off > Math.max(reach, 0.05 * distance)) return Optional.empty();
        boolean upright = Math.abs(Math.sin(2 * angle)) < 1e-9;
        if (upright) {
            boolean across = Math.abs(Math.cos(angle)) > 0.5;
            for (Point c : corners) {
                double ahead = across ? Math.abs(c.x() - p.x()) : Math.abs(c.y() - p.y());
                if (ahead > reach) continue;
                Point at = across ? Places.whole(c.x(), from.y()) : Places.whole(from.x(), c.y());
                if (at.distanceTo(from) > reach) return Optional.of(new Snap(at, Snap.Sort.STRAIGHT, List.of(from, c)));
            }
        }
        double along = distance * Math.cos(Places.angle(from, p) - angle);
        double step = upright ? grid : grid * Math.sqrt(2), whole = grid > 0 ? step * Math.rint(along / step) : along;
        return Optional.of(
                new Snap(Places.at(from, whole == 0 ? along : whole, angle), Snap.Sort.STRAIGHT, List.of(from)));
    }

    private Optional<Snap> aligned(Point p, double reach) {
        Point byX = null, byY = null;
        for (Point c : corners) {
            if (Math.abs(c.x() - p.x()) <= reach
                    && (byX == null || Math.abs(c.x() - p.x()) < Math.abs(byX.x() - p.x()))) byX = c;
            if (Math.abs(c.y() - p.y()) <= reach
                    && (byY == null || Math.abs(c.y() - p.y()) < Math.abs(byY.y() - p.y()))) byY = c;
        }
        if (byX == null && byY == null) return Optional.empty();
        List<Point> guides = new ArrayList<>();
        if (byX != null) guides.add(byX);
        if (byY != null) guides.add(byY);
        Point round = gridded(p);
        double x = byX == null ? round.x() : byX.x(), y = byY == null ? round.y() : byY.y();
        return Optional.of(new Snap(Places.whole(x, y), Snap.Sort.ALIGNED, guides));
    }

    private Point gridded(Point p) {
        return grid > 0 ? Places.whole(grid * Math.rint(p.x() / grid), grid * Math.rint(p.y() / grid)) : p;
    }

    private Snap onGrid(Point p) {
        return grid > 0 ? new Snap(gridded(p), Snap.Sort.GRID, List.of()) : Snap.free(p);
    }
}
