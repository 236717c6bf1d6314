package slabfield.desktop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TableRow;
import javafx.scene.control.TableView;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.input.KeyCode;
import javafx.scene.text.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import slabfield.advice.Suggestion;
import slabfield.desktop.viewmodel.Example;
import slabfield.io.ExampleScenarios;
import slabfield.model.Scenario;

/** The table of measures below the map, at the smaller size. */
class MeasuresWindowTest {
    private Stand stand;

    @BeforeEach
    void open() {
        Stand.needsScreen();
        stand = Stand.open(
                List.of(ExampleScenarios.all().stream()
                        .filter(e -> e.file().equals("stone-footing.json"))
                        .map(e -> new Example(e.file(), e.scenario().withCellSize(0.4)))
                        .findFirst()
                        .orElseThrow()),
                1280,
                800);
        stand.settle();
        stand.awaitMap();
        stand.shortcut(KeyCode.L);
        stand.await(
                "measures are tried",
                () -> !stand.bench.advising().suggestions().isEmpty(),
                240);
        stand.pulses(6);
    }

    @AfterEach
    void close() {
        if (stand != null) stand.close();
    }

    @SuppressWarnings("unchecked")
    private TableView<Suggestion> table() {
        return (TableView<Suggestion>) stand.shown(".house-tabs .table-view", TableView.class).stream()
                .filter(t -> "Suggested measures".equals(t.getAccessibleText()))
                .findFirst()
                .orElseThrow();
    }

    private Image map() {
        return Stand.fx(() -> ((ImageView) stand.map().getChildrenUnmodifiable().get(0)).getImage());
    }

    private List<String> stamps() {
        return stand.shown(".stamp", Label.class).stream().map(Label::getText).toList();
    }

    private Node row(int index) {
        return stand.shown(".house-tabs .table-row-cell", TableRow.class).stream()
                .filter(r -> r.getIndex() == index)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theMapShowsTheHouseWithTheMeasureThatIsPointedAt() {
        Scenario before = stand.bench.document().scenario().get();
        Image asItIs = map();
        stand.hover(row(1));
        stand.await(
                "the map shows the house with it",
                () -> stamps().stream().anyMatch(s -> s.startsWith("WITH IT: ")) && map() != asItIs);
        assertThat(stand.bench.document().scenario().get()).isEqualTo(before);
        Image with = map();
        stand.hover(stand.node(".headline", Node.class));
        stand.await("the map shows the house as it is", () -> stamps().isEmpty() && map() != with);
        Stand.run(() -> {
            table().requestFocus();
            table().getSelectionModel().clearAndSelect(0);
            table().getFocusModel().focus(0);
        });
        stand.key(KeyCode.DOWN);
        String second = Stand.fx(() -> slabfield.desktop.viewmodel.Advising.words(
                table().getItems().get(1).measure(), stand.bench.units()));
        stand.await("the keys show it too", () -> stamps().equals(List.of("WITH IT: " + second)));
        stand.key(KeyCode.ENTER);
        assertThat(stand.bench.document().scenario().get()).isNotEqualTo(before);
        stand.shortcut(KeyCode.Z);
        assertThat(stand.bench.document().scenario().get()).isEqualTo(before);
    }

    /** All but the last column, which the others lead to, stand in the table with all of their words. */
    @Test
    void noNumberAndNoHeadIsCut() {
        double right =
                Stand.fx(() -> table().localToScene(table().getLayoutBounds()).getMaxX());
        int seen = 0;
        for (Node n : Stand.fx(() -> List.copyOf(table().lookupAll(".text")))) {
            if (!(n instanceof Text text) || !Stand.isOnScreen(n)) continue;
            if (Stand.fx(() -> text.localToScene(text.getLayoutBounds()).getMaxX()) > right) continue;
            assertThat(text.getText()).doesNotContain("...");
            seen++;
        }
        assertThat(seen).isGreaterThan(25);
        assertThat(Stand.fx(() -> table().getColumns().stream()
                        .limit(6)
                        .mapToDouble(c -> c.getWidth())
                        .sum()))
                .as("width of the first six columns")
                .isLessThan(Stand.fx(() -> table().getWidth()));
    }
}
