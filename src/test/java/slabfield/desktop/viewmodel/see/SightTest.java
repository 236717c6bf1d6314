package slabfield.desktop.viewmodel.see;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import slabfield.desktop.viewmodel.Bench;
import slabfield.desktop.viewmodel.Document;
import slabfield.desktop.viewmodel.Edit;
import slabfield.desktop.viewmodel.InLineRunner;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.find.Findings;
import slabfield.desktop.viewmodel.find.Picture;
import slabfield.desktop.viewmodel.see.Sight.Flow;
import slabfield.desktop.viewmodel.see.Sight.Show;
import slabfield.figure.DoubtLayer;
import slabfield.figure.FlowArrows;
import slabfield.figure.MapFoot;
import slabfield.figure.MarksLayer;
import slabfield.figure.MaskLayer;
import slabfield.figure.MeasuredLayer;
import slabfield.figure.OriginLayer;
import slabfield.figure.PlanLayer;
import slabfield.figure.Profile;
import slabfield.figure.Streamlines;
import slabfield.figure.ValueLayer;
import slabfield.model.Point;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.network.AirTracing;
import slabfield.network.SlabSolver;

class SightTest {
    private final Workbench bench =
            Bench.workbench(Bench.withStages(Bench.house(), List.of(Bench.stage("first", Map.of(), -30))));
    private int traced;
    private final Sight sight = new Sight(
            bench,
            (s, p) -> {
                traced++;
                return AirTracing.of(s, p);
            },
            new InLineRunner());

    private List<Class<?>> kinds() {
        return sight.layers().get().stream().<Class<?>>map(PlanLayer::getClass).toList();
    }

    @Test
    void aPlainMapHasItsFootAloneAndFollowsNoAir() {
        bench.solving().start();
        assertThat(kinds()).containsExactly(MapFoot.class);
        assertThat(traced).isZero();
    }

    @Test
    void theAirIsFollowedOnceForEachPrediction() {
        bench.solving().start();
        sight.show().set(Show.ORIGIN);
        sight.flow().set(Flow.PATHS);
        assertThat(kinds()).containsExactly(OriginLayer.class, Streamlines.class, MapFoot.class);
        sight.flow().set(Flow.ARROWS);
        assertThat(kinds()).containsExactly(OriginLayer.class, FlowArrows.class, MapFoot.class);
        assertThat(traced).isEqualTo(1);
        double open = sight.paths()
                .get()
                .orElseThrow()
                .exhaustShare()[sight.paths().get().orElseThrow().origins().indexOf("sump")];
        bench.seal("sump", SealState.SEALED);
        assertThat(traced).isEqualTo(2);
        assertThat(sight.paths()
                        .get()
                        .orElseThrow()
                        .exhaustShare()[
                        sight.paths().get().orElseThrow().origins().indexOf("sump")])
                .isLessThan(open);
    }

    @Test
    void measuredAloneHidesThePredictionAndSaysSo() {
        bench.solving().start();
        sight.doubts().set(true);
        assertThat(kinds()).containsExactly(DoubtLayer.class, MapFoot.class);
        sight.show().set(Show.MEASURED);
        assertThat(kinds()).containsExactly(MeasuredLayer.class, MapFoot.class);
        bench.readings().stage().set(Optional.empty());
        assertThat(kinds())
                .as("without a stage there is nothing measured")
                .containsExactly(DoubtLayer.class, MapFoot.class);
    }

    @Test
    void pinsFollowThePredictionAndKeepTheirNumbers() {
        bench.solving().start();
        sight.pin(new Point(3, 2));
        sight.pin(new Point(-5, 2));
        String before = sight.rows().get(0).value();
        assertThat(sight.rows().get(1).value()).isEqualTo("no pressure");
        assertThat(kinds()).contains(MarksLayer.class);
        bench.seal("sump", SealState.SEALED);
        assertThat(sight.rows().get(0).value()).isNotEqualTo(before);
        sight.unpin(sight.rows().get(0).pin());
        sight.pin(new Point(2, 2));
        assertThat(sight.rows()).extracting(r -> r.pin().number()).containsExactly(2, 3);
    }

    private List<String> pins() {
        return sight.rows().stream()
                .map(r -> r.pin().number() + " at " + r.pin().at().x())
                .toList();
    }

