package slabfield.desktop.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.image.ImageView;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import slabfield.desktop.drawing.Item;
import slabfield.desktop.drawing.Items;
import slabfield.desktop.drawing.Kind;
import slabfield.desktop.viewmodel.Blank;
import slabfield.desktop.viewmodel.Hands;
import slabfield.desktop.viewmodel.SketchedHouse;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.Tool;
import slabfield.desktop.viewmodel.see.Sight;
import slabfield.field.AirPaths;
import slabfield.io.ExampleScenarios;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.ScenarioCheck;

/** The main path of each user through the real window, with the mouse and keys of the system. */
class WindowPathsTest {
    private static final boolean PICTURES = Boolean.getBoolean("slabfield.pictures");

    @BeforeAll
    static void screen() {
        Stand.needsScreen();
    }

    private static Scenario example(String file) {
        return ExampleScenarios.all().stream()
                .filter(e -> e.file().equals(file))
                .findFirst()
                .orElseThrow()
                .scenario()
                .withCellSize(0.25);
    }

    /** A designer types a slab, puts a suction point, sees the map, drags the point and sees it follow. */
    @Test
    void aDesignerDrawsAndSeesTheMap() {
        try (Stand stand = Stand.open(Blank.house().withCellSize(0.25), 1280, 800)) {
            stand.clickOn(stand.node("#tool-rectangle", ToggleButton.class));
            stand.type("12\t8");
            stand.key(KeyCode.ENTER);
            stand.key(KeyCode.S);
            stand.click(3, 4);
            stand.settle();
            assertThat(stand.bench.solving().picture().get().current()).isPresent();
            double before = stand.bench
                    .solving()
                    .picture()
                    .get()
                    .current()
                    .orElseThrow()
                    .suctions()
                    .get(0)
                    .flow();
            assertThat(before).isPositive();
            stand.key(KeyCode.ESCAPE);
            stand.moveTo(new Point(3, 4));
            stand.press();
            for (double x = 3.5; x <= 6; x += 0.5) stand.moveTo(new Point(x, 4));
            stand.await(
                    "the map follows",
                    () -> stand.bench.solving().picture().get().quick());
            assertThat(stand.bench.solving().dragging().get()).isTrue();
            stand.release();
            stand.settle();
            assertThat(stand.bench
                            .document()
                            .scenario()
                            .get()
                            .suctionPoint("S1")
                            .orElseThrow()
                            .at()
                            .x())
                    .isCloseTo(6, within(0.05));
            stand.key(KeyCode.Z);
            Stand.run(stand.bench.document()::undo);
            assertThat(stand.bench
                            .document()
                            .scenario()
                            .get()
                            .suctionPoint("S1")
                            .orElseThrow()
                            .at()
                            .x())
                    .as("the drag is one step")
                    .isCloseTo(3, within(0.05));
        }
    }

    /** A designer changes a measure on the plan by clicking it. */
    @Test
    void aDimensionIsClickedAndTyped() {
        try (Stand stand = Stand.open(Blank.house().withCellSize(0.25), 1280, 800)) {
            stand.key(KeyCode.R);
            stand.type("10\t6");
            stand.key(KeyCode.ENTER);
            stand.key(KeyCode.ESCAPE);
            stand.click(5, 0);
            MapOverlay.Shown bottom = Stand.fx(() -> {
                for (int y = 0; y < stand.map().getHeight(); y += 3)
                    for (int x = 0; x < stand.map().getWidth(); x += 6) {
                        var shown = stand.map().dimensionAt(x, y);
                        if (shown.filter(s -> s.dimension().edge() == 0).isPresent()) return shown.get();
                    }
                throw new AssertionError("no measure on the plan");
            });
            Stand.run(() -> stand.map().editDimension(bottom));
            stand.pulses(2);
            stand.type("12.5");
            stand.key(KeyCode.ENTER);
            assertThat(stand.bench
                            .document()
                            .scenario()
                            .get()
                            .slabs()
                            .get(0)
                            .outline()
                            .get(1)
                            .x())
                    .isEqualTo(12.5);
        }
    }

    /** A trainer opens a house and toggles the seal of its joint; the map and the numbers change. */
    @Test
    void aTrainerTogglesASeal() {
        try (Stand stand = Stand.open(example("stone-footing.json"), 1280, 800)) {
            stand.settle();
            double before = stand.bench
                    .solving()
                    .picture()
                    .get()
                    .current()
                    .orElseThrow()
                    .flows()
                    .exhaust();
            Node button = Stand.fx(() -> stand.stage().getScene().getRoot().lookupAll(".toggle-button").stream()
                    .filter(n -> "perimeter joint: sealed".equals(n.getAccessibleText()))
                    .findFirst()
                    .orElseThrow());
            stand.clickOn(button);
            stand.settle();
            assertThat(stand.bench
                            .solving()
                            .picture()
                            .get()
                            .current()
                            .orElseThrow()
                            .flows()
                            .exhaust())
                    .isLessThan(before);
            assertThat(stand.bench.document().undoLabel().get()).contains("sealed: perimeter joint");
        }
    }

    /** A reader who does not see the plan chooses a thing in the table, and it is chosen on the plan. */
    @Test
    @SuppressWarnings("unchecked")
    void theTableOfThingsChoosesOnThePlan() {
        try (Stand stand = Stand.open(example("stone-footing.json"), 1280, 800)) {
            javafx.scene.control.TabPane tabs = stand.node(".tab-pane", javafx.scene.control.TabPane.class);
            Stand.run(() -> tabs.getTabs().stream()
                    .filter(t -> t.getText().equals("Objects"))
                    .forEach(t -> tabs.getSelectionModel().select(t)));
            TableView<Item> table = stand.node("#objects", TableView.class);
            assertThat(table.getItems())
                    .isEqualTo(Items.all(stand.bench.document().scenario().get()));
            Stand.run(() -> {
                table.requestFocus();
                table.getSelectionModel().clearAndSelect(2);
            });
            assertThat(stand.bench.drawing().selection().items().get())
                    .containsExactly(table.getItems().get(2));
        }
    }

