package slabfield.desktop.viewmodel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import slabfield.field.Result;
import slabfield.io.ScenarioReader;
import slabfield.io.ScenarioWriter;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.quantity.Unit;

class WorkbenchTest {
    private final Workbench bench = Bench.workbench(Bench.house());

    private Scenario scenario() {
        return bench.document().scenario().get();
    }

    private Result.Solved solved() {
        return bench.solving().picture().get().current().orElseThrow();
    }

    private Point at() {
        return scenario().suctionPoint("S1").orElseThrow().at();
    }

    @Test
    void sealingAnOpeningSolvesAgainAndCanBeUndone() {
        bench.solving().start();
        double before = solved().coverage().weakest();
        bench.seal("sump", SealState.SEALED);
        assertThat(solved().scenario()).isEqualTo(scenario());
        assertThat(solved().coverage().weakest()).isGreaterThan(before + 0.1);
        assertThat(bench.document().undoLabel().get()).contains("sealed: sump");
        bench.document().undo();
        assertThat(solved().coverage().weakest()).isEqualTo(before);
    }

    @Test
    void closingTheTopsOfAWallSolvesAgain() {
        bench.solving().start();
        double before = solved().flows().fromRoom();
        bench.closeTops("north", SealState.SEALED);
        assertThat(solved().flows().fromRoom()).isLessThan(before);
        assertThat(scenario().blockWalls().get(0).tops().state()).isEqualTo(SealState.SEALED);
    }

    @Test
    void theSameStateAgainIsNoStep() {
        bench.seal("sump", SealState.OPEN);
        bench.closeTops("north", SealState.OPEN);
        assertThat(bench.document().undoLabel().get()).isEmpty();
    }

    @Test
    void aFractionThatTheUserGaveStaysWhenTheSameWordIsChosen() {
        Seal given = new Seal(SealState.COVERED, 0.8, false);
        bench.document()
                .open(Bench.house().withSeal("sump", given).withTops("north", given), java.util.Optional.empty());
        bench.seal("sump", SealState.COVERED);
        bench.closeTops("north", SealState.COVERED);
        assertThat(scenario().opening("sump").orElseThrow().seal()).isEqualTo(given);
        assertThat(scenario().blockWalls().get(0).tops()).isEqualTo(given);
    }

    @Test
    void aDragOfManyMovesIsOneStepToUndo() {
        bench.solving().start();
        bench.moves().begin("S1");
        for (int k = 1; k <= 20; k++) bench.moves().dragTo(new Point(1 + 0.1 * k, 2));
        bench.moves().end();
        assertThat(at()).isEqualTo(new Point(3, 2));
        assertThat(solved().scenario()).isEqualTo(scenario());
        bench.document().undo();
        assertThat(at()).isEqualTo(new Point(1, 2));
        assertThat(bench.document().undoLabel().get()).isEmpty();
    }

    @Test
    void twoDragsAreTwoSteps() {
        for (double x : new double[] {2, 3}) {
            bench.moves().begin("S1");
            bench.moves().dragTo(new Point(x, 2));
            bench.moves().end();
        }
        bench.document().undo();
        assertThat(at()).isEqualTo(new Point(2, 2));
    }

    @Test
    void aPointDraggedOffTheSlabOrIntoTheSumpStopsWhereItCanStand() {
        bench.moves().begin("S1");
        bench.moves().dragTo(new Point(-3, 2));
        assertThat(at().x()).isBetween(0.0, 0.05);
        bench.moves().dragTo(new Point(5, 3));
        assertThat(at().distanceTo(new Point(5, 3))).isBetween(0.35, 0.4);
    }

    @Test
    void arrowKeysMoveTheSelectedPointByTheRasterOfTheUnit() {
        bench.moves().nudge(1, 0);
        assertThat(at()).as("none is selected").isEqualTo(new Point(1, 2));
        bench.moves().selectNext();
        bench.moves().nudge(1, 0);
        bench.moves().nudge(10, -1);
        assertThat(at()).isEqualTo(new Point(1.11, 1.99));
        bench.document().undo();
        assertThat(at()).isEqualTo(new Point(1, 2));
        bench.moves().selectNext();
        assertThat(bench.moves().selected().get())
                .as("after the last comes none")
                .isEmpty();
    }

