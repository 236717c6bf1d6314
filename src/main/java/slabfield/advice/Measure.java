package slabfield.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;

/** One thing that could be done to the house. */
public sealed interface Measure {
    /** The house after it is done. */
    Scenario apply(Scenario before);

    /** What to do, for a person, without numbers of place. */
    String words();

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
    }

    /** Close all openings and block tops. */
    record SealAll() implements Measure {
        @Override
        public Scenario apply(Scenario before) {
            Seal seal = Seal.of(SealState.SEALED);
            return before.withOpenings(before.openings().stream()
                            .map(o -> o.seal().fraction() < seal.fraction() ? o.with(seal) : o)
                            .toList())
                    .withBlockWalls(before.blockWalls().stream()
                            .map(w -> w.tops().fraction() < seal.fraction() ? w.with(seal) : w)
                            .toList());
        }

        @Override
        public String words() {
            return "seal everything that is open";
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
    }

    /** True where an opening is open enough that sealing it is worth a look. */
    static boolean worthSealing(Opening o) {
        return o.seal().fraction() < SealState.SEALED.assumedFraction();
    }
}
