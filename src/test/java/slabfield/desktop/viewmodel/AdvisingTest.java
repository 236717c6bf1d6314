package slabfield.desktop.viewmodel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import slabfield.advice.Measure;
import slabfield.advice.Suggestion;
import slabfield.field.Result;
import slabfield.model.Point;
import slabfield.model.Target;

class AdvisingTest {
    private final Document document = new Document(Bench.house());
    private final Bench.Held held = new Bench.Held();
    private final Result.Coverage coverage = new Result.Coverage(5, 0.5, 1, new Point(0, 0), 0.1);
    private final Result.Flows flows = new Result.Flows(1, 1, 0, 0, java.util.Map.of());
    private final Advising advising = new Advising(
            document,
            (s, p) -> {
                p.step(1, 4, Double.NaN);
                return List.of(new Suggestion(new Measure.SealOpening("sump"), coverage, coverage, flows, flows));
            },
            held);

    private void change() {
        document.edit(Edit.of("target", s -> s.withTarget(new Target(9, "test"))));
    }

    @Test
    void aSearchTellsItsProgressAndItsEnd() {
        advising.start();
        assertThat(advising.search().searching().get()).isTrue();
        held.finishOne();
        assertThat(advising.search().searching().get()).isFalse();
        assertThat(advising.suggestions()).hasSize(1);
        assertThat(advising.search().outOfDate().get()).isFalse();
    }

    @Test
    void aCancelledSearchGivesNoListEvenIfItEndsLater() {
        advising.start();
        advising.search().cancel();
        assertThat(held.cancelled).isEqualTo(1);
        held.finishOne();
        assertThat(advising.suggestions()).isEmpty();
        assertThat(advising.search().message().get()).contains("cancelled");
    }

    @Test
    void aChangeOfTheHouseEndsTheSearch() {
        advising.start();
        change();
        assertThat(advising.search().searching().get()).isFalse();
        held.finishOne();
        assertThat(advising.suggestions()).isEmpty();
    }

    @Test
    void aChangeOfTheHouseMarksTheList() {
        advising.start();
        held.finishOne();
        change();
        assertThat(advising.suggestions()).hasSize(1);
        assertThat(advising.search().outOfDate().get()).isTrue();
    }

    @Test
    void aSuctionPointOfAnOlderListGetsANameThatIsFree() {
        Measure core = new Measure.AddSuction(
                "S2",
                new Point(3, 1),
                new slabfield.model.SuctionPoint.Pit(0.15),
                new slabfield.model.Source.Pressure(-100));
        advising.apply(new Suggestion(core, coverage, coverage, flows, flows));
        advising.apply(new Suggestion(core, coverage, coverage, flows, flows));
        assertThat(document.scenario().get().suctionPoints())
                .extracting(p -> p.id())
                .containsExactly("S1", "S2", "S3");
    }

    @Test
    void aPlaceToCoreIsWrittenInTheUnitChosen() {
        Units units = new Units();
        Measure core = new Measure.AddSuction(
                "S2",
                new Point(1.5, 2),
                new slabfield.model.SuctionPoint.Pit(0.15),
                new slabfield.model.Source.Pressure(-100));
        assertThat(Advising.words(core, units)).isEqualTo("Core S2 at x 1.50 m, y 2.00 m");
    }
}
