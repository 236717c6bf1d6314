package slabfield.desktop.view;

import javafx.beans.value.ObservableValue;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import slabfield.desktop.viewmodel.Example;

/** Name of an example and what it teaches, wrapped at a width. */
final class ExampleWords extends VBox {
    /** @param width of its lines [px] */
    ExampleWords(Example example, ObservableValue<Number> width) {
        Text teaches = new Text(example.teaches());
        teaches.getStyleClass().add("teaches");
        teaches.wrappingWidthProperty().bind(width);
        getChildren().addAll(Parts.label(example.name(), "name"), teaches);
        getStyleClass().add("example");
        setAccessibleText(example.name() + ". " + example.teaches());
    }
}
