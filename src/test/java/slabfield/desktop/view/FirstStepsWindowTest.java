package slabfield.desktop.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.TabPane;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import slabfield.desktop.viewmodel.Blank;
import slabfield.desktop.viewmodel.Example;
import slabfield.figure.Bounds;
import slabfield.io.ExampleScenarios;
import slabfield.model.Point;

/** The first minutes of somebody who has never seen the window. */
class FirstStepsWindowTest {
    private Stand stand;

    @BeforeEach
    void open() {
        Stand.needsScreen();
        stand = Stand.open(
                ExampleScenarios.all().stream()
                        .map(e -> new Example(e.file(), e.scenario().withCellSize(0.5)))
                        .toList(),
                1280,
                800);
        stand.settle();
    }

    @AfterEach
    void close() {
        if (stand != null) stand.close();
    }

    private void begin() {
        Stand.run(() -> stand.bench.document().open(Blank.house().withCellSize(0.5), java.util.Optional.empty()));
        stand.pulses(3);
        stand.key(KeyCode.R);
    }

    private String label(String selector) {
        return Stand.fx(() -> ((Label) stand.stage().getScene().lookup(selector)).getText());
    }

    @Test
    void everyExampleIsOfferedAtAGlance() {
        Stand.run(stand.view()::welcome);
        stand.clickOn(stand.node("#door-example", Button.class));
        stand.pulses(3);
        List<Button> offered = stand.shown(".door-example", Button.class);
        assertThat(offered).hasSameSizeAs(stand.bench.examples());
        assertThat(offered).allSatisfy(b -> assertThat(b.getHeight()).isBetween(30.0, 90.0));
    }

    @Test
    void aBlankSheetIsNoMistake() {
        begin();
        assertThat(stand.shown(".stamp", Label.class)).isEmpty();
        Node status = stand.node(".status", Node.class);
        assertThat(Stand.fx(status::getPseudoClassStates)).doesNotContain(PseudoClass.getPseudoClass("failed"));
        stand.type("12\t8");
        stand.key(KeyCode.ENTER);
        assertThat(label("#hint")).contains("no suction point yet");
        stand.key(KeyCode.S);
        stand.click(3, 4);
        stand.settle();
        assertThat(label("#hint")).doesNotContain("no suction point");
    }

    @Test
    void theWholePlanIsShownWhateverItsSize() {
        begin();
        stand.type("120\t80");
        stand.key(KeyCode.ENTER);
        stand.pulses(2);
        ViewPort port = stand.map().port();
        Bounds slab = Bounds.of(stand.bench.document().scenario().get());
        assertThat(port.x(new Point(slab.right(), 0))).isLessThan(stand.map().getWidth());
        assertThat(port.y(new Point(0, slab.top()))).isPositive();
        double across = port.x(new Point(slab.right(), 0)) - port.x(new Point(slab.left(), 0));
        assertThat(across / stand.map().getWidth()).isGreaterThan(0.6);
        stand.type("30\t80");
        stand.key(KeyCode.ENTER);
        stand.key(KeyCode.ESCAPE);
        stand.key(KeyCode.DIGIT0);
        Bounds both = Bounds.of(stand.bench.document().scenario().get());
        assertThat(both.right()).as("a second slab").isGreaterThan(45);
        assertThat(port.x(new Point(both.right(), 0))).isLessThan(stand.map().getWidth());
    }

    @Test
    void thePlanKeepsOffTheFootOfTheMap() {
        ViewPort port = stand.map().port();
        Bounds slab = Bounds.of(stand.bench.document().scenario().get());
        double free = stand.map().getHeight() - port.y(new Point(0, slab.bottom()));
        assertThat(free).as("stamp, scale bar and north stand 35 pixels high").isGreaterThan(35);
    }

    @Test
    void aReadoutGoesWithThePointer() {
        stand.key(KeyCode.S);
        stand.moveTo(new Point(3, 3));
        stand.await(
                "the place is read out",
                () -> !stand.bench.drawing().sketch().get().words().isEmpty());
        stand.hover(stand.node(".headline", Node.class));
        stand.await(
                "the place is read out no more",
                () -> stand.bench.drawing().sketch().get().words().isEmpty());
    }

    @Test
    void everyTabIsSeenAtTheSmallerSize() {
        TabPane tabs = stand.node(".house-tabs", TabPane.class);
        List<Labeled> heads = stand.shown(".tab-label", Labeled.class);
        assertThat(heads).hasSameSizeAs(tabs.getTabs());
        double right = Stand.fx(() -> tabs.localToScene(tabs.getBoundsInLocal()).getMaxX());
        assertThat(heads)
                .allSatisfy(h -> assertThat(Stand.fx(
                                () -> h.localToScene(h.getLayoutBounds()).getMaxX()))
                        .as(h.getText())
                        .isLessThan(right));
    }

    @Test
    void theRowOfToolsIsOneRow() {
        List<Double> tops = stand.node(".tools", javafx.scene.layout.Pane.class).getChildren().stream()
                .map(n -> Math.rint(n.getBoundsInParent().getCenterY()))
                .distinct()
                .toList();
        assertThat(tops).hasSize(1);
    }

    @Test
    void theMapAloneTakesTheRoomOfTheRest() {
        double width = stand.map().getWidth(), height = stand.map().getHeight();
        stand.key(KeyCode.F9);
        stand.pulses(4);
        assertThat(stand.map().getWidth()).isGreaterThan(1.5 * width);
        assertThat(stand.map().getHeight()).isGreaterThan(1.5 * height);
        Stand.run(stand.bench.advising()::start);
        stand.pulses(4);
        assertThat(stand.map().getHeight()).as("what is asked for is seen").isCloseTo(height, within(3.0));
    }

    @Test
    void whatIsAskedForAndNotThereIsSaid() {
        Stand.run(() -> {
            stand.bench.document().open(Blank.house().withCellSize(0.5), java.util.Optional.empty());
            stand.bench
                    .document()
                    .edit(slabfield.desktop.viewmodel.Edit.of(
                            "x", s -> ExampleScenarios.lesson("far-sump.json").withCellSize(0.5)));
            stand.guide.sight().show().set(slabfield.desktop.viewmodel.see.Sight.Show.MEASURED);
        });
        stand.settle();
        stand.await("it is said", () -> label(".stamp").equals("No readings yet: this is the prediction"));
        assertThat(stand.shown(".stamp", Label.class)).hasSize(1);
        Stand.run(() -> stand.guide.sight().show().set(slabfield.desktop.viewmodel.see.Sight.Show.PRESSURE));
        stand.pulses(2);
        assertThat(stand.shown(".stamp", Label.class)).isEmpty();
    }
}
