package slabfield.advice;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import slabfield.equipment.FanPlacement;
import slabfield.equipment.InstalledFan;
import slabfield.model.FanOffer;
import slabfield.model.Gap;
import slabfield.model.NominalPipe;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;

/** One thing that could be done to the house. Applying it makes another scenario, so that it can be undone as one step. */
public sealed interface Measure {
    /** The house after it is done. */
    Scenario apply(Scenario before);

    /** What to do, for a person, without numbers of place. */
    String words();

    /** What sort of work it is. */
    Kind kind();

    /** Where on the plan the work is; empty where no single place says it. */
    default Optional<Point> where() {
        return Optional.empty();
    }

    /** Sorts of work. */
    enum Kind {
        SEAL("sealing"),
        TEST_COVER("temporary cover"),
        SUCTION("suction point"),
        PIT("pit"),
        TILE("drain tile"),
        BARRIER("break through a footing"),
        EQUIPMENT("pipe or fan");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Close one opening. */
    record SealOpening(String opening) implements Measure {
        @Override
        public Scenario apply(Scenario before) {
            return before.withSeal(opening, Seal.of(SealState.SEALED));
        }

        @Override
        public String words() {
            return "seal \"" + opening + "\"";
        }

        @Override
        public Kind kind() {
            return Kind.SEAL;
        }
    }

    /** Close the block tops of one wall. */
    record SealTops(String wall) implements Measure {
        @Override
        public Scenario apply(Scenario before) {
            return before.withTops(wall, Seal.of(SealState.SEALED));
        }

        @Override
        public String words() {
            return "close the block tops of \"" + wall + "\"";
        }

        @Override
        public Kind kind() {
            return Kind.SEAL;
        }
    }

    /**
     * Close several openings and block tops in one go.
     *
     * @param name what they are, such as "every joint"
     * @param ids of openings and block walls
     */
    record SealGroup(String name, List<String> ids) implements Measure {
        public SealGroup {
            ids = List.copyOf(ids);
        }

        @Override
        public Scenario apply(Scenario before) {
            Set<String> chosen = new HashSet<>(ids);
            Seal seal = Seal.of(SealState.SEALED);
            return before.withOpenings(before.openings().stream()
                            .map(o -> chosen.contains(o.id()) && worthSealing(o) ? o.with(seal) : o)
                            .toList())
                    .withBlockWalls(before.blockWalls().stream()
                            .map(w ->
                                    chosen.contains(w.id()) && w.tops().fraction() < seal.fraction() ? w.with(seal) : w)
                            .toList());
        }

        @Override
        public String words() {
            return "seal " + name;
        }

        @Override
        public Kind kind() {
            return Kind.SEAL;
        }
    }

    /** Close all openings and block tops. */
    record SealAll() implements Measure {
        @Override
        public Scenario apply(Scenario before) {
            return before.withAllClosed(Seal.of(SealState.SEALED));
        }

        @Override
        public String words() {
            return "seal everything that is open";
        }

        @Override
        public Kind kind() {
            return Kind.SEAL;
        }
    }

    /** Lay a cover over an opening, or over the block tops of a wall, for as long as it takes to read again. */
    record CoverForTest(String id) implements Measure {
        @Override
        public Scenario apply(Scenario before) {
            Seal cover = Seal.of(SealState.COVERED);
            return before.opening(id).isPresent() ? before.withSeal(id, cover) : before.withTops(id, cover);
        }

        @Override
        public String words() {
            return "cover \"" + id + "\" for a test and read again";
        }

        @Override
        public Kind kind() {
            return Kind.TEST_COVER;
        }
    }

    /**
     * Core another suction point.
     *
     * @param id name of the new point
     * @param at place on the plan
     * @param pit dug below it
     * @param source what draws there
     */
    record AddSuction(String id, Point at, SuctionPoint.Pit pit, Source source) implements Measure {
        @Override
        public Scenario apply(Scenario before) {
            List<SuctionPoint> points = new ArrayList<>(before.suctionPoints());
            points.add(new SuctionPoint(id, at, Optional.empty(), pit, source, false));
            return before.withSuctionPoints(points);
        }

        @Override
        public String words() {
            return "core a suction point";
        }

        @Override
        public Kind kind() {
            return Kind.SUCTION;
        }

        @Override
        public Optional<Point> where() {
            return Optional.of(at);
        }
    }

