package slabfield.desktop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.TableView;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;
import javafx.scene.text.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import slabfield.desktop.viewmodel.find.Job;
import slabfield.desktop.viewmodel.find.Page;
import slabfield.desktop.viewmodel.find.Picture;
import slabfield.desktop.viewmodel.find.ReadHouse;
import slabfield.desktop.viewmodel.find.Sheet;
import slabfield.desktop.viewmodel.guide.Guide.Mode;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.figure.PlanView;
import slabfield.model.Scenario;
import slabfield.model.SealState;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.network.SlabSolver;
import slabfield.quantity.Unit;

/** A technician's way in the real window, with the mouse and keys of the system: from readings to a measure, and back. */
class FindingsWindowTest {
    private static final long PATIENCE = 240;

    private Stand stand;

    @BeforeEach
    void open() {
        Stand.needsScreen();
        stand = Stand.open(ReadHouse.drawn(), 1280, 800);
        stand.settle();
        stand.awaitMap();
    }

    @AfterEach
    void close() {
        if (stand != null) stand.close();
    }

    private Set<Node> all(String selector) {
        return Stand.fx(() -> stand.stage().getScene().getRoot().lookupAll(selector));
    }

    private void press(String selector, String text) {
        Node button = all(selector).stream()
                .filter(n ->
                        n instanceof javafx.scene.control.ButtonBase b && text.equals(b.getText()) && b.isVisible())
                .findFirst()
                .orElseThrow(() -> new AssertionError("there is no \"" + text + "\" to press"));
        stand.clickOn(button);
    }

    private void turnTo(String page) {
        press(".findings .toggle-button", page);
        assertThat(Stand.fx(() -> stand.guide.findings().page().get().title())).isEqualTo(page);
    }

    /** Presses the button of a page's work and waits for it. */
    private void find(String page, String job) {
        turnTo(page);
        press(".button", job);
        Page now = Stand.fx(() -> stand.guide.findings().page().get());
        Job work = now.jobs().stream()
                .filter(j -> j.words().equals(job))
                .findFirst()
                .orElseThrow();
        stand.await(job + " is done", () -> !work.search().searching().get(), PATIENCE);
        stand.pulses(4);
        assertThat(Stand.fx(() -> work.search().found().get())).as(job).isPresent();
    }

    private List<String> labels() {
        return Stand.fx(() -> all(".label").stream()
                .filter(Label.class::isInstance)
                .map(n -> ((Label) n).getText())
                .toList());
    }

    private Scenario house() {
        return stand.bench.document().scenario().get();
    }

    @SuppressWarnings("unchecked")
    private TableView<Sheet.Row> table() {
        return stand.node(".finding-tables .table-view", TableView.class);
    }

    /** Buttons and heads of columns lie in the window and show all of their words. */
    private void nothingIsCut(String page) {
        for (Node n : all(".findings .button, .findings .toggle-button, .findings .column-header .label")) {
            if (!(n instanceof Labeled labeled)
                    || !labeled.isVisible()
                    || labeled.getText().isEmpty()) continue;
            assertThat(Stand.fx(() -> n.localToScene(n.getLayoutBounds()).getMaxX()))
                    .as("%s under %s", labeled.getText(), page)
                    .isLessThanOrEqualTo(1280);
            if (labeled.lookup(".text") instanceof Text shown)
                assertThat(Stand.fx(shown::getText))
                        .as("words on the screen under " + page)
                        .isEqualTo(labeled.getText());
        }
    }

    private void typeReadings() {
        Result.Solved truth = (Result.Solved) SlabSolver.solve(ReadHouse.truth(ReadHouse.drawn()), Progress.NONE);
        stand.clickOn(all(".rail .toggle-button").stream()
                .filter(n -> ((ToggleButton) n).getText().equals("Readings"))
                .findFirst()
                .orElseThrow());
        Stand.run(() -> stand.guide.entry().begin(StageKind.COMMUNICATION_TEST));
        stand.pulses(2);
        for (int k = 0; k < truth.holes().size(); k++) stand.key(KeyCode.ENTER);
        for (Result.Hole hole : truth.holes()) typed(-hole.fanOn().orElseThrow());
        typed(-truth.suctions().get(0).pressure());
        typed(Unit.CFM.fromSi(truth.suctions().get(0).flow()));
        Stage read = house().stages().get(0);
        assertThat(read.holes()).hasSize(truth.holes().size());
        assertThat(read.systems())
                .singleElement()
                .satisfies(s -> assertThat(s.flow()).isPresent());
    }

    private void typed(double size) {
        stand.type(String.format(Locale.ROOT, "%.2f", size));
        stand.key(KeyCode.ENTER);
    }

