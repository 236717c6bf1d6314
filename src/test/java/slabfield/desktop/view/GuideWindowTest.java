package slabfield.desktop.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CustomMenuItem;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.MenuButton;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TableView;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.VBox;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import slabfield.desktop.viewmodel.guide.Guide.Mode;
import slabfield.desktop.viewmodel.see.Sight;
import slabfield.io.ExampleScenarios;
import slabfield.model.SealState;
import slabfield.model.Stage;
import slabfield.model.StageKind;

/** Seeing, comparing, entering readings and learning in the real window. */
class GuideWindowTest {
    private Stand stand;

    @BeforeEach
    void open() {
        Stand.needsScreen();
        stand = Stand.open(ExampleScenarios.lesson("far-sump.json").withCellSize(0.25), 1280, 800);
        stand.settle();
    }

    @AfterEach
    void close() {
        if (stand != null) stand.close();
    }

    private void mode(Mode mode) {
        Stand.run(() -> stand.guide.mode().set(mode));
        stand.pulses(3);
    }

    private Set<Node> all(String selector) {
        return Stand.fx(() -> stand.stage().getScene().getRoot().lookupAll(selector));
    }

    private void fire(String text) {
        Stand.run(() -> all(".button").stream()
                .map(Button.class::cast)
                .filter(b -> text.equals(b.getText()))
                .findFirst()
                .orElseThrow()
                .fire());
        stand.pulses(2);
    }

    private List<String> labels() {
        return Stand.fx(
                () -> all(".label").stream().map(n -> ((Label) n).getText()).toList());
    }

    @Test
    void twoVariantsAreComparedSideBySide() {
        mode(Mode.COMPARE);
        fire("Branch from this");
        Stand.run(() -> stand.bench.seal("sump", SealState.SEALED));
        stand.await("both are solved", () -> stand.guide.options().pair().get().isPresent());
        TableView<?> table = stand.node(".option-table .table-view", TableView.class);
        assertThat(Stand.fx(() -> table.getItems().size())).isEqualTo(2);
        SwipePane swipe = stand.node(".swipe", SwipePane.class);
        double before = Stand.fx(() -> swipe.divider().get());
        Stand.run(swipe::requestFocus);
        stand.key(javafx.scene.input.KeyCode.RIGHT);
        stand.await("the divider moved", () -> stand.guide.options().divider().get() > before);
        assertThat(labels()).contains("as drawn", "variant");
    }

    @Test
    void aFingerBesideTheDividerGrabsItWhereItStands() {
        mode(Mode.COMPARE);
        fire("Branch from this");
        Stand.run(() -> stand.bench.seal("sump", SealState.SEALED));
        stand.await("both are solved", () -> stand.guide.options().pair().get().isPresent());
        SwipePane swipe = stand.node(".swipe", SwipePane.class);
        Stand.run(() -> swipe.divider().set(0.5));
        stand.hover(swipe);
        stand.moveBy(-SwipePane.HANDLE / 2 + 3, 60);
        stand.press();
        stand.pulses(1);
        assertThat(Stand.fx(() -> swipe.divider().get())).isEqualTo(0.5, within(0.003));
        stand.moveBy(80, 0);
        stand.release();
        assertThat(Stand.fx(() -> (swipe.divider().get() - 0.5) * swipe.getWidth()))
                .isCloseTo(80, within(3.0));
        assertThat(SwipePane.HANDLE).isGreaterThanOrEqualTo(44);
    }

    @Test
    void whatTheMapShowsIsChosenInOneRow() {
        List<Double> tops = Stand.fx(() -> ((javafx.scene.layout.Pane)
                        all(".map-part .sight").iterator().next())
                .getChildren().stream()
                        .map(n -> Math.rint(n.getBoundsInParent().getCenterY()))
                        .distinct()
                        .toList());
        assertThat(tops).hasSize(1);
    }

    @Test
    void aReadingIsEnteredWithTheKeysOfTheScreenAlone() {
        mode(Mode.READINGS);
        Stand.run(() -> stand.guide.entry().begin(StageKind.COMMUNICATION_TEST));
        stand.pulses(2);
        for (String key : List.of("1", ".", "5", "Next \u25b6")) fire(key);
        Stage stage = stand.bench.document().scenario().get().stages().get(0);
        assertThat(stage.holes())
                .singleElement()
                .satisfies(r -> assertThat(r.fanOff()).hasValue(1.5));
        Set<Node> keys = all(".pad-key");
        assertThat(keys).hasSize(16).allSatisfy(k -> {
            assertThat(k.getLayoutBounds().getWidth()).isGreaterThanOrEqualTo(64);
            assertThat(k.getLayoutBounds().getHeight()).isGreaterThanOrEqualTo(48);
        });
    }

