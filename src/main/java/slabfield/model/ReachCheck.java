package slabfield.model;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Geometry;

/**
 * Slabs that no suction point can draw from: the layer under them hangs together with no suction point, neither directly
 * nor through a drain tile. Ways through block walls are not looked at.
 */
final class ReachCheck {
    /** A tile that runs in a part for less than this does not draw from it [m]. */
    private static final double SHORTEST = 0.01;

    private final List<Geometry> unreached = new ArrayList<>();
    private final List<Geometry> reached = new ArrayList<>();
    private final List<Geometry> idleTiles = new ArrayList<>();

    private ReachCheck() {}

    static List<Problem> problems(Scenario scenario) {
        if (scenario.suctionPoints().isEmpty()) return List.of();
        ReachCheck check = new ReachCheck();
        check.start(scenario);
        check.spread();
        List<Problem> problems = new ArrayList<>();
        for (int i = 0; i < scenario.slabs().size(); i++) {
            Slab slab = scenario.slabs().get(i);
            Geometry area = Shapes.area(slab);
            boolean drawn =
                    check.reached.stream().anyMatch(r -> Shapes.common(r, area).getArea() > OutlineCheck.NOTHING);
            if (slab.treated() && !drawn)
                problems.add(new Problem(
                        "/slabs/" + i,
                        OutlineCheck.title(slab)
                                + " is cut off from every suction point; draw a gap in the barrier, add a suction point,"
                                + " or say \"treated\": false"));
        }
        return problems;
    }

    private void start(Scenario scenario) {
        Geometry open = Shapes.without(Shapes.union(scenario.slabs()), Shapes.airtight(scenario.barriers()));
        for (int i = 0; i < open.getNumGeometries(); i++)
            if (open.getGeometryN(i).getArea() > OutlineCheck.NOTHING) unreached.add(open.getGeometryN(i));
        for (SuctionPoint point : scenario.suctionPoints())
            if (point.tile().isEmpty())
                move(p -> p.intersects(Shapes.disc(point.at(), point.pit().radius())));
        for (DrainTile tile : scenario.drainTiles()) {
            List<Gap> cuts = Stream.concat(tile.breaks().stream(), tile.waterFilled().stream())
                    .toList();
            List<Geometry> pieces = new ArrayList<>();
            for (Path piece : Shapes.pieces(tile.path(), cuts)) pieces.add(Shapes.line(piece));
            for (SuctionPoint point : scenario.suctionPoints())
                if (point.tile().filter(tile.id()::equals).isPresent()) drawThrough(pieces, point);
            idleTiles.addAll(pieces);
        }
    }

    /** Draws from all parts in which the piece of tile that a suction point is teed into runs. */
    private void drawThrough(List<Geometry> pieces, SuctionPoint point) {
        pieces.stream()
                .min(Comparator.comparingDouble(piece -> piece.distance(Shapes.point(point.at()))))
                .ifPresent(piece -> move(part -> runsIn(piece, part)));
    }

    private void spread() {
        boolean more = true;
        while (more) {
            more = false;
            for (Geometry tile : List.copyOf(idleTiles))
                if (reached.stream().anyMatch(part -> runsIn(tile, part))) {
                    idleTiles.remove(tile);
                    move(part -> runsIn(tile, part));
                    more = true;
                }
        }
    }

    private void move(Predicate<Geometry> wanted) {
        reached.addAll(unreached.stream().filter(wanted).toList());
        unreached.removeIf(wanted);
    }

    private static boolean runsIn(Geometry tile, Geometry part) {
        return Shapes.common(tile, part).getLength() > SHORTEST;
    }
}
