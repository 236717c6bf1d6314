package slabfield.desktop.viewmodel.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import slabfield.desktop.viewmodel.Bench;
import slabfield.desktop.viewmodel.Edit;
import slabfield.desktop.viewmodel.InLineRunner;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.figure.VacuumScale.Range;
import slabfield.figure.VacuumScale.Sense;
import slabfield.model.SealState;
import slabfield.network.SlabSolver;

class OptionsTest {
    private final Workbench bench = Bench.workbench(Bench.house());
    private final Variants variants = new Variants(bench.document(), t -> {});
    private final AtomicInteger solves = new AtomicInteger();
    private final Options options = new Options(
            variants,
            bench.units(),
            (s, e, p) -> {
                solves.incrementAndGet();
                return SlabSolver.solve(s, e, p);
            },
            new InLineRunner());

    @Test
    void nothingIsSolvedUntilSomebodyLooksAndThenEachHouseOnce() {
        variants.branch("sealed");
        bench.seal("sump", SealState.SEALED);
        assertThat(solves).hasValue(0);
        options.watched().set(true);
        assertThat(solves).hasValue(2);
        assertThat(options.rows()).allSatisfy(r -> assertThat(r.note()).isEmpty());
        assertThat(options.rows().get(0).cells().get(0))
                .isNotEqualTo(options.rows().get(1).cells().get(0));
        variants.switchTo(variants.rows().get(0).id());
        variants.rename(variants.rows().get(1).id(), "another name");
        assertThat(solves).as("a name or a switch changes no house").hasValue(2);
    }

    @Test
    void thePairHasOneScaleThatHoldsBoth() {
        variants.branch("deeper");
        bench.document()
                .edit(Edit.of(
                        "deeper",
                        s -> s.withSuctionPoint("S1", p -> p.drawnBy(new slabfield.model.Source.Pressure(-900)))));
        options.watched().set(true);
        Options.Pair pair = options.pair().get().orElseThrow();
        assertThat(pair.before().name()).isEqualTo(Variants.FIRST);
        assertThat(pair.after().name()).isEqualTo("deeper");
        Range shared = Options.shared(pair, Sense.SIGNED, 1);
        assertThat(shared.low()).isLessThanOrEqualTo(-500);
        assertThat(Options.shared(
                        new Options.Pair(pair.after(), pair.before(), pair.other(), pair.one()), Sense.SIGNED, 1))
                .isEqualTo(shared);
    }

    @Test
    void anotherAssumptionIsNamedAndAHouseWithoutAnAnswerSaysWhy() {
        variants.branch("other grid");
        bench.document().edit(Edit.of("grid", s -> s.withCellSize(0.5).withOutdoorPressure(0)));
        options.watched().set(true);
        assertThat(options.rows().get(1).note()).contains("grid").contains("pressure outdoors");
        bench.document()
                .edit(Edit.of(
                        "sealed in",
                        s -> s.withSoilLeakance(0)
                                .withOpenings(java.util.List.of())
                                .withBlockWalls(java.util.List.of())
                                .withSuctionPoint("S1", p -> p.drawnBy(new slabfield.model.Source.Flow(0.01)))));
        assertThat(options.rows().get(1).note()).contains("no air can come");
        assertThat(options.rows().get(1).cells()).containsOnly("\u2013");
        assertThat(options.pair().get()).isEmpty();
    }

    @Test
    void theDividerStaysWithinTheMap() {
        options.moveDivider(0.7);
        assertThat(options.divider().get()).isEqualTo(1);
        options.moveDivider(-3);
        assertThat(options.divider().get()).isZero();
    }
}
