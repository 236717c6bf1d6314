package slabfield.desktop.viewmodel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import slabfield.desktop.drawing.Frame;
import slabfield.desktop.drawing.Item;
import slabfield.desktop.drawing.Items;
import slabfield.desktop.drawing.Kind;
import slabfield.desktop.drawing.Layer;
import slabfield.desktop.drawing.Places;
import slabfield.desktop.drawing.Snap;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.ScenarioCheck;
import slabfield.model.Underlay;
import slabfield.quantity.Unit;

class DrawingTest {
    private static final double REACH = 0.12;

    private final Workbench bench = Bench.workbench(Blank.house().withCellSize(1));
    private final Drawing drawing = bench.drawing();

    private Scenario house() {
        return bench.document().scenario().get();
    }

    private void click(double x, double y) {
        drawing.click(Pointer.at(new Point(x, y), REACH));
    }

    private void drag(double x, double y, double toX, double toY) {
        drawing.hover(Pointer.at(new Point(x, y), REACH));
        drawing.press(Pointer.at(new Point(x, y), REACH));
        drawing.drag(Pointer.at(new Point((x + toX) / 2, (y + toY) / 2), REACH));
        drawing.drag(Pointer.at(new Point(toX, toY), REACH));
        drawing.release(Pointer.at(new Point(toX, toY), REACH));
    }

    private void type(String text) {
        for (String letter : text.split(""))
            if (letter.equals("\t")) drawing.tab();
            else drawing.type(letter);
    }

    private void rectangle() {
        drawing.tool().set(Tool.RECTANGLE);
        type("10\t8");
        drawing.enter();
        drawing.tool().set(Tool.SELECT);
    }

    private Frame frame() {
        return Frame.about(house().slabs().get(0).outline());
    }

    @Test
    void aBlankSheetSaysWhatIsMissingAndTheFirstSlabIsSolved() {
        bench.solving().start();
        assertThat(bench.solving().picture().get().reason()).contains("no slab yet");
        rectangle();
        drawing.tool().set(Tool.SUCTION);
        click(5, 4);
        assertThat(bench.solving().problems().get()).isEmpty();
        assertThat(bench.solving().picture().get().current()).isPresent();
    }

    @Test
    void aRectangleIsTypedByWidthAndDepth() {
        bench.units().length().set(Unit.FOOT);
        drawing.tool().set(Tool.RECTANGLE);
        type("40'6\"\t28-6");
        assertThat(drawing.sketch().get().words()).contains("width: 40'6\"", "depth: 28-6");
        drawing.enter();
        assertThat(frame().width()).isCloseTo(12.3444, within(1e-9));
        assertThat(frame().depth()).isCloseTo(8.6868, within(1e-9));
        assertThat(drawing.selection().single()).contains(Item.of(Kind.SLAB, "basement"));
        type("3\t2");
        drawing.enter();
        assertThat(house().slabs().get(1).outline().get(0).x())
                .as("beside the first")
                .isCloseTo(13.3444, within(1e-9));
    }

    @Test
    void anOutlineIsTypedByLengthAndAngle() {
        drawing.tool().set(Tool.OUTLINE);
        click(0, 0);
        type("5\t0");
        drawing.enter();
        type("3\t90");
        drawing.enter();
        drawing.hover(Pointer.at(new Point(4, 3.02), REACH));
        type("2");
        assertThat(drawing.sketch().get().line())
                .as("held in the pointer's direction")
                .last()
                .satisfies(p -> assertThat(p.distanceTo(new Point(5, 3))).isCloseTo(2, within(1e-9)));
        drawing.enter();
        drawing.enter();
        assertThat(house().slabs().get(0).outline())
                .startsWith(new Point(0, 0), new Point(5, 0), new Point(5, 3))
                .hasSize(4);
    }

    @Test
    void aWordThatIsNoMeasureIsSaidAndNothingIsLost() {
        drawing.tool().set(Tool.RECTANGLE);
        type("3 Pa");
        drawing.enter();
        assertThat(drawing.hint().get()).contains("3 Pa");
        assertThat(house().slabs()).isEmpty();
        for (int i = 0; i < 3; i++) drawing.backspace();
        type("\t2");
        drawing.enter();
        assertThat(house().slabs()).hasSize(1);
    }

    @Test
    void anOutlineIsClickedAndClosedOnItsFirstCorner() {
        drawing.tool().set(Tool.OUTLINE);
        click(0.02, 0.01);
        click(6, 0);
        click(6.01, 4.05);
        drawing.backspace();
        click(6, 4);
        click(3, 5);
        click(0, 0.05);
        assertThat(house().slabs().get(0).outline())
                .containsExactly(new Point(0, 0), new Point(6, 0), new Point(6, 4), new Point(3, 5));
        assertThat(bench.document().undoLabel().get()).contains("draw slab basement");
    }

