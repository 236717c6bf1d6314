package slabfield.diagnosis;

import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import slabfield.fit.Parameter;
import slabfield.fit.Prior;
import slabfield.fit.Unknowns;
import slabfield.model.Barrier;
import slabfield.model.BlockWall;
import slabfield.model.DrainTile;
import slabfield.model.Gap;
import slabfield.model.Opening;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;

/**
 * All ways in which the causes could explain the readings of a house, each with what is believed of its size before any
 * reading. Every explanation leaves open what no drawing knows: all fill by one factor, as widely as its word or number
 * allows; all leaks by one factor; the pressure outdoors. Spreads without a source are common practice.
 */
final class Explanations {
    /** The unknown by which all leaks change together. */
    static final String ALL_LEAKS = "all leaks";

    /** Factor by which all leaks together may well differ from what is drawn. */
    static final double LEAKS = 2;

    private static final double OUTDOORS = 2;
    /** Deviations of the prior of the fill beyond which it is called tight or loose. */
    private static final double BEYOND = 2.5;

    private static final double HIDDEN_AREA = 3e-3;
    private static final double FOOTING = 0.3;
    private static final double DOORWAY = 0.9;
    /** Permeability of a trench or void over that of the fill. */
    private static final double PATH_PASSES = 300;

    private static final double SHORTEST_PATH = 3;
    /** Permeability of a footing over that of the fill. */
    private static final double FOOTING_PASSES = 2e-4;
    /** Nearer than this two things are not told apart [m]. */
    private static final double APART = 0.8;
    /** Distance of an opening that is not drawn from the hole that it shows in [m]. */
    private static final double BESIDE = 0.7;
    /** Distance from the edge of a pit of an opening beside it; one within twice that is a short circuit too [m]. */
    private static final double BESIDE_PIT = 0.5;

    private final Scenario drawn;
    private final List<Parameter> usual = new ArrayList<>();
    private final List<Explanation> all = new ArrayList<>();

    private Explanations(Scenario drawn) {
        this.drawn = drawn;
        Prior fill = Unknowns.fill(drawn).prior();
        usual.add(new Parameter(
                "all fill",
                Parameter.Kind.LEAK,
                "the permeability of the fill",
                new Prior(Prior.Scale.LOGARITHMIC, 1, fill.spread(), fill.source()),
                Changes::fill));
        usual.add(new Parameter(
                ALL_LEAKS, Parameter.Kind.LEAK, "all leaks together", Prior.factor(1, LEAKS), Changes::leaks));
        usual.add(outdoors(drawn.outdoorPressure(), OUTDOORS));
    }

    private static Parameter outdoors(double median, double spread) {
        return new Parameter(
                "outdoors",
                Parameter.Kind.OUTDOORS,
                "the pressure outdoors at floor level",
                new Prior(Prior.Scale.LINEAR, median, spread, Prior.COMMON_PRACTICE),
                Scenario::withOutdoorPressure);
    }

    /** The house as drawn first, then by cause. */
    static List<Explanation> of(Scenario drawn) {
        Explanations e = new Explanations(drawn);
        e.add(Cause.AS_DRAWN, "nothing but what is drawn", 1, drawn);
        e.leaks();
        e.shortCircuits();
        e.wallTops();
        e.barriers();
        e.fills();
        e.tiles();
        e.hiddenPaths();
        e.depressurized();
        e.blocked();
        return List.copyOf(e.all);
    }

    private void add(Cause cause, String words, double share, Scenario house, Parameter... own) {
        List<Parameter> unknowns = new ArrayList<>(usual);
        unknowns.addAll(List.of(own));
        all.add(new Explanation(cause, words, house, unknowns, own.length, share));
    }

    private static Parameter size(String id, Parameter.Kind kind, String words, Prior prior, Parameter.Change change) {
        return new Parameter(id, kind, words, prior, change);
    }

    private void leaks() {
        for (Opening o : drawn.openings())
            add(
                    Cause.LEAK,
                    "\"" + o.id() + "\" leaks far more than drawn",
                    1.0 / drawn.openings().size(),
                    drawn,
                    size(
                            "more of " + o.id(),
                            Parameter.Kind.LEAK,
                            "the leak of \"" + o.id() + "\"",
                            Prior.factor(10, 2.5),
                            (h, m) -> Changes.leak(h, o.id(), m)));
        for (TestHole hole : drawn.testHoles())
            for (int quarter = 0; quarter < 4; quarter++) {
                double angle = quarter * Math.PI / 2;
                Point at = new Point(
                        hole.at().x() + BESIDE * Math.cos(angle), hole.at().y() + BESIDE * Math.sin(angle));
                if (drawn.hasLayerAt(at) && !besideSuction(at))
                    hidden(
                            Cause.LEAK,
                            "an opening that is not drawn, near hole \"" + hole.id() + "\"",
                            0.25 / drawn.testHoles().size(),
                            at);
            }
    }

