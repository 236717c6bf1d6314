package slabfield.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;

/** Things drawn where they cannot be. Takes outlines that {@link OutlineCheck} found sound. */
final class PlanCheck {
    /** How far a line may stray over the edge of a slab, for rounding and a loose hand [m]. */
    private static final double TOLERANCE = 0.01;
    /** How far a gap's place may be from its line [m]. */
    private static final double GAP_REACH = 0.5;
    /** How far a suction point's place may be from the tile that it is teed into [m]. */
    private static final double TEE_REACH = 1;

    private static final String OUTSIDE = " lies outside every slab outline; move it inside or redraw the outline";
    private static final String PARTLY_OUTSIDE = " runs outside every slab outline; keep all of it under a slab";

    private final Scenario scenario;
    private final Geometry slabs;
    private final Geometry slabsAndEdge;
    private final Geometry airtight;
    private final List<Problem> problems = new ArrayList<>();

    PlanCheck(Scenario scenario) {
        this.scenario = scenario;
        this.slabs = Shapes.union(scenario.slabs());
        this.slabsAndEdge = slabs.buffer(TOLERANCE);
        this.airtight = Shapes.airtight(scenario.barriers());
    }

    List<Problem> problems() {
        zones();
        barriers();
        tiles();
        walls();
        for (int i = 0; i < scenario.openings().size(); i++)
            opening(scenario.openings().get(i), "/openings/" + i);
        for (int i = 0; i < scenario.suctionPoints().size(); i++)
            suction(scenario.suctionPoints().get(i), "/suctionPoints/" + i + "/at");
        for (int i = 0; i < scenario.testHoles().size(); i++) {
            TestHole hole = scenario.testHoles().get(i);
            spot("/testHoles/" + i + "/at", "test hole \"" + hole.id() + "\"", hole.at());
        }
        discs();
        return problems;
    }

    private void zones() {
        for (int i = 0; i < scenario.layer().zones().size(); i++) {
            Zone zone = scenario.layer().zones().get(i);
            if (Shapes.common(Shapes.area(zone.outline()), slabs).getArea() < OutlineCheck.NOTHING)
                add("/layer/zones/" + i + "/outline", "zone \"" + zone.id() + "\"" + OUTSIDE);
        }
    }

    private void barriers() {
        for (int i = 0; i < scenario.barriers().size(); i++) {
            Barrier barrier = scenario.barriers().get(i);
            String path = "/barriers/" + i, who = "barrier \"" + barrier.id() + "\"";
            gaps(path + "/gaps/", who, "gap", barrier.path(), barrier.gaps());
            for (int j = 0; j < barrier.gaps().size(); j++)
                if (barrier.gaps().get(j).length() == 0)
                    add(
                            path + "/gaps/" + j + "/length",
                            who + ": gap " + (j + 1) + " has no length; write how wide it is");
            if (!Shapes.line(barrier.path()).buffer(barrier.width() / 2).intersects(slabs))
                add(path + "/path", who + OUTSIDE);
        }
    }

    private void tiles() {
        for (int i = 0; i < scenario.drainTiles().size(); i++) {
            DrainTile tile = scenario.drainTiles().get(i);
            String path = "/drainTile/" + i, who = "drain tile \"" + tile.id() + "\"";
            line(path + "/path", who, tile.path());
            gaps(path + "/breaks/", who, "break", tile.path(), tile.breaks());
            gaps(path + "/waterFilled/", who, "water-filled stretch", tile.path(), tile.waterFilled());
        }
    }

    private void walls() {
        for (int i = 0; i < scenario.blockWalls().size(); i++) {
            BlockWall wall = scenario.blockWalls().get(i);
            line("/blockWalls/" + i + "/path", "block wall \"" + wall.id() + "\"", wall.path());
        }
    }

    private void opening(Opening opening, String path) {
        String who = NameCheck.title(opening);
        if (opening.place() instanceof Opening.Spot spot) spot(path + "/at", who, spot.at());
        if (opening.place() instanceof Opening.Along along) line(path + "/path", who, along.path());
    }

    private void suction(SuctionPoint point, String path) {
        Optional<DrainTile> tile = scenario.drainTiles().stream()
                .filter(t -> point.tile().equals(Optional.of(t.id())))
                .findFirst();
        if (point.tile().isEmpty()) spot(path, NameCheck.title(point), point.at());
        if (tile.isEmpty()) return;
        double distance = Shapes.line(tile.get().path()).distance(Shapes.point(point.at()));
        if (distance > TEE_REACH)
            add(
                    path,
                    NameCheck.title(point) + " is teed into drain tile \""
                            + tile.get().id() + "\" but stands " + metres(distance)
                            + " from it; move it to the tile or leave out \"tile\"");
    }

    private void discs() {
        record Disc(String path, String who, Point at, double radius) {}
        List<Disc> discs = new ArrayList<>();
        for (int i = 0; i < scenario.openings().size(); i++) {
            Opening opening = scenario.openings().get(i);
            if (opening.place() instanceof Opening.Spot spot)
                discs.add(new Disc("/openings/" + i + "/at", NameCheck.title(opening), spot.at(), spot.radius()));
        }
        for (int i = 0; i < scenario.suctionPoints().size(); i++) {
            SuctionPoint point = scenario.suctionPoints().get(i);
            if (point.tile().isEmpty())
                discs.add(new Disc(
                        "/suctionPoints/" + i + "/at",
                        NameCheck.title(point),
                        point.at(),
                        point.pit().radius()));
        }
        for (int i = 1; i < discs.size(); i++)
            for (int j = 0; j < i; j++) {
                Disc a = discs.get(i), b = discs.get(j);
                if (a.at().distanceTo(b.at()) < a.radius() + b.radius())
                    add(
                            a.path(),
                            a.who() + " overlaps " + b.who() + ": their middles are "
                                    + metres(a.at().distanceTo(b.at())) + " apart and their radii together "
                                    + metres(a.radius() + b.radius()) + "; move one or make it smaller");
            }
    }

    private void spot(String path, String who, Point at) {
        if (!slabs.contains(Shapes.point(at))) add(path, who + OUTSIDE);
        else if (airtight.covers(Shapes.point(at)))
            add(path, who + " stands on a barrier, where there is no layer; move it off the strip or draw a gap");
    }

    private void line(String path, String who, Path line) {
        Geometry drawn = Shapes.line(line);
        if (!drawn.intersects(slabsAndEdge)) add(path, who + OUTSIDE);
        else if (!slabsAndEdge.covers(drawn)) add(path, who + PARTLY_OUTSIDE);
    }

    private void gaps(String path, String who, String kind, Path line, List<Gap> gaps) {
        for (int i = 0; i < gaps.size(); i++) {
            double distance =
                    Shapes.line(line).distance(Shapes.point(gaps.get(i).at()));
            if (distance > GAP_REACH)
                add(
                        path + i + "/at",
                        who + ": " + kind + " " + (i + 1) + " lies " + metres(distance)
                                + " from the line; put its middle on the line");
        }
    }

    private void add(String path, String message) {
        problems.add(new Problem(path, message));
    }

    private static String metres(double length) {
        return String.format(Locale.ROOT, "%.2f m", length);
    }
}
