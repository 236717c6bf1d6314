package slabfield.siting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import slabfield.advice.DrillPlaces;
import slabfield.model.Barrier;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Shapes;
import slabfield.model.Slab;
import slabfield.model.TestHole;

/**
 * The least set of test holes. ANSI/AARST SGM-SF 2017 (rev. 12/20), 13.3.3, written for chemical vapour and a sound default
 * for radon: at least three holes, one in each section of slab above 64 ft2, one in each quadrant recommended, one across
 * any suspected footing, and the most distant place that can be reached. A hole near the suction is our own rule: without
 * near and far ones, fill and leaks cannot be told apart.
 */
public final class HoleLayout {
    private static final int LEAST = 3;
    /** 64 ft2 [m2]. */
    private static final double SECTION = 5.946;
    /** A hole counts as the most distant one from this part of the largest distance, as near up to that. */
    private static final double FAR = 0.8;

    private static final double NEAR = 1.0 / 3;
    /** How far from a barrier its sides are looked at, and how closely along it [m]. */
    private static final double BESIDE = 0.3;

    private static final double NET = 0.5;

    private final Scenario scenario;
    private final List<Shortfall> found = new ArrayList<>();

    /** Which rule. */
    public enum Rule {
        THREE_HOLES,
        EACH_SECTION,
        EACH_QUADRANT,
        ACROSS_FOOTINGS,
        MOST_DISTANT,
        NEAR_THE_SUCTION
    }

    /**
     * What is missing.
     *
     * @param rule that is not kept
     * @param words for a person
     * @param around a place where a hole would mend it, if one can be named
     */
    public record Shortfall(Rule rule, String words, Optional<Point> around) {}

    private HoleLayout(Scenario scenario) {
        this.scenario = scenario;
    }

    /** What the drawn holes lack; empty where nothing does. */
    public static List<Shortfall> check(Scenario scenario) {
        HoleLayout layout = new HoleLayout(scenario);
        int holes = scenario.testHoles().size();
        if (holes < LEAST)
            layout.add(
                    Rule.THREE_HOLES,
                    "A house needs at least three test holes; this one has " + holes + ".",
                    Optional.empty());
        layout.sections();
        layout.quadrants();
        layout.footings();
        layout.distances();
        return List.copyOf(layout.found);
    }

    private void add(Rule rule, String words, Optional<Point> around) {
        found.add(new Shortfall(rule, words, around));
    }

    private boolean hasHole(Geometry area) {
        return scenario.testHoles().stream().anyMatch(h -> area.covers(Shapes.point(h.at())));
    }

    private void sections() {
        for (Slab slab : scenario.slabs()) {
            Geometry area = Shapes.area(slab);
            for (Barrier b : scenario.barriers()) area = Shapes.without(area, Shapes.strip(b.withGaps(List.of())));
            for (int k = 0; k < area.getNumGeometries(); k++) {
                Geometry section = area.getGeometryN(k);
                if (section.getArea() <= SECTION || hasHole(section)) continue;
                boolean whole = area.getNumGeometries() == 1;
                add(
                        Rule.EACH_SECTION,
                        (whole ? "Slab \"" : "A section of slab \"") + slab.id() + "\" has no test hole.",
                        Optional.of(inside(section)));
            }
        }
    }

    private void quadrants() {
        Geometry all = Shapes.union(scenario.slabs());
        Envelope box = all.getEnvelopeInternal();
        String[] names = {"lower left", "lower right", "upper left", "upper right"};
        for (int k = 0; k < names.length; k++) {
            double x = box.getMinX() + (k & 1) * box.getWidth() / 2, y = box.getMinY() + (k >> 1) * box.getHeight() / 2;
            Geometry quadrant = Shapes.common(
                    all,
                    Shapes.area(List.of(
                            new Point(x, y), new Point(x + box.getWidth() / 2, y),
                            new Point(x + box.getWidth() / 2, y + box.getHeight() / 2),
                                    new Point(x, y + box.getHeight() / 2))));
            if (quadrant.getArea() > SECTION && !hasHole(quadrant))
                add(
                        Rule.EACH_QUADRANT,
                        "The " + names[k] + " quadrant of the plan has no test hole (recommended).",
                        Optional.of(inside(quadrant)));
        }
    }

