package slabfield.desktop.viewmodel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Stage;

class ReadingsTest {
    private final Workbench bench = Bench.workbench(Bench.withStages(
            Bench.house(),
            List.of(
                    Bench.stage("sump sealed", Map.of("sump", Seal.of(SealState.SEALED)), -40),
                    Bench.stage("as drawn", Map.of(), 3))));

    private HoleRow row(int k) {
        return bench.readings().rows().get(k);
    }

    @Test
    void theLatestStageIsComparedFirst() {
        bench.solving().start();
        assertThat(bench.readings().stage().get().orElseThrow().id()).isEqualTo("as drawn");
        assertThat(row(0).measured()).hasValue(3);
        assertThat(row(0).difference().orElseThrow())
                .as("on minus off, where both were read")
                .isEqualTo(3
                        - row(0).measuredOff().orElseThrow()
                        - (row(0).predicted().orElseThrow()
                                - row(0).predictedOff().orElseThrow()));
        assertThat(row(0).off()).isTrue();
        assertThat(row(0).verdict()).isEqualTo("weaker than expected");
    }

    @Test
    void aHoleWithoutAReadingIsListedWithItsPrediction() {
        bench.solving().start();
        assertThat(row(1).hole()).isEqualTo("T2");
        assertThat(row(1).predicted()).isPresent();
        assertThat(row(1).verdict()).isEqualTo("not read");
    }

    @Test
    void aStageThatDiffersIsPredictedForTheHouseAsItStood() {
        bench.solving().start();
        double drawn = row(0).predicted().orElseThrow();
        bench.readings().stage().set(Optional.of(bench.readings().stages().get(0)));
        double then = row(0).predicted().orElseThrow();
        assertThat(then).isLessThan(drawn - 0.1);
        assertThat(bench.readings().note().get()).contains("as it stood");
        bench.seal("sump", SealState.SEALED);
        assertThat(bench.solving()
                        .picture()
                        .get()
                        .current()
                        .orElseThrow()
                        .hole("T1")
                        .orElseThrow()
                        .fanOn())
                .hasValue(then);
    }

    @Test
    void readingsOlderThanAChangeOfTheHouseAreMarked() {
        bench.solving().start();
        assertThat(bench.readings().note().get()).isEmpty();
        bench.seal("sump", SealState.SEALED);
        assertThat(bench.readings().note().get()).contains("taken before");
        bench.document().undo();
        assertThat(bench.readings().note().get()).isEmpty();
    }

    @Test
    void withoutAPredictionTheReadingsStandAlone() {
        Bench.Held held = new Bench.Held();
        TaskRunner inLine = new InLineRunner();
        Workbench slow = new Workbench(
                List.of(new Example(
                        "a", Bench.withStages(Bench.house(), bench.readings().stages()))),
                new Bench.Kept(),
                new Workbench.Runners(held, inLine, inLine, inLine));
        slow.solving().start();
        HoleRow first = slow.readings().rows().get(0);
        assertThat(first.measured()).hasValue(3);
        assertThat(first.measuredOff()).isPresent();
        assertThat(first.predicted()).isEmpty();
        assertThat(first.verdict()).isEqualTo("no prediction");
        assertThat(slow.readings().rows().get(1).verdict()).isEqualTo("not read");
        slow.readings().stage().set(Optional.of(slow.readings().stages().get(0)));
        assertThat(slow.readings().rows().get(0).measured())
                .as("of the other stage")
                .hasValue(-40);
    }

    @Test
    void withoutAStageThePredictionStandsAlone() {
        bench.solving().start();
        bench.readings().stage().set(Optional.empty());
        assertThat(row(0).measured()).isEmpty();
        assertThat(row(0).predicted()).isPresent();
        assertThat(row(0).predictedOff()).isPresent();
    }

    @Test
    void rowsOfAnotherHouseNeverStay() {
        bench.solving().start();
        bench.document().open(new ExampleHouse().oneHole(), Optional.empty());
        assertThat(bench.readings().rows()).extracting(HoleRow::hole).containsExactly("only");
    }

    @Test
    void rowsOfAnotherHouseDoNotStayWhileItIsSolved() {
        Bench.Held held = new Bench.Held();
        TaskRunner inLine = new InLineRunner();
        Workbench slow = new Workbench(
                List.of(new Example(
                        "a", Bench.withStages(Bench.house(), bench.readings().stages()))),
                new Bench.Kept(),
                new Workbench.Runners(held, inLine, inLine, inLine));
        slow.solving().start();
        held.finishOne();
        slow.document()
                .open(
                        Bench.withStages(
                                new ExampleHouse().oneHole(),
                                bench.readings().stages().stream()
                                        .map(stage -> new Stage(
                                                stage.id(),
                                                stage.kind(),
                                                stage.seals(),
                                                stage.sources(),
                                                List.of(),
                                                stage.systems(),
                                                "",
                                                ""))
                                        .toList()),
                        Optional.empty());
        assertThat(slow.readings().rows()).extracting(HoleRow::hole).containsExactly("only");
        assertThat(slow.readings().note().get()).contains("Waiting");
    }

    private static final class ExampleHouse {
        slabfield.model.Scenario oneHole() {
            slabfield.model.Scenario s = Bench.house();
            return new slabfield.model.Scenario(
                    "other",
                    "",
                    "",
                    s.display(),
                    s.slabs(),
                    s.layer(),
                    s.barriers(),
                    s.drainTiles(),
                    s.blockWalls(),
                    s.openings(),
                    s.soilLeakance(),
                    s.outdoorPressure(),
                    s.air(),
                    s.suctionPoints(),
                    List.of(new slabfield.model.TestHole("only", new slabfield.model.Point(1, 1), "")),
                    List.of(),
                    s.target(),
                    0.25);
        }
    }
}
