package slabfield.desktop.view;

import javafx.scene.control.CheckBox;
import javafx.scene.control.CustomMenuItem;
import javafx.scene.control.Label;
import javafx.scene.control.MenuButton;
import javafx.scene.control.Slider;
import javafx.scene.layout.GridPane;
import slabfield.desktop.drawing.Layer;
import slabfield.desktop.viewmodel.Layers;

/** Which sheets of the drawing are shown, and which locked. */
final class LayersButton extends MenuButton {
    LayersButton(Layers layers) {
        super("Layers");
        Parts.tip(this, "Which sheets of the drawing are shown, and which are locked");
        GridPane grid = new GridPane();
        grid.getStyleClass().add("layers");
        grid.addRow(0, Parts.label("", "soft"), Parts.label("shown", "soft"), Parts.label("locked", "soft"));
        Layer[] all = Layer.values();
        for (int i = 0; i < all.length; i++) row(grid, i + 1, all[all.length - 1 - i], layers);
        Slider opacity = new Slider(0.1, 1, layers.pictureOpacity().get());
        opacity.valueProperty().bindBidirectional(layers.pictureOpacity());
        opacity.setAccessibleText("How strongly the picture to trace shows");
        Label strength = Parts.label("Strength of the picture");
        strength.setLabelFor(opacity);
        grid.add(strength, 0, all.length + 1);
        grid.add(opacity, 1, all.length + 1, 2, 1);
        CustomMenuItem item = new CustomMenuItem(grid, false);
        item.getStyleClass().add("layers-item");
        getItems().add(item);
    }

    private static void row(GridPane grid, int row, Layer layer, Layers layers) {
        CheckBox shown = new CheckBox(), locked = new CheckBox();
        shown.setAccessibleText(layer.words() + " shown");
        locked.setAccessibleText(layer.words() + " locked");
        shown.setSelected(true);
        shown.setDisable(layer == Layer.SLABS);
        shown.setOnAction(e -> layers.show(layer, shown.isSelected()));
        locked.setOnAction(e -> layers.lock(layer, locked.isSelected()));
        grid.addRow(row, Parts.label(layer.words()), shown, locked);
    }
}
