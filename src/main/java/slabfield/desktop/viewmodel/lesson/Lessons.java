package slabfield.desktop.viewmodel.lesson;

import java.util.List;
import java.util.function.UnaryOperator;
import slabfield.desktop.viewmodel.lesson.Lesson.Question;
import slabfield.model.Barrier;
import slabfield.model.DrainTile;
import slabfield.model.Gap;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;

/** The lessons that come with the program, in the order in which they build on each other. All houses and fans are invented. */
public final class Lessons {
    private static final UnaryOperator<Scenario> AS_DRAWN = s -> s;

    private Lessons() {}

    public static List<Lesson> all() {
        return List.of(sealing(), footing(), doorway(), pit(), tile(), brokenTile(), biggerFan(), farLeak());
    }

    private static UnaryOperator<Scenario> sealed(String opening) {
        return s -> s.withSeal(opening, Seal.of(SealState.SEALED));
    }

    private static Lesson sealing() {
        return new Lesson(
                "sealing",
                "Why sealing matters",
                "A fan draws at S1 from a gravelly fill, and the joint between slab and wall is open all round. The joint is going to be"
                        + " caulked. The fan, its pipe and the pit stay as they are.",
                "open-joint.json",
                AS_DRAWN,
                sealed("perimeter joint"),
                "joint open",
                "joint sealed",
                List.of(
                        new Question("What happens to the vacuum at the far hole T4?", "hole T4"),
                        new Question("What happens to the flow that the fan draws?", "exhaust"),
                        new Question("What happens to the vacuum in the pit at S1?", "pit S1")),
                "The fan drew {before:exhaust} and then {after:exhaust}. Most of it had been room air that fell through the joint, and"
                        + " all of that had to cross the fill to the pit, so the vacuum was used up on the way: at T4 {before:hole T4}"
                        + " before, {after:hole T4} after. With less to move, the fan holds more vacuum in the pit too: {before:pit S1}"
                        + " before, {after:pit S1} after. The part of the area on target went from {before:area} to {after:area}. Both maps"
                        + " have one scale; with a scale of its own each would look alike and hide the loss.");
    }

    private static Lesson footing() {
        return new Lesson(
                "footing",
                "A footing across the slab",
                "The same kind of house with its joint sealed. What if a footing that nobody had on a drawing runs across the slab between S1"
                        + " and the far side, without any gap?",
                "bearing-wall.json",
                s -> s.withBarriers(List.of()),
                AS_DRAWN,
                "no footing",
                "footing without a gap",
                List.of(
                        new Question("What happens to the vacuum at T4, beyond the footing?", "hole T4"),
                        new Question("What happens to the vacuum at T1, on the near side?", "hole T1"),
                        new Question("What happens to the flow that the fan draws?", "exhaust")),
                "Beyond the footing the vacuum went from {before:hole T4} to {after:hole T4}. On the near side it went from {before:hole T1} to"
                        + " {after:hole T1}, while the flow went from {before:exhaust} to {after:exhaust}: the leaks beyond no longer feed the pit."
                        + " More vacuum near by with less flow, and nothing further on, is how a barrier shows. A leak would show as less vacuum"
                        + " with more flow.");
    }

    private static Lesson doorway() {
        return new Lesson(
                "doorway",
                "What a gap in the footing lets through",
                "The footing is there, but a doorway leaves it open over the width of a door, with the same fill in the gap.",
                "bearing-wall.json",
                AS_DRAWN,
                s -> withGaps(s, List.of(new Gap(new Point(7, 4.2), 0.9))),
                "footing without a gap",
                "with a doorway",
                List.of(
                        new Question("What happens to the vacuum at T4, beyond the footing?", "hole T4"),
                        new Question("What happens to the vacuum at T1, on the near side?", "hole T1")),
                "Through a gap of one door the vacuum at T4 went from {before:hole T4} to {after:hole T4}, and the near side gave up little for"
                        + " it: T1 went from {before:hole T1} to {after:hole T1}. So a footing is worth a hole on its far side and one in line with"
                        + " each doorway before a second suction point is cored.");
    }

    private static Scenario withGaps(Scenario s, List<Gap> gaps) {
        return s.withBarriers(s.barriers().stream()
                .map(b -> new Barrier(b.id(), b.path(), b.width(), b.permeability(), b.known(), gaps))
                .toList());
    }

    private static Lesson pit() {
        return new Lesson(
                "pit",
                "Tight fill and the size of the pit",
                "Tight, silty sand lies under the slab, and the pipe ends in a pit no larger than a fist. The pit is going to be dug out to a"
                        + " bucket's size, about three times the radius. The fan holds the same vacuum in the pit either way.",
                "tight-fill.json",
                s -> pit(s, 0.1),
                s -> pit(s, 0.3),
                "small pit",
                "large pit",
                List.of(
                        new Question("What happens to the vacuum at T1?", "hole T1"),
                        new Question("What happens to the flow?", "exhaust")),
                "In tight fill most of the vacuum is lost in the first hand's breadths round the pit, where the air crowds together. The larger"
                        + " pit took that stretch away: T1 went from {before:hole T1} to {after:hole T1}, T3 from {before:hole T3} to {after:hole T3},"
                        + " and the flow from {before:exhaust} to {after:exhaust}. Digging costs less than a fan, and no fan does the same: all"
                        + " readings grow in one proportion.");
    }