    /**
     * Core a suction point elsewhere instead of where it is drawn; a pipe teed into a tile then ends in its own pit.
     *
     * @param id of the point
     * @param place where it would be instead
     */
    record MoveSuction(String id, Point place) implements Measure {
        @Override
        public Scenario apply(Scenario before) {
            return before.withSuctionPoint(
                    id, s -> new SuctionPoint(id, place, Optional.empty(), s.pit(), s.source(), s.openWhenOff()));
        }

        @Override
        public String words() {
            return "core \"" + id + "\" elsewhere";
        }

        @Override
        public Kind kind() {
            return Kind.SUCTION;
        }

        @Override
        public Optional<Point> where() {
            return Optional.of(place);
        }
    }

    /**
     * Dig a bigger pit.
     *
     * @param id of the suction point
     * @param pit as large as it would be
     */
    record EnlargePit(String id, SuctionPoint.Pit pit) implements Measure {
        @Override
        public Scenario apply(Scenario before) {
            return before.withSuctionPoint(id, s -> s.with(pit));
        }

        @Override
        public String words() {
            return "dig a bigger pit below \"" + id + "\"";
        }

        @Override
        public Kind kind() {
            return Kind.PIT;
        }
    }

    /**
     * Lead the suction into a drain tile instead of a pit.
     *
     * @param id of the suction point
     * @param tile id of the tile
     * @param place on the tile
     */
    record TeeIntoTile(String id, String tile, Point place) implements Measure {
        @Override
        public Scenario apply(Scenario before) {
            return before.withSuctionPoint(id, s -> s.teedInto(tile, place));
        }

        @Override
        public String words() {
            return "connect \"" + id + "\" to tile \"" + tile + "\"";
        }

        @Override
        public Kind kind() {
            return Kind.TILE;
        }

        @Override
        public Optional<Point> where() {
            return Optional.of(place);
        }
    }

    /** Mend the breaks of a drain tile. */
    record MendTile(String tile) implements Measure {
        @Override
        public Scenario apply(Scenario before) {
            return before.withDrainTile(tile, t -> t.withBreaks(List.of()));
        }

        @Override
        public String words() {
            return "mend the breaks of tile \"" + tile + "\"";
        }

        @Override
        public Kind kind() {
            return Kind.TILE;
        }
    }

    /** Let the water out of a drain tile. */
    record EmptyTile(String tile) implements Measure {
        @Override
        public Scenario apply(Scenario before) {
            return before.withDrainTile(tile, t -> t.withWaterFilled(List.of()));
        }

        @Override
        public String words() {
            return "let the water out of tile \"" + tile + "\"";
        }

        @Override
        public Kind kind() {
            return Kind.TILE;
        }
    }

    /**
     * Break through a barrier.
     *
     * @param barrier its id
     * @param gap that would be made
     */
    record OpenBarrier(String barrier, Gap gap) implements Measure {
        @Override
        public Scenario apply(Scenario before) {
            return before.withBarrier(barrier, b -> {
                List<Gap> gaps = new ArrayList<>(b.gaps());
                gaps.add(gap);
                return b.withGaps(gaps);
            });
        }

        @Override
        public String words() {
            return "break through \"" + barrier + "\"";
        }

        @Override
        public Kind kind() {
            return Kind.BARRIER;
        }

        @Override
        public Optional<Point> where() {
            return Optional.of(gap.at());
        }
    }

    /** Put another fan into every place. */
    record ChangeFan(FanOffer fan) implements Measure {
        @Override
        public Scenario apply(Scenario before) {
            return FanPlacement.with(before, InstalledFan.in(before, fan).curve());
        }

        @Override
        public String words() {
            return "use fan \"" + fan.id() + "\"";
        }

        @Override
        public Kind kind() {
            return Kind.EQUIPMENT;
        }
    }

    /** Lay every pipe in another size. */
    record ChangePipe(NominalPipe size) implements Measure {
        @Override
        public Scenario apply(Scenario before) {
            return FanPlacement.withPipes(before, p -> p.withDiameter(size.insideDiameter()));
        }

        @Override
        public String words() {
            return "use pipe of " + size.word();
        }

        @Override
        public Kind kind() {
            return Kind.EQUIPMENT;
        }
    }

    /** True where an opening is open enough that sealing it is worth a look. */
    static boolean worthSealing(Opening o) {
        return o.seal().fraction() < SealState.SEALED.assumedFraction();
    }
}
