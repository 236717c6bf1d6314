package slabfield.desktop.viewmodel.find;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import slabfield.advice.Measure;
import slabfield.advice.Suggestion;
import slabfield.desktop.viewmodel.Bench;
import slabfield.desktop.viewmodel.HouseSearch;
import slabfield.desktop.viewmodel.InLineRunner;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.field.Result;
import slabfield.figure.ChangeLayer;
import slabfield.figure.MarksLayer;
import slabfield.figure.MaskLayer;
import slabfield.figure.ValueLayer;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.SealState;
import slabfield.network.SlabSolver;
import slabfield.quantity.Unit;

class FindingsTest {
    private static final Scenario READ = ReadHouse.withReadings();

    private final Workbench bench = Bench.workbench(READ);
    private final AtomicInteger solves = new AtomicInteger();
    private final Findings findings = new Findings(
            bench,
            (s, e, p) -> {
                solves.incrementAndGet();
                return SlabSolver.solve(s, e, p);
            },
            new InLineRunner(),
            new InLineRunner());

    @BeforeEach
    void look() {
        bench.solving().start();
        findings.watched().set(true);
    }

    private Page turnTo(String title) {
        Page page = findings.pages().stream()
                .filter(p -> p.title().equals(title))
                .findFirst()
                .orElseThrow();
        findings.page().set(page);
        return page;
    }

    private Sheet run(String title) {
        turnTo(title).jobs().stream().limit(1).forEach(j -> j.start().run());
        return findings.sheet().get();
    }

    private Scenario house() {
        return bench.document().scenario().get();
    }

    private Picture.Plan plan() {
        return (Picture.Plan) findings.picture().get().orElseThrow();
    }

    private <T> T layer(Class<T> kind) {
        return plan().layers().stream()
                .filter(kind::isInstance)
                .map(kind::cast)
                .findFirst()
                .orElseThrow();
    }

