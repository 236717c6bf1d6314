package slabfield.diagnosis;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import slabfield.model.Barrier;
import slabfield.model.BlockWall;
import slabfield.model.DrainTile;
import slabfield.model.Fill;
import slabfield.model.Gap;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;
import slabfield.model.Stage;
import slabfield.model.Zone;

/** What causes do to a house; pure functions that can follow one another. */
final class Changes {
    private static final String PATH = "path that is not drawn";
    /** A trench of a spade's breadth [m]. */
    private static final double PATH_WIDTH = 0.4;

    private Changes() {}

    /** All fill a number of times as permeable; what it resists by inertia goes with 1/sqrt(k), as Ward's coefficient does. */
    static Scenario fill(Scenario h, double multiple) {
        return h.withLayer(new Layer(
                times(h.layer().fill(), multiple),
                h.layer().zones().stream()
                        .map(z -> new Zone(z.id(), z.outline(), times(z.fill(), multiple)))
                        .toList()));
    }

    private static Fill times(Fill f, double multiple) {
        return new Fill(
                f.word(), f.thickness(), f.permeability() * multiple, f.inertial() / Math.sqrt(multiple), false);
    }

    /** Every leak a number of times as large: openings, wall tops and faces, native soil. */
    static Scenario leaks(Scenario h, double multiple) {
        return h.withOpenings(h.openings().stream().map(o -> times(o, multiple)).toList())
                .withBlockWalls(h.blockWalls().stream()
                        .map(w -> new BlockWall(
                                w.id(),
                                w.path(),
                                w.height(),
                                w.tops(),
                                w.topArea() * multiple,
                                w.joint(),
                                w.faceToRoom() * multiple,
                                w.faceToOutdoors() * multiple,
                                w.along(),
                                w.joinsAtCorners(),
                                w.tile()))
                        .toList())
                .withSoilLeakance(h.soilLeakance() * multiple);
    }

    /** One opening a number of times as large. */
    static Scenario leak(Scenario h, String id, double multiple) {
        return h.withOpenings(h.openings().stream()
                .map(o -> o.id().equals(id) ? times(o, multiple) : o)
                .toList());
    }

    private static Opening times(Opening o, double multiple) {
        Opening.Passage passage;
        if (o.passage() instanceof Opening.Orifice a)
            passage = new Opening.Orifice(a.area() * multiple, a.dischargeCoefficient());
        else if (o.passage() instanceof Opening.Crack c)
            passage = new Opening.Crack(c.width() * Math.cbrt(multiple), c.bends());
        else {
            Opening.PowerLaw p = (Opening.PowerLaw) o.passage();
            passage = new Opening.PowerLaw(p.coefficient() * multiple, p.exponent());
        }
        return new Opening(o.id(), o.kind(), o.place(), passage, o.seal());
    }

    /** One more opening, or another area of it where it is there already. */
    static Scenario opening(Scenario h, String id, Point at, double area) {
        List<Opening> openings = new ArrayList<>(h.openings());
        openings.removeIf(o -> o.id().equals(id));
        double radius = Math.max(0.05, Math.sqrt(area / Math.PI));
        openings.add(new Opening(
                id,
                OpeningKind.OTHER,
                new Opening.Spot(at, radius),
                new Opening.Orifice(area, Opening.Orifice.USUAL_COEFFICIENT),
                Seal.of(SealState.OPEN)));
        return h.withOpenings(openings);
    }

    /** The tops of all walls open by a part, except in stages that close them. */
    static Scenario tops(Scenario h, double open) {
        Seal seal = new Seal(SealState.OPEN, 1 - Math.min(1, open), false);
        return h.withBlockWalls(h.blockWalls().stream().map(w -> w.with(seal)).toList());
    }

    /** One more barrier, or another permeability or gap of it where it is there already. */
    static Scenario barrier(Scenario h, Barrier barrier) {
        List<Barrier> barriers = new ArrayList<>(h.barriers());
        barriers.removeIf(b -> b.id().equals(barrier.id()));
        barriers.add(barrier);
        return h.withBarriers(barriers);
    }

    /** A strip of another permeability from a pit to 0.3 m before a hole; another permeability of it where it is there already. */
    static Scenario path(Scenario h, Point from, Point hole, double permeability) {
        double distance = from.distanceTo(hole), end = distance - 0.3, half = PATH_WIDTH / 2;
        double ux = (hole.x() - from.x()) / distance, uy = (hole.y() - from.y()) / distance;
        List<Point> outline = List.of(
                new Point(from.x() - uy * half, from.y() + ux * half),
                new Point(from.x() + uy * half, from.y() - ux * half),
                new Point(from.x() + ux * end + uy * half, from.y() + uy * end - ux * half),
                new Point(from.x() + ux * end - uy * half, from.y() + uy * end + ux * half));
        List<Zone> zones = new ArrayList<>(h.layer().zones());
        zones.removeIf(z -> z.id().equals(PATH));
        zones.add(new Zone(PATH, outline, Fill.of(h.layer().fill().thickness(), permeability, 0)));
        return h.withLayer(new Layer(h.layer().fill(), zones));
    }

    /** A stretch of one tile full of water. */
    static Scenario flooded(Scenario h, String id, Gap stretch) {
        return h.withDrainTiles(h.drainTiles().stream()
                .map(t -> t.id().equals(id)
                        ? new DrainTile(
                                t.id(),
                                t.path(),
                                t.diameter(),
                                t.manning(),
                                t.slotArea(),
                                t.breaks(),
                                List.of(stretch),
                                t.sump())
                        : t)
                .toList());
    }

    /** Every fan behind a valve of a loss coefficient, in all stages. */
    static Scenario blocked(Scenario h, double coefficient) {
        List<Stage> stages = new ArrayList<>();
        for (Stage s : h.stages()) {
            Map<String, Source> sources = new LinkedHashMap<>(s.sources());
            sources.replaceAll((id, source) -> blocked(source, coefficient));
            stages.add(new Stage(s.id(), s.kind(), s.seals(), sources, s.holes(), s.systems(), s.time(), s.notes()));
        }
        return h.withStages(stages)
                .withSuctionPoints(h.suctionPoints().stream()
                        .map(p -> p.drawnBy(blocked(p.source(), coefficient)))
                        .toList());
    }

    private static Source blocked(Source source, double coefficient) {
        if (!(source instanceof Source.Fan fan) || fan.run().isEmpty()) return source;
        List<Source.Pipe> run = new ArrayList<>(fan.run());
        run.set(0, run.get(0).withValve(coefficient));
        return new Source.Fan(fan.curve(), run, fan.discharge());
    }

    /** Sources at a part of their pressure; a fan as slowed down, with flows by the root of it (fan laws). */
    static Source slower(Source source, double part) {
        if (source instanceof Source.Pressure p) return new Source.Pressure(p.pressure() * part);
        if (source instanceof Source.Flow f) return new Source.Flow(f.flow() * part);
        if (!(source instanceof Source.Fan fan)) return source;
        return new Source.Fan(
                new Source.FanCurve(
                        fan.curve().flows().stream()
                                .map(q -> q * Math.sqrt(part))
                                .toList(),
                        fan.curve().rises().stream().map(r -> r * part).toList()),
                fan.run(),
                fan.discharge());
    }
}