    private static Point inside(Geometry area) {
        org.locationtech.jts.geom.Point p = area.getInteriorPoint();
        return new Point(p.getX(), p.getY());
    }

    private void footings() {
        Geometry slab = Shapes.union(scenario.slabs());
        for (Barrier b : scenario.barriers())
            for (int side = -1; side <= 1; side += 2) {
                int which = side;
                boolean read =
                        scenario.testHoles().stream().anyMatch(h -> Math.signum(side(b.path(), h.at())) == which);
                Optional<Point> beside = read ? Optional.empty() : beside(b, side, slab);
                if (beside.isPresent())
                    add(Rule.ACROSS_FOOTINGS, "Only one side of \"" + b.id() + "\" has a test hole.", beside);
            }
    }

    /** A place on one side in the middle of a barrier's run; empty where the slab does not lie there for half of the run. */
    private static Optional<Point> beside(Barrier b, int side, Geometry slab) {
        List<Point> on = new ArrayList<>();
        int samples = 0;
        for (double s = NET / 2; s < b.path().length(); s += NET) {
            samples++;
            Point p = offset(b.path(), s, side * (b.width() / 2 + BESIDE));
            if (slab.covers(Shapes.point(p))) on.add(p);
        }
        return 2 * on.size() > samples ? Optional.of(on.get(on.size() / 2)) : Optional.empty();
    }

    private static Point offset(Path path, double along, double off) {
        Point a = path.at(along - 0.01), b = path.at(along + 0.01);
        double length = Math.max(a.distanceTo(b), 1e-12);
        Point at = path.at(along);
        return new Point(at.x() - off * (b.y() - a.y()) / length, at.y() + off * (b.x() - a.x()) / length);
    }

    /** Above 0 left of a path beside its run, below 0 right of it, 0 beyond its ends. */
    private static double side(Path path, Point p) {
        double along = path.nearest(p), length = path.length();
        if (along <= 0 || along >= length) return 0;
        Point a = path.at(Math.max(0, along - 0.01)), b = path.at(Math.min(length, along + 0.01));
        return (b.x() - a.x()) * (p.y() - a.y()) - (b.y() - a.y()) * (p.x() - a.x());
    }

    private void distances() {
        List<Point> places = new ArrayList<>(DrillPlaces.forHoles(scenario).net(NET));
        scenario.testHoles().forEach(h -> places.add(h.at()));
        Optional<Point> farthest = places.stream()
                .filter(p -> distance(p).isPresent())
                .max(java.util.Comparator.comparingDouble(p -> distance(p).getAsDouble()));
        if (farthest.isEmpty()) return;
        double most = distance(farthest.get()).getAsDouble();
        if (noHole(FAR * most, Double.MAX_VALUE))
            add(Rule.MOST_DISTANT, "No test hole lies near the most distant place from the suction.", farthest);
        if (noHole(0, NEAR * most))
            add(
                    Rule.NEAR_THE_SUCTION,
                    "No test hole lies near the suction; with far holes alone, fill and leaks cannot be"
                            + " told apart.",
                    Optional.empty());
    }

    private boolean noHole(double from, double to) {
        return scenario.testHoles().stream()
                .map(TestHole::at)
                .mapToDouble(p -> distance(p).orElse(Double.NaN))
                .noneMatch(d -> d >= from && d <= to);
    }

    private OptionalDouble distance(Point p) {
        return scenario.suctionPoints().stream()
                .mapToDouble(s -> s.at().distanceTo(p))
                .min();
    }
}