    private void hidden(Cause cause, String words, double share, Point at) {
        String id = "opening that is not drawn";
        add(
                cause,
                words,
                share,
                Changes.opening(drawn, id, at, HIDDEN_AREA),
                size(
                        id,
                        Parameter.Kind.LEAK,
                        "the area of the " + id,
                        Prior.factor(HIDDEN_AREA, 3),
                        (h, area) -> Changes.opening(h, id, at, area)));
    }

    /** Places beside a suction point, the first away from the middle of the slabs, the others turned by quarters of a circle. */
    private void shortCircuits() {
        for (SuctionPoint s : drawn.suctionPoints()) {
            if (s.tile().isPresent()) continue;
            Point out = fromMiddle(s.at());
            double from = Math.atan2(out.y(), out.x()), distance = s.pit().radius() + BESIDE_PIT;
            for (int quarter = 0; quarter < 4; quarter++) {
                double angle = from + quarter * Math.PI / 2;
                Point at = new Point(s.at().x() + distance * Math.cos(angle), s.at().y() + distance * Math.sin(angle));
                if (drawn.hasLayerAt(at))
                    hidden(Cause.SHORT_CIRCUIT, "air enters beside suction point \"" + s.id() + "\"", 1, at);
            }
        }
    }

    /** True where an opening would be a short circuit. */
    private boolean besideSuction(Point at) {
        return drawn.suctionPoints().stream()
                .anyMatch(s ->
                        s.tile().isEmpty() && s.at().distanceTo(at) < s.pit().radius() + 2 * BESIDE_PIT);
    }

    private Point fromMiddle(Point place) {
        DoubleSummaryStatistics x = new DoubleSummaryStatistics(), y = new DoubleSummaryStatistics();
        box(x, y);
        return new Point(place.x() - (x.getMin() + x.getMax()) / 2, place.y() - (y.getMin() + y.getMax()) / 2);
    }

    private void box(DoubleSummaryStatistics x, DoubleSummaryStatistics y) {
        drawn.slabs().stream().flatMap(s -> s.outline().stream()).forEach(p -> {
            x.accept(p.x());
            y.accept(p.y());
        });
    }

    private void wallTops() {
        if (drawn.blockWalls().stream().map(BlockWall::tops).noneMatch(t -> t.fraction() > 0.3)) return;
        add(
                Cause.WALL_TOPS,
                "the block tops are open although they are drawn closed",
                1,
                drawn,
                size(
                        "open tops",
                        Parameter.Kind.LEAK,
                        "the open part of the block tops",
                        Prior.factor(0.5, 1.7),
                        Changes::tops));
    }

    private void barriers() {
        DoubleSummaryStatistics x = new DoubleSummaryStatistics(), y = new DoubleSummaryStatistics();
        box(x, y);
        List<Point> read = new ArrayList<>();
        drawn.testHoles().forEach(h -> read.add(h.at()));
        drawn.suctionPoints().forEach(s -> read.add(s.at()));
        for (double at : between(read.stream().map(Point::x).toList()))
            line(new Path(List.of(new Point(at, y.getMin()), new Point(at, y.getMax()))));
        for (double at : between(read.stream().map(Point::y).toList()))
            line(new Path(List.of(new Point(x.getMin(), at), new Point(x.getMax(), at))));
    }

    /** Places between neighbours that stand apart: the middle, or two where there is room. */
    private static List<Double> between(List<Double> values) {
        List<Double> sorted = values.stream().sorted().toList(), middles = new ArrayList<>();
        for (int i = 1; i < sorted.size(); i++)
            if (sorted.get(i) - sorted.get(i - 1) > 2 * APART) {
                middles.add(0.7 * sorted.get(i - 1) + 0.3 * sorted.get(i));
                middles.add(0.3 * sorted.get(i - 1) + 0.7 * sorted.get(i));
            } else if (sorted.get(i) - sorted.get(i - 1) > APART) middles.add((sorted.get(i) + sorted.get(i - 1)) / 2);
        return middles;
    }