    @Test
    void aLessonIsPredictedRevealedAndExplained() {
        mode(Mode.LEARN);
        stand.await(
                "the lesson's houses are solved",
                () -> stand.guide.course().solved().get().isPresent());
        stand.pulses(3);
        assertThat(Stand.fx(() -> all(".lesson-page .radio-button").size())).isEqualTo(18);
        Stand.run(() -> all(".lesson-page .radio-button").stream()
                .map(RadioButton.class::cast)
                .filter(b -> b.getText().equals("more than doubles"))
                .forEach(RadioButton::fire));
        fire("Reveal");
        assertThat(labels())
                .contains("Revealed", "Why")
                .anyMatch(t -> t.contains("One scale") || t.contains("one scale"));
        fire("Next lesson");
        assertThat(labels()).contains("A footing across the slab", "Predict");
    }

    @Test
    void largeTargetsMakeEveryButtonLargeAndNoTypeLarger() {
        double type = Stand.fx(
                () -> ((Labeled) all(".tools .toggle-button").iterator().next())
                        .getFont()
                        .getSize());
        Stand.run(() -> stand.bench.look().largeTargets().set(true));
        for (Mode mode : List.of(Mode.HOUSE, Mode.READINGS, Mode.COMPARE)) {
            mode(mode);
            stand.pulses(3);
            for (String kind : List.of(
                    ".button", ".toggle-button", ".menu-button", ".combo-box", ".tab", ".tool", ".table-row-cell"))
                for (Node node : Stand.fx(() -> List.copyOf(all(kind)))) {
                    if (!Stand.fx(() -> shown(node))) continue;
                    assertThat(node.getLayoutBounds().getHeight())
                            .as("height of %s under %s", node, mode)
                            .isGreaterThanOrEqualTo(44);
                    assertThat(node.getLayoutBounds().getWidth())
                            .as("width of %s under %s", node, mode)
                            .isGreaterThanOrEqualTo(44);
                }
        }
        assertThat(Stand.fx(
                        () -> ((Labeled) all(".tools .toggle-button").iterator().next())
                                .getFont()
                                .getSize()))
                .isEqualTo(type);
    }

    private static boolean shown(Node node) {
        for (Node n = node; n != null; n = n.getParent()) if (!n.isVisible()) return false;
        return node.getLayoutBounds().getHeight() > 0;
    }

    @Test
    void aStageOfTheJobLeadsToItsPlace() {
        MenuButton test = (MenuButton) Stand.fx(() -> all(".stages > .menu-button").stream()
                .filter(b -> ((MenuButton) b).getText().contains("Test"))
                .findFirst()
                .orElseThrow());
        Hyperlink link = Stand.fx(() ->
                (Hyperlink) ((VBox) ((CustomMenuItem) test.getItems().get(0)).getContent())
                        .getChildren()
                        .get(1));
        assertThat(link.getText()).startsWith("Enter the readings");
        Stand.run(link::fire);
        stand.await("readings can be entered", () -> stand.guide.mode().get() == Mode.READINGS);
        assertThat(all(".pad-key")).isNotEmpty();
    }

    @Test
    void layersArePaintedAndPinsAreListed() {
        Stand.run(() -> {
            all(".sight .toggle-button").stream()
                    .map(ToggleButton.class::cast)
                    .filter(b -> b.getText().equals("air origin"))
                    .findFirst()
                    .orElseThrow()
                    .fire();
            stand.guide.sight().pin(new slabfield.model.Point(6, 3));
        });
        stand.await(
                "the air is followed", () -> stand.guide.sight().paths().get().isPresent());
        assertThat(stand.guide.sight().show().get()).isEqualTo(Sight.Show.ORIGIN);
        assertThat(stand.guide.sight().rows()).hasSize(1);
        Stand.run(() -> stand.guide.sight().marking().set(Sight.Marking.PROFILE));
        stand.drag(2, 2, 9, 5);
        stand.await("a line is drawn", () -> stand.guide.sight().cut().get().isPresent());
        Optional<slabfield.figure.Profile> line = stand.guide.sight().cut().get();
        assertThat(line.orElseThrow().from().distanceTo(new slabfield.model.Point(2, 2)))
                .isLessThan(0.1);
        assertThat(line.orElseThrow().to().distanceTo(new slabfield.model.Point(9, 5)))
                .isLessThan(0.1);
        assertThat(stand.guide.sight().marking().get()).isEqualTo(Sight.Marking.NONE);
    }
}
