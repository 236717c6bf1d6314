package slabfield.desktop.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import javafx.scene.Scene;
import javafx.scene.control.TabPane;
import org.junit.jupiter.api.Test;
import slabfield.desktop.viewmodel.Example;
import slabfield.desktop.viewmodel.FirstHouse;

/** The order in which the window comes to the screen. */
class StartWindowTest {
    private static Set<String> panels(Scene scene) {
        Set<String> there = new java.util.TreeSet<>();
        for (String panel : List.of(".headline", ".inspector", ".house", ".tab-body"))
            if (scene.lookup(panel) != null) there.add(panel);
        return there;
    }

    /** Whoever waits for the map waits for nothing else: the right column and the tables are made after it. */
    @Test
    void theFirstMapComesBeforeThePanels() {
        Stand.needsScreen();
        List<Set<String>> before = new ArrayList<>();
        Example first = FirstHouse.read("stone-footing.json");
        Example coarse = new Example(first.file(), first.scenario().withCellSize(0.5));
        try (Stand stand = Stand.open(
                List.of(coarse),
                1280,
                800,
                view -> view.map()
                        .key()
                        .addListener(
                                (o, was, is) -> before.add(panels(view.map().getScene()))))) {
            stand.settle();
            assertThat(before).isNotEmpty();
            assertThat(before.get(0)).as("made before the first map").isEmpty();
            assertThat(Stand.fx(() -> panels(stand.stage().getScene())))
                    .containsExactly(".headline", ".house", ".inspector", ".tab-body");
            assertThat(Stand.fx(() -> stand.node(".tab-pane", TabPane.class).getTabs().stream()
                            .filter(t -> t.getContent() != null)
                            .count()))
                    .as("only the tab that is seen")
                    .isEqualTo(1);
        }
    }
}
