package slabfield.desktop.viewmodel.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import slabfield.advice.Suggestion;
import slabfield.desktop.viewmodel.Bench;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.field.Result;
import slabfield.model.SealState;
import slabfield.network.SlabSolver;

class PreviewsTest {
    private final Workbench bench = Bench.workbench(Bench.house());
    private final AtomicInteger solves = new AtomicInteger();
    private final Bench.Held held = new Bench.Held();
    private final Previews previews = new Previews(
            bench.document(),
            (s, e, p) -> {
                solves.incrementAndGet();
                return SlabSolver.solve(s, e, p);
            },
            held);

    private Suggestion first() {
        bench.solving().start();
        bench.advising().start();
        return bench.advising().suggestions().get(0);
    }

    @Test
    void aMeasureIsSolvedOnceAndShownWhenItIsDone() {
        Suggestion first = first();
        previews.point(Optional.of(first));
        assertThat(previews.shown().get().orElseThrow().result()).isEmpty();
        held.finishOne();
        Result.Solved with = previews.shown().get().orElseThrow().result().orElseThrow();
        assertThat(with.scenario())
                .isEqualTo(first.measure().apply(bench.document().scenario().get()));
        previews.point(Optional.empty());
        assertThat(previews.shown().get()).isEmpty();
        previews.point(Optional.of(first));
        assertThat(previews.shown().get().orElseThrow().result()).isPresent();
        assertThat(solves).hasValue(1);
    }

    @Test
    void whatWasPointedAtBeforeDoesNotShowUpLater() {
        Suggestion first = first(), second = bench.advising().suggestions().get(1);
        previews.point(Optional.of(first));
        previews.point(Optional.of(second));
        assertThat(held.cancelled).isEqualTo(1);
        held.finishOne();
        assertThat(previews.shown().get().orElseThrow().measure()).isEqualTo(second.measure());
        assertThat(previews.shown().get().orElseThrow().result()).isEmpty();
    }

    @Test
    void aChangedHouseForgetsPreviewsAndTakesNoneOfTheOldOne() {
        previews.point(Optional.of(first()));
        bench.seal("sump", SealState.LOOSE);
        held.finishOne();
        assertThat(previews.shown().get()).isEmpty();
    }
}
