package slabfield.desktop.drawing;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import slabfield.model.BlockWall;
import slabfield.model.DrainTile;
import slabfield.model.Opening;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.model.SuctionPoint;

/** Names of drawn things, and everything that refers to them by name. */
public final class Naming {
    private Naming() {}

    /**
     * The scenario with another name for a thing, in all places that speak of it.
     *
     * @throws IllegalArgumentException where the name is empty or another has it, with words for the user
     */
    public static Scenario rename(Scenario scenario, Item item, String other) {
        String name = other.strip();
        if (name.isEmpty()) throw new IllegalArgumentException("A name must not be empty.");
        if (name.equals(item.id())) return scenario;
        if (Items.taken(scenario, item.kind()).contains(name))
            throw new IllegalArgumentException(
                    "\u201c" + name + "\u201d is the name of something else; give each its own.");
        Scenario named = Families.of(item.kind()).orElseThrow().rename(scenario, item.id(), name);
        return referring(named, item.kind(), id -> id.equals(item.id()) ? Optional.of(name) : Optional.of(id));
    }

    /** The scenario after a thing is gone: nothing speaks of it any more. */
    static Scenario forget(Scenario scenario, Kind kind, String gone) {
        return referring(scenario, kind, id -> id.equals(gone) ? Optional.empty() : Optional.of(id));
    }

    /** What a name becomes; empty where it is dropped. */
    private interface Change {
        Optional<String> of(String id);
    }

    private static Scenario referring(Scenario s, Kind kind, Change change) {
        return switch (kind) {
            case SLAB ->
                s.withOpenings(s.openings().stream()
                        .flatMap(o -> edge(o, change).stream())
                        .toList());
            case TILE -> tiles(s, change);
            case OPENING ->
                stages(s, stage -> seals(stage, change)).withDrainTiles(each(s.drainTiles(), t -> sump(t, change)));
            case WALL -> stages(s, stage -> seals(stage, change));
            case SUCTION -> stages(s, stage -> sources(stage, change));
            case HOLE -> stages(s, stage -> holes(stage, change));
            default -> s;
        };
    }

    private static Optional<Opening> edge(Opening o, Change change) {
        if (!(o.place() instanceof Opening.Perimeter edge)) return Optional.of(o);
        return change.of(edge.slab())
                .map(slab -> new Opening(o.id(), o.kind(), new Opening.Perimeter(slab), o.passage(), o.seal()));
    }

    private static Scenario tiles(Scenario s, Change change) {
        List<SuctionPoint> points = each(
                s.suctionPoints(),
                p -> new SuctionPoint(
                        p.id(), p.at(), p.tile().flatMap(change::of), p.pit(), p.source(), p.openWhenOff()));
        List<BlockWall> walls = each(
                s.blockWalls(),
                w -> new BlockWall(
                        w.id(),
                        w.path(),
                        w.height(),
                        w.tops(),
                        w.topArea(),
                        w.joint(),
                        w.faceToRoom(),
                        w.faceToOutdoors(),
                        w.along(),
                        w.joinsAtCorners(),
                        w.tile()
                                .flatMap(t ->
                                        change.of(t.tile()).map(id -> new BlockWall.TileJoint(id, t.conductance())))));
        return s.withSuctionPoints(points).withBlockWalls(walls);
    }

    private static DrainTile sump(DrainTile t, Change change) {
        return new DrainTile(
                t.id(),
                t.path(),
                t.diameter(),
                t.manning(),
                t.slotArea(),
                t.breaks(),
                t.waterFilled(),
                t.sump().flatMap(change::of));
    }

    private static Scenario stages(Scenario s, UnaryOperator<Stage> change) {
        return s.withStages(each(s.stages(), change));
    }

    private static Stage seals(Stage s, Change change) {
        return new Stage(
                s.id(), s.kind(), keys(s.seals(), change), s.sources(), s.holes(), s.systems(), s.time(), s.notes());
    }

    private static Stage sources(Stage s, Change change) {
        List<Stage.SystemReading> systems = s.systems().stream()
                .flatMap(r -> change.of(r.suctionPoint()).stream()
                        .map(id -> new Stage.SystemReading(id, r.flow(), r.riser(), r.time())))
                .toList();
        return new Stage(
                s.id(), s.kind(), s.seals(), keys(s.sources(), change), s.holes(), systems, s.time(), s.notes());
    }

    private static Stage holes(Stage s, Change change) {
        List<Stage.HoleReading> holes = s.holes().stream()
                .flatMap(r -> change.of(r.hole()).stream()
                        .map(id ->
                                new Stage.HoleReading(id, r.fanOff(), r.fanOn(), r.spread(), r.meterStep(), r.time())))
                .toList();
        return new Stage(s.id(), s.kind(), s.seals(), s.sources(), holes, s.systems(), s.time(), s.notes());
    }

    private static <V> Map<String, V> keys(Map<String, V> map, Change change) {
        Map<String, V> other = new HashMap<>();
        map.forEach((key, value) -> change.of(key).ifPresent(k -> other.put(k, value)));
        return other;
    }

    private static <T> List<T> each(List<T> list, UnaryOperator<T> change) {
        return list.stream().map(change).toList();
    }
}
