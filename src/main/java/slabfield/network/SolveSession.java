package slabfield.network;

import java.util.List;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Scenario;

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
        }
        SlabSolver.Answer answer = SlabSolver.solve(scenario, extent, progress, new LayerGrid(bare), guess, room);
        guess = answer.guess();
        return answer.result();
    }
}
