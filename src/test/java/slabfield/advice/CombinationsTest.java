package slabfield.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Scenario;

class CombinationsTest {
    private static Scenario house;
    private static Combinations found;

    @BeforeAll
    static void search() {
        house = Basements.plain();
        found = Combinations.search(house, 2, Progress.NONE);
    }

    /** A plan is a whole solve of the house with all its measures, not a sum of gains. */
    @Test
    void everyPlanIsAWholeSolve() {
        List<CombinedPlan> all = new ArrayList<>(found.strongest());
        all.addAll(found.thriftiest());
        all.addAll(found.frontier().best());
        assertThat(found.strongest()).hasSize(3);
        assertThat(all).allSatisfy(p -> {
            Result.Solved again = Basements.solve(p.apply(house));
            assertThat(p.coverage().weakest()).isCloseTo(again.coverage().weakest(), within(1e-4));
            assertThat(p.flows().fromRoom()).isCloseTo(again.flows().fromRoom(), within(1e-8));
        });
    }

    /** The second step is the best of all measures in the house after the first. */
    @Test
    void eachStepIsTheBestOfThatHouse() {
        List<CombinedPlan> chain = found.strongest();
        for (int k = 1; k < chain.size(); k++) {
            double best = Advisor.suggest(chain.get(k - 1).house(), Progress.NONE).stream()
                    .mapToDouble(s -> s.after().weakest())
                    .max()
                    .orElseThrow();
            assertThat(chain.get(k).coverage().weakest()).isCloseTo(best, within(1e-3));
        }
    }

    @Test
    void theThriftyChainKeepsTheTargetOnceItIsMet() {
        assertThat(found.thriftiest()).hasSizeGreaterThan(1);
        for (int k = 1; k < found.thriftiest().size(); k++) {
            CombinedPlan before = found.thriftiest().get(k - 1),
                    after = found.thriftiest().get(k);
            if (!before.meets()) continue;
            assertThat(after.meets()).isTrue();
            assertThat(after.flows().fromRoom()).isLessThan(before.flows().fromRoom());
        }
    }

    @Test
    void theFrontierTradesVacuumAgainstRoomAir() {
        List<CombinedPlan> best = found.frontier().best();
        for (int k = 1; k < best.size(); k++) {
            assertThat(best.get(k).coverage().weakest())
                    .isGreaterThan(best.get(k - 1).coverage().weakest());
            assertThat(best.get(k).flows().fromRoom())
                    .isGreaterThan(best.get(k - 1).flows().fromRoom());
        }
    }

    @Test
    void aCancelledSearchStops() {
        AtomicInteger steps = new AtomicInteger();
        Combinations.search(house, 4, new Progress() {
            @Override
            public boolean isCancelled() {
                return steps.get() >= 3;
            }

            @Override
            public void step(int done, int total, double residual) {
                steps.incrementAndGet();
            }
        });
        assertThat(steps.get()).isLessThan(10);
    }
}