    @Test
    void switchingUnitsChangesTextAloneAndNoScenario() {
        bench.solving().start();
        Scenario before = scenario();
        Result.Solved answer = solved();
        bench.units().pressure().set(Unit.INCH_OF_WATER);
        bench.units().flow().set(Unit.LITRE_PER_SECOND);
        bench.units().length().set(Unit.FOOT);
        assertThat(scenario()).isSameAs(before);
        assertThat(solved()).isSameAs(answer);
        assertThat(bench.document().dirty().get()).isFalse();
        assertThat(Headline.of(answer, bench.units()).get(0).value()).endsWith(" inH2O");
        assertThat(bench.look().style().get().units().pressureSymbol()).isEqualTo("inH2O");
    }

    @Test
    void openingTakesTheUnitsOfTheFile(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("house.json");
        Files.writeString(file, ScenarioWriter.toJson(Bench.house()));
        bench.units().flow().set(Unit.LITRE_PER_SECOND);
        bench.open(file);
        assertThat(bench.units().flow().get()).isEqualTo(Unit.CFM);
        assertThat(scenario()).isEqualTo(Bench.house());
        assertThat(bench.recent()).containsExactly(file);
        assertThat(bench.title()).isEqualTo("house.json \u2013 Slabfield");
    }

    @Test
    void aFileThatCannotBeReadLeavesTheDocumentAndSaysWhy(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("broken.json");
        Files.writeString(file, "{ \"slabfield\": 1, \"slabs\": [] }");
        bench.open(file);
        assertThat(scenario()).isEqualTo(Bench.house());
        assertThat(bench.trouble().get().orElseThrow().text()).contains("broken.json has");
        assertThat(bench.recent()).isEmpty();
    }

    @Test
    void whatIsSavedIsReadBackEqual(@TempDir Path folder) throws Exception {
        bench.moves().begin("S1");
        bench.moves().dragTo(new Point(2.34567, 1.98765));
        bench.moves().end();
        assertThat(bench.title()).startsWith("\u2022 ");
        Path file = folder.resolve("moved.json");
        assertThat(bench.save(file)).isTrue();
        assertThat(ScenarioReader.read(file)).isEqualTo(scenario());
        assertThat(bench.document().dirty().get()).isFalse();
    }

    @Test
    void aSaveThatFailsIsToldAndTheDocumentStaysDirty(@TempDir Path folder) {
        bench.seal("sump", SealState.SEALED);
        assertThat(bench.save(folder.resolve("none").resolve("house.json"))).isFalse();
        assertThat(bench.trouble().get().orElseThrow().text()).contains("folder does not exist");
        assertThat(bench.document().dirty().get()).isTrue();
    }

    @Test
    void aSuggestionIsAppliedAsOneStepThatCanBeUndone() {
        bench.solving().start();
        bench.advising().start();
        assertThat(bench.advising().suggestions()).isNotEmpty();
        var best = bench.advising().suggestions().get(0);
        bench.advising().apply(best);
        // Another solve of the same house, which may begin elsewhere: the same but for its last digits.
        assertThat(solved().coverage().weakest())
                .isCloseTo(best.after().weakest(), within(1e-10 * best.after().weakest()));
        assertThat(bench.advising().search().outOfDate().get()).isTrue();
        bench.document().undo();
        assertThat(scenario()).isEqualTo(Bench.house());
    }

    @Test
    void acceptingTheLicenceIsRemembered() {
        Bench.Kept memory = new Bench.Kept();
        TaskRunner inLine = new InLineRunner();
        Workbench first = new Workbench(
                List.of(new Example("a", Bench.house())),
                memory,
                (s, e, p) -> null,
                (s, p) -> List.of(),
                new Workbench.Runners(inLine, inLine, inLine, inLine));
        assertThat(first.accepted().get()).isFalse();
        first.accept();
        assertThat(first.accepted().get()).isTrue();
        assertThat(memory.accepted()).isTrue();
    }
}