    @Test
    void pinsAreStepsOfTheHistoryBetweenTheEdits() {
        bench.solving().start();
        sight.pin(new Point(3, 2));
        bench.seal("sump", SealState.SEALED);
        sight.grabPin();
        sight.movePin(sight.pinAt(new Point(3.1, 2), 0.2).orElseThrow(), new Point(4, 2));
        sight.movePin(sight.rows().get(0).pin(), new Point(5, 2));
        sight.unpin(sight.rows().get(0).pin());
        assertThat(pins()).isEmpty();
        assertThat(bench.document().undoLabel().get()).contains("remove pin 1");
        bench.document().undo();
        assertThat(pins()).containsExactly("1 at 5.0");
        bench.document().undo();
        assertThat(pins()).as("a whole drag is one step").containsExactly("1 at 3.0");
        assertThat(bench.document()
                        .scenario()
                        .get()
                        .opening("sump")
                        .orElseThrow()
                        .seal()
                        .state())
                .isEqualTo(SealState.SEALED);
        bench.document().undo();
        bench.document().undo();
        assertThat(pins()).isEmpty();
        bench.document().redo();
        sight.grabPin();
        sight.movePin(sight.rows().get(0).pin(), new Point(2, 2));
        sight.grabPin();
        sight.movePin(sight.rows().get(0).pin(), new Point(1, 2));
        bench.document().undo();
        assertThat(pins()).as("each drag is a step of its own").containsExactly("1 at 2.0");
    }

    @Test
    void pinsAloneLeaveNothingToSaveAndStayFromVariantToVariant() {
        bench.solving().start();
        sight.pin(new Point(3, 2));
        assertThat(bench.document().dirty().get()).isFalse();
        Document.Line first = bench.document().line();
        bench.document().resume(Document.Line.of(Bench.house()));
        assertThat(pins()).containsExactly("1 at 3.0");
        bench.seal("sump", SealState.SEALED);
        sight.pin(new Point(4, 2));
        bench.document().undo();
        assertThat(pins()).containsExactly("1 at 3.0");
        bench.document().redo();
        bench.document().resume(first);
        assertThat(pins()).containsExactly("1 at 3.0", "2 at 4.0");
        assertThat(bench.document().undoLabel().get())
                .as("its own pin step is forgotten")
                .isEmpty();
    }

    @Test
    void anotherHouseForgetsPinsAndLine() {
        bench.solving().start();
        sight.pin(new Point(3, 2));
        sight.cut().set(Optional.of(new Profile(new Point(1, 1), new Point(5, 1))));
        bench.document().edit(Edit.of("seal", s -> s.withSeal("sump", Seal.of(SealState.LOOSE))));
        assertThat(sight.rows()).hasSize(1);
        bench.document().open(Bench.house(), Optional.empty());
        assertThat(sight.rows()).isEmpty();
        assertThat(sight.cut().get()).isEmpty();
        assertThat(kinds()).containsExactly(MapFoot.class);
    }

    @Test
    void aFindingLiesOverTheMapWithItsStampAndGoesWithItsHouse() {
        bench.solving().start();
        Findings findings = new Findings(bench, SlabSolver::solve, new InLineRunner(), new InLineRunner());
        findings.layer()
                .addListener((o, was, is) ->
                        sight.finding().set(is.map(Picture.Plan::layers).orElse(List.of())));
        findings.watched().set(true);
        findings.page()
                .set(findings.pages().stream()
                        .filter(p -> p.title().equals("Placement"))
                        .findFirst()
                        .orElseThrow());
        sight.show().set(Show.FINDING);
        assertThat(kinds()).as("nothing found yet").containsExactly(MapFoot.class);
        findings.page().get().jobs().get(0).start().run();
        findings.watched().set(false);
        assertThat(kinds()).containsExactly(ValueLayer.class, MaskLayer.class, MarksLayer.class, MapFoot.class);
        List<PlanLayer> before = sight.layers().get();
        bench.seal("sump", SealState.SEALED);
        assertThat(sight.layers().get()).as("laid anew, as out of date").isNotEqualTo(before);
        sight.show().set(Show.PRESSURE);
        assertThat(kinds()).containsExactly(MapFoot.class);
        sight.show().set(Show.FINDING);
        bench.document().open(Bench.house(), Optional.empty());
        assertThat(kinds()).containsExactly(MapFoot.class);
    }
}
