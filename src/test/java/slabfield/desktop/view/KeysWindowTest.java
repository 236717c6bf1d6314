package slabfield.desktop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.IndexedCell;
import javafx.scene.control.Labeled;
import javafx.scene.control.Menu;
import javafx.scene.control.MenuBar;
import javafx.scene.control.MenuItem;
import javafx.scene.control.TabPane;
import javafx.scene.control.Toggle;
import javafx.scene.control.ToggleButton;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import slabfield.desktop.drawing.Item;
import slabfield.desktop.drawing.Items;
import slabfield.desktop.viewmodel.Example;
import slabfield.desktop.viewmodel.find.Page;
import slabfield.desktop.viewmodel.guide.Guide.Mode;
import slabfield.desktop.viewmodel.lesson.Change;
import slabfield.io.ExampleScenarios;

/** The window without a mouse, and without eyes. */
class KeysWindowTest {
    private Stand stand;

    @BeforeEach
    void open() {
        Stand.needsScreen();
        stand = Stand.open(
                ExampleScenarios.all().stream()
                        .filter(e -> e.file().equals("block-walls-before-sealing.json"))
                        .map(e -> new Example(e.file(), e.scenario().withCellSize(0.5)))
                        .toList(),
                1280,
                800);
        stand.settle();
        stand.awaitMap();
    }

    @AfterEach
    void close() {
        if (stand != null) stand.close();
    }

    /** Everything on the screen that takes the keys; buttons in the rows of a table are done by Enter on the row. */
    private Set<Node> takers() {
        return Stand.fx(() -> {
            Set<Node> found = java.util.Collections.newSetFromMap(new IdentityHashMap<>());
            gather(stand.stage().getScene().getRoot(), found);
            return found;
        });
    }

    private static void gather(Node node, Set<Node> found) {
        if (!node.isVisible() || node instanceof IndexedCell) return;
        if (node.isFocusTraversable() && !node.isDisabled()) found.add(node);
        if (node instanceof Parent parent) parent.getChildrenUnmodifiable().forEach(n -> gather(n, found));
    }

    private static String name(Node node) {
        String given = node.getAccessibleText();
        if (given != null && !given.isBlank()) return given;
        return node instanceof Labeled labeled && labeled.getText() != null ? labeled.getText() : "";
    }

    private void everythingIsNamed(String where) {
        stand.pulses(3);
        Set<Node> takers = takers();
        assertThat(takers).as(where).hasSizeGreaterThan(20);
        assertThat(takers)
                .as("what takes the keys in " + where)
                .allSatisfy(n -> assertThat(name(n)).as(n.toString()).containsPattern("[A-Za-z0-9\u00b1]"));
    }

    private void show(Mode mode) {
        Stand.run(() -> stand.guide.mode().set(mode));
        stand.pulses(3);
    }

    @Test
    void whateverTakesTheKeysHasANameInEveryView() {
        TabPane tabs = stand.node(".house-tabs", TabPane.class);
        for (int i = 0; i < tabs.getTabs().size(); i++) {
            int at = i;
            Stand.run(() -> tabs.getSelectionModel().select(at));
            everythingIsNamed("tab " + tabs.getTabs().get(i).getText());
        }
        for (Item item : Items.all(stand.bench.document().scenario().get())) {
            Stand.run(() -> stand.bench.drawing().selection().set(List.of(item)));
            everythingIsNamed("properties of " + item.title());
        }
        show(Mode.COMPARE);
        Stand.run(() -> stand.guide.variants().branch("another"));
        everythingIsNamed("Compare");
        show(Mode.READINGS);
        everythingIsNamed("Readings");
        show(Mode.FINDINGS);
        for (Page page : stand.guide.findings().pages()) {
            Stand.run(() -> stand.guide.findings().page().set(page));
            everythingIsNamed("Findings, " + page.title());
        }
        show(Mode.LEARN);
        stand.await(
                "the lesson's houses are solved",
                () -> stand.guide.course().solved().get().isPresent());
        everythingIsNamed("a lesson");
        Stand.run(() -> {
            stand.guide
                    .course()
                    .lesson()
                    .get()
                    .questions()
                    .forEach(q -> stand.guide.course().answer(q, Change.SAME));
            stand.guide.course().reveal();
        });
        everythingIsNamed("a lesson revealed");
        Stand.run(() -> stand.shown(".contents-entry", ToggleButton.class).stream()
                .filter(b -> b.getText().startsWith("Practice"))
                .forEach(ToggleButton::fire));
        stand.await("a case is made", () -> stand.guide.practice().now().get().isPresent());
        everythingIsNamed("practice");
        show(Mode.HOUSE);
        Stand.run(stand.view()::welcome);
        stand.clickOn(stand.node("#door-example", Button.class));
        everythingIsNamed("welcome");
    }

    /** Goes from part to part with Tab until it comes round; what a part looked like with the keys and without. */
    private Map<Node, Boolean> walk(int most) {
        Map<Node, Boolean> seen = new LinkedHashMap<>();
        WritableImage before = stand.image();
        for (int i = 0; i < most; i++) {
            stand.key(KeyCode.TAB);
            Node now = Stand.fx(() -> stand.stage().getScene().getFocusOwner());
            if (seen.containsKey(now)) return seen;
            WritableImage with = stand.image();
            seen.put(now, differ(before, with, Stand.fx(() -> now.localToScene(now.getBoundsInLocal()))));
            before = with;
        }
        return seen;
    }

