package slabfield.figure;

import java.util.ArrayList;
import java.util.List;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Slab;

/**
 * Finds a place on the plan by two tape measures, each held at a corner of a slab. Both corners are the ends of one wall, so
 * that of the two places at which the tapes can meet one lies outside the slab.
 */
public final class TapeDistances {
    private static final int LOOKS = 24;

    /** A corner and its letter. */
    public record Corner(String name, Point at) {}

    /**
     * Two tapes to one place.
     *
     * @param first corner, with the distance to it [m]
     * @param second corner, with the distance to it [m]
     */
    public record Tape(Corner first, double firstLength, Corner second, double secondLength) {}

    /** A wall: two corners that follow each other. */
    private record Wall(Corner from, Corner to) {}

    private final Scenario scenario;
    private final List<Corner> corners = new ArrayList<>();
    private final List<Wall> walls = new ArrayList<>();

    public TapeDistances(Scenario scenario) {
        this.scenario = scenario;
        for (Slab slab : scenario.slabs()) {
            List<Corner> around = slab.outline().stream().map(this::corner).toList();
            for (int i = 0; i < around.size(); i++)
                walls.add(new Wall(around.get(i), around.get((i + 1) % around.size())));
        }
    }

    /** Corners of all slabs in their order; one that two slabs share has one letter. */
    public List<Corner> corners() {
        return List.copyOf(corners);
    }

    private Corner corner(Point at) {
        for (Corner known : corners) if (known.at().distanceTo(at) < 0.01) return known;
        Corner made = new Corner(letters(corners.size()), at);
        corners.add(made);
        return made;
    }

    /** A, B ... Z, AA, AB ... */
    static String letters(int number) {
        String last = String.valueOf((char) ('A' + number % 26));
        return number < 26 ? last : letters(number / 26 - 1) + last;
    }

    /** The two corners from which a place is found best: short tapes that cross at a good angle, in sight of the place. */
    public Tape to(Point place) {
        Wall best = walls.get(0);
        double least = Double.POSITIVE_INFINITY;
        for (Wall wall : walls) {
            double cost = cost(wall, place);
            if (cost < least) {
                least = cost;
                best = wall;
            }
        }
        return new Tape(
                best.from(),
                best.from().at().distanceTo(place),
                best.to(),
                best.to().at().distanceTo(place));
    }

    /** How far off the place would be for an error of the tapes, in effect; ten times as bad where something is in the way. */
    private double cost(Wall wall, Point place) {
        Point a = wall.from().at(), b = wall.to().at();
        double da = a.distanceTo(place), db = b.distanceTo(place);
        double sine = Math.abs((a.x() - place.x()) * (b.y() - place.y()) - (a.y() - place.y()) * (b.x() - place.x()))
                / (da * db);
        boolean seen = inSight(a, place) && inSight(b, place);
        return (da + db) / Math.max(sine, 1e-6) * (seen ? 1 : 10);
    }

    private boolean inSight(Point corner, Point place) {
        for (int i = 1; i < LOOKS; i++) {
            double t = i / (double) LOOKS;
            Point p = new Point(corner.x() + t * (place.x() - corner.x()), corner.y() + t * (place.y() - corner.y()));
            boolean inside = scenario.slabs().stream().anyMatch(s -> inside(s.outline(), p));
            boolean pad =
                    scenario.slabs().stream().flatMap(s -> s.holes().stream()).anyMatch(h -> inside(h, p));
            if (!inside || pad) return false;
        }
        return true;
    }

    private static boolean inside(List<Point> ring, Point p) {
        boolean in = false;
        for (int i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            Point a = ring.get(i), b = ring.get(j);
            boolean crosses = a.y() > p.y() != b.y() > p.y();
            if (crosses && p.x() < (b.x() - a.x()) * (p.y() - a.y()) / (b.y() - a.y()) + a.x()) in = !in;
        }
        return in;
    }
}
