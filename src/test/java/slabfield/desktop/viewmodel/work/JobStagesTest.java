package slabfield.desktop.viewmodel.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import slabfield.desktop.viewmodel.Bench;
import slabfield.desktop.viewmodel.Edit;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.work.JobStage.Open;
import slabfield.desktop.viewmodel.work.JobStage.Place;
import slabfield.desktop.viewmodel.work.JobStage.Step;
import slabfield.model.Barrier;
import slabfield.model.NoDrillArea;
import slabfield.model.Point;
import slabfield.model.Stage;
import slabfield.model.TestHole;
import slabfield.safety.Answer;
import slabfield.safety.Gate;

class JobStagesTest {
    @TempDir
    Path folder;

    private final Workbench bench = Bench.workbench(Bench.house());
    private final JobStages stages = new JobStages(bench, () -> LocalDateTime.of(2026, 3, 4, 9, 0));

    private List<String> open(Step step) {
        return stage(step).open().stream().map(Open::words).toList();
    }

    private JobStage stage(Step step) {
        return stages.stages().get().stream()
                .filter(s -> s.step() == step)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void anUnsavedHouseSaysThatItMustBeSavedFirst() {
        assertThat(stage(Step.INSPECT).open())
                .contains(new Open("Save the house: the answers are kept beside its file", Place.FILE));
        assertThat(stages.next().orElseThrow().step()).isEqualTo(Step.INSPECT);
    }

    @Test
    void holesAreCountedAgainstTheStandardsMinimum() {
        assertThat(open(Step.PLAN)).containsExactly("Plan at least 3 test holes; there are 2");
        bench.document()
                .edit(Edit.of(
                        "hole", s -> s.withTestHoles(List.of(hole("T1", 1, 1), hole("T2", 3, 2), hole("T3", 5, 3)))));
        assertThat(open(Step.PLAN)).isEmpty();
        bench.document()
                .edit(Edit.of(
                        "slab", s -> s.withTestHoles(List.of(hole("T1", 9, 1), hole("T2", 9, 2), hole("T3", 9, 3)))));
        assertThat(open(Step.PLAN)).containsExactly("\u201cslab\u201d has no test hole");
    }

    @Test
    void aSuspectedFootingAsksForHolesOnBothItsSides() {
        Barrier footing = new Barrier(
                "old wall",
                new slabfield.model.Path(List.of(new Point(4, 0), new Point(4, 4))),
                0.3,
                0,
                false,
                List.of());
        bench.document()
                .edit(Edit.of(
                        "footing",
                        s -> s.withBarriers(List.of(footing))
                                .withTestHoles(List.of(hole("T1", 1, 1), hole("T2", 3, 2), hole("T3", 2, 3)))));
        assertThat(open(Step.PLAN)).containsExactly("No hole beyond the suspected \u201cold wall\u201d");
        bench.document()
                .edit(Edit.of(
                        "hole", s -> s.withTestHoles(List.of(hole("T1", 1, 1), hole("T2", 3, 2), hole("T3", 5, 3)))));
        assertThat(open(Step.PLAN)).isEmpty();
    }

    @Test
    void aHoleWhereNothingMayBeDrilledIsNamed() {
        bench.document()
                .edit(Edit.of(
                        "area",
                        s -> s.withPlan(s.plan()
                                .withNoDrillAreas(List.of(new NoDrillArea(
                                        "pipes",
                                        List.of(
                                                new Point(2.5, 1.5),
                                                new Point(3.5, 1.5),
                                                new Point(3.5, 2.5),
                                                new Point(2.5, 2.5)),
                                        ""))))));
        assertThat(open(Step.PLAN)).contains("\u201cT1\u201d lies where nothing may be drilled");
    }

    @Test
    void readingsThatAreMissingAreListedHoleByHole() {
        assertThat(open(Step.COMMUNICATION_TEST)).containsExactly("Enter the readings of a communication test");
        bench.document()
                .edit(Edit.of("stage", s -> s.withStages(List.of(Bench.stage("first", java.util.Map.of(), -30)))));
        assertThat(open(Step.COMMUNICATION_TEST))
                .containsExactly(
                        "Read with the suction on: T2",
                        "Read with the suction off: T2",
                        "Measure the vacuum at S1",
                        "Measure the flow at S1: without it leaky and tight look the same");
        assertThat(stage(Step.COMMUNICATION_TEST).open())
                .extracting(Open::place)
                .containsOnly(Place.READINGS);
    }

    @Test
    void aMissedTargetLeadsToMeasures() {
        bench.solving().start();
        assertThat(stage(Step.DESIGN).open())
                .filteredOn(o -> o.place() == Place.MEASURES)
                .singleElement()
                .satisfies(o -> assertThat(o.words()).contains("predicted to be missed"));
    }

    @Test
    void aNoBeforeDrillingBlocksAndAFailedDraftTestBlocksTheStart() {
        bench.save(folder.resolve("house.json"));
        assertThat(stage(Step.INSPECT).blocked()).isFalse();
        assertThat(open(Step.INSPECT)).hasSize(3);
        bench.checklist().answer(Gate.UTILITIES, Answer.NO, "");
        assertThat(stage(Step.INSPECT).blocked()).isTrue();
        assertThat(open(Step.INSPECT).get(0)).contains("do not drill");
        for (Gate g : List.of(Gate.UTILITIES, Gate.STRUCTURAL_SLAB, Gate.GAS_ON_SITE))
            bench.checklist().answer(g, Answer.YES, "");
        assertThat(open(Step.INSPECT)).isEmpty();
        assertThat(stage(Step.INSPECT).blocked()).isFalse();
    }

    @Test
    void aRadonTestIsAskedForAfterADayAndOnlyThen() {
        bench.save(folder.resolve("house.json"));
        assertThat(open(Step.RETEST).get(0)).contains("24 h after start-up");
        bench.checklist().time().set("2026-03-03T20:00");
        bench.checklist().start();
        assertThat(open(Step.RETEST).get(0)).contains("may start from 2026-03-04 20:00");
        bench.checklist().time().set("2026-03-05T08:00");
        bench.checklist().radonTest("running");
        assertThat(open(Step.RETEST)).isEmpty();
    }

    @Test
    void startUpWantsRiserAndHolesButNoBaseline() {
        Stage start = new Stage(
                "start-up",
                slabfield.model.StageKind.START_UP,
                java.util.Map.of(),
                java.util.Map.of(),
                List.of(new Stage.HoleReading(
                        "T1",
                        OptionalDouble.empty(),
                        OptionalDouble.of(-9),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        "")),
                List.of(),
                "",
                "");
        bench.document().edit(Edit.of("stage", s -> s.withStages(List.of(start))));
        assertThat(open(Step.START_UP))
                .contains("Read with the suction on: T2", "Measure the vacuum at S1")
                .noneMatch(w -> w.contains("off"));
    }

    private static TestHole hole(String id, double x, double y) {
        return new TestHole(id, new Point(x, y), "");
    }
}