    private static boolean differ(WritableImage a, WritableImage b, Bounds where) {
        int left = (int) Math.max(0, where.getMinX() - 4), right = (int) Math.min(a.getWidth(), where.getMaxX() + 4);
        int top = (int) Math.max(0, where.getMinY() - 4), bottom = (int) Math.min(a.getHeight(), where.getMaxY() + 4);
        for (int y = top; y < bottom; y++)
            for (int x = left; x < right; x++)
                if (a.getPixelReader().getArgb(x, y) != b.getPixelReader().getArgb(x, y)) return true;
        return false;
    }

    /** Of several buttons of which one is down, Tab goes to that one, and the arrow keys to the others. */
    private static boolean isOneOfSeveral(Node node) {
        return node instanceof Toggle toggle && toggle.getToggleGroup() != null && !toggle.isSelected();
    }

    @Test
    void arrowKeysGoAlongButtonsOfWhichOneIsDown() {
        List<ToggleButton> units = stand.shown(".tools .choice .toggle-button", ToggleButton.class).stream()
                .filter(b -> name(b).startsWith("Flow: "))
                .toList();
        assertThat(units).hasSize(3);
        Stand.run(units.get(0)::requestFocus);
        for (ToggleButton next : List.of(units.get(1), units.get(2))) {
            stand.key(KeyCode.RIGHT);
            assertThat(Stand.fx(() -> stand.stage().getScene().getFocusOwner())).isSameAs(next);
        }
        stand.key(KeyCode.SPACE);
        assertThat(Stand.fx(() -> stand.bench.units().flow().get().symbol())).isEqualTo("m3/h");
    }

    @Test
    void tabReachesEverythingInEveryViewAndShowsWhereItIs() {
        for (Mode mode : Mode.values()) {
            show(mode);
            if (mode == Mode.LEARN)
                stand.await(
                        "the lesson's houses are solved",
                        () -> stand.guide.course().solved().get().isPresent());
            stand.settle();
            Stand.pause(400);
            Set<Node> takers = takers();
            Map<Node, Boolean> walked = walk(2 * takers.size());
            assertThat(walked.keySet())
                    .as("reached by Tab in " + mode)
                    .map(KeysWindowTest::name)
                    .containsAll(takers.stream()
                            .filter(n -> !isOneOfSeveral(n))
                            .map(KeysWindowTest::name)
                            .collect(Collectors.toSet()));
            assertThat(walked.entrySet().stream()
                            .filter(e -> !e.getValue())
                            .map(e -> name(e.getKey()))
                            .toList())
                    .as("looks the same with the keys and without in " + mode)
                    .isEmpty();
        }
    }

    @Test
    void everyKeyOfTheMenusIsInTheListOfKeys() {
        List<MenuItem> all = new ArrayList<>();
        Stand.run(() -> stand.node(".menu-bar", MenuBar.class).getMenus().forEach(m -> gather(m, all)));
        Set<String> keys = new LinkedHashSet<>();
        for (MenuItem item : all)
            if (item.getAccelerator() != null)
                keys.add(item.getAccelerator()
                        .getName()
                        .replace("Shift+Shortcut", "Ctrl+Shift")
                        .replace("Shortcut", "Ctrl"));
        assertThat(keys).hasSizeGreaterThan(15);
        assertThat(keys).allSatisfy(k -> assertThat(KeyList.words()).contains(k));
    }

    private static void gather(MenuItem item, List<MenuItem> all) {
        all.add(item);
        if (item instanceof Menu menu) menu.getItems().forEach(i -> gather(i, all));
    }

    @Test
    void theViewsAreChangedWithTheKeys() {
        for (Mode mode : Mode.values()) {
            stand.shortcut(KeyCode.getKeyCode(String.valueOf(mode.ordinal() + 1)));
            assertThat(Stand.fx(() -> stand.guide.mode().get())).isEqualTo(mode);
        }
    }

    /** Whoever begins long work with the keys can stop it with them, and is back at the first button then. */
    @Test
    void theKeysStayWithWorkThatIsBegun() {
        show(Mode.FINDINGS);
        Page plans = stand.guide.findings().pages().stream()
                .filter(p -> p.title().equals("Plans"))
                .findFirst()
                .orElseThrow();
        Stand.run(() -> stand.guide.findings().page().set(plans));
        stand.pulses(3);
        Button begin = stand.shown(".findings .button", Button.class).stream()
                .filter(b -> b.getText().equals(plans.jobs().get(0).words()))
                .findFirst()
                .orElseThrow();
        Stand.run(begin::requestFocus);
        stand.key(KeyCode.SPACE);
        stand.pulses(3);
        assertThat(Stand.fx(() -> name(stand.stage().getScene().getFocusOwner())))
                .isEqualTo("Cancel: Put measures together");
        stand.key(KeyCode.SPACE);
        stand.await("the keys are back", () -> stand.stage().getScene().getFocusOwner() == begin);
    }
}
