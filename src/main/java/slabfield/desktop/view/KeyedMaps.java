package slabfield.desktop.view;

import java.util.List;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.beans.property.DoubleProperty;
import javafx.geometry.Side;
import javafx.scene.layout.BorderPane;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.field.Result;
import slabfield.figure.Box;
import slabfield.figure.MapStyle;
import slabfield.figure.PlanLayer;
import slabfield.figure.VacuumMap;

/** Two maps of one house over each other, or one of them, with what their colours and signs mean. */
final class KeyedMaps extends BorderPane {
    /** How much larger than usual the letters of a key become, at the right and beneath. */
    private static final double LARGEST = 1.15, LARGEST_BENEATH = 1;

    private static final double WIDTH = 250;
    /** Height beneath the maps where the key has two columns, and where it has more [px]. */
    private static final double TALL = 190, LOW = 116, THREE_COLUMNS = 720;

    private final SwipePane maps;
    private final PlanPicture key;
    private final double largest;

    /** @param side where the key stands: at the right, or beneath */
    KeyedMaps(TaskRunner painting, Side side) {
        largest = side == Side.RIGHT ? LARGEST : LARGEST_BENEATH;
        maps = new SwipePane(painting);
        key = new PlanPicture(painting, "Key of the maps");
        key.setMinWidth(WIDTH);
        key.setPrefWidth(WIDTH);
        setCenter(maps);
        if (side == Side.RIGHT) setRight(key);
        else {
            key.minHeightProperty()
                    .bind(Bindings.createDoubleBinding(() -> getWidth() < THREE_COLUMNS ? TALL : LOW, widthProperty()));
            key.prefHeightProperty().bind(key.minHeightProperty());
            setBottom(key);
        }
    }

    /** Part of the width that shows the map before, 0 to 1. */
    DoubleProperty divider() {
        return maps.divider();
    }

    /** Shows two results in one style, whose range holds both. */
    void show(String beforeName, Result one, String afterName, Result other, MapStyle style, List<PlanLayer> layers) {
        maps.show(beforeName, one, afterName, other, style, layers);
        explain(other, style, layers);
    }

    /** Shows one map alone. */
    void showOne(String name, Result only, MapStyle style, List<PlanLayer> layers) {
        maps.showOne(name, only, style, layers);
        explain(only, style, layers);
    }

    void clear() {
        maps.clear();
        key.show(Optional.empty());
    }

    void takeFocus() {
        maps.requestFocus();
    }

    private void explain(Result result, MapStyle style, List<PlanLayer> layers) {
        MapStyle letters = style.withFontScale(Math.min(largest, style.fontScale()));
        key.show(Optional.of((canvas, box) ->
                VacuumMap.drawLegend(canvas, result, letters, layers, new Box(6, 4, box.right() - 6, box.bottom()))));
    }
}