    /** A property that cannot be is said beside its field, and nothing changes. */
    @Test
    void aMistakeIsSaidBesideItsField() {
        try (Stand stand = Stand.open(example("stone-footing.json"), 1280, 800)) {
            Scenario before = stand.bench.document().scenario().get();
            Stand.run(() -> stand.bench
                    .drawing()
                    .selection()
                    .set(List.of(Item.of(Kind.SLAB, before.slabs().get(0).id()))));
            TextField thickness = stand.node("#property-thickness", TextField.class);
            Stand.run(() -> {
                thickness.requestFocus();
                thickness.setText("soon");
                thickness.fireEvent(new javafx.event.ActionEvent());
            });
            stand.pulses(1);
            assertThat(stand.stage().getScene().getRoot().lookupAll(".wrong"))
                    .anySatisfy(n -> assertThat(((javafx.scene.control.Label) n).getText())
                            .contains("soon"));
            assertThat(stand.bench.document().scenario().get()).isEqualTo(before);
        }
    }

    /** From a blank sheet a house of forty things in at most sixty actions of mouse and keys. */
    @Test
    void aHouseOfFortyThingsIsDrawnInSixtyActions() {
        try (Stand stand = Stand.open(Blank.house().withCellSize(0.5), 1280, 800)) {
            stand.awaitMap();
            stand.click(-0.9, -0.9);
            int actions = SketchedHouse.draw(new Hands() {
                @Override
                public void key(Tool tool) {
                    stand.type(tool.key().toLowerCase(java.util.Locale.ROOT));
                }

                @Override
                public void click(double x, double y) {
                    stand.click(x, y);
                }

                @Override
                public void drag(double x, double y, double toX, double toY) {
                    stand.drag(x, y, toX, toY);
                }
            });
            Scenario drawn = stand.bench.document().scenario().get();
            assertThat(Items.all(drawn)).hasSize(40);
            assertThat(actions).isLessThanOrEqualTo(60);
            assertThat(ScenarioCheck.problems(drawn)).isEmpty();
            stand.settle();
            assertThat(stand.bench.solving().picture().get().state()).isEqualTo(Solving.State.UP_TO_DATE);
        }
    }

    /** While a suction point is dragged the arrows, a pin and the profile move along with the map, and the map says that it is coarse. */
    @Test
    void whatLiesOverTheMapFollowsADrag() {
        try (Stand stand = Stand.open(example("stone-footing.json"), 1280, 800)) {
            stand.settle();
            Point at = Stand.fx(() -> stand.bench
                    .document()
                    .scenario()
                    .get()
                    .suctionPoints()
                    .get(0)
                    .at());
            Stand.run(() -> {
                stand.guide.sight().flow().set(Sight.Flow.ARROWS);
                stand.guide.sight().pin(new Point(at.x() + 1.5, at.y()));
            });
            stand.await(
                    "the air is followed",
                    () -> stand.guide.sight().paths().get().isPresent());
            String before = Stand.fx(() -> stand.guide.sight().rows().get(0).value());
            AirPaths air = Stand.fx(() -> stand.guide.sight().paths().get().orElseThrow());
            stand.moveTo(at);
            stand.press();
            for (int i = 1; i <= 6; i++) stand.moveTo(new Point(at.x() - 0.15 * i, at.y()));
            List<Node> map = Stand.fx(() -> List.copyOf(stand.map().getChildrenUnmodifiable()));
            stand.await(
                    "the arrows follow", () -> stand.guide.sight().paths().get().orElseThrow() != air);
            stand.await("the arrows are painted", () -> ((ImageView) map.get(2)).getImage() != null);
            stand.await("the pin is painted", () -> ((ImageView) map.get(4)).getImage() != null);
            assertThat(Stand.fx(() -> stand.guide.sight().rows().get(0).value()))
                    .isNotEqualTo(before);
            assertThat(Stand.fx(() -> map.stream()
                            .filter(javafx.scene.control.Label.class::isInstance)
                            .map(l -> ((javafx.scene.control.Label) l).getText())
                            .toList()))
                    .contains("following on a coarse grid");
            if (PICTURES) stand.save(java.nio.file.Path.of("target/pictures/drag.png"), java.util.Optional.empty());
            stand.release();
            stand.settle();
            stand.await(
                    "the whole map is back",
                    () -> ((ImageView) map.get(2)).getImage() == null && ((ImageView) map.get(1)).getImage() == null);
        }
    }

    /** A learner rests the mouse on a word and reads what it means. */
    @Test
    void aWordIsExplainedWhereTheMouseRests() {
        try (Stand stand = Stand.open(example("stone-footing.json"), 1280, 800)) {
            stand.settle();
            Node title = Stand.fx(() -> stand.stage().getScene().getRoot().lookupAll(".title").stream()
                    .filter(n -> n instanceof javafx.scene.control.Label l
                            && l.getText().equals("Exhaust"))
                    .findFirst()
                    .orElseThrow());
            stand.hover(title);
            stand.await(
                    "the word is explained",
                    () -> javafx.stage.Window.getWindows().stream()
                            .filter(javafx.scene.control.Tooltip.class::isInstance)
                            .anyMatch(w -> ((javafx.scene.control.Tooltip) w)
                                    .getText()
                                    .startsWith("exhaust (system flow): all air drawn")));
        }
    }
}
