package slabfield.network;

import java.util.List;
import java.util.Optional;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.SuctionPoint;

/**
 * Solves one house after another where each differs little from the last: while slabs, layer, barriers, soil, air and
 * cell size stay the same the grid is not laid anew, and each solve starts from the last answer. The answers are those of
 * {@link SlabSolver} to its tolerance. For one thread at a time.
 */
public final class SolveSession {
    private List<Object> ground = List.of();
    private LayerGrid bare;
    private Guess guess = Guess.NONE;
    private FactorRoom room = FactorRoom.kept();
    private Scenario last;

    /** As {@link SlabSolver#solve(Scenario, SlabSolver.Extent, Progress)}. */
    public Result solve(Scenario scenario, SlabSolver.Extent extent, Progress progress) {
        List<Object> now = List.of(
                scenario.slabs(),
                scenario.layer(),
                scenario.barriers(),
                scenario.soilLeakance(),
                scenario.air(),
                scenario.cellSize());
        if (!now.equals(ground)) {
            bare = new LayerGrid(scenario, SlabSolver.airOf(scenario));
            ground = now;
            guess = Guess.NONE;
            room = FactorRoom.kept();
        } else carryAlong(scenario);
        last = scenario;
        SlabSolver.Answer answer = SlabSolver.solve(scenario, extent, progress, new LayerGrid(bare), guess, room);
        guess = answer.guess();
        return answer.result();
    }

    /** Takes the guess along with pits and spot openings that have moved since the last solve. */
    private void carryAlong(Scenario now) {
        for (SuctionPoint s : now.suctionPoints())
            if (s.tile().isEmpty()) last.suctionPoint(s.id()).ifPresent(was -> carry(was.at(), s.at()));
        for (Opening o : now.openings())
            spot(o).ifPresent(to -> last.openings().stream()
                    .filter(was -> was.id().equals(o.id()))
                    .findFirst()
                    .flatMap(SolveSession::spot)
                    .ifPresent(from -> carry(from, to)));
    }

    private static Optional<Point> spot(Opening o) {
        return o.place() instanceof Opening.Spot s ? Optional.of(s.at()) : Optional.empty();
    }

    private void carry(Point from, Point to) {
        if (!from.equals(to)) guess = guess.carried(bare, from, to);
    }
}
