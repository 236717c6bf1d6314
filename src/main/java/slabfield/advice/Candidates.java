package slabfield.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.equipment.InstalledFan;
import slabfield.field.PressureField;
import slabfield.field.Result;
import slabfield.model.Barrier;
import slabfield.model.BlockWall;
import slabfield.model.DrainTile;
import slabfield.model.FanOffer;
import slabfield.model.Gap;
import slabfield.model.NominalPipe;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.SealState;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;

/** What could be done to a house, as far as it is drawn. */
final class Candidates {
    /** Places kept for a further suction point. */
    private static final int FURTHER = 4;

    /** Places kept for each suction point that could be moved. */
    private static final int ELSEWHERE = 1;

    /** A cubic foot, the least pit that guidance asks for in poor fill (ANSI/AARST RMS-LB 2018, 6.1) [m3]. */
    private static final double BIG_PIT = 0.028316846592;

    /** A pit within this part of the big one is not dug anew. */
    private static final double NEARLY = 0.9;

    /** Length of a break through a footing that is tried [m]. */
    private static final double BREAK = 0.3;

    /** Distance between places tried for a break, and from a barrier's face at which the pressures are compared [m]. */
    private static final double ALONG = 0.5;

    private static final double BESIDE = 0.2;

    private final Scenario scenario;
    private final Result.Solved solved;

    /** For a house with its solved field. */
    Candidates(Result.Solved solved) {
        this.scenario = solved.scenario();
        this.solved = solved;
    }

    /** All measures that change the house, without covers for a test. */
    List<Measure> all(Trials trials) {
        List<Measure> out = new ArrayList<>(seals());
        out.addAll(pits());
        out.addAll(tiles());
        out.addAll(breaks());
        out.addAll(equipment());
        SuctionPlaces places = new SuctionPlaces(solved, trials);
        out.addAll(places.further(FURTHER));
        out.addAll(places.elsewhere(ELSEWHERE));
        return out;
    }

    /** A cover for each opening and each wall's tops. */
    static List<Measure.CoverForTest> covers(Scenario scenario) {
        List<Measure.CoverForTest> out = new ArrayList<>();
        double cover = SealState.COVERED.assumedFraction();
        for (Opening o : scenario.openings())
            if (o.seal().fraction() < cover) out.add(new Measure.CoverForTest(o.id()));
        for (BlockWall w : scenario.blockWalls())
            if (w.topArea() > 0 && w.tops().fraction() < cover) out.add(new Measure.CoverForTest(w.id()));
        return out;
    }

    private List<Measure> seals() {
        List<Measure> out = new ArrayList<>();
        List<String> openings = scenario.openings().stream()
                .filter(Measure::worthSealing)
                .map(Opening::id)
                .toList();
        List<String> tops = scenario.blockWalls().stream()
                .filter(Candidates::openTops)
                .map(BlockWall::id)
                .toList();
        openings.forEach(o -> out.add(new Measure.SealOpening(o)));
        tops.forEach(w -> out.add(new Measure.SealTops(w)));
        int all = openings.size() + tops.size();
        for (OpeningKind kind : OpeningKind.values()) {
            List<String> alike = scenario.openings().stream()
                    .filter(o -> o.kind() == kind && Measure.worthSealing(o))
                    .map(Opening::id)
                    .toList();
            if (alike.size() > 1 && alike.size() < all) out.add(new Measure.SealGroup("every " + kind.word(), alike));
        }
        if (tops.size() > 1 && tops.size() < all) out.add(new Measure.SealGroup("the block tops of every wall", tops));
        if (all > 1) out.add(new Measure.SealAll());
        return out;
    }

    private static boolean openTops(BlockWall w) {
        return w.topArea() > 0 && w.tops().fraction() < SealState.SEALED.assumedFraction();
    }

    private List<Measure> pits() {
        SuctionPoint.Pit big = SuctionPoint.Pit.ofVolume(BIG_PIT);
        return scenario.suctionPoints().stream()
                .filter(s -> s.tile().isEmpty() && s.pit().radius() < NEARLY * big.radius())
                .map(s -> (Measure) new Measure.EnlargePit(s.id(), big))
                .toList();
    }

    private List<Measure> tiles() {
        List<Measure> out = new ArrayList<>();
        for (DrainTile t : scenario.drainTiles()) {
            if (!t.breaks().isEmpty()) out.add(new Measure.MendTile(t.id()));
            if (!t.waterFilled().isEmpty()) out.add(new Measure.EmptyTile(t.id()));
            for (SuctionPoint s : scenario.suctionPoints())
                if (s.tile().isEmpty())
                    out.add(new Measure.TeeIntoTile(
                            s.id(), t.id(), t.path().at(t.path().nearest(s.at()))));
        }
        return out;
    }

    /** For each barrier a break where the pressures on its two sides differ most. */
    private List<Measure> breaks() {
        List<Measure> out = new ArrayList<>();
        for (Barrier b : scenario.barriers()) {
            double most = 0;
            Optional<Point> best = Optional.empty();
            for (double s = BREAK; s <= b.path().length() - BREAK; s += ALONG) {
                Point at = b.path().at(s);
                double difference = across(b, at, s);
                if (difference > most && b.gaps().stream().noneMatch(g -> inside(g, at))) {
                    most = difference;
                    best = Optional.of(at);
                }
            }
            best.ifPresent(at -> out.add(new Measure.OpenBarrier(b.id(), new Gap(at, BREAK))));
        }
        return out;
    }

    private static boolean inside(Gap gap, Point at) {
        return gap.at().distanceTo(at) < (gap.length() + BREAK) / 2;
    }

    /** Difference of pressure between the two sides of a barrier; 0 where one side has none [Pa]. */
    private double across(Barrier b, Point at, double along) {
        Point a = b.path().at(along - BREAK / 2), c = b.path().at(along + BREAK / 2);
        double length = a.distanceTo(c), off = b.width() / 2 + BESIDE;
        if (length == 0) return 0;
        double nx = -(c.y() - a.y()) / length * off, ny = (c.x() - a.x()) / length * off;
        PressureField field = solved.field();
        OptionalDouble left = field.at(at.x() + nx, at.y() + ny), right = field.at(at.x() - nx, at.y() - ny);
        return left.isPresent() && right.isPresent() ? Math.abs(left.getAsDouble() - right.getAsDouble()) : 0;
    }

    private List<Measure> equipment() {
        List<Measure> out = new ArrayList<>();
        if (!scenario.suctionPoints().isEmpty())
            for (FanOffer fan : scenario.equipment().fans())
                if (!drawnBy(InstalledFan.in(scenario, fan))) out.add(new Measure.ChangeFan(fan));
        if (hasPipe())
            for (NominalPipe size : NominalPipe.values()) {
                Measure change = new Measure.ChangePipe(size);
                if (!change.apply(scenario).equals(scenario)) out.add(change);
            }
        return out;
    }

    private boolean drawnBy(InstalledFan fan) {
        return scenario.suctionPoints().stream()
                        .allMatch(s -> s.source() instanceof Source.Branch
                                || s.source() instanceof Source.Fan f
                                        && f.curve().equals(fan.curve()))
                && scenario.equipment().risers().stream()
                        .allMatch(r -> r.curve().equals(fan.curve()));
    }

    private boolean hasPipe() {
        return scenario.suctionPoints().stream()
                .anyMatch(s -> s.source() instanceof Source.Fan f && !f.run().isEmpty()
                        || s.source() instanceof Source.Branch);
    }
}