    @Test
    void escapeBacksOutOneLevelAtATime() {
        drawing.tool().set(Tool.BARRIER);
        click(0, 0);
        drawing.escape();
        assertThat(drawing.tool().get()).isEqualTo(Tool.BARRIER);
        drawing.enter();
        assertThat(house().barriers()).isEmpty();
        drawing.escape();
        assertThat(drawing.tool().get()).isEqualTo(Tool.SELECT);
        rectangle();
        drawing.selectAll();
        drawing.escape();
        assertThat(drawing.selection().items().get()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource
    void everyToolHasAKeyOfItsOwnAndAHint(Tool tool) {
        assertThat(drawing.type(tool.key())).isTrue();
        assertThat(drawing.tool().get()).isEqualTo(tool);
        assertThat(drawing.hint().get()).isEqualTo(tool.hint());
    }

    @Test
    void aDraggedCornerIsOneStepAndEscapeTakesItBack() {
        rectangle();
        click(5, 0);
        drag(10, 8, 12.01, 9.02);
        assertThat(house().slabs().get(0).outline().get(2)).isEqualTo(new Point(12, 9));
        bench.document().undo();
        assertThat(frame()).isEqualTo(new Frame(0, 0, 10, 8));
        drawing.press(Pointer.at(new Point(10, 8), REACH));
        drawing.drag(Pointer.at(new Point(12, 9), REACH));
        drawing.escape();
        assertThat(frame()).isEqualTo(new Frame(0, 0, 10, 8));
        assertThat(bench.solving().dragging().get()).isFalse();
    }

    @Test
    void anEdgeOfTheChosenSlabIsDragged() {
        rectangle();
        click(5, 0);
        drag(10, 3, 11.5, 3);
        assertThat(frame()).isEqualTo(new Frame(0, 0, 11.5, 8));
    }

    @Test
    void theDrawingFollowsWithoutASolveWhileItCannotStand() {
        rectangle();
        drawing.tool().set(Tool.SUCTION);
        click(5, 4);
        var last = bench.solving().picture().get().result();
        drawing.tool().set(Tool.HOLE);
        click(20, 4);
        assertThat(bench.solving().problems().get())
                .singleElement()
                .satisfies(p -> assertThat(p.message()).contains("T1"));
        assertThat(bench.solving().picture().get().state()).isEqualTo(Solving.State.FAILED);
        assertThat(bench.solving().picture().get().result())
                .as("the last map stays")
                .isSameAs(last);
        bench.document().undo();
        assertThat(bench.solving().problems().get()).isEmpty();
        assertThat(bench.solving().picture().get().current()).isPresent();
    }

    @Test
    void aFrameToTheRightTakesWhatLiesInsideAndToTheLeftWhatIsTouched() {
        rectangle();
        drawing.tool().set(Tool.HOLE);
        click(1, 1);
        click(2, 1);
        drawing.tool().set(Tool.BARRIER);
        drag(2, 2, 8, 2);
        drawing.tool().set(Tool.SELECT);
        drag(-1, -1, 3, 3);
        assertThat(drawing.selection().items().get()).extracting(Item::kind).containsExactly(Kind.HOLE, Kind.HOLE);
        drag(3, 3, -1, -1);
        assertThat(drawing.selection().items().get())
                .extracting(Item::kind)
                .containsExactly(Kind.SLAB, Kind.BARRIER, Kind.HOLE, Kind.HOLE);
    }

    @Test
    void tabCyclesThroughWhatLiesUnderThePress() {
        rectangle();
        drawing.tool().set(Tool.JOINT);
        click(4, 0);
        drawing.tool().set(Tool.SELECT);
        drawing.selection().clear();
        click(4, 0);
        Item first = drawing.selection().single().orElseThrow();
        assertThat(drawing.tab()).isTrue();
        assertThat(drawing.selection().single()).isPresent().get().isNotEqualTo(first);
        drawing.tab();
        assertThat(drawing.selection().single()).contains(first);
    }

    @Test
    void nudgesInARowAreOneStepAndCopiesAreChosen() {
        rectangle();
        drawing.tool().set(Tool.HOLE);
        click(1, 1);
        drawing.nudge(1, 0);
        drawing.nudge(10, 2);
        assertThat(house().testHole("T1").orElseThrow().at()).isEqualTo(new Point(1.11, 1.02));
        bench.document().undo();
        assertThat(house().testHole("T1").orElseThrow().at()).isEqualTo(new Point(1, 1));
        drawing.selection().set(List.of(Item.of(Kind.HOLE, "T1")));
        drawing.selection().copy();
        drawing.selection().paste();
        drawing.selection().paste();
        assertThat(house().testHoles()).extracting(h -> h.id()).containsExactly("T1", "T2", "T3");
        assertThat(house().testHole("T3").orElseThrow().at()).isEqualTo(new Point(2, 0));
        assertThat(drawing.selection().single()).contains(Item.of(Kind.HOLE, "T3"));
        drawing.selection().cut();
        assertThat(house().testHoles()).hasSize(2);
    }

    @Test
    void aDimensionOfTheChosenThingIsChanged() {
        rectangle();
        click(5, 0);
        Selection.Dimension bottom = drawing.selection().dimensions().get(0);
        assertThat(bottom.length()).isEqualTo(10);
        assertThat(drawing.change(bottom, "12,5")).isEmpty();
        assertThat(frame()).isEqualTo(new Frame(0, 0, 12.5, 8));
        assertThat(drawing.change(bottom, "-1")).isPresent();
        assertThat(drawing.change(bottom, "soon")).get().asString().contains("soon");
    }

    @Test
    void cornersAreAddedAndTakenAwayByThePointer() {
        rectangle();
        click(5, 0);
        assertThat(drawing.doubleClick(Pointer.at(new Point(3, 0.02), REACH))).isTrue();
        assertThat(house().slabs().get(0).outline()).contains(new Point(3, 0)).hasSize(5);
        assertThat(drawing.deleteCorner(Pointer.at(new Point(3, 0), REACH))).isTrue();
        assertThat(house().slabs().get(0).outline()).hasSize(4);
        assertThat(drawing.deleteCorner(Pointer.at(new Point(3, 0), REACH))).isFalse();
    }

    @Test
    void aLockedLayerIsOutOfThePointersReachAndAHiddenOneIsNotShown() {
        rectangle();
        drawing.tool().set(Tool.HOLE);
        click(1, 1);
        drawing.tool().set(Tool.SELECT);
        drawing.layers().lock(Layer.HOLES, true);
        click(1, 1);
        assertThat(drawing.selection().single()).contains(Item.of(Kind.SLAB, "basement"));
        drawing.layers().show(Layer.HOLES, false);
        assertThat(drawing.layers().visible(house()).testHoles()).isEmpty();
        assertThat(house().testHoles()).hasSize(1);
    }

    @Test
    void onASlabsEdgeOneClickIsTheWholeJointWallOrLoop() {
        rectangle();
        for (Tool tool : List.of(Tool.JOINT, Tool.WALL, Tool.TILE)) {
            drawing.tool().set(tool);
            click(4.03, 0.03);
        }
        assertThat(house().openings().get(0).place()).isEqualTo(new Opening.Perimeter("basement"));
        assertThat(house().blockWalls().get(0).path().points()).containsExactly(new Point(0, 0), new Point(10, 0));
        assertThat(house().drainTiles().get(0).path().isClosed()).isTrue();
    }

    @Test
    void aGapIsClickedOrDraggedAndNeedsABarrier() {
        rectangle();
        drawing.tool().set(Tool.GAP);
        click(5, 4);
        assertThat(drawing.hint().get()).contains("draw the barrier first");
        drawing.tool().set(Tool.BARRIER);
        drag(5, 0, 5, 8);
        drawing.tool().set(Tool.GAP);
        drag(5, 2, 5, 3.5);
        click(5.05, 6);
        assertThat(house().barriers().get(0).gaps()).extracting(g -> g.length()).containsExactly(1.5, 0.9);
    }

    @Test
    void aSnapIsShownWithItsSort() {
        rectangle();
        drawing.tool().set(Tool.CRACK);
        drawing.hover(Pointer.at(new Point(9.95, 7.93), REACH));
        assertThat(drawing.sketch().get().snap()).map(Snap::sort).contains(Snap.Sort.CORNER);
        drawing.hover(new Pointer(new Point(9.953, 7.931), REACH, false, true));
        assertThat(drawing.sketch().get().snap()).map(Snap::sort).contains(Snap.Sort.FREE);
    }

    @Test
    void thePictureIsScaledOverTwoPlacesAndChecked() {
        drawing.tool().set(Tool.SCALE);
        click(1, 1);
        click(3, 1);
        assertThat(drawing.hint().get()).contains("no picture");
        bench.document()
                .edit(Edit.of(
                        "lay",
                        s -> s.withPlan(s.plan()
                                .withUnderlay(Optional.of(new Underlay("plan.png", new Point(0, 0), 0.01, 0))))));
        click(1, 1);
        click(3, 1);
        type("5 m");
        drawing.enter();
        Underlay scaled = house().plan().underlay().orElseThrow();
        assertThat(scaled.pixel()).isCloseTo(0.025, within(1e-12));
        assertThat(scaled.corner()).isEqualTo(new Point(-1.5, -1.5));
        drawing.tool().set(Tool.CHECK);
        click(0, 0);
        click(4, 0);
        type("4.2");
        drawing.enter();
        assertThat(drawing.hint().get()).contains("\u22124.8 % off");
    }

    @Test
    void measuringChangesNothing() {
        rectangle();
        Scenario before = house();
        drawing.tool().set(Tool.MEASURE);
        drag(0, 0, 3, 4);
        assertThat(drawing.hint().get()).startsWith("5.00 m").contains("across 3.00 m", "up 4.00 m");
        assertThat(house()).isEqualTo(before);
    }

    @Test
    void undoGoesBackToTheBlankSheetAndRedoForwardAgain() {
        drawing.tool().set(Tool.HOLE);
        click(1, 1);
        for (int i = 0; i < 300; i++) drawing.selection().duplicate();
        Scenario last = house();
        while (bench.document().undoLabel().get().isPresent()) bench.document().undo();
        assertThat(house()).isEqualTo(Blank.house().withCellSize(1));
        while (bench.document().redoLabel().get().isPresent()) bench.document().redo();
        assertThat(house()).isEqualTo(last);
        assertThat(house().testHoles()).hasSize(301);
    }

    @Test
    void everyKindOfThingHasPropertiesThatCanBeRead() {
        Scenario all = SketchedHouse.draw(bench, REACH).scenario();
        for (Item item : Items.all(all)) {
            drawing.selection().set(List.of(item));
            List<Property> properties = drawing.inspector().properties();
            assertThat(properties).as("%s", item).isNotEmpty();
            for (Property p : properties)
                assertThat(drawing.inspector().set(p, p.value()))
                        .as("%s of %s as it is", p.label(), item)
                        .isEmpty();
        }
        assertThat(house()).as("nothing was changed").isEqualTo(all);
        assertThat(ScenarioCheck.problems(all)).isEmpty();
    }

    @Test
    void aPropertyIsChangedOrItsMistakeSaid() {
        rectangle();
        drawing.tool().set(Tool.BARRIER);
        drag(5, 0, 5, 8);
        Property thickness = property("Thickness");
        assertThat(drawing.inspector().set(thickness, "0,25")).isEmpty();
        assertThat(house().barriers().get(0).width()).isEqualTo(0.25);
        assertThat(drawing.inspector().set(thickness, "-1")).get().asString().contains("above 0");
        assertThat(drawing.inspector().set(property("Name"), "grade beam")).isEmpty();
        assertThat(drawing.inspector().title()).isEqualTo("barrier grade beam");
        assertThat(drawing.inspector().set(property("Known"), "known")).isEmpty();
        assertThat(house().barriers().get(0).known()).isTrue();
        drawing.selection().clear();
        assertThat(drawing.inspector().set(property("Fill"), "sand")).isEmpty();
        assertThat(house().layer().fill().word().words()).isEqualTo("sand");
    }

    @Test
    void ofSeveralThingsWhatDiffersIsMixedAndIsSetForAll() {
        rectangle();
        drawing.tool().set(Tool.BARRIER);
        drag(3, 0, 3, 8);
        drag(6, 0, 6, 8);
        drawing.inspector().set(property("Thickness"), "0.3");
        drawing.selection().set(List.of(Item.of(Kind.BARRIER, "footing 1"), Item.of(Kind.BARRIER, "footing 2")));
        assertThat(property("Thickness").value()).isEqualTo(Property.MIXED);
        assertThat(drawing.inspector().properties()).extracting(Property::label).doesNotContain("Name");
        drawing.inspector().set(property("Thickness"), "0.5");
        assertThat(house().barriers()).extracting(b -> b.width()).containsExactly(0.5, 0.5);
    }

    private Property property(String label) {
        return drawing.inspector().properties().stream()
                .filter(p -> p.label().equals(label))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aHouseOfFortyThingsTakesAtMostSixtyActions() {
        SketchedHouse.Drawn drawn = SketchedHouse.draw(bench, REACH);
        assertThat(Items.all(drawn.scenario())).hasSize(40);
        assertThat(drawn.actions()).isLessThanOrEqualTo(60);
        assertThat(ScenarioCheck.problems(drawn.scenario())).isEmpty();
        assertThat(bench.solving().picture().get().current()).isPresent();
    }

    @Test
    void theSameHandsDrawTheSameHouseFromFurtherAway() {
        assertThat(Items.all(SketchedHouse.draw(bench, 0.3).scenario())).hasSize(40);
    }

    @Test
    void everyPlaceIsInWholeNanometres() {
        SketchedHouse.draw(bench, REACH);
        for (Item item : Items.all(house()))
            for (Point p : Items.form(house(), item).orElseThrow().points())
                assertThat(p).isEqualTo(Places.whole(p.x(), p.y()));
    }
}