    private static Sheet.Row row(Sheet sheet, int table, String first) {
        return sheet.tables().get(table).rows().stream()
                .filter(r -> r.cells().get(0).contains(first))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void comparingSaysWhichHolesDifferAndFollowsTheHouse() {
        Sheet before = findings.sheet().get();
        assertThat(before.headline()).contains("test");
        assertThat(before.tables().get(0).rows())
                .extracting(r -> r.cells().get(0))
                .containsExactly("T1", "T2", "T3", "T4");
        assertThat(findings.picture().get().orElseThrow()).isInstanceOf(Picture.Drawn.class);
        String predicted = before.tables().get(0).rows().get(0).cells().get(1);
        bench.document().edit(slabfield.desktop.viewmodel.Edit.of("truth", ReadHouse::truth));
        Sheet after = findings.sheet().get();
        assertThat(after.tables().get(0).rows().get(0).cells().get(1)).isNotEqualTo(predicted);
        assertThat(after.headline()).contains("No hole differs");
    }

    @Test
    void anotherStageIsComparedWithOnePress() {
        var first = READ.stages().get(0);
        bench.document().open(READ.withStages(List.of(first, Bench.stage("later", Map.of(), -30))), Optional.empty());
        assertThat(findings.sheet().get().headline()).contains("later");
        findings.sheet().get().acts().get(0).run().run();
        assertThat(findings.sheet().get().headline()).contains("\u201ctest\u201d");
    }

    @Test
    void aFitPutsItsValuesIntoTheDrawingAsOneStepThatCanBeUndone() {
        Sheet sheet = run("Fit");
        double drawn = READ.layer().fill().permeability();
        assertThat(row(sheet, 0, "permeability of the fill").cells().get(1)).isEqualTo("found");
        assertThat(sheet.headline()).contains("of 80 houses");
        sheet.acts().get(0).run().run();
        assertThat(house().layer().fill().permeability()).isCloseTo(ReadHouse.TIGHTER * drawn, within(0.1 * drawn));
        assertThat(bench.document().undoLabel().get()).contains("use fitted values");
        assertThat(findings.stale().get()).isTrue();
        assertThat(findings.sheet().get().acts())
                .as("values of an earlier house are not put in")
                .isEmpty();
        bench.document().undo();
        assertThat(house()).isEqualTo(READ);
        assertThat(findings.stale().get())
                .as("undone, it is the house that was fitted")
                .isFalse();
        assertThat(findings.sheet().get().acts()).hasSize(1);
    }

    @Test
    void eachUnknownIsMovedAloneWhenAskedFor() {
        Job move = turnTo("Fit").jobs().get(1);
        move.start().run();
        Sheet alone = findings.sheet().get();
        assertThat(alone.tables()).hasSize(1);
        assertThat(alone.tables().get(0).title()).startsWith("Each unknown moved alone");
        String fill = row(alone, 0, "permeability of the fill").cells().get(1);
        assertThat(fill).contains(" to ");
        Sheet both = run("Fit");
        assertThat(both.tables()).hasSize(3);
        assertThat(row(both, 1, "permeability of the fill").cells().get(1)).isEqualTo(fill);
        bench.document().edit(slabfield.desktop.viewmodel.Edit.of("truth", ReadHouse::truth));
        assertThat(findings.sheet().get().tables())
                .as("ranges of another house")
                .hasSize(2);
        bench.document().undo();
        assertThat(findings.sheet().get().tables()).hasSize(3);
    }

    @Test
    void aFitSaysWhatToMeasureWhereTheReadingsCannotTell() {
        Scenario read = ReadHouse.withReadings(new Point(1.6, 2), new Point(3, 3.6));
        Scenario noFlow = read.withStages(read.stages().stream()
                .map(s -> new slabfield.model.Stage(
                        s.id(), s.kind(), s.seals(), s.sources(), s.holes(), List.of(), s.time(), s.notes()))
                .toList());
        bench.document().open(noFlow, Optional.empty());
        Sheet sheet = run("Fit");
        assertThat(sheet.words()).anyMatch(w -> w.startsWith("Measure the flow"));
        assertThat(sheet.words()).anyMatch(w -> w.startsWith("Known only together"));
        assertThat(row(sheet, 0, "permeability of the fill").cells().get(2)).isEqualTo("\u2013");
    }

    @Test
    void oddsAndWidthOfTheFieldLieOverThePlanWithTheirKey() {
        run("Fit");
        findings.view().set("Odds of the target");
        ValueLayer odds = layer(ValueLayer.class);
        assertThat(odds.subject().low()).isZero();
        assertThat(odds.subject().high()).isEqualTo(1);
        assertThat(odds.at(1, 2))
                .as("beside the pit")
                .isGreaterThan(odds.at(5.6, 3.6))
                .isBetween(0.0, 1.0);
        findings.view().set("Uncertainty");
        ValueLayer width = layer(ValueLayer.class);
        assertThat(width.at(5, 1)).isPositive();
        assertThat(width.subject().sentences().get(0)).contains("Pa");
        assertThat(findings.layer().get().orElseThrow().layers().get(0).heading())
                .isEqualTo(width.heading());
    }

    @Test
    void withoutEnoughReadingsAFitSaysWhatIsMissing() {
        bench.document().open(ReadHouse.drawn(), Optional.empty());
        Page page = turnTo("Fit");
        page.jobs().get(0).start().run();
        assertThat(page.jobs().get(0).search().message().get())
                .contains("too little to fit")
                .contains("measure the flow");
        assertThat(findings.sheet().get()).isEqualTo(Sheet.EMPTY);
    }

    @Test
    void aDiagnosisHasOddsThatAddUpAndShowsACauseOnTheMap() {
        Scenario fine = READ.withCellSize(0.15);
        bench.document().open(fine, Optional.empty());
        List<String> said = new ArrayList<>();
        List<Double> done = new ArrayList<>();
        HouseSearch<?> search = turnTo("Diagnosis").jobs().get(0).search();
        search.message().addListener((o, was, is) -> said.add(is));
        search.progress().addListener((o, was, is) -> done.add(is.doubleValue()));
        Sheet sheet = run("Diagnosis");
        assertThat(said).anyMatch(m -> m.matches("Weighing causes against the readings: [1-9]\\d % done\\."));
        assertThat(done.subList(1, done.size()))
                .isSorted()
                .hasSizeGreaterThan(5)
                .endsWith(1.0);
        assertThat(sheet.headline()).isNotEmpty();
        assertThat(sheet.words()).anyMatch(w -> w.contains("half of them is given to the house as drawn"));
        List<Sheet.Row> causes = sheet.tables().get(0).rows();
        assertThat(causes.get(0).cells().get(1)).endsWith("%");
        Sheet.Row cause = causes.get(causes.size() - 1);
        findings.point(Optional.of(cause));
        assertThat(plan().result().scenario())
                .isEqualTo(cause.subject().orElseThrow().house().orElseThrow());
        assertThat(plan().result().scenario().cellSize()).isEqualTo(fine.cellSize());
        findings.view().set("Change");
        assertThat(layer(ChangeLayer.class).at(new Point(1, 1))).isFinite();
        findings.point(Optional.empty());
        assertThat(plan().result().scenario()).isEqualTo(fine);
    }

    @Test
    void theNextHoleIsMarkedAndDrawnWithOnePress() {
        Sheet sheet = run("Next hole");
        assertThat(sheet.headline()).contains("from the readings");
        assertThat(layer(MarksLayer.class)).isNotNull();
        MaskLayer mask = layer(MaskLayer.class);
        assertThat(mask.at(3.7, 3)).as("kept from drilling").isTrue();
        assertThat(mask.at(0.1, 0.1)).as("too near to the edge").isTrue();
        sheet.tables().get(0).rows().get(0).acts().get(0).run().run();
        assertThat(house().testHoles()).hasSize(5);
        Point at = house().testHoles().get(4).at();
        assertThat(slabfield.advice.DrillPlaces.forHoles(READ).allows(at)).isTrue();
        bench.document().undo();
        assertThat(house()).isEqualTo(READ);
    }

    @Test
    void withoutReadingsTheOddsRestOnAssumptionsAndSaySo() {
        bench.document().open(ReadHouse.drawn(), Optional.empty());
        assertThat(run("Next hole").headline()).contains("not from readings");
    }

    @Test
    void theLeakMapNamesPlacesOnlyWhereTheReadingsSay() {
        Sheet sheet = run("Leak map");
        ValueLayer gain = layer(ValueLayer.class);
        assertThat(gain.at(3, 2)).isNotNegative();
        boolean says = sheet.headline().startsWith("A leak more");
        assertThat(sheet.tables().get(0).rows().isEmpty()).isEqualTo(!says);
        assertThat(gain.subject().sentences().get(0)).contains("the readings do not say");
    }

    @Test
    void aPlaceForAFurtherPointIsShownCoredAndUndone() {
        Sheet sheet = run("Placement");
        ValueLayer weakest = layer(ValueLayer.class);
        assertThat(layer(MaskLayer.class).at(3.7, 3)).isTrue();
        assertThat(weakest.subject().text().apply(5.0))
                .as("a vacuum is a negative pressure")
                .isEqualTo("\u22125");
        Sheet.Row best = sheet.tables().get(0).rows().get(0);
        findings.view().set("With it");
        findings.point(Optional.of(best));
        Result.Solved with = (Result.Solved) plan().result();
        assertThat(with.scenario().suctionPoints()).hasSize(2);
        double said = bench.solving()
                .picture()
                .get()
                .solved()
                .orElseThrow()
                .coverage()
                .weakest();
        assertThat(with.coverage().weakest()).isGreaterThan(said);
        assertThat(plan().caption()).contains("weakest place");
        best.acts().get(0).run().run();
        assertThat(house().suctionPoints()).extracting(s -> s.id()).containsExactly("S1", "S2");
        assertThat(findings.stale().get()).isTrue();
        bench.document().undo();
        assertThat(house()).isEqualTo(READ);
    }

    @Test
    void aMeasureIsSeenBeforeItIsAppliedAndUndoneAfter() {
        Sheet sheet = run("Measures");
        assertThat(sheet.words().get(0)).contains("from the readings").contains("39");
        Sheet.Row seal = row(sheet, 0, "Seal \"sump\"");
        findings.point(Optional.of(seal));
        assertThat(plan().result()
                        .scenario()
                        .opening("sump")
                        .orElseThrow()
                        .seal()
                        .state())
                .isEqualTo(SealState.SEALED);
        int once = solves.get();
        findings.point(Optional.empty());
        findings.point(Optional.of(seal));
        assertThat(solves.get()).as("kept").isEqualTo(once);
        seal.acts().get(0).run().run();
        assertThat(house().opening("sump").orElseThrow().seal().state()).isEqualTo(SealState.SEALED);
        assertThat(findings.stale().get()).isTrue();
        bench.document().undo();
        assertThat(house()).isEqualTo(READ);
        assertThat(findings.stale().get()).isFalse();
    }

    @Test
    void aCoverSaysWhetherItWouldTell() {
        assertThat(row(run("Covers"), 0, "sump").cells().get(3)).isEqualTo("no: too small to see");
        assertThat(findings.sheet().get().headline()).startsWith("No cover");
        Scenario tighter = slabfield.fit.Unknowns.leak(READ, "sump").with(READ, 0.1);
        bench.document().open(tighter, Optional.empty());
        Sheet sheet = run("Covers");
        Sheet.Row sump = row(sheet, 0, "sump");
        assertThat(sump.cells().get(3)).isEqualTo("yes: no change means no leak");
        assertThat(sheet.headline()).startsWith("Cover sump first");
        findings.point(Optional.of(sump));
        assertThat(plan().result()
                        .scenario()
                        .opening("sump")
                        .orElseThrow()
                        .seal()
                        .state())
                .isEqualTo(SealState.COVERED);
        assertThat(house()).isEqualTo(tighter);
    }

    @Test
    void aSealThatDoesNothingIsSaidPlainly() {
        Result.Coverage coverage = new Result.Coverage(5, 0.5, 1, new Point(0, 0), 0.1);
        Result.Flows flows = new Result.Flows(1, 1, 0, 0, Map.of());
        assertThat(MeasuresPage.outcome(
                        new Suggestion(new Measure.SealOpening("sump"), coverage, coverage, flows, flows)))
                .isEqualTo("sealing this does nothing here");
        Result.Coverage all = new Result.Coverage(5, 1, 6, new Point(0, 0), 0.1);
        assertThat(MeasuresPage.outcome(new Suggestion(new Measure.SealOpening("sump"), coverage, all, flows, flows)))
                .isEqualTo("all on target");
    }

    @Test
    void aPlanIsOneStep() {
        Sheet sheet = run("Plans");
        Sheet.Row plan = sheet.tables().get(0).rows().stream()
                .filter(r -> r.cells().get(1).contains(";"))
                .findFirst()
                .orElseThrow();
        assertThat(findings.picture().get().orElseThrow()).isInstanceOf(Picture.Drawn.class);
        plan.acts().get(0).run().run();
        assertThat(house())
                .isEqualTo(plan.subject().orElseThrow().house().orElseThrow())
                .isNotEqualTo(READ);
        assertThat(findings.sheet().get().tables().get(0).rows())
                .allMatch(r -> r.acts().isEmpty());
        bench.document().undo();
        assertThat(house()).isEqualTo(READ);
    }

    @Test
    void anotherUnitChangesTextAlone() {
        run("Placement");
        String before =
                findings.sheet().get().tables().get(0).rows().get(0).cells().get(2);
        bench.units().pressure().set(Unit.INCH_OF_WATER);
        assertThat(findings.sheet().get().tables().get(0).rows().get(0).cells().get(2))
                .isNotEqualTo(before);
        assertThat(house()).isEqualTo(READ);
    }

    @Test
    void whatWasFoundLastStaysThroughANewSearchAndACancelledOne() {
        Bench.Held held = new Bench.Held();
        Findings slow = new Findings(bench, SlabSolver::solve, held, new InLineRunner());
        Page page = slow.pages().stream()
                .filter(p -> p.title().equals("Placement"))
                .findFirst()
                .orElseThrow();
        HouseSearch<?> search = page.jobs().get(0).search();
        page.jobs().get(0).start().run();
        held.finishOne();
        assertThat(search.found().get()).isPresent();
        bench.seal("sump", SealState.SEALED);
        assertThat(search.outOfDate().get()).isTrue();
        page.jobs().get(0).start().run();
        assertThat(search.found().get())
                .as("still there while the new one is sought")
                .isPresent();
        int before = held.cancelled;
        search.cancel();
        assertThat(held.cancelled).isEqualTo(before + 1);
        assertThat(search.found().get()).isPresent();
        assertThat(search.message().get()).contains("cancelled").contains("out of date");
        held.finishOne();
        assertThat(search.outOfDate().get())
                .as("a cancelled search brings nothing")
                .isTrue();
    }
}
