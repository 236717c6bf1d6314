package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;

/** A session's answers are those of solves from scratch, and take fewer steps. */
class SolveSessionTest {
    private static Scenario house() {
        return Houses.on(1e-7, 1500)
                .rectangle(0, 0, 10, 8)
                .tile(null, java.util.List.of(), 1, 1, 9, 1, 9, 7)
                .opening("joint", new Opening.Perimeter("slab 0"), new Opening.Crack(5e-4, 0))
                .opening("hole", new Opening.Spot(new Point(7, 5), 0.05), new Opening.Orifice(1e-3, 0.61))
                .leakance(1e-6)
                .outdoors(2)
                .suction("S", 2.5, 4, 0.15, new Source.Pressure(-250))
                .cell(0.2)
                .scenario();
    }

    private static int steps(SolveSession session, Scenario scenario) {
        AtomicInteger steps = new AtomicInteger();
        Result warm = session.solve(scenario, SlabSolver.Extent.FAN_ON_ONLY, new Progress() {
            @Override
            public void step(int done, int total, double residual) {
                steps.incrementAndGet();
            }
        });
        Result cold = SlabSolver.solve(scenario, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
        double[] a = ((Result.Solved) warm).field().pressure(),
                b = ((Result.Solved) cold).field().pressure();
        for (int c = 0; c < a.length; c++)
            if (!Double.isNaN(b[c])) assertThat(a[c]).isCloseTo(b[c], within(1e-8 * Math.abs(b[c]) + 1e-10));
        return steps.get();
    }

    @Test
    void aDraggedPointASealAndAnotherGridAreFollowed() {
        SolveSession session = new SolveSession();
        Scenario house = house();
        int first = steps(session, house);
        int moved = steps(session, house.withSuctionPoint("S", s -> s.movedTo(new Point(2.6, 4.1))));
        int sealed = steps(session, house.withSeal("joint", Seal.of(SealState.SEALED)));
        int finer = steps(session, house.withCellSize(0.16));
        assertThat(moved).as("steps after a small move").isLessThan(first);
        assertThat(sealed).isLessThanOrEqualTo(first);
        assertThat(finer).isPositive();
    }
}