    private void line(Path path) {
        String id = "barrier that is not drawn", where = where(path);
        double tight = FOOTING_PASSES * drawn.layer().fill().permeability();
        add(
                Cause.BARRIER,
                "a footing " + where,
                1,
                Changes.barrier(drawn, footing(id, path, tight, List.of())),
                size(
                        id,
                        Parameter.Kind.BARRIER,
                        "the permeability of the " + id,
                        Prior.factor(tight, 3),
                        (h, k) -> Changes.barrier(h, footing(id, path, k, List.of()))));
        for (double part : new double[] {0.1, 0.3, 0.5, 0.7, 0.9}) {
            Point middle = path.at(part * path.length());
            add(
                    Cause.BARRIER_WITH_GAP,
                    "a footing " + where + " with a gap",
                    1,
                    Changes.barrier(drawn, footing(id, path, tight, List.of(new Gap(middle, DOORWAY)))),
                    size(
                            "gap",
                            Parameter.Kind.GAP,
                            "the length of the gap",
                            Prior.factor(DOORWAY, 1.6),
                            (h, length) ->
                                    Changes.barrier(h, footing(id, path, tight, List.of(new Gap(middle, length))))));
        }
    }

    private static Barrier footing(String id, Path path, double permeability, List<Gap> gaps) {
        return new Barrier(id, path, FOOTING, permeability, false, gaps);
    }

    private static String where(Path path) {
        Point a = path.points().get(0), b = path.points().get(1);
        return a.x() == b.x()
                ? String.format(java.util.Locale.ROOT, "across the slab at x = %.1f m", a.x())
                : String.format(java.util.Locale.ROOT, "across the slab at y = %.1f m", a.y());
    }

    private void fills() {
        double spread = usual.get(0).prior().spread(),
                far = Math.pow(spread, BEYOND),
                own = Math.max(1.5, Math.sqrt(spread));
        add(
                Cause.TIGHT_FILL,
                "the fill is tighter than its name or number allows",
                1,
                drawn,
                size(
                        "tighter",
                        Parameter.Kind.LEAK,
                        "the permeability over the drawn one",
                        Prior.factor(1 / far, own),
                        Changes::fill));
        add(
                Cause.LOOSE_FILL,
                "the fill is looser than its name or number allows",
                1,
                drawn,
                size(
                        "looser",
                        Parameter.Kind.LEAK,
                        "the permeability over the drawn one",
                        Prior.factor(far, own),
                        Changes::fill));
    }

    private void tiles() {
        for (DrainTile t : drawn.drainTiles()) {
            double length = t.path().length();
            for (double part : new double[] {0.25, 0.5})
                for (int k = 0; k < 8; k++) {
                    Gap stretch = new Gap(t.path().at((k + 0.5) / 8 * length), part * length);
                    add(
                            Cause.TILE_CUT,
                            "a stretch of tile \"" + t.id() + "\" passes no air",
                            1,
                            Changes.flooded(drawn, t.id(), stretch));
                }
        }
    }

    private void hiddenPaths() {
        double k = PATH_PASSES * drawn.layer().fill().permeability();
        for (SuctionPoint s : drawn.suctionPoints())
            for (TestHole hole : drawn.testHoles()) {
                double distance = s.at().distanceTo(hole.at());
                if (s.tile().isPresent() || distance < SHORTEST_PATH) continue;
                add(
                        Cause.HIDDEN_PATH,
                        "an open path from \"" + s.id() + "\" to hole \"" + hole.id() + "\"",
                        1,
                        Changes.path(drawn, s.at(), hole.at(), k),
                        size(
                                "path that is not drawn",
                                Parameter.Kind.PERMEABILITY,
                                "the permeability of the path that is not drawn",
                                Prior.factor(k, 5),
                                (h, value) -> Changes.path(h, s.at(), hole.at(), value)));
            }
    }

    private void depressurized() {
        List<Parameter> unknowns = new ArrayList<>(usual.subList(0, usual.size() - 1));
        unknowns.add(outdoors(drawn.outdoorPressure() + 10, 3));
        all.add(new Explanation(
                Cause.DEPRESSURIZED_HOUSE,
                "the house lies some 10 Pa further below outdoors than drawn",
                drawn,
                unknowns,
                1,
                1));
    }

    private void blocked() {
        boolean piped = drawn.suctionPoints().stream()
                .anyMatch(
                        s -> s.source() instanceof Source.Fan fan && !fan.run().isEmpty());
        if (piped)
            add(
                    Cause.BLOCKED_PIPE,
                    "something in the pipe holds the air back",
                    1,
                    drawn,
                    size(
                            "blockage",
                            Parameter.Kind.LEAK,
                            "the loss coefficient of what blocks the pipe",
                            Prior.factor(300, 4),
                            Changes::blocked));
    }
}