    @Test
    void fromReadingsToAMeasureThatIsAppliedAndTakenBack() {
        typeReadings();
        press(".toggle-button", "Findings");
        assertThat(Stand.fx(() -> stand.guide.mode().get())).isEqualTo(Mode.FINDINGS);
        stand.settle();
        stand.await(
                "readings are compared",
                () -> stand.bench.readings().comparison().get().isPresent());
        stand.pulses(3);
        assertThat(Stand.fx(() -> table().getItems().size()))
                .isEqualTo(house().testHoles().size());

        find("Diagnosis", "Diagnose");
        assertThat(labels()).contains("Causes, the likeliest first");
        find("Fit", "Fit to the readings");
        assertThat(labels()).anyMatch(l -> l.contains("of 80 houses that explain the readings"));
        find("Next hole", "Look for places");
        assertThat(labels()).contains("Best places for the next hole, each by itself");

        find("Measures", "Try measures");
        nothingIsCut("Measures");
        Scenario before = house();
        TableView<Sheet.Row> table = table();
        int row = Stand.fx(() ->
                table.getItems().stream().map(r -> r.cells().get(0)).toList().indexOf("Seal \"sump\""));
        assertThat(row).isNotNegative();
        Stand.run(() -> {
            table.requestFocus();
            table.getSelectionModel().clearAndSelect(row == 0 ? 1 : row - 1);
            table.getFocusModel().focus(row == 0 ? 1 : row - 1);
        });
        stand.key(row == 0 ? KeyCode.UP : KeyCode.DOWN);
        stand.await(
                "the map shows the house with it",
                () -> stand.guide.findings().picture().get().orElse(null) instanceof Picture.Plan p
                        && p.result() instanceof Result.Solved s
                        && s.scenario().opening("sump").orElseThrow().seal().state() == SealState.SEALED);
        assertThat(house()).as("only looked at").isEqualTo(before);
        stand.key(KeyCode.ENTER);
        assertThat(house().opening("sump").orElseThrow().seal().state()).isEqualTo(SealState.SEALED);
        assertThat(Stand.fx(() -> stand.node(".findings .stamp", Label.class).isVisible()))
                .as("stamped out of date")
                .isTrue();
        assertThat(Stand.fx(() -> stand.stage().getScene().getFocusOwner()))
                .as("the keys stay in the table")
                .isInstanceOf(TableView.class);
        stand.shortcut(KeyCode.Z);
        assertThat(house()).isEqualTo(before);
        stand.settle();
        assertThat(Stand.fx(() -> stand.node(".findings .stamp", Label.class).isVisible()))
                .isFalse();
    }

    @Test
    void workIsCancelledAndEveryPartHasANameForThoseWhoDoNotSeeIt() {
        Stand.run(() -> stand.guide.mode().set(Mode.FINDINGS));
        stand.pulses(3);
        turnTo("Plans");
        press(".button", "Put measures together");
        press(".button", "Cancel");
        Job work = Stand.fx(() -> stand.guide.findings().page().get().jobs().get(0));
        assertThat(Stand.fx(() -> work.search().searching().get())).isFalse();
        assertThat(Stand.fx(() -> work.search().message().get())).contains("cancelled");
        find("Placement", "Try every place");
        stand.pulses(10);
        for (String selector : List.of(
                ".findings .picture", ".findings .table-view", ".findings .progress-bar", ".findings .finding-words"))
            assertThat(all(selector))
                    .as(selector)
                    .isNotEmpty()
                    .allSatisfy(
                            n -> assertThat(n.getAccessibleText()).as(selector).isNotBlank());
        assertThat(all(".findings .table-view .button"))
                .isNotEmpty()
                .allSatisfy(n -> assertThat(n.getAccessibleText()).startsWith("Core S2 at"));
    }

    @Test
    void aPlanIsEnlargedAndMovedAsTheMapOfTheHouseIs() {
        Stand.run(() -> stand.guide.mode().set(Mode.FINDINGS));
        stand.pulses(4);
        turnTo("Plans");
        FindingsPane pane = stand.node(".findings", FindingsPane.class);
        PlanPicture picture = stand.node(".findings .picture", PlanPicture.class);
        PlanView whole = Stand.fx(() -> pane.plan().port().view().get());
        Stand.run(picture::requestFocus);
        stand.pulses(2);
        Region ring = Stand.fx(() -> (Region) picture.lookup(".ring"));
        assertThat(ring.isVisible()).as("rim of what keys act on").isTrue();
        assertThat(ring.getBorder().getStrokes()).isNotEmpty();
        assertThat(ring.getWidth()).isEqualTo(picture.getWidth());
        stand.key(KeyCode.PLUS);
        PlanView larger = Stand.fx(() -> pane.plan().port().view().get());
        assertThat(larger.scale()).isGreaterThan(1.2 * whole.scale());
        stand.hover(picture);
        stand.press();
        stand.moveBy(40, 30);
        stand.release();
        PlanView moved = Stand.fx(() -> pane.plan().port().view().get());
        assertThat(moved.scale()).isEqualTo(larger.scale());
        assertThat(moved.originX() - larger.originX()).isBetween(30.0, 41.0);
        assertThat(moved.originY() - larger.originY()).isBetween(22.0, 31.0);
        stand.key(KeyCode.HOME);
        assertThat(Stand.fx(() -> pane.plan().port().view().get())).isEqualTo(whole);
    }

    @Test
    void nothingIsCutAtTheSmallerSize() {
        Stand.run(() -> stand.guide.mode().set(Mode.FINDINGS));
        stand.pulses(4);
        for (Page page : stand.guide.findings().pages()) {
            turnTo(page.title());
            nothingIsCut(page.title());
        }
    }
}