    private static Scenario pit(Scenario s, double radius) {
        return s.withSuctionPoint(
                "S1",
                p -> new SuctionPoint(
                        p.id(), p.at(), p.tile(), new SuctionPoint.Pit(radius), p.source(), p.openWhenOff()));
    }

    private static Lesson tile() {
        return new Lesson(
                "tile",
                "Suction on a drain tile loop",
                "The same tight sand, now with a drain tile all round inside the footing. The suction goes from a pit at S1 to the tile: the same"
                        + " fan, teed in beside the same place.",
                "tile-loop.json",
                s -> s.withDrainTiles(List.of())
                        .withSuctionPoint(
                                "S1",
                                p -> new SuctionPoint(
                                        p.id(),
                                        p.at(),
                                        java.util.Optional.empty(),
                                        new SuctionPoint.Pit(0.15),
                                        p.source(),
                                        p.openWhenOff())),
                AS_DRAWN,
                "pit, no tile",
                "on the tile loop",
                List.of(
                        new Question("What happens to the vacuum at the far hole T4?", "hole T4"),
                        new Question("What happens to the flow?", "exhaust")),
                "The tile carries the vacuum along the walls almost without loss and lets it into the sand over its whole length: T4 went from"
                        + " {before:hole T4} to {after:hole T4}, the flow from {before:exhaust} to {after:exhaust}. In tight fill a loop that is"
                        + " whole is worth more than any pit.");
    }

    private static Lesson brokenTile() {
        return new Lesson(
                "broken tile",
                "The same loop, broken",
                "The tile is broken at both ends of the far side: long ago it was cut for a sewer, and nobody mended it.",
                "tile-loop.json",
                AS_DRAWN,
                s -> s.withDrainTiles(
                        s.drainTiles().stream().map(Lessons::broken).toList()),
                "loop whole",
                "far side cut off",
                List.of(
                        new Question("What happens to the vacuum at T4, beside the part cut off?", "hole T4"),
                        new Question("What happens to the vacuum at T1, near S1?", "hole T1")),
                "T4, beside the part cut off, went from {before:hole T4} to {after:hole T4}; T1, whose side still hangs on the fan, from"
                        + " {before:hole T1} to {after:hole T1}. Good near the suction and poor along one stretch of wall: suspect the tile before"
                        + " the fill, and look into it with a camera or a flow test.");
    }

    private static DrainTile broken(DrainTile tile) {
        List<Gap> breaks = List.of(new Gap(new Point(9, 0.4), 0.5), new Gap(new Point(9, 6.6), 0.5));
        return new DrainTile(
                tile.id(),
                tile.path(),
                tile.diameter(),
                tile.manning(),
                tile.slotArea(),
                breaks,
                tile.waterFilled(),
                tile.sump());
    }

    private static Lesson biggerFan() {
        return new Lesson(
                "bigger fan",
                "A bigger fan on a leaky slab",
                "The leaky house of the first lesson. Instead of sealing the joint, somebody puts in two of the same fan, one behind the other: at"
                        + " every flow they make twice the vacuum.",
                "open-joint.json",
                AS_DRAWN,
                Lessons::twice,
                "one fan",
                "two fans in series",
                List.of(
                        new Question("What happens to the vacuum at the far hole T4?", "hole T4"),
                        new Question("What happens to the room air that is drawn out of the house?", "roomAir")),
                "Twice the fan brought T4 from {before:hole T4} to {after:hole T4}, and the room air drawn out, which somebody pays to heat, from"
                        + " {before:roomAir} to {after:roomAir}. The part of the area on target went from {before:area} to {after:area}. Compare with"
                        + " what caulk did in the first lesson: seal first, then choose the fan.");
    }

    private static Scenario twice(Scenario s) {
        return s.withSuctionPoint("S1", p -> {
            Source.Fan fan = (Source.Fan) p.source();
            List<Double> rises = fan.curve().rises().stream().map(r -> 2 * r).toList();
            return p.drawnBy(
                    new Source.Fan(new Source.FanCurve(fan.curve().flows(), rises), fan.run(), fan.discharge()));
        });
    }

    private static Lesson farLeak() {
        return new Lesson(
                "far leak",
                "One leak far away",
                "A well sealed house on a gravelly fill; only a sump in the far corner stands open. Its lid is going to be closed.",
                "far-sump.json",
                AS_DRAWN,
                sealed("sump"),
                "sump open",
                "sump sealed",
                List.of(
                        new Question("What happens to the vacuum at T1, near the suction?", "hole T1"),
                        new Question("What happens to the vacuum at T4, near the sump?", "hole T4"),
                        new Question("What happens to the flow?", "exhaust")),
                "Near the suction hardly anything tells of the sump: T1 went from {before:hole T1} to {after:hole T1}. T4 beside it went from"
                        + " {before:hole T4} to {after:hole T4}, and the flow from {before:exhaust} to {after:exhaust}. A far leak, like a far footing,"
                        + " shows only in a hole on its own side: the most distant spot that can be reached deserves one.");
    }
}
